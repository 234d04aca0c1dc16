"""A line, or a few, too far in or out, found by trying: the fewest lines that need only be moved
for the file to read, and each field of it to stand where its kind has one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from almanac.source.syntax.slips import holds, indent_of
from almanac.source.syntax.tried import Trial

_ABOVE, _BELOW = 8, 2  # lines around the one that was told, in which the slip may begin
_MOST_PIECES = 8  # beside each other, that one slip moved
_MOST_TRIED = 400
_BEGUN = re.compile(r" *(?:- |[\w-]+:(?: |$))")
_NAMED = re.compile(r"(?:- +)?([\w-]+):(?: |$)")


class Moved(NamedTuple):
    """What stands too far in or out: its first line and its column from 0, what is wrong with it,
    the mend.
    """

    at: tuple[int, int]
    message: str
    hint: str


def lined_up(number: int, trial: Trial) -> Moved | None:
    """The move that mends it all, or None. ``number`` is the line that was told."""
    lines = trial.lines
    for start, end, shift in _moves(number, lines):
        moved = [*lines[:start], *_shifted(lines[start:end], shift), *lines[end:]]
        is_begun = _BEGUN.match(lines[start]) is not None  # and may not end up in a text
        if trial.would_do(moved, at=start if is_begun else None):
            return _told(start, end, shift, moved)
    return None


def _moves(number: int, lines: Sequence[str]) -> Iterator[tuple[int, int, int]]:
    """First line, line behind the last, and blanks more or fewer: the smallest moves first."""
    first = max(0, number - _ABOVE)
    starts = [own for own in range(first, min(number + _BELOW, len(lines))) if holds(lines[own])]
    levels = {
        indent_of(line) + more
        for line in lines[max(0, first - _ABOVE) : number + _BELOW]
        if holds(line)
        for more in ((0, 2) if line.lstrip().startswith("- ") or line.endswith(":") else (0,))
    }
    found = {
        (start, end, level - indent_of(lines[start]))
        for start in starts
        for end in _ends(start, lines)
        for level in levels
        if level != indent_of(lines[start]) and end >= number
    }
    near = sorted(found, key=lambda own: (_size(own, lines), abs(own[2]), abs(own[0] - number)))
    yield from near[:_MOST_TRIED]


def _size(move: tuple[int, int, int], lines: Sequence[str]) -> int:
    return sum(holds(line) for line in lines[move[0] : move[1]])


def _ends(start: int, lines: Sequence[str]) -> Iterator[int]:
    """Where what begins with a line may end: behind it, behind what is below it, and behind each of
    the pieces beside it.
    """
    yield from range(start + 1, min(start + _MOST_PIECES, len(lines)) + 1)
    own, pieces = indent_of(lines[start]), 1
    for number in range(start + 1, len(lines) + 1):
        line = lines[number] if number < len(lines) else ""
        if number < len(lines) and (not holds(line) or indent_of(line) > own):
            continue
        yield number
        pieces += 1
        if number == len(lines) or indent_of(line) < own or pieces > _MOST_PIECES:
            return


def _shifted(lines: Sequence[str], shift: int) -> list[str]:
    return [f"{' ' * shift}{own}" if shift > 0 else _less(own, -shift) for own in lines]


def _less(line: str, many: int) -> str:
    return line[min(many, indent_of(line)) :]


def _told(start: int, end: int, shift: int, moved: Sequence[str]) -> Moved:
    line = moved[start]
    indent = indent_of(line) - shift
    more = _size((start + 1, end, 0), moved)
    rest = {0: "", 1: " and before the line below it"}.get(
        more, f" and before the {more} lines below it"
    )
    blanks = f"{abs(shift)} {'more ' if shift > 0 else ''}blank{'s' * (abs(shift) != 1)}"
    write = (
        f"write {blanks} before it{rest}" if shift > 0 else f"take {blanks} away before it{rest}"
    )
    if beside := _beside(start, end, moved):
        write += f": {beside}"
    amiss = f"{_name(line)} begins too far {'out' if shift > 0 else 'in'}"
    return Moved((start, indent), amiss, write)


def _name(line: str) -> str:
    named = _NAMED.match(line.strip())
    if line.split(maxsplit=1)[0] == "-":
        return "this dash"
    return f"'{named[1]}'" if named else "this line"


def _beside(start: int, end: int, moved: Sequence[str]) -> str:
    """The line that it is to stand below, or above, in words."""
    rows = [*range(start - 1, -1, -1), *range(end, len(moved))]
    for number in rows:
        line = moved[number]
        if not holds(line) or indent_of(line) > indent_of(moved[start]):
            continue
        if indent_of(line) < indent_of(moved[start]):
            dash = re.match(r" *- +", line)
            if not dash or len(dash[0]) != indent_of(moved[start]):
                return ""
        name = _NAMED.match(line.strip())
        at_dash = indent_of(line) == indent_of(moved[start]) and line.lstrip().startswith("- ")
        what = "the dash" if at_dash else f"'{name[1]}'" if name else ""
        return f"it lines up with {what} in line {number + 1}" if what else ""
    return ""
