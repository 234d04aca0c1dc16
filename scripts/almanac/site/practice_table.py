"""A practice and its run sheet as a table: a row for each line of the whiteboard of each part, for
each lane group in its lanes.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.moment import Moment
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.arithmetic.table import item_rows
from almanac.model.catalogue import Catalogue
from almanac.model.vocabularies import GRAVITIES
from almanac.report.board_line import BoardLine
from almanac.report.sheet_text import part_name
from almanac.rounding import decimals
from almanac.site.practice_sheet import own_board, timed_boards
from almanac.site.spreadsheets import csv_text
from almanac.source.reader import DataPath
from almanac.units import clock_time

_COLUMNS = (
    "practice", "part", "title", "starts", "ends", "talk_s", "waits_s", "lane_group", "lanes",
    "distance", "unit", "line", "depth", "what", "reps", "each", "effort", "gear", "go", "target",
    "how", "aim", "note",
)  # fmt: skip
_Cells = dict[str, object]


def practice_table(analysis: Analysis, id: str) -> str:
    """The table of a practice that can be worked out, as CSV: first a row for each danger of the
    brief, the gravest first, with its standard control as its note; then the run sheet.

    Times by the clock are those of the slot; what ends in ``_s`` is in seconds, empty where not
    known. ``distance`` is that of the whole part for the lane group, ``each`` of one rep, in
    ``unit``; ``reps`` are those of all rounds.
    """
    rows = (*_dangers(analysis.catalogue, analysis.practices[id]), *_rows(analysis, id))
    own = {"practice": id}
    return csv_text(_COLUMNS, ([{**own, **row}.get(it, "") for it in _COLUMNS] for row in rows))


def _dangers(catalogue: Catalogue, summary: PracticeSummary) -> Iterator[_Cells]:
    gravities = catalogue.words(GRAVITIES)
    for line in summary.brief:
        title = f"Danger: {gravities[line.gravity].title.lower()}"
        yield {"title": title, "what": line.title, "note": line.control}


def _rows(analysis: Analysis, id: str) -> Iterator[_Cells]:
    catalogue, summary, boards = (
        analysis.catalogue,
        analysis.practices[id],
        timed_boards(analysis, id),
    )
    for number, (row, lines) in enumerate(zip(summary.sheet, boards, strict=True), 1):
        for cell in row.cells:
            part = {"part": number, **_part(catalogue, summary, row, cell)}
            board = own_board(catalogue, row, lines, (cell.group,))
            reps = _reps(row, cell.group)
            if not board:
                yield part
            for place, line in enumerate(board, 1):
                yield {**part, "line": place, **_line(line), **reps.get(line.path, {})}


def _part(catalogue: Catalogue, summary: PracticeSummary, row: SheetRow, cell: SheetCell) -> _Cells:
    start = summary.practice.slot.start

    def clock(moment: Moment) -> str:
        return "" if moment.missing else clock_time(start, moment.s)

    return {
        "title": part_name(catalogue, row),
        "starts": clock(row.starts),
        "ends": clock(cell.ends),
        "talk_s": row.talk_s,
        "waits_s": "" if cell.waits_s is None else decimals(cell.waits_s, 1),
        "lane_group": cell.crew.title,
        "lanes": " ".join(map(str, cell.crew.lanes)),
        "distance": decimals(row.run.of(cell.group).distance.value, 3),
        "unit": summary.pool.course.unit.value,
    }


def _line(line: BoardLine) -> _Cells:
    told = ("depth", "what", "effort", "gear", "go", "target", "how", "aim", "note")
    return {name: getattr(line, name) for name in told}


def _reps(row: SheetRow, group: str) -> dict[DataPath, _Cells]:
    """By item, how many reps a lane group does of it in all, and how far each is where all are
    alike.
    """
    found: dict[DataPath, _Cells] = {}
    for own in item_rows(row.run.clocks[group]):
        each = {timed.rep.distance for timed in own.timed}
        far = decimals(each.pop(), 3) if len(each) == 1 else ""
        found[own.path] = {"reps": len(own.timed), "each": far}
    return found
