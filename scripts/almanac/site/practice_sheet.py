"""The run sheet on the page of a practice: a row a part, each with its place among the columns of
the lane groups on one axis of time.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.model.catalogue import Catalogue
from almanac.model.variants import given_items
from almanac.report.board_line import BoardLine, lines_for
from almanac.report.known_words import unfit_lines
from almanac.report.sheet_moments import cell_words, short_moment
from almanac.report.sheet_text import (
    before_words,
    crew_titles,
    other_figures,
    part_name,
    where_words,
)
from almanac.report.shown import with_working
from almanac.report.timed_board import timed_lines
from almanac.report.ways import distances
from almanac.report.whiteboard import board_lines
from almanac.rounding import half_up, show_number
from almanac.site.links import link

Boards = Sequence[Sequence[BoardLine]]  # a part's lines, in the order of the sheet


def sheet_rows(
    catalogue: Catalogue, summary: PracticeSummary, boards: Boards
) -> list[dict[str, Any]]:
    """The rows of the run sheet, in order of their starts."""
    axis = sorted({row.starts.s for row in summary.sheet})
    rows = zip(summary.sheet, boards, strict=True)
    return [_row(catalogue, summary, row, axis, lines) for row, lines in rows]


def timed_boards(analysis: Analysis, id: str) -> Boards:
    """The whiteboard of each part of a practice with the times of all who do it. The analysis
    keeps them: page and table ask for the same.
    """
    sheet = analysis.practices[id].sheet
    return analysis.once(
        (timed_boards, id), lambda: tuple(_board(analysis.catalogue, row) for row in sheet)
    )


def _board(catalogue: Catalogue, row: SheetRow) -> list[BoardLine]:
    run = row.run
    own = given_items(run.doing.items, run.doing.variants)
    lines = board_lines(catalogue, run.swim_set.items if run.swim_set else own)
    return timed_lines(catalogue, lines, run.clocks, groups_of(row))


def groups_of(row: SheetRow) -> tuple[str, ...]:
    """The lane groups that do a part."""
    return tuple(dict.fromkeys(cell.group for cell in row.cells))


def own_board(
    catalogue: Catalogue, row: SheetRow, lines: Sequence[BoardLine], groups: Sequence[str]
) -> list[BoardLine]:
    """What of the whiteboard of a part is for some lane groups, and what does not fit."""
    return [*lines_for(list(lines), groups), *unfit_lines(catalogue, row.run.clocks, groups)]


def is_of(cell: SheetCell, crew: Mapping[str, Any]) -> bool:
    """Whether a place on the sheet is that of a lane group, or of a half of it."""
    return cell.group == crew["group"] and crew["half"] in ("", cell.crew.half or crew["half"])


def minutes_words(row: SheetRow, cell: SheetCell) -> str:
    """How long a part takes a crew, to the minute; "" where that is not known."""
    if row.starts_s is None or cell.ends_s is None:
        return ""
    return f"{show_number(half_up((cell.ends_s - row.starts_s) / 60))} min"


def _row(
    catalogue: Catalogue,
    summary: PracticeSummary,
    row: SheetRow,
    axis: Sequence[float],
    lines: Sequence[BoardLine],
) -> dict[str, Any]:
    start, run = summary.practice.slot.start, row.run
    groups = groups_of(row)
    every = tuple(summary.groups)
    columns = [every.index(group) for group in groups]
    return {
        "starts": short_moment(start, row.starts),
        "starts_s": int(half_up(row.starts.s)),
        "title": part_name(catalogue, row),
        "whose": "" if row.is_for_all else crew_titles(run.crews),
        "link": link(run.swim_set) if run.swim_set else None,
        "minutes": list(_minutes(row)),
        "before": list(before_words(row)),
        "where": list(where_words(catalogue, row)),
        "distance": distances(summary.groups, run),
        "note": run.doing.note,
        "board": own_board(catalogue, row, lines, groups),
        "groups": groups if len(groups) < len(every) else (),
        "cells": [_cell(summary, row, cell) for cell in row.cells],
        "joins": row.joins,
        "place": (
            min(columns) + 1,
            max(columns) + 2,
            bisect_left(axis, row.starts.s) + 1,
            max(bisect_left(axis, row.ends.s), bisect_left(axis, row.starts.s) + 1) + 1,
        ),
    }


def _minutes(row: SheetRow) -> Iterator[tuple[str, str]]:
    """How long it takes: for all, or by lane group where they differ."""
    each = [(cell.group, minutes_words(row, cell)) for cell in row.cells]
    for words, own in groupby(each, key=lambda cell: cell[1]):
        groups = [group for group, _ in own]
        yield ("" if len(groups) == len(each) else " ".join(groups)), words


def _cell(summary: PracticeSummary, row: SheetRow, cell: SheetCell) -> dict[str, Any]:
    until = cell_words(summary.practice.slot.start, cell)
    return {
        "id": cell.group,
        "group": cell.crew.title,
        "until": until[:1].upper() + until[1:],
        "others": [with_working(figure) for figure in other_figures(summary, row, cell.group)],
    }
