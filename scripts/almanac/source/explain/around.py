"""What stands in the file where a value failed, as it is written there."""

from __future__ import annotations

from almanac.source.failure import Failure
from almanac.source.syntax.slips import CURLY


def line_of(failure: Failure) -> str:
    """The line on which the value begins, without the blanks around it."""
    place = failure.document.place(failure.path)
    return failure.document.text.split("\n")[place.line - 1].strip()


def of_row(failure: Failure) -> str:
    """The item of a list in brackets, without curly marks around it; "" where the value is none, or
    goes over several lines.
    """
    node = failure.document.node(failure.path)
    start, end = node.start_mark, node.end_mark
    line = failure.document.text.split("\n")[start.line]
    is_in_row = line[: start.column].rstrip().endswith(("[", ","))
    if not is_in_row or end.line != start.line:
        return ""
    return line[start.column : end.column].strip(CURLY + " ")
