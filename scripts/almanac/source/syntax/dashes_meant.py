"""A dash left out before an item of a list, or one too many inside an item, found by trying: what
the dash alone mends is told of it, whatever else it made fail.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from almanac.source.syntax.slips import Recognised, excerpt, holds, indent_of
from almanac.source.syntax.tried import Trial

_DASH = re.compile(r"( *)- +(?=\S)")
_KEY = re.compile(r" *([\w-]+):(?: |$)")


def dash_meant(number: int, trial: Trial) -> Recognised | None:
    """What is to tell of the item of a list in which a line stands, or of the one behind it."""
    lines = trial.lines
    for item in _items(number, lines):
        first = _key(lines[item.start][_width(lines[item.start]) :])
        inner = [at for at in range(item.start + 1, item.stop) if _begins_own(at, item, lines)]
        for at in sorted(inner, key=lambda at: _key(lines[at]) != first):
            dashed = f"{lines[item.start][: _width(lines[item.start])]}{lines[at].lstrip()}"
            if trial.would_do([*lines[:at], dashed, *lines[at + 1 :]], at=at):
                return _left_out(at, lines)
        bare = [*lines[: item.start], _without(item, lines), *lines[item.start + 1 :]]
        if trial.would_do(bare, less=1):
            return _too_many(item.start, lines)
    return None


def _items(number: int, lines: Sequence[str]) -> Iterator[range]:
    """The lines of the item around a line, and of the one that follows in the same list."""
    start = min(number, len(lines) - 1)
    inmost = indent_of(lines[start]) + 1
    while start >= 0 and not (_DASH.match(lines[start]) and indent_of(lines[start]) < inmost):
        inmost = min(inmost, indent_of(lines[start]) + 1) if holds(lines[start]) else inmost
        start -= 1
    if start < 0:
        return
    own = indent_of(lines[start])
    for _ in range(2):
        end = start + 1
        while end < len(lines) and (not holds(lines[end]) or indent_of(lines[end]) > own):
            end += 1
        yield range(start, end)
        if end == len(lines) or indent_of(lines[end]) < own or not _DASH.match(lines[end]):
            return
        start = end


def _begins_own(at: int, item: range, lines: Sequence[str]) -> bool:
    """Whether a line stands where a field of the item does."""
    return holds(lines[at]) and indent_of(lines[at]) == _width(lines[item.start])


def _without(item: range, lines: Sequence[str]) -> str:
    first = lines[item.start]
    return " " * _width(first) + first[_width(first) :]


def _width(line: str) -> int:
    """How far in what stands behind a dash begins."""
    found = _DASH.match(line)
    return len(found[0]) if found else indent_of(line)


def _key(text: str) -> str:
    """The name of the field that a line begins with."""
    named = _KEY.match(text)
    return named[1] if named else ""


def _left_out(at: int, lines: Sequence[str]) -> Recognised:
    what = f"'{key}'" if (key := _key(lines[at])) else "this line"
    message = f"{what} begins an item of a list, and no dash stands before it"
    return (at, indent_of(lines[at])), message, f"write - {excerpt(lines[at])}"


def _too_many(at: int, lines: Sequence[str]) -> Recognised:
    own = lines[at][_width(lines[at]) :]
    what = f"'{key}'" if (key := _key(own)) else "this line"
    message = f"a dash begins another item here, and {what} belongs to the item above it"
    return (at, indent_of(lines[at])), message, f"write {excerpt(own)}, without the dash"
