"""What lane groups' tests tell beyond their paces: critical speed and added drag, as tables."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from almanac.analysis.figures import by_name, heads, section, table
from almanac.analysis.figures.benchmarks import trials_of
from almanac.analysis.figures.gear import comparisons_of, speeds_of
from almanac.arithmetic.gear_drag import MEASURED_SPEEDS
from almanac.model.benchmark import Benchmark
from almanac.model.catalogue import Catalogue
from almanac.model.gear import Gear
from almanac.report.shown import others, shown
from almanac.site.shown_figures import PageFigure, page_figure
from almanac.units import show_time

Row = tuple[str | PageFigure, ...]


@dataclass(frozen=True)
class Table:
    """A table for a page: what it is, its columns, its rows, and what to know when reading it."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    caution: str


def added_drag_table(catalogue: Catalogue, gear: str, day: date | None) -> Table | None:
    """What the club's timed comparisons tell of a piece of gear, None where there is none."""
    rows: tuple[Row, ...] = tuple(
        (
            catalogue.lane_groups[item.group].title,
            item.plain.title,
            show_time(item.plain_s, tenths=True),
            show_time(item.resisted_s, tenths=True),
            *map(page_figure, table("gear", "comparison", "times", item)),
        )
        for item in comparisons_of(catalogue, gear, day)
    )
    if not rows:
        return None
    columns = (
        "Lane group",
        "Plain test",
        "Plain",
        "Resisted",
        *heads("gear", "comparison", "times"),
    )
    caution = (
        "Added drag as a share of the swimmer's own. Which of the two holds is not known: read "
        "them as a range."
    )
    return Table("What the club's own times tell", columns, rows, caution)


def critical_speed_table(
    catalogue: Catalogue, benchmark: Benchmark, day: date | None
) -> Table | None:
    """Critical speed of each lane group from this benchmark and its pair, None where no group has
    both.
    """
    rows: tuple[Row, ...] = tuple(
        (
            catalogue.lane_groups[tests.group].title,
            *map(page_figure, table("benchmark", "critical speed", "groups", tests)),
        )
        for tests in trials_of(catalogue, benchmark, day)
    )
    if not rows:
        return None
    columns = ("Lane group", *heads("benchmark", "critical speed", "groups"))
    caution = (
        "The slope of distance on time over these tests. Shorter tests raise it: compare "
        "only the same pair with itself."
        " D′ is not reliable (it varies by 13 to 45 % from test to test), and the speed is "
        "held for minutes, not for ever."
    )
    return Table("Critical speed of the lane groups", columns, rows, caution)


_DRAWN = ("pull", "least own drag", "most own drag")


def drag_heads() -> list[str]:
    """The columns of drag over speed beyond the gear's own and the swimmer's."""
    own = section("gear", "speed").tables["drag"]
    return [figure.title for figure in own if figure.name not in _DRAWN]


def drag_table(gear: Gear) -> Iterator[Mapping[str, Any]]:
    """Rows of drag over speed."""
    low, high = MEASURED_SPEEDS
    for at in speeds_of(gear):
        figures = by_name("gear", "speed", at)
        pull, least, most = (shown(figures[name]) for name in _DRAWN)
        yield {
            "speed": f"{at.speed:.1f}",
            "gear": pull,
            "own": f"{least} to {most}",
            "measured": low <= at.speed <= high,
            "others": [shown(figure) for figure in others(figures.values(), _DRAWN)],
        }
