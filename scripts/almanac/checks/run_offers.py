"""Which changes a run offers on the deck: those that break no rule of rest and safety, and keep to
what the entry allows. What is not offered is not done.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby

from almanac.arithmetic.events import Event, Rep
from almanac.arithmetic.leaving_out import comes_home, step_home
from almanac.arithmetic.scaling import Scalable, item_at
from almanac.arithmetic.swum import Swum
from almanac.checks.run_room import AGAIN_MOST, Tallies
from almanac.checks.run_rules import DayOfCrew
from almanac.model.changes import LAST
from almanac.model.swim_set import Item, Pause, Round
from almanac.source.reader import DataPath

_TIMES = (1, 2)  # the steps of a send-off that may be added


@dataclass(frozen=True)
class RepsOffer:
    """What may be changed of the reps of an item: ``more`` seconds from one to the next, so many
    ``fewer`` at the end down to ``fewest``, so many sat out (``sit``); 0 where it may not. After a
    stop one of them may be swum again, so often in all (``again``).
    """

    more: tuple[int, ...] = ()
    fewer: int = 0
    fewest: int = 1
    sit: int = 0
    again: int = AGAIN_MOST


@dataclass(frozen=True)
class RoundsOffer:
    """How many rounds may be made of rounds, ``least`` to ``most``. Fewer: the last goes, or where
    ``keeps_last`` the one before it. More: round ``copies``, from 1, once more after itself.
    """

    least: int
    most: int
    keeps_last: bool = False
    copies: int = 0


@dataclass(frozen=True)
class CrewOffer:
    """What a lane group may change of a part: items and rounds by path; and whether it may ``meet``
    the others at the next stage, whenever it stops.
    """

    meet: bool = False
    reps: Mapping[DataPath, RepsOffer] = field(default_factory=dict)
    rounds: Mapping[DataPath, RoundsOffer] = field(default_factory=dict)


@dataclass(frozen=True)
class PartOffers:
    """Works out what a lane group may change of one part of its day, by its ``number`` there; all
    that is offered may be done together. ``items`` are those that are laid out, before what is said
    of lane groups, and ``scale`` their chief rounds; ``stage`` the numbers of the parts of the same
    stage, from this one on; ``granted`` what other parts have been offered to do more of.
    """

    day: DayOfCrew
    number: int
    items: tuple[Item, ...]
    scale: Scalable | None
    stage: tuple[int, ...]
    granted: Tallies = field(default_factory=dict)

    @property
    def _swum(self) -> Swum:
        return self.day.parts[self.number].swum

    @property
    def _gives_breath(self) -> bool:
        """Whether the time that the part takes is needed before work under water."""
        return self.number <= self.day.breathes_until

    def offer(self) -> CrewOffer:
        """What may be changed."""
        by_path: dict[DataPath, list[Rep]] = {}
        for rep in self._swum.reps:
            by_path.setdefault(rep.path, []).append(rep)
        under = [path for path, reps in by_path.items() if any(map(self.day.dives, reps))]
        return CrewOffer(
            self._may_meet(),
            {path: self._of_reps(reps, under) for path, reps in by_path.items()},
            dict(self._of_rounds()),
        )

    def may_skip(self) -> bool:
        """Whether all of the part may go, or what is left of it at any moment."""
        return not (self.day.stays(self.number) or self._gives_breath)

    def _may_meet(self) -> bool:
        """Whether it may end after any rep of the part, and with it the stage: what warms up has
        then begun where it goes first.
        """
        day, warms_up = self.day, self.day.warms_up
        first = warms_up and self._swum.reps[0].path == warms_up.path and not warms_up.is_whole
        goes_first = bool(first) and warms_up is not None and warms_up.number == self.number
        stays = {own for number in self.stage for own in day.stays(number)}
        return not (stays - ({warms_up} if goes_first else set())) and not self._gives_breath

    def _of_reps(self, reps: list[Rep], under: list[DataPath]) -> RepsOffer:
        """What is offered for the reps of an item. Of items under water only the rest after the
        last may grow: after another it would fall again, from item to item.
        """
        first, path, day = reps[0], reps[0].path, self.day
        step, most = step_home(first, self._swum.course), max(rep.number for rep in reps)
        fewest = max(1, (first.item.reps_between or (1, 0))[0])
        stays = [own for own in day.stays(self.number) if own.path == path]
        may_drop = most - step >= fewest and not self._gives_breath
        may_drop = may_drop and not any(own.is_whole for own in stays)
        may_sit = step <= most and path not in under and not stays
        paced = first.item.sendoff is not None or first.item.rest is not None
        grows = paced and (path not in under or path == under[-1])
        least_s = day.analysis.catalogue.policy.limit("sendoff_step")
        return RepsOffer(
            tuple(int(least_s * times) for times in _TIMES) if grows else (),
            step if may_drop else 0,
            fewest,
            step if may_sit else 0,
        )

    def _of_rounds(self) -> Iterator[tuple[DataPath, RoundsOffer]]:
        scale, course = self.scale, self._swum.course
        rounds = rounds_of(self._swum.events, scale.path) if scale else {}
        if scale is None or not all(comes_home(_reps(own), course) for own in rounds.values()):
            return
        item, number = item_at(self.items, scale.path), len(rounds)
        changes = [own.by_round for own in (item, *_inside(item)) if not isinstance(own, Pause)]
        keeps_last, is_even = any(LAST in own for own in changes), not any(changes)
        as_written, copies = number == scale.written, min(2, number)
        least, most = scale.least if scale.stated and as_written else 1, number
        ends = [own.path[:2] for own in self.day.stays(self.number)]
        if self._gives_breath or (scale.path in ends and not is_even and not keeps_last):
            least = number
        if scale.stated and as_written and is_even and (number > 1 or _goes_round(rounds[1])):
            most = self._most_rounds(rounds[copies], number, scale.most)
        if least < number or most > number:
            copied = copies if most > number else 0
            yield scale.path, RoundsOffer(min(least, number), most, keeps_last, copied)

    def _most_rounds(self, added: tuple[Event, ...], number: int, most: int) -> int:
        """The most rounds that the whole day has room for: doses, load and metres under water. Of
        the set alone they have been held against its limits.
        """
        for rounds in range(number + 1, most + 1):
            more = self.day.room.counted(self.number, added * (rounds - number))
            if self.day.room.over({**self.granted, self.number: more}):
                return rounds - 1
        return max(number, most)


def rounds_of(events: tuple[Event, ...], path: DataPath) -> dict[int, tuple[Event, ...]]:
    """The events of each of the outermost rounds at a path in the items, by number."""
    inside = (event for event in events if event.path[:2] == path)
    return {number: tuple(own) for number, own in groupby(inside, key=lambda own: own.rounds[0])}


def _reps(events: tuple[Event, ...]) -> Iterator[Rep]:
    return (event for event in events if isinstance(event, Rep))


def _inside(item: Item) -> Iterator[Item]:
    """Everything that rounds hold, in rounds within them too."""
    for inner in item.items if isinstance(item, Round) else ():
        yield inner
        yield from _inside(inner)


def _goes_round(events: tuple[Event, ...]) -> bool:
    """Whether a round may be done again right after itself: it ends in the gear it begins with."""
    reps = [*_reps(events)]
    return bool(reps) and reps[-1].pieces[-1].gear == reps[0].pieces[0].gear
