"""What lane groups' tests tell beyond their paces: critical speed, added drag, fade, as rows for
the pages.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from almanac.arithmetic.gear_drag import Pull, drag_rows, timed_comparisons
from almanac.arithmetic.group_tests import critical_speeds
from almanac.model.catalogue import Catalogue
from almanac.model.knowledge import Benchmark
from almanac.units import show_number, show_share, show_time


@dataclass(frozen=True)
class Table:
    """A table for a page: what it is, its columns, its rows, and what to know when reading it."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    caution: str


def added_drag_table(catalogue: Catalogue, gear: str) -> Table | None:
    """What the club's timed comparisons tell of a piece of gear, None where there is none."""
    rows = tuple(
        (
            catalogue.lane_groups[item.group].title,
            item.plain.title,
            show_time(item.plain_s, tenths=True),
            show_time(item.resisted_s, tenths=True),
            show_share(item.added.at_equal_thrust),
            show_share(item.added.at_equal_power),
        )
        for item in timed_comparisons(catalogue.club, catalogue.benchmarks, gear)
    )
    if not rows:
        return None
    columns = (
        "Lane group",
        "Plain test",
        "Plain",
        "Resisted",
        "Added drag at equal thrust",
        "at equal power",
    )
    caution = (
        "Added drag as a share of the swimmer's own, from (T′/T)² − 1 and (T′/T)³ − 1. "
        "Which of the two holds is not known:"
        " read them as a range."
    )
    return Table("What the club's own times tell", columns, rows, caution)


def critical_speed_table(catalogue: Catalogue, benchmark: Benchmark) -> Table | None:
    """Critical speed of each lane group from this benchmark and its pair, None where no group has
    both.
    """
    rows = tuple(
        (
            catalogue.lane_groups[group].title,
            f"{found.speed:.3f} m/s",
            f"{show_time(100 / found.speed, tenths=True)} a 100 m",
            f"{found.reserve_m:.0f} m",
        )
        for group, found in critical_speeds(catalogue.club, catalogue.benchmarks, benchmark)
    )
    if not rows:
        return None
    columns = ("Lane group", "Critical speed", "Pace", "D′")
    caution = (
        "The slope of distance on time over these tests. Shorter tests raise it: compare "
        "only the same pair with itself."
        " D′ is not reliable (it varies by 13 to 45 % from test to test), and the speed is "
        "held for minutes, not for ever."
    )
    return Table("Critical speed of the lane groups", columns, rows, caution)


def drag_table(pull: Pull) -> Iterator[Mapping[str, Any]]:
    """Rows of drag over speed."""
    for row in drag_rows(pull):
        yield {
            "speed": f"{row.speed:.1f}",
            "gear": "–" if row.gear_n is None else show_number(row.gear_n, 0),
            "own": f"{row.own.least:.0f} to {row.own.most:.0f}",
            "measured": row.measured,
        }
