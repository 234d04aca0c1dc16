"""Sets and what they are made of: reps, rounds, pauses, efforts, send-offs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from almanac.frozen import quick
from almanac.model.assumed import Assumed
from almanac.model.effort_plans import Effort
from almanac.model.entry import Entry, Hazard, Ids, Reference, Seconds, references
from almanac.model.expectation import Expectation
from almanac.model.manner import ALONE, Aim, Cord, Manner, Waves
from almanac.model.need import Adapt, adapts
from almanac.model.sendoff import Sendoff
from almanac.units import LAND, Course

Distance = int | Fraction  # exact: half a length, or 15 m in a pool of yards


def in_all(distances: Iterable[Distance]) -> Distance:
    """Distances added up, exactly; a whole number where they come to one."""
    added: Distance = sum(distances)
    return int(added) if added.denominator == 1 else added


@quick
@dataclass(frozen=True)
class Part:
    """One piece of a rep; ``distance`` in the set's own unit.

    A piece that ends at a mark names it under ``to``, and has a distance only once it is placed in
    a course. After it ``rest`` seconds go by before the next piece of the same rep. A piece that is
    held rather than travelled has no distance, and lasts ``hold_s`` seconds. Where drills are done
    in turn, one a rep, they are ``turns``, the first of them ``do``, and ``order`` is how that was
    written: rotate, medley or reverse_medley.
    """

    distance: Distance
    do: str
    effort: Effort
    gear: Ids = ()
    hold_s: Seconds | None = None
    to: str = ""
    rest: Seconds | None = None
    in_passing: bool = False
    turns: Ids = ()
    order: str = ""

    @property
    def drills(self) -> Ids:
        """Every drill that it has done."""
        return self.turns or (self.do,)

    def drill_of(self, number: int) -> str:
        """The drill of rep ``number``, from 1."""
        return self.drills[(number - 1) % len(self.drills)]


@dataclass(frozen=True)
class Change:
    """What of reps is different for a lane group, or in a round; None for what stays.

    ``reps`` of 0 leaves them out. ``time`` in seconds, of a rep that is held. ``manner`` is what
    the start of a round's reps comes to beside partner and team.
    """

    reps: int | None = None
    distance: Distance | None = None
    time: Seconds | None = None
    do: str | None = None
    effort: Effort | None = None
    parts: tuple[Part, ...] | None = None
    sendoff: Sendoff | None = None
    rest: Seconds | None = None
    gear: Ids | None = None
    assume: Seconds | None = None
    waves: Waves | None = None
    start: str | None = None
    aim: Aim | None = None
    note: str | None = None
    manner: Manner | None = None


@quick
@dataclass(frozen=True)
class Reps:
    """One thing done ``reps`` times. ``is_parted`` where the entry wrote it as parts; ``stated`` is
    the distance that it then wrote beside them. ``is_split`` where each rep is shared out among
    drills. ``manner`` is what start, partner and team come to.

    ``by_group``, ``by_variant`` and ``by_round`` hold what is different for a lane group, in a
    variant of the set, and in a round of the rounds around it, by number or ``last``.
    """

    reps: int
    parts: tuple[Part, ...]
    sendoff: Sendoff | None = None
    rest: Seconds | None = None
    gear: Ids = ()
    note: str = ""
    waves: Waves | None = None
    is_parted: bool = False
    stated: int | None = None
    is_split: bool = False
    aim: Aim | None = None
    note_result: str = ""
    start: str = ""
    partner: str = ""
    team: str = ""
    cord: Cord | None = None
    manner: Manner = ALONE
    assume: Assumed | None = None
    reps_between: tuple[int, int] | None = None
    by_group: Mapping[str, Change] = field(default_factory=dict)
    by_variant: Mapping[str, Change] = field(default_factory=dict)
    by_round: Mapping[str, Change] = field(default_factory=dict)

    @property
    def distance(self) -> Distance:
        """The distance of one rep."""
        return in_all(part.distance for part in self.parts) if self.stated is None else self.stated


@dataclass(frozen=True)
class Pause:
    """Rest of ``seconds``, for a reason."""

    seconds: Seconds
    note: str = ""


@dataclass(frozen=True)
class RoundsChange:
    """How often a lane group goes round instead, and the pause between; None for what stays.
    ``rounds`` of 0 leaves them out.
    """

    rounds: int | None = None
    pause_between: Seconds | None = None


@dataclass(frozen=True)
class Round:
    """Items done ``rounds`` times, with ``pause_between`` seconds between one round and the
    next.

    ``by_round`` holds what is different in a round, by its number or ``last``, for all reps in it;
    ``by_group`` and ``by_variant`` how often a lane group, or a variant, goes round.
    ``rounds_between`` are the least and the most that the set may be asked for.
    """

    rounds: int
    items: tuple[Item, ...]
    pause_between: Seconds | None = None
    note: str = ""
    rounds_between: tuple[int, int] | None = None
    by_round: Mapping[str, Change] = field(default_factory=dict)
    by_group: Mapping[str, RoundsChange] = field(default_factory=dict)
    by_variant: Mapping[str, RoundsChange] = field(default_factory=dict)

    @property
    def most(self) -> int:
        """The rounds of whoever does the most of them."""
        changes = (*self.by_group.values(), *self.by_variant.values())
        return max(self.rounds, *(change.rounds or 0 for change in changes), 0)


Item = Reps | Pause | Round


def reps_of(items: tuple[Item, ...]) -> Iterator[Reps]:
    """Every reps item, once each however many rounds hold it."""
    for item in items:
        if isinstance(item, Round):
            yield from reps_of(item.items)
        elif isinstance(item, Reps):
            yield item


def changes_of(items: tuple[Item, ...]) -> Iterator[Change]:
    """Every change that items hold, of a lane group or a round."""
    for item in items:
        if isinstance(item, Round):
            yield from item.by_round.values()
            yield from changes_of(item.items)
        elif isinstance(item, Reps):
            yield from item.by_group.values()
            yield from item.by_variant.values()
            yield from item.by_round.values()


def groups_named(items: tuple[Item, ...]) -> Iterator[str]:
    """Every lane group for which something of items is different."""
    for item in items:
        if isinstance(item, Round):
            yield from item.by_group
            yield from groups_named(item.items)
        elif isinstance(item, Reps):
            yield from item.by_group


def item_references(items: tuple[Item, ...]) -> Iterator[Reference]:
    """The drills, gear and lane groups that items name."""
    yield from references("lane_group", groups_named(items), "by_group")
    for reps in reps_of(items):
        if reps.assume:
            yield from references("lane_group", reps.assume.by_group, "assume")
        yield from _references(reps.gear, reps.sendoff, reps.parts)
        if reps.aim:
            yield from references("lane_group", reps.aim.by_group, "aim")
    for change in changes_of(items):
        yield from _references(change.gear or (), change.sendoff, change.parts or ())
        if change.do:
            yield Reference("drill", change.do, "uses")


def _references(gear: Ids, sendoff: Sendoff | None, parts: tuple[Part, ...]) -> Iterator[Reference]:
    yield from references("gear", gear, "uses")
    if sendoff:
        yield from references("lane_group", sendoff.by_group, "sendoff")
    for part in parts:
        yield from references("drill", part.drills, "uses")
        yield from references("gear", part.gear, "uses")


@dataclass(frozen=True, kw_only=True)
class SwimSet(Entry):
    """Reps, rounds and pauses with a purpose, written for one course, and for ``pools`` if named.
    ``variants`` are its versions by name, each with the lane groups that are given it.
    """

    kind: ClassVar[str] = "set"
    purpose: str
    goals: Ids
    level: str
    course: Course
    items: tuple[Item, ...]
    expect: Expectation = field(default_factory=Expectation)
    hazards: tuple[Hazard, ...] = ()
    pools: Ids = ()
    most_in_lane: int | None = None
    variants: Mapping[str, Ids] = field(default_factory=dict)
    adapt: tuple[Adapt, ...] = ()

    @property
    def is_on_land(self) -> bool:
        """Whether it is a circuit on land, the same in every pool."""
        return self.course == LAND

    def references(self) -> Iterator[Reference]:
        yield from item_references(self.items)
        yield from references("pool", self.pools, "in")
        yield from references("lane_group", self.expect.clock, "expect")
        for groups in self.variants.values():
            yield from references("lane_group", groups, "variants")
        yield from references("lane_group", self.expect.by_group, "expect")
        yield from adapts(self.adapt)
