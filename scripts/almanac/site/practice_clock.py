"""The Clock lines of a practice: one for each lane group, or each half where halves do different
things.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.drawing.charts.clock_line import PartOnClock, clock_line
from almanac.drawing.charts.effort_marks import effort_marks
from almanac.report.run.parts import PartsOfRun
from almanac.site.practice_sheet import is_of
from almanac.units import clock_time, show_time


def clock_lines(analysis: Analysis, summary: PracticeSummary) -> list[tuple[str, str, Markup]]:
    """Lane group, title and drawing of each; none where the length of a part is not known."""
    found = []
    for number, crew in enumerate(PartsOfRun(analysis, summary).crews()):
        parts = list(_parts(analysis, summary, crew))
        if parts and None not in parts:
            known = [part for part in parts if part is not None]
            drawing = _drawn(analysis, summary, crew["title"], f"line-{number}", known)
            found.append((crew["group"], crew["title"], Markup(drawing)))
    return found


def _parts(
    analysis: Analysis, summary: PracticeSummary, crew: Mapping[str, Any]
) -> Iterator[PartOnClock | None]:
    words = analysis.catalogue.words("practice-parts")
    for row in summary.sheet:
        for cell in (cell for cell in row.cells if is_of(cell, crew)):
            if row.starts_s is None or cell.ends_s is None:
                yield None
            else:
                title, effort = words[row.run.word].title, _effort(row, crew["group"])
                yield PartOnClock(row.starts_s, cell.ends_s, title, effort)


def _effort(row: SheetRow, group: str) -> str:
    """The effort of most of what a lane group swims in a part; "" where it swims nothing."""
    by_effort = row.run.of(group).by.get("effort", {})
    return max(by_effort, key=lambda effort: by_effort[effort], default="")


def _drawn(
    analysis: Analysis,
    summary: PracticeSummary,
    title: str,
    identifier: str,
    parts: list[PartOnClock],
) -> str:
    slot, marks = summary.practice.slot, effort_marks(analysis.catalogue.efforts)
    slot_s, slack_s = 60.0 * slot.minutes, summary.slack_s
    end = clock_time(slot.start, slot_s).removesuffix(":00")
    if slack_s:
        end = f"{show_time(abs(slack_s))} {'to spare' if slack_s > 0 else 'over'} · {end}"
    told = "; ".join(
        f"{clock_time(slot.start, part.start_s)} {part.words}"
        f"{f', most of it {marks[part.effort].title}' if part.effort else ''}"
        for part in parts
    )
    heading = f"The practice along the clock for {title}"
    return clock_line(parts, marks, identifier, (heading, f"{told}."), (slot.start, end), slot_s)
