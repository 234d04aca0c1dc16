"""Everything for a spreadsheet in one file: a zip of CSV, a table a kind and some more.

A zip, since every spreadsheet, database and script reads CSV and every system opens a zip; a
workbook would be of one maker's format, and one table cannot hold drills and run sheets alike.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue
from almanac.model.practice import Practice
from almanac.rounding import decimals
from almanac.site.calendar import block_table
from almanac.site.data_files import set_table
from almanac.site.practice_table import practice_table
from almanac.site.spreadsheets import MARK, csv_text
from almanac.source import schemas

FILE = "data/v1/spreadsheets.zip"
_EARLIEST = (1980, 1, 1, 0, 0, 0)  # the same entries always give the same bytes


def practice_file(id: str, table: str) -> tuple[str, str]:
    """The table of a practice, as its path below the site's root and its text."""
    return f"data/v1/{Practice.kind}/{id}.csv", f"{MARK}{table}"


def spreadsheets(
    analysis: Analysis, practice: Callable[[str], str] | None = None
) -> tuple[str, bytes]:
    """The zip, as its path below the site's root. ``practice`` gives what ``practice_table``
    would, where that is known already.
    """
    return FILE, zipped(tables(analysis, practice))


def tables(
    analysis: Analysis, practice: Callable[[str], str] | None = None
) -> Iterator[tuple[str, str]]:
    """Every table, as its file's name and its text."""
    catalogue = analysis.catalogue
    for kind in KIND.values():
        if not kind.single and kind.key != "vocabulary":
            yield f"{kind.key}.csv", _of_kind(catalogue, kind.key)
    known = practice or (partial(practice_table, analysis))
    yield "run-sheets.csv", _joined(known(id) for id in analysis.practices)
    yield "set-totals.csv", set_table(analysis)
    yield "tests.csv", _tests(catalogue)
    for id, groups in analysis.blocks.items():
        if groups:
            yield f"block-days-{id}.csv", block_table(groups)


def zipped(files: Iterable[tuple[str, str]]) -> bytes:
    """Files in one zip."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in files:
            info = zipfile.ZipInfo(name, _EARLIEST)
            info.external_attr = 0o644 << 16
            archive.writestr(info, f"{MARK}{text}", zipfile.ZIP_DEFLATED)
    return made.getvalue()


def _joined(each: Iterable[str]) -> str:
    """Tables of the same columns as one."""
    heads, rows = "", []
    for table in each:
        heads, _, own = table.partition("\n")
        rows.append(own)
    return f"{heads}\n{''.join(rows)}" if heads else ""


def _of_kind(catalogue: Catalogue, kind: str) -> str:
    """Entries as their authors wrote them: each field that is one value, or a list of such."""
    data = {id: catalogue.documents[kind, id].data for own, id in catalogue.entries if own == kind}
    plain = {
        field for own in data.values() for field, value in own.items() if _cell(value) is not None
    }
    columns = [field for field in schemas.fields(kind) if field in plain]
    rows = ([id, *(_cell(own.get(field, "")) for field in columns)] for id, own in data.items())
    return csv_text(["id", *columns], rows)


def _cell(value: Any) -> object:
    """A value for one cell; None where it is more than that. Dangers are told by their words."""
    if isinstance(value, list):
        named = [it.get("hazard") if isinstance(it, Mapping) else it for it in value]
        is_more = any(it is None or isinstance(it, list) for it in named)
        return None if is_more else "; ".join(map(str, named))
    return None if isinstance(value, Mapping) else value


def _tests(catalogue: Catalogue) -> str:
    """The timed tests of the lane groups, the times in seconds."""
    columns = ["lane_group", "title", "benchmark", "time_s", "course", "on"]
    return csv_text(
        columns,
        (
            [id, group.title, test.benchmark, decimals(test.time, 2), str(test.course), test.on]
            for id, group in catalogue.lane_groups.items()
            for test in group.tests
        ),
    )
