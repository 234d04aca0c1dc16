"""How much more than planned a lane group's day has room for: doses, load and work under water."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property, reduce

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.events import Event, Rep
from almanac.arithmetic.loads import loads_hands, resists, worn_in
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import is_under
from almanac.checks.dose_sums import DoseSum, dose_sums
from almanac.checks.under_water_days import metres_of
from almanac.frozen import quick
from almanac.source.reader import DataPath

Place = tuple[int, DataPath]
"""An item: the number of its part, and its path there."""

AGAIN_MOST = 2
"""So often a rep of an item is swum again after a stop, at most: house preference."""


@quick
@dataclass(frozen=True)
class Tally:
    """What counts against the limits of a practice: of each drill; metres resisted and with plates;
    metres and reps under water.
    """

    doses: Mapping[str, DoseSum] = field(default_factory=dict)
    resisted: float = 0.0
    plates: float = 0.0
    under_metres: float = 0.0
    under_reps: int = 0

    def __add__(self, other: Tally) -> Tally:
        doses = dict(self.doses)
        for id, own in other.doses.items():
            doses[id] = doses[id] + own if id in doses else own
        return Tally(
            doses,
            self.resisted + other.resisted,
            self.plates + other.plates,
            self.under_metres + other.under_metres,
            self.under_reps + other.under_reps,
        )


Tallies = Mapping[int, Tally]
"""By the number of a part."""


def tally(analysis: Analysis, swum: Swum) -> Tally:
    """What counts of all that is swum."""
    gear, policy = analysis.catalogue.gear, analysis.catalogue.policy
    held, push_off = policy.limit("held_as_50"), policy.limit("push_off_most")
    under = [is_under(rep, push_off) for rep in swum.reps]
    return Tally(
        dose_sums(analysis, swum),
        worn_in(swum, gear, resists, held) if swum.gear else 0.0,
        worn_in(swum, gear, loads_hands, held) if swum.gear else 0.0,
        metres_of(swum, push_off) if any(under) else 0.0,
        sum(under),
    )


@dataclass(frozen=True)
class DayRoom:
    """The room of a day at a level: its parts as they are swum, with a tally of each."""

    analysis: Analysis
    level: str
    swums: tuple[Swum, ...]
    tallies: tuple[Tally, ...]

    @classmethod
    def of(cls, analysis: Analysis, level: str, swums: tuple[Swum, ...]) -> DayRoom:
        """The room of a day of which this is swum."""
        return cls(analysis, level, swums, tuple(tally(analysis, swum) for swum in swums))

    def counted(self, number: int, events: tuple[Event, ...]) -> Tally:
        """What counts of some events of a part."""
        return tally(self.analysis, replace(self.swums[number], events=events))

    @cached_property
    def _planned(self) -> Tally:
        return reduce(Tally.__add__, self.tallies, Tally())

    def over(self, more: Tallies) -> frozenset[object]:
        """Which limits the day is beyond with so much more in some of its parts: of drills, of gear
        and of work under water, in the whole and in each part.
        """
        limits = self.analysis.catalogue.policy.of_level(self.level)
        each = [own + more[n] if n in more else own for n, own in enumerate(self.tallies)]
        whole = reduce(Tally.__add__, more.values(), self._planned)
        found: set[object] = {
            id
            for id, own in whole.doses.items()
            if own.beyond(own.most(self.analysis, self.level), "m")
        }
        for what, value, most in (
            ("resisted", whole.resisted, limits.limit("resisted_most")),
            ("plates", whole.plates, limits.limit("plates_most")),
            ("under water", whole.under_metres, limits.limit("under_water_practice_most")),
        ):
            found |= {what} if value > most else set()
        for number, own in enumerate(each):
            is_far = own.under_metres > limits.limit("under_water_set_most")
            is_often = own.under_reps > limits.limit("under_water_reps_most")
            found |= {number} if is_far or is_often else set()
        return frozenset(found)

    def agains(self, granted: Tallies) -> dict[Place, int]:
        """How often a rep of each item may be swum again after a stop, for items where that is
        less than ``AGAIN_MOST``. All of it may be done together, with what else is ``granted``; who
        comes first in the day is granted first.
        """
        before, reps = self.over(granted), dict(self._reps())
        every = dict(granted)
        for (number, _), own in reps.items():
            every[number] = reduce(Tally.__add__, [own] * AGAIN_MOST, every.get(number, Tally()))
        if self.over(every) <= before:
            return {}
        every, found = dict(granted), dict[Place, int]()
        for place, own in reps.items():
            for _ in range(AGAIN_MOST):
                trial = every | {place[0]: every.get(place[0], Tally()) + own}
                if not self.over(trial) <= before:
                    break
                every, found[place] = trial, found.get(place, 0) + 1
        return {place: found.get(place, 0) for place in reps if found.get(place, 0) < AGAIN_MOST}

    def _reps(self) -> Iterator[tuple[Place, Tally]]:
        """A rep of each item; one of each where drills take turns."""
        for number, swum in enumerate(self.swums):
            by_path: dict[DataPath, dict[tuple[str, ...], Rep]] = {}
            for rep in swum.reps:
                drills = tuple(piece.drill.id for piece in rep.pieces)
                by_path.setdefault(rep.path, {}).setdefault(drills, rep)
            for path, own in by_path.items():
                yield (number, path), self.counted(number, tuple(own.values()))
