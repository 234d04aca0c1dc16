"""Which changes a run offers on the deck: those that break no rule of rest and safety, and keep to
what the entry allows. What is not offered is not done.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import groupby

from almanac.arithmetic.expand import Event, Rep
from almanac.arithmetic.leaving_out import (
    comes_home,
    step_home,
    until,
    without_last,
    without_rounds,
)
from almanac.arithmetic.scaling import Scalable, item_at
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import is_under
from almanac.checks.doses_judged import over_dose
from almanac.checks.gear_judged import over_amount
from almanac.checks.run_rules import DayOfCrew
from almanac.checks.under_water_days import metres_of
from almanac.model.changes import LAST
from almanac.model.swim_set import Item, Pause, Round
from almanac.source.reader import DataPath


@dataclass(frozen=True)
class RepsOffer:
    """What may be changed of the reps of an item: ``more`` seconds from one to the next, so many
    ``fewer`` at the end down to ``fewest``, so many sat out (``sit``); 0 where it may not.
    """

    more: tuple[int, ...] = ()
    fewer: int = 0
    fewest: int = 1
    sit: int = 0


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
    """Works out what a lane group may change of one part of its day, by its ``number`` there.
    ``items`` are those that are laid out, before what is said of lane groups, and ``scale`` their
    chief rounds; ``stage`` the numbers of the parts of the same stage, from this one on.
    """

    day: DayOfCrew
    number: int
    items: tuple[Item, ...]
    scale: Scalable | None
    stage: tuple[int, ...]

    @property
    def _swum(self) -> Swum:
        return self.day.parts[self.number].swum

    def offer(self) -> CrewOffer:
        """What may be changed."""
        by_path: dict[DataPath, list[Rep]] = {}
        for rep in self._swum.reps:
            by_path.setdefault(rep.path, []).append(rep)
        return CrewOffer(
            self._may_meet(),
            {path: self._of_reps(path, reps) for path, reps in by_path.items()},
            dict(self._of_rounds()),
        )

    def may_skip(self) -> bool:
        """Whether all of the part may go, or what is left of it at any moment."""
        gone = {self.number: tuple[Event, ...]()}
        is_free = self.day.is_free(self.number)
        return is_free or (not self.day.breaks(gone) and self._may_stop((self.number,)))

    def _may_meet(self) -> bool:
        return all(map(self.day.is_free, self.stage)) or self._may_stop(self.stage)

    def _may_stop(self, parts: tuple[int, ...]) -> bool:
        """Whether rules hold where parts stop after any rep: after the first, for what comes before
        fast work; right after any hard one, for what must follow it.
        """
        scale, day = self.day.analysis.scale, self.day
        hard = set(scale.fast if day.dives else [scale.hardest])
        for place, part in enumerate(parts):
            swum, later = (
                day.parts[part].swum,
                dict.fromkeys(parts[place + 1 :], tuple[Event, ...]()),
            )
            stops = [*swum.reps[:1], *(rep for rep in swum.reps[1:] if day.words(rep) & hard)]
            if any(day.breaks({**later, part: until(swum.events, rep)}) for rep in stops):
                return False
        return True

    def _of_reps(self, path: DataPath, reps: list[Rep]) -> RepsOffer:
        first, own = reps[0], self.day.analysis.catalogue.policy
        step = step_home(first, self._swum.course)
        most = max(rep.number for rep in reps)
        fewest = max(1, (first.item.reps_between or (1, 0))[0])
        paced = first.item.sendoff is not None or first.item.rest is not None
        dives = any(is_under(rep, own.limit("push_off_most")) for rep in reps)
        seconds = [int(own.limit("sendoff_step") * times) for times in (1, 2)] if paced else []
        may_drop = bool(step) and most - step >= fewest and self._may_be(path, fewest, most, step)
        may_sit = bool(step) and not dives and step <= most and self._may_be(path, 0, 1, 1)
        return RepsOffer(
            tuple(more for more in seconds if not dives or self._may_go_later(path, more)),
            step if may_drop else 0,
            fewest,
            step if may_sit else 0,
        )

    def _may_go_later(self, path: DataPath, seconds: int) -> bool:
        return not self.day.breaks({}, (path, float(seconds)))

    def _may_be(self, path: DataPath, fewest: int, most: int, step: int) -> bool:
        """Whether rules hold where reps of an item are left out from the last on, a step each time,
        down to the fewest.
        """
        if self.day.is_free(self.number):
            return True
        events = self._swum.events
        return not any(
            self.day.breaks({self.number: without_last(events, path, number)})
            for number in range(most - step, fewest - 1, -step)
        )

    def _of_rounds(self) -> Iterator[tuple[DataPath, RoundsOffer]]:
        scale = self.scale
        rounds = _rounds_of(self._swum.events, scale.path) if scale else {}
        course = self._swum.course
        if scale is None or not all(comes_home(_reps(own), course) for own in rounds.values()):
            return
        item, number = item_at(self.items, scale.path), len(rounds)
        changes = [own.by_round for own in (item, *_inside(item)) if not isinstance(own, Pause)]
        keeps_last = any(LAST in own for own in changes)
        as_written, copies = number == scale.written, min(2, number)
        least = scale.least if scale.stated and as_written else 1
        least, most = self._least_rounds(scale.path, number, least, keeps_last), number
        is_even = not any(changes) and (number > 1 or _goes_round(rounds[copies]))
        if scale.stated and as_written and is_even:
            most = self._most_rounds(rounds[copies], number, scale.most)
        if least < number or most > number:
            yield scale.path, RoundsOffer(least, most, keeps_last, copies if most > number else 0)

    def _least_rounds(self, path: DataPath, number: int, least: int, keeps_last: bool) -> int:
        """The least rounds that rules hold with, where they are left out one by one."""
        kept = {number} if keeps_last else set[int]()
        for rounds in range(number - 1, least - 1, -1):
            stays = {*range(1, rounds + 1 - len(kept)), *kept}
            gone = frozenset(range(1, number + 1)) - stays
            left = {self.number: without_rounds(self._swum.events, path, gone)}
            if not self.day.is_free(self.number) and self.day.breaks(left):
                return rounds + 1
        return min(least, number)

    def _most_rounds(self, added: tuple[Event, ...], number: int, most: int) -> int:
        """The most rounds that the whole day has room for: doses, load and metres under water. Of
        the set alone they have been held against its limits.
        """
        for rounds in range(number + 1, most + 1):
            if self._is_too_much(added * (rounds - number)):
                return rounds - 1
        return max(number, most)

    def _is_too_much(self, added: tuple[Event, ...]) -> bool:
        day, course = self.day, self._swum.course
        catalogue = day.analysis.catalogue
        every = [event for part in day.parts for event in part.swum.events]
        whole = replace(self._swum, events=(*every, *added))
        own = replace(self._swum, events=(*self._swum.events, *added))
        limits = catalogue.policy.of_level(day.level)
        push_off = catalogue.policy.limit("push_off_most")
        under = [rep for rep in own.reps if is_under(rep, push_off)]
        assert whole.course == course
        return (
            any(True for _ in over_dose(day.analysis, whole, day.level))
            or any(True for _ in over_amount(day.analysis, whole, day.level))
            or metres_of(whole, push_off) > limits.under_water_practice_most.value
            or metres_of(own, push_off) > limits.under_water_set_most.value
            or len(under) > limits.under_water_reps_most.value
        )


def _reps(events: tuple[Event, ...]) -> Iterator[Rep]:
    return (event for event in events if isinstance(event, Rep))


def _inside(item: Item) -> Iterator[Item]:
    """Everything that rounds hold, in rounds within them too."""
    for inner in item.items if isinstance(item, Round) else ():
        yield inner
        yield from _inside(inner)


def _rounds_of(events: tuple[Event, ...], path: DataPath) -> dict[int, tuple[Event, ...]]:
    """The events of each of the outermost rounds at a path in the items, by number."""
    inside = (event for event in events if event.path[:2] == path)
    return {number: tuple(own) for number, own in groupby(inside, key=lambda own: own.rounds[0])}


def _goes_round(events: tuple[Event, ...]) -> bool:
    """Whether a round may be done again right after itself: it ends in the gear it begins with."""
    reps = [*_reps(events)]
    return bool(reps) and reps[-1].pieces[-1].gear == reps[0].pieces[0].gear
