"""Reps, as sets are made of them: how far, what is done, and what a change makes of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from almanac.frozen import quick
from almanac.model.assumed import Assumed
from almanac.model.effort_plans import Effort
from almanac.model.entry import Ids, Seconds
from almanac.model.manner import ALONE, Aim, Cord, Manner, Waves
from almanac.model.sendoff import Sendoff

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
