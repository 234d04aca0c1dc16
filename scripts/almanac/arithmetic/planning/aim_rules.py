"""What is wished of a block, as rules with points: loads, shares, strokes, goals, tests."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from almanac.arithmetic.planning.aims import Aims
from almanac.arithmetic.planning.choices import (
    DOLPHIN,
    FAST,
    FLUTTER,
    KICK,
    LOAD,
    METRES,
    RESISTED,
    SUPINE,
    Choice,
    DaySlot,
)
from almanac.arithmetic.planning.costs import (
    GOAL_LONG_GONE,
    GOAL_NEVER,
    GOAL_SHORT,
    INSIDE,
    LOAD_OVER,
    LOAD_STEPS,
    LOAD_UNDER,
    SHARE,
    STROKE,
    TESTED_ELSEWHERE,
    UNTESTED,
)
from almanac.arithmetic.planning.model import PlanRule
from almanac.arithmetic.planning.rules import Counted, minus, sum_of
from almanac.arithmetic.planning.taper import taper_rules

PARTS = {
    "kick_share": (KICK, METRES),
    "supine_share": (SUPINE, FLUTTER),
    "resisted_share": (RESISTED, METRES),
    "fast_share": (FAST, METRES),
    "dolphin_share": (DOLPHIN, METRES),
}
"""What each share is of what."""


def aim_rules(aims: Aims) -> Iterator[PlanRule]:
    """Every wish as rules."""
    yield from _loads(aims)
    yield from _shares(aims)
    yield from _strokes(aims)
    yield from _goals(aims)
    yield from _tests(aims)
    yield from taper_rules(aims)


def _loads(aims: Aims) -> Iterator[PlanRule]:
    unit = max(1, aims.full // LOAD_STEPS)
    for week in range(len(aims.wishes.weeks)):
        slots, which = aims.slots_of([week]), str(week + 1)
        if not slots:
            continue
        loads = aims.grid.amounts(slots, sum_of(LOAD))
        aim = aims.target(week)
        yield PlanRule("load over", which, loads, aim, LOAD_OVER, unit)
        yield PlanRule("load under", which, minus(loads), -aim, LOAD_UNDER, unit)
    first = aims.limits.first_load
    if first is not None:
        loads = aims.grid.amounts(aims.slots_of([0]), sum_of(LOAD))
        yield PlanRule("first week", "1", loads, first, 4 * LOAD_OVER, unit)


def _shares(aims: Aims) -> Iterator[PlanRule]:
    slots = aims.inside()
    wished = {"supine_share": (aims.limits.supine, 1000), **aims.wishes.shares}
    for name, (from_, to) in wished.items():
        part, whole = PARTS[name]
        least, most = from_ and from_ + INSIDE, to if to == 1000 else to - INSIDE
        mean = aims.mean(whole) * len(slots)
        unit = max(1, mean)

        def over(own: Choice, part: str = part, whole: str = whole, most: int = most) -> int:
            return 1000 * own.sums.get(part, 0) - most * own.sums.get(whole, 0)

        def under(own: Choice, part: str = part, whole: str = whole, least: int = least) -> int:
            return least * own.sums.get(whole, 0) - 1000 * own.sums.get(part, 0)

        if most < 1000:
            yield PlanRule(f"{name} over", name, aims.grid.amounts(slots, over), 0, SHARE, unit)
        if least:
            amounts = aims.grid.amounts(slots, under)
            yield PlanRule(f"{name} under", name, amounts, 0, SHARE, unit)


def _strokes(aims: Aims) -> Iterator[PlanRule]:
    least = aims.wishes.strokes
    for week in range(0, len(aims.wishes.weeks) - 1, 2) if least else ():
        slots = aims.slots_of([week, week + 1])
        for stroke in aims.wishes.four:

            def under(own: Choice, stroke: str = stroke) -> int:
                return least * own.sums.get(METRES, 0) - 1000 * own.strokes.get(stroke, 0)

            amounts = aims.grid.amounts(slots, under)
            unit = max(1, aims.mean(METRES) * len(slots))
            yield PlanRule("stroke under", f"{stroke} {week + 1}", amounts, 0, STROKE, unit)


def _goals(aims: Aims) -> Iterator[PlanRule]:
    for goal, weight in aims.wishes.goals.items():
        serves = _serves(goal)
        amounts = minus(aims.grid.amounts(aims.inside(), serves))
        wanted = aims.wanted(goal)
        yield PlanRule("goal short", goal, amounts, -wanted, GOAL_SHORT * weight)
        yield PlanRule("goal never", goal, amounts, -1, GOAL_NEVER)
        for week in range(0, len(aims.wishes.weeks) - 1, 2):
            slots = aims.slots_of([week, week + 1])
            if slots:
                own = minus(aims.grid.amounts(slots, serves))
                cost = GOAL_LONG_GONE * weight
                yield PlanRule("goal long gone", f"{goal} {week + 1}", own, -1, cost)


def _tests(aims: Aims) -> Iterator[PlanRule]:
    for week, wish in enumerate(aims.wishes.weeks):
        for benchmark in wish.benchmarks:
            runs = aims.grid.amounts(aims.slots_of([week]), _runs(benchmark))
            which = f"{benchmark} {week + 1}"
            yield PlanRule("not tested", which, minus(runs), -1, UNTESTED)
    for benchmark in dict.fromkeys(id for week in aims.wishes.weeks for id in week.benchmarks):
        weeks = [n for n, week in enumerate(aims.wishes.weeks) if benchmark in week.benchmarks]
        for before, after in pairwise(weeks):
            yield from _test_again(aims, benchmark, before, after)


def _test_again(aims: Aims, benchmark: str, before: int, after: int) -> Iterator[PlanRule]:
    """A test that is run again has the day of the week, the hour and the pool that it had."""
    first, second = aims.slots_of([before]), aims.slots_of([after])
    runs = aims.grid.amounts((*first, *second), _runs(benchmark))
    kinds = {slot: _kind(aims.grid.slots[slot]) for slot in (*first, *second)}
    for kind in dict.fromkeys(kinds[slot] for slot in first):
        same = [slot for slot in first if kinds[slot] == kind]
        other = [slot for slot in second if kinds[slot] != kind]
        amounts = {slot: runs[slot] for slot in (*same, *other)}
        which = f"{benchmark} {after + 1} {kind[0]} {kind[1]} {kind[2]}"
        yield PlanRule("tested at another time", which, amounts, 1, TESTED_ELSEWHERE)


def _kind(slot: DaySlot) -> tuple[int, str, str]:
    return slot.on.weekday(), slot.begins, slot.pool


def _serves(goal: str) -> Counted:
    return lambda choice: int(goal in choice.goals)


def _runs(benchmark: str) -> Counted:
    return lambda choice: int(benchmark in choice.tests)
