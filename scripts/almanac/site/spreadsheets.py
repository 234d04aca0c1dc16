"""Text for a cell of a table that a spreadsheet will open."""

from __future__ import annotations

from typing import TypeVar

_FORMULA = "=+-@＝＋－＠|%"  # what one spreadsheet or another begins a formula or a command with

Cell = TypeVar("Cell")


def harmless(value: Cell) -> Cell | str:
    """A text that a spreadsheet would take for a formula, set apart by a leading apostrophe;
    anything else as it is.
    """
    if isinstance(value, str) and value.lstrip()[:1] in tuple(_FORMULA):
        return f"'{value}"
    return value
