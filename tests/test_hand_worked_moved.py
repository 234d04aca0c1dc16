"""The sets of ``hand_worked/`` moved about: swum twice over, last item first, and in every other
pool. What must then come out follows from the set as it is, without any reckoning of targets.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from dataclasses import replace
from typing import Any

import pytest
from hand_worked_cases import CASES, Case, read_all, summary
from shared import DAY, share

from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.marks import place_items
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.timing import Timing
from almanac.model.load import Loaded
from almanac.units import COURSES

each_set = pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
# What is swum by time goes another way in another pool, and land is no pool.
each_in_water = pytest.mark.parametrize(
    "case",
    [
        case
        for case in CASES
        if case.told.get("course") != "land" and case.id != "minutes-not-metres"
    ],
    ids=lambda case: case.id,
)
POOLS = ("25m", "50m", "25yd")


@pytest.fixture(scope="module")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    return read_all(tmp_path_factory)


def totals(found: SetSummary, group: str) -> dict[str, Any]:
    """What adds up over a set; the clock without the changes of gear, which hang on what comes
    next.
    """
    swum, run = found.of(group), found.clocks[group]
    waits = sum(change.uncovered_s for change in run.changes)
    return {
        "distance": swum.distance.value,
        "metres": swum.metres,
        "lengths": float(swum.lengths),
        "reps": float(len(swum.reps)),
        "clock": None if run.clock is None else run.clock.value - waits,
        "work": run.work and run.work.value,
        "rated work": run.rated_work and run.rated_work.value,
        **{
            f"{facet} {word}": float(share)
            for facet, split in swum.by.items()
            for word, share in split.items()
        },
    }


def times(factor: float, found: dict[str, Any]) -> dict[str, Any]:
    return {
        name: None if value is None else pytest.approx(value * factor)
        for name, value in found.items()
    }


@each_set
def test_two_rounds_of_a_set_are_twice_the_set(case: Case, loaded: Loaded) -> None:
    once, twice = summary(loaded, case.id), summary(loaded, f"{case.id}-twice")
    assert once.clocks
    for group in once.clocks:
        assert totals(twice, group) == times(2, totals(once, group)), group


@each_set
def test_the_order_of_the_items_changes_no_total(case: Case, loaded: Loaded) -> None:
    straight, turned = summary(loaded, case.id), summary(loaded, f"{case.id}-turned")
    for group in straight.clocks:
        assert totals(turned, group) == times(1, totals(straight, group)), group


@each_in_water
@pytest.mark.parametrize("pool", POOLS)
def test_in_another_pool_the_numbers_stay_and_the_metres_follow(
    case: Case, pool: str, loaded: Loaded
) -> None:
    own, laid = summary(loaded, case.id), summary(loaded, case.id, pool)
    metres = {"25m": 1.0, "50m": 1.0, "25yd": 0.9144}[pool]  # of one of the unit; 1959 agreement
    length = {"25m": 25, "50m": 50, "25yd": 25}[pool]
    for group in own.clocks:
        before, after = own.of(group), laid.of(group)
        assert after.distance.value == before.distance.value
        assert after.metres == pytest.approx(before.distance.value * metres)
        assert float(after.lengths) == pytest.approx(before.distance.value / length)
        assert len(after.reps) == len(before.reps)
        for facet, split in after.by.items():
            assert sum(split.values()) == pytest.approx(after.distance.value), facet
            if (
                facet != "effort"
            ):  # parts that end at 15 m are longer in yards, and differ in effort
                assert {k: float(v) for k, v in split.items()} == pytest.approx(
                    {k: float(v) for k, v in before.by[facet].items()}
                )


@each_in_water
def test_send_offs_move_by_the_ratio_of_the_units_up_to_a_five(case: Case, loaded: Loaded) -> None:
    own, laid = summary(loaded, case.id, "25m"), summary(loaded, case.id, "25yd")
    written = case.told.get("course", "25m")
    for group in own.clocks:
        pairs = zip(own.clocks[group].reps, laid.clocks[group].reps, strict=True)
        named = [(a, b) for a, b in pairs if a.sendoff and not a.suggested]
        for metric, yards in named:
            if written == "25yd":
                ratio, known, moved = 1 / 0.9144, yards.sendoff_s, metric.sendoff_s
            else:
                ratio, known, moved = 0.9144, metric.sendoff_s, yards.sendoff_s
            assert known is not None
            assert moved == math.ceil(round(known * ratio / 5, 9)) * 5


@each_in_water
@pytest.mark.parametrize("pool", POOLS)
def test_there_and_back_is_the_set_again(case: Case, pool: str, loaded: Loaded) -> None:
    assert loaded.catalogue is not None
    written = loaded.catalogue.sets[case.id]
    away = lay_in_course(written, COURSES[pool])
    back = lay_in_course(away, written.course)
    assert place_items(back.items, written.course) == place_items(written.items, written.course)


PAIRS = list(
    itertools.combinations(
        [case for case in CASES if not {"course", "variants", "most_in_lane"} & set(case.told)],
        2,
    )
)


@pytest.mark.parametrize("pair", share(PAIRS, 40), ids=lambda pair: f"{pair[0].id} {pair[1].id}")
def test_two_sets_one_after_the_other_are_their_sum(
    pair: tuple[Case, Case], loaded: Loaded
) -> None:
    assert loaded.catalogue is not None
    one, other = (loaded.catalogue.sets[case.id] for case in pair)
    both = summarise(
        Timing(loaded.catalogue, day=DAY), replace(one, items=(*one.items, *other.items))
    )
    parts = [summary(loaded, case.id) for case in pair]
    for group in both.clocks:
        sums: dict[str, Any] = {}
        for own in parts:
            for name, value in totals(own, group).items():
                before = sums.get(name, 0.0)
                sums[name] = None if before is None or value is None else before + value
        assert totals(both, group) == times(1, sums), group


def test_what_is_moved_about_is_not_nothing(loaded: Loaded) -> None:
    """Of the sets there are enough with more than one item, with a clock, with work."""
    found: Counter[str] = Counter()
    for case in CASES:
        run = summary(loaded, case.id).clocks["osprey-1"]
        found["items"] += len(case.items) > 1
        found["clock"] += run.clock is not None
        found["work"] += run.work is not None
    assert found["items"] >= 5 and found["clock"] >= 40 and found["work"] >= 40
