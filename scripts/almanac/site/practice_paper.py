"""The run sheets of a practice on paper: one for each lane group, or each half where halves do
different things, with all that it needs on deck.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.model.catalogue import Catalogue
from almanac.report.board_line import BoardLine
from almanac.report.gear_text import fetch_words, gear_of
from almanac.report.known_words import paces_words
from almanac.report.run.parts import PartsOfRun
from almanac.report.sheet_moments import short_moment, short_until
from almanac.report.sheet_text import part_name, short_before, where_words
from almanac.report.timed_board import REST, SUGGESTED
from almanac.report.ways import distance_words
from almanac.site.practice_sheet import Boards, is_of, minutes_words, own_board


def paper_sheets(
    analysis: Analysis, summary: PracticeSummary, boards: Boards
) -> list[dict[str, Any]]:
    """What stands on each sheet, in the order of the lanes."""
    catalogue = analysis.catalogue
    crews = PartsOfRun(analysis, summary).crews()
    return [
        {
            "group": crew["group"],
            "title": crew["title"],
            "heads": crew["heads"],
            "latecomers": latecomers_words(summary, crew),
            "parts": list(_parts(catalogue, summary, crew, boards)),
            "gear": [
                (catalogue.gear[gear].title, count, fetch_words(catalogue, summary, gear))
                for gear, count in gear_of(summary, crew["group"])
            ],
            "paces": paces_words(analysis.catalogue.lane_groups[crew["group"]], analysis.today),
        }
        for crew in crews
    ]


def latecomers_words(summary: PracticeSummary, crew: Mapping[str, Any]) -> str:
    """At which parts of a crew's sheet latecomers may join, told once for all of them."""
    own = [row for row in summary.sheet if any(is_of(cell, crew) for cell in row.cells)]
    joined = [row for row in own if row.joins]
    if not joined:
        return "Latecomers join no part."
    if len(joined) == len(own):
        return "Latecomers may join as any part begins."
    start = summary.practice.slot.start
    times = ", ".join(short_moment(start, row.starts) for row in joined)
    return f"Latecomers may join only at {times}."


def _parts(
    catalogue: Catalogue, summary: PracticeSummary, crew: Mapping[str, Any], boards: Boards
) -> Iterator[dict[str, Any]]:
    for row, lines in zip(summary.sheet, boards, strict=True):
        own = (cell for cell in row.cells if is_of(cell, crew))
        for cell in own:
            board = own_board(catalogue, row, lines, (cell.group,))
            yield {**_part(catalogue, summary, row, cell), "lines": list(map(_line, board))}


def _part(
    catalogue: Catalogue, summary: PracticeSummary, row: SheetRow, cell: SheetCell
) -> dict[str, Any]:
    start = summary.practice.slot.start
    return {
        "starts": short_moment(start, row.starts),
        "title": part_name(catalogue, row),
        "facts": [
            *filter(None, [minutes_words(row, cell), distance_words(row.run.of(cell.group))]),
            short_until(start, cell),
            *short_before(row),
        ],
        "notes": [*where_words(catalogue, row), *filter(None, [row.run.doing.note])],
    }


def _line(line: BoardLine) -> tuple[BoardLine, str, str]:
    """A line, what stands in the column of send-offs, and beneath it what kind of time that is; a
    pause between rounds is no send-off.
    """
    if not line.path:
        what = ", ".join(filter(None, (line.what, line.go)))
        return replace(line, what=what), "", ""
    go = line.go.removesuffix(SUGGESTED)
    each = [own.removeprefix("on ") for own in go.split(" / ")]
    kinds = [SUGGESTED.strip(" ()")] if go != line.go else []
    if all(own.endswith(REST) for own in each):
        each, kinds = [own.removesuffix(REST) for own in each], [REST.strip(), *kinds]
    return line, " / ".join(each), ", ".join(kinds)
