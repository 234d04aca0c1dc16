"""A quotation mark that is not closed on its line, and closes at another far below: found by
trying, at which line one more mends it all.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from almanac.source.syntax.slips import Recognised, excerpt
from almanac.source.syntax.tried import Trial

_ABOVE, _MOST = 200, 12  # lines in which it may have been opened, and how many of these are tried
_OPENED = re.compile(r"(?:^|[ \[{])([\"'])(?=\S)")
_NEXT = re.compile(r"\s*(?:- |[\w-]+:(?: |$))")
_OTHER = {'"': "'", "'": '"'}
_AT_END = "add one at the end of this line"
_CLOSING = re.compile(r"[\]}, ]*$")


def open_quote(number: int, trial: Trial) -> Recognised | None:
    """What is to tell of the line, from the one where the parser gave up on upwards; None where a
    quotation mark alone does not mend it.
    """
    for at, column, mark in list(_open(number, trial.lines))[:_MOST]:
        line = trial.lines[at].rstrip()
        end = _CLOSING.search(line)
        for cut in {len(line), end.start() if end else len(line)}:
            is_other = line[cut - 1 : cut] == _OTHER[mark]  # it is closed, with the other sort
            whole = f"{line[: cut - is_other]}{mark}{line[cut:]}"
            if trial.would_do([*trial.lines[:at], whole, *trial.lines[at + 1 :]]):
                message = "the quotation mark that opens here is not closed"
                told = whole[column:].strip()
                is_short = excerpt(told) == told
                return (at, column), message, f"write {told}" if is_short else _AT_END
    return None


def _open(number: int, lines: Sequence[str]) -> Iterator[tuple[int, int, str]]:
    """Each line with a quotation mark that opens and does not close in it, where a field or an item
    follows: with the mark's column and the mark.
    """
    for at in range(min(number, len(lines) - 1), max(-1, number - _ABOVE), -1):
        below = next((own for own in lines[at + 1 :] if own.strip()), "- ")
        for found in _OPENED.finditer(lines[at]):
            mark, rest = found[1], lines[at][found.end() :].replace('\\"', "").replace("''", "")
            if mark not in rest and _NEXT.match(below):
                yield at, found.start(1), mark
