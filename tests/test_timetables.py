"""A timetable day by day, and as its page shows it. What it forbids stands in the rejected
examples.
"""

from __future__ import annotations

from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.pool_slots import GridRow, every_day, grid, is_open, slots_on
from almanac.model.timetable import Opening, PoolSlot
from almanac.site.timetable_page import timetable_page

TUESDAY, SATURDAY = date(2027, 2, 2), date(2027, 2, 6)


def slot(squad: str, begins: str, ends: str, *lanes: int) -> PoolSlot:
    return PoolSlot(squad, "home", begins, ends, lanes, days=("tue",))


def test_a_day_has_the_slots_of_its_weekday_or_those_of_that_very_day(analysis: Analysis) -> None:
    table = analysis.catalogue.timetables["winter"]
    assert [own.squad for _, own in slots_on(table, TUESDAY)] == ["reed", "heron"]
    assert [own.pool for _, own in slots_on(table, SATURDAY)] == ["long-course"]
    assert not slots_on(table, date(2027, 4, 6))  # a Tuesday on which it does not hold


def test_the_grid_is_cut_where_somebody_comes_or_goes() -> None:
    """By hand: a has lanes 1 to 3 until 17:30, b 4 and 5 from 17:00 to 18:00; then nobody; then a
    again.
    """
    slots = [
        slot("a", "16:30", "17:30", 1, 2, 3),
        slot("b", "17:00", "18:00", 4, 5),
        slot("a", "19:00", "20:00", 6),
    ]
    assert grid(slots, 6) == [
        GridRow("16:30", "17:00", ((3, "a"), (3, ""))),
        GridRow("17:00", "17:30", ((3, "a"), (2, "b"), (1, ""))),
        GridRow("17:30", "18:00", ((3, ""), (2, "b"), (1, ""))),
        GridRow("19:00", "20:00", ((5, ""), (1, "a"))),
    ]


def test_openings_that_meet_count_together(analysis: Analysis) -> None:
    tuesday = next(
        day for day in every_day(analysis.catalogue.timetables["winter"]) if day.day == "tue"
    )
    early = Opening("home", "16:00", "17:00", days=("tue",))
    late = Opening("home", "17:00", "19:00", days=("tue",), lanes=(1, 2))
    own = slot("a", "16:30", "18:00", 1, 3)
    assert is_open([late, early], own, tuesday, 1)
    assert not is_open([late, early], own, tuesday, 3)
    assert not is_open([early], own, tuesday, 1)


def test_days_that_are_alike_share_a_grid(analysis: Analysis) -> None:
    page = timetable_page(analysis, analysis.catalogue.timetables["winter"], [])
    week, single = page.context["week"], page.context["single"]
    assert isinstance(week, list)
    assert isinstance(single, list)
    assert [(own.days, own.weekdays) for own in week] == [("Tuesday", "2"), ("Thursday", "4")]
    assert [(own.days, own.pool) for own in single] == [
        ("Saturday 6 February 2027", "Hired long-course pool")
    ]
    assert [(own.lanes, own.whose) for own in single[0].rows[0].cells] == [
        ("1–2", "Osprey"),
        ("3–6", ""),
    ]
