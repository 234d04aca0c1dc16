"""What rules of rest and safety break where some of what a lane group does is left out on the deck:
the same rules that ``check`` holds a practice against.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.expand import Event, Rep
from almanac.arithmetic.out_of_breath import Breath
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.timed_reps import GroupClock
from almanac.arithmetic.under_water import counts, under_water
from almanac.arithmetic.warm_and_easy import Words, effort_words_of, ending, opening
from almanac.arithmetic.working import Known, Sum
from almanac.checks.after_fast import breath_of, too_soon
from almanac.checks.under_water_judged import shrinking, speed_under
from almanac.model.effort_plans import words_of
from almanac.model.swim_set import Part
from almanac.source.reader import DataPath

Left = Mapping[int, tuple[Event, ...]]  # what is left of parts, by number; the others are whole
_Kinds = tuple[bool | None, bool | None]  # of a part: how it opens and ends, None where neither way


@dataclass(frozen=True)
class PartOfDay:
    """A part as one lane group does it. ``least_gap_s`` is what goes by before it at the least,
    talk and changes; ``gap_s`` what does as it is planned.
    """

    swum: Swum
    clock: GroupClock
    least_gap_s: float = 0.0
    gap_s: float = 0.0


@dataclass(frozen=True)
class DayOfCrew:
    """All that a lane group does, part after part, at the level of its squad."""

    analysis: Analysis
    level: str
    parts: tuple[PartOfDay, ...]

    def words(self, rep: Rep) -> Words:
        """The effort words of a rep."""
        return effort_words_of(rep, self.analysis.scale)

    @cached_property
    def _written(self) -> tuple[tuple[Part, ...], ...]:
        """The parts of the reps that each part of the day holds, each once."""
        items = ({id(rep.item): rep.item for rep in own.swum.reps} for own in self.parts)
        return tuple(tuple(p for item in each.values() for p in item.parts) for each in items)

    @cached_property
    def _dives_in(self) -> tuple[bool, ...]:
        """Of each part, whether any of it counts as work under water."""
        drills = self.analysis.catalogue.drills
        return tuple(
            any(counts(drills[id], self._push_off) for part in parts for id in part.drills)
            for parts in self._written
        )

    @property
    def dives(self) -> bool:
        """Whether anything of it counts as work under water."""
        return any(self._dives_in)

    @cached_property
    def _kinds(self) -> tuple[_Kinds, ...]:
        return tuple(self._kind(part.swum.events) for part in self.parts)

    @cached_property
    def _has_hardest(self) -> bool:
        hardest = self.analysis.scale.hardest
        return any(hardest in words_of(own.effort) for parts in self._written for own in parts)

    @property
    def _push_off(self) -> float:
        return self.analysis.catalogue.policy.limit("push_off_most")

    def is_free(self, number: int) -> bool:
        """Whether nothing that is left out of a part can break any of these rules: it is not what
        warms up, nothing is done under water, and after it comes something easy, or nothing is done
        at the hardest effort.
        """
        opens = next((n for n, (is_cold, _) in enumerate(self._kinds) if is_cold is not None), None)
        later = (is_hard for _, is_hard in reversed(self._kinds[number + 1 :]))
        ends_easy = next((is_hard for is_hard in later if is_hard is not None), None) is False
        return not (number == opens or self.dives or (self._has_hardest and not ends_easy))

    @cached_property
    def _as_planned(self) -> frozenset[tuple[str, object]]:
        return frozenset(self._found({}, None))

    def breaks(self, left: Left, later: tuple[DataPath, float] | None = None) -> bool:
        """Whether a rule is broken that is kept as it is planned, where only so much is ``left`` of
        some parts; and where the reps of one item go so many seconds ``later`` after each other.
        """
        return not self._as_planned.issuperset(self._found(left, later))

    def _kind(self, events: Sequence[Event]) -> _Kinds:
        scale = self.analysis.scale
        opens = opening((self.words(one) for one in events if isinstance(one, Rep)), scale)
        backwards = (self.words(one) for one in reversed(events) if isinstance(one, Rep))
        ends = ending(backwards, scale)
        return opens and opens[1], ends and ends[1]

    def _found(
        self, left: Left, later: tuple[DataPath, float] | None
    ) -> Iterator[tuple[str, object]]:
        kinds = list(self._kinds)
        for number, events in left.items():
            kinds[number] = self._kind(events)
        if next((is_cold for is_cold, _ in kinds if is_cold is not None), False):
            yield "no-warm-up", None
        if next((is_hard for _, is_hard in reversed(kinds) if is_hard is not None), False):
            yield "no-easy-after-all-out", None
        first = min(left, default=0)
        if any(self._dives_in[first:]):
            yield from self._after_fast(left, first)
            for number, part in enumerate(self.parts[first:], first):
                events = left.get(number, part.swum.events)
                if self._dives_in[number] and self._shrinks(part, events, later):
                    yield "under-water-rest", number

    @cached_property
    def _before(self) -> tuple[Breath, ...]:
        """The breath before each part, as it is planned."""
        breath, found = breath_of(self.analysis), []
        for number, part in enumerate(self.parts):
            breath.wait(part.gap_s if number else 0.0)
            found.append(replace(breath, found=[]))
            breath.swim(part.swum.events, part.swum.course, part.clock)
        return tuple(found)

    def _after_fast(self, left: Left, first: int) -> Iterator[tuple[str, object]]:
        breath = replace(self._before[first], found=[])
        for number, part in enumerate(self.parts[first:], first):
            if number > first:
                breath.wait(part.least_gap_s if number - 1 in left else part.gap_s)
            breath.swim(left.get(number, part.swum.events), part.swum.course, part.clock)
        for found, *_ in too_soon(self.analysis, breath.found):
            yield "under-water-after-fast", id(found.rep)

    def _shrinks(
        self, part: PartOfDay, events: tuple[Event, ...], later: tuple[DataPath, float] | None
    ) -> bool:
        limits = self.analysis.catalogue.policy.of_level(self.level)
        clock = _later(part.clock, *later) if later else part.clock
        speed, push_off = speed_under(limits), self._push_off
        reps = [*under_water(events, part.swum.course, speed, clock, push_off)]
        return any(True for _ in shrinking(reps))


def _later(clock: GroupClock, path: DataPath, seconds: float) -> GroupClock:
    """A clock on which the reps of one item go so many seconds later after each other."""
    reps = tuple(
        replace(own, sendoff=Sum((own.sendoff, Known(seconds, "more", "s"))))
        if own.rep.path == path and own.sendoff
        else own
        for own in clock.reps
    )
    return replace(clock, reps=reps)
