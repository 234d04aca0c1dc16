"""The limits that every plan of a block keeps to, as rules: by day, by days in a row, by seven."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.arithmetic.planning.choices import (
    ALL_OUT,
    HARD,
    HEAVY,
    PLATES,
    STARTS,
    TEST,
    UNDER,
    UNDER_SETS,
    WORN,
    Choice,
    DaySlot,
)
from almanac.arithmetic.planning.costs import (
    ALL_OUT_APART,
    HARD_AFTER_HARD,
    LIGHT_OF,
    NEVER_LIGHT,
    STARTS_SEVEN_DAYS,
    TEST_AFTER_TEST,
)
from almanac.arithmetic.planning.model import Amounts, PlanRule
from almanac.arithmetic.planning.wishes import BlockLimits

SEVEN = 7
Counted = Callable[[Choice], int]


@dataclass(frozen=True)
class Grid:
    """Slots with the choices that may stand in each."""

    slots: tuple[DaySlot, ...]
    choices: tuple[Choice, ...]
    may: tuple[tuple[int, ...], ...]

    def amounts(self, slots: Sequence[int], counted: Counted) -> dict[int, Amounts]:
        """Of some slots what each choice that may stand there has of something."""
        known = [counted(choice) for choice in self.choices]
        return {
            slot: {place: known[place] for place in self.may[slot] if known[place]}
            for slot in slots
        }

    def windows(self, days: int) -> Iterator[tuple[date, tuple[int, ...]]]:
        """The slots of each run of so many days, with its first day; none that another holds."""
        every = [slot.on for slot in self.slots]
        last: tuple[int, ...] = ()
        for first in sorted(set(every)):
            ends = first + timedelta(days=days)
            inside = tuple(n for n, on in enumerate(every) if first <= on < ends)
            if len(inside) > 1 and not set(inside) <= set(last):
                yield first, inside
                last = inside

    def by_day(self) -> Mapping[date, tuple[int, ...]]:
        """The slots of each day."""
        found = defaultdict[date, tuple[int, ...]](tuple)
        for number, slot in enumerate(self.slots):
            found[slot.on] += (number,)
        return found


def most_of(name: str) -> Counted:
    """What a choice has at most of something."""
    return lambda choice: choice.most.get(name, 0)


def sum_of(name: str) -> Counted:
    """What a choice has of a sum."""
    return lambda choice: choice.sums.get(name, 0)


def limit_rules(grid: Grid, limits: BlockLimits) -> Iterator[PlanRule]:
    """Limits that are never passed, and days that had better not touch."""
    yield from _of_days(grid, limits)
    yield from _of_seven_days(grid, limits)
    yield from _in_a_row(grid, limits)


def _of_days(grid: Grid, limits: BlockLimits) -> Iterator[PlanRule]:
    """Sums of a day that has two practices: of one, that is the practice's own rule."""
    by_day = ((WORN, limits.worn_day), (PLATES, limits.plates_day), (UNDER, limits.under_day))
    for on, slots in grid.by_day().items():
        for name, most in by_day if len(slots) > 1 else ():
            yield PlanRule(f"{name} a day", str(on), grid.amounts(slots, most_of(name)), most)


def _of_seven_days(grid: Grid, limits: BlockLimits) -> Iterator[PlanRule]:
    by_seven = ((WORN, limits.worn_seven), (UNDER_SETS, limits.under_sets_seven))
    for first, slots in grid.windows(SEVEN):
        for name, most in by_seven:
            amounts = grid.amounts(slots, most_of(name))
            yield PlanRule(f"{name} in seven days", str(first), amounts, most)
        dives = grid.amounts(slots, lambda own: 0 if own.is_test else own.most.get(STARTS, 0))
        yield PlanRule("starts in seven days", str(first), dives, STARTS_SEVEN_DAYS)


def _in_a_row(grid: Grid, limits: BlockLimits) -> Iterator[PlanRule]:
    """What days that follow each other may have."""
    row = limits.hard_in_a_row
    for first, slots in grid.windows(row + 1):
        if len({grid.slots[slot].on for slot in slots}) > row:
            yield PlanRule(
                "hard days in a row", str(first), grid.amounts(slots, most_of(HARD)), row
            )
    for first, slots in grid.windows(LIGHT_OF):
        if len({grid.slots[slot].on for slot in slots}) == LIGHT_OF:
            heavy = grid.amounts(slots, most_of(HEAVY))
            yield PlanRule("never light", str(first), heavy, LIGHT_OF - 1, NEVER_LIGHT)
    for first, slots in grid.windows(ALL_OUT_APART):
        yield PlanRule("all-out", str(first), grid.amounts(slots, _all_out), 2)
    for first, slots in grid.windows(2):
        hard, tests = (grid.amounts(slots, most_of(name)) for name in (HARD, TEST))
        yield PlanRule("hard days that touch", str(first), hard, 1, HARD_AFTER_HARD)
        yield PlanRule("tests that touch", str(first), tests, 1, TEST_AFTER_TEST)
        yield from _light_before_tests(grid, first, slots)


def _all_out(choice: Choice) -> int:
    """Two for all-out work; one for tests, of which two may follow each other."""
    return (1 if choice.is_test else 2) if choice.most.get(ALL_OUT) else 0


def _light_before_tests(grid: Grid, first: date, slots: Sequence[int]) -> Iterator[PlanRule]:
    """The day before a test is light, or a test itself."""
    before = [slot for slot in slots if grid.slots[slot].on == first]
    after = [slot for slot in slots if grid.slots[slot].on != first]
    if any(grid.choices[place].is_test for slot in after for place in grid.may[slot]):
        heavy = grid.amounts(before, lambda own: 0 if own.is_test else own.most.get(HEAVY, 0))
        for slot in after:
            tests = grid.amounts([slot], lambda own: int(own.is_test))
            for own in before:
                yield PlanRule("light before tests", str(first), {own: heavy[own], **tests}, 1)


def minus(amounts: Mapping[int, Amounts]) -> dict[int, Amounts]:
    """Amounts turned round, for a rule that asks for so many at least."""
    return {
        slot: {place: -amount for place, amount in own.items()} for slot, own in amounts.items()
    }
