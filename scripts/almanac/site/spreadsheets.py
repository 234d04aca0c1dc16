"""Tables that a spreadsheet will open, as CSV."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from typing import TypeVar

_FORMULA = "=+-@＝＋－＠|%"  # what one spreadsheet or another begins a formula or a command with
MARK = "\ufeff"
"""Without it before them, one widespread spreadsheet does not read a file's letters as UTF-8."""

Cell = TypeVar("Cell")


def harmless(value: Cell) -> Cell | str:
    """A text that a spreadsheet would take for a formula, set apart by a leading apostrophe;
    anything else as it is.
    """
    if isinstance(value, str) and value.lstrip()[:1] in tuple(_FORMULA):
        return f"'{value}"
    return value


def csv_text(columns: Sequence[str], rows: Iterable[Iterable[object]]) -> str:
    """A table with its heads, as CSV; nothing in it is taken for a formula."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return text.getvalue()
