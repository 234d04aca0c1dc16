"""How long things take, as the finder reads it: the same as their pages, sheets and other sizes
say.
"""

from __future__ import annotations

import pytest
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.model.swim_set import SwimSet
from almanac.rounding import show_time
from almanac.site.entry_times import far, times_of
from almanac.site.practice_times import lanes_in_use, times_of_practice
from almanac.site.scaled_page import scaled_page
from almanac.site.set_sizes import scale_of
from almanac.units import COURSES


@pytest.fixture(scope="module")
def analysis() -> Analysis:
    found = load(CATALOGUE).catalogue
    assert found is not None
    return Analysis(found, DAY)


@pytest.mark.parametrize("course", COURSES)
def test_a_set_has_its_clock_and_the_gear_that_goes_before(analysis: Analysis, course: str) -> None:
    gear = analysis.catalogue.gear
    for id in analysis.computable:
        times = times_of(analysis, (SwimSet.kind, id))
        summary = analysis.summary_in(id, COURSES[course])
        own = times.takes[list(COURSES).index(course)]
        for run, takes in zip(summary.clocks.values(), own, strict=True):
            if run.clock is None or run.unfit:
                assert takes == []
            else:
                assert show_time(abs(takes[0])) == show_time(run.clock.value)
        worn = next((rep.pieces[0].gear for rep in summary.reps), ())
        assert times.gear_s == max((gear[id].change_s for id in worn), default=0)


def test_a_cut_is_a_size_that_the_set_offers_and_takes_what_its_page_says(
    analysis: Analysis,
) -> None:
    compared = 0
    for id, swim_set in analysis.computable.items():
        cuts = times_of(analysis, (SwimSet.kind, id)).cuts
        scale = scale_of(analysis, swim_set)
        offered = [number for number in scale.offered() if number < scale.written] if scale else []
        assert [cut.number for cut in cuts] == offered[::-1]
        page = scaled_page(analysis, swim_set)
        sizes = page.context["sizes"] if page else []
        assert isinstance(sizes, list)
        for cut in cuts:
            (size,) = (own for own in sizes if own["number"] == cut.number)
            cells = {group: told for group, _, told in size["rows"]}
            whole = far(analysis.summary(id), analysis.meant(swim_set))
            assert swim_set.is_on_land or cut.distance != whole
            for group, takes in zip(analysis.catalogue.lane_groups, cut.takes, strict=True):
                if takes:
                    assert show_time(abs(takes[0])) in cells[group]
                    compared += 1
    assert compared > 10


def test_a_practice_is_over_when_its_sheet_says(analysis: Analysis) -> None:
    assert analysis.practices
    for summary in analysis.practices.values():
        takes = times_of_practice(analysis.catalogue, summary).takes
        own = takes[list(COURSES).index(str(summary.pool.course))]
        known = [abs(group[0]) for group in own if group]
        if summary.ends_s is not None:
            assert show_time(max(known)) == show_time(summary.ends_s)
            assert len(known) == len(summary.groups)
        assert not any(group for pool in takes if pool is not own for group in pool)
        assert lanes_in_use(summary) == sum(group.lanes for group in summary.groups.values())
