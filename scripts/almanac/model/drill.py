"""Drills: what each changes, how it is taught, what goes wrong, how much of it is done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import ClassVar

from almanac.model.drawing import DrawingChoice, undrawn_words
from almanac.model.entry import (
    ANY_DEPTH,
    DepthNeeded,
    Helper,
    Ids,
    Reference,
    Seconds,
    Span,
    leans_on,
    references,
)
from almanac.model.moving import Moving
from almanac.model.need import Adapt, adapts


@dataclass(frozen=True)
class GearUse:
    """Gear that a drill needs, and gear that suits it."""

    needs: Ids = ()
    may_add: Ids = ()


@dataclass(frozen=True)
class EffortRange:
    """The efforts, easiest and hardest, in which a drill makes sense."""

    easiest: str
    hardest: str


@dataclass(frozen=True)
class Dose:
    """How much: ``distance`` in the pool's unit or ``time`` held, reps, rest, most reps in a
    practice.
    """

    reps: Span
    rest: Seconds
    most: int
    distance: int | None = None
    time: Seconds | None = None


@dataclass(frozen=True)
class Sight:
    """What is seen, and from which viewpoint."""

    viewpoint: str
    what: str


@dataclass(frozen=True)
class GoesWrong:
    """What goes wrong, why, and what to say."""

    see: str
    because: str
    say: str


@dataclass(frozen=True)
class PaceRule:
    """A drill's time as a multiple of a benchmark's time over the same distance."""

    like: str
    factor: float


@dataclass(frozen=True, kw_only=True)
class Drill(Moving):
    """One thing to do: what it changes, how it is taught, what goes wrong, what can hurt."""

    kind: ClassVar[str] = "drill"
    purpose: str
    goals: Ids
    level: str
    effort: EffortRange
    dose: Dose
    steps: tuple[str, ...]
    cues: tuple[str, ...]
    look_for: tuple[Sight, ...]
    goes_wrong: tuple[GoesWrong, ...]
    mends: Ids = ()
    gear: GearUse = field(default_factory=GearUse)
    easier: Ids = ()
    harder: Ids = ()
    needs_first: Ids = ()
    drawing: DrawingChoice = field(default_factory=DrawingChoice)
    under_water: float | None = None
    pace: PaceRule | None = None
    helpers: tuple[Helper, ...] = ()
    start: str = ""
    depth_m: DepthNeeded = ANY_DEPTH
    adapt: tuple[Adapt, ...] = ()

    @property
    def travels(self) -> bool:
        """Whether it goes somewhere: its dose is a distance, not a time that it is held for."""
        return self.dose.distance is not None

    @property
    def family(self) -> str:
        """The folder of skills that it stands in."""
        return self.file.split("/")[-2]

    @property
    def undrawn(self) -> tuple[tuple[str, str], ...]:
        """The words that its body figure cannot show, each with its field."""
        words = undrawn_words(self.position, self.arms, self.kick, self.stroke, self.drawing)
        return tuple(words)

    def references(self) -> Iterator[Reference]:
        yield from references("fault", self.mends, "mends")
        yield from references("gear", self.gear.needs, "needs")
        yield from references("gear", self.gear.may_add, "may_add")
        yield from references("drill", self.easier, "easier")
        yield from references("drill", self.harder, "harder")
        yield from references("drill", self.needs_first, "needs_first")
        for body in (self.drawing, *self.drawing.then):
            yield from references("gear", body.gear or (), "drawn")
        if self.pace:
            yield Reference("benchmark", self.pace.like, "pace")
        yield from adapts(self.adapt)
        yield from leans_on(self.evidence)
