"""Slips in how far in a line stands, or in a dash, recognised where the parser gave up: a line
further out than those around it, a dash before the first of several fields, a list under no field.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from almanac.source.days_said import weekday_said
from almanac.source.syntax.field_sorts import holds_fields, of_entries_alone
from almanac.source.syntax.slips import Position, Recognised, excerpt, field_names

_KEY = re.compile(r"\s*([\w-]+):(?: +(\S.*))?")
_DASHED = re.compile(r"\s*- +(([\w-]+):(?: .*)?)")
_ROUND = re.compile(r"\s*(?:- )?([a-z_]+): +\(([^()]*: [^()]*)\)\s*")
_IN_ROW = re.compile(r"[\[,] *([\w-]+): *[\],]")
_LISTS = {"reps": "items", "rounds": "items", "pause": "items", "part": "parts", "focus": "weeks"}
_MOST_OUT = 4  # lines in a row that one moved by a slip


def levels(said: str, at: Position, lines: Sequence[str]) -> Recognised | None:
    """The slip, or None."""
    line = lines[at[0]] if at[0] < len(lines) else ""
    if "mapping values" in said and (found := _round(at[0], line) or _under_none(at[0], lines)):
        return found
    if "expected" not in said and "mapping values" not in said:
        return None
    for look in _LOOKS:
        if found := look(at[0], lines):
            return found
    return None


def _line(number: int, lines: Sequence[str]) -> str:
    return lines[number] if number < len(lines) else ""


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def _above(number: int, lines: Sequence[str]) -> Iterator[int]:
    """The lines above one that hold something, the nearest first."""
    for own in range(min(number, len(lines)) - 1, -1, -1):
        if lines[own].strip() and not lines[own].lstrip().startswith("#"):
            yield own


def _round(number: int, line: str) -> Recognised | None:
    found = _ROUND.fullmatch(line)
    if not found:
        return None
    where = (number, line.index("("))
    return where, "round brackets hold no fields", f"write {found[1]}: {{{excerpt(found[2])}}}"


def _under_none(number: int, lines: Sequence[str]) -> Recognised | None:
    """A list of which the field above it was left out."""
    line = lines[number] if number < len(lines) else ""
    dashed = _DASHED.fullmatch(line.rstrip())
    above = next((lines[own] for own in _above(number, lines)), "")
    key = _KEY.fullmatch(above.rstrip())
    if not dashed or not key or not key[2] or _indent(above) >= _indent(line):
        return None
    message = "a list begins here, and no field stands above it"
    name = _LISTS.get(dashed[2], "")
    mend = f"write '{name}:'" if name else "write the field that it belongs to, with its colon,"
    return (number, _indent(line)), message, f"{mend} on a line of its own before this one"


def _first_dash(number: int, lines: Sequence[str]) -> Recognised | None:
    """A dash before the first of several fields, told at the second."""
    line = lines[number] if number < len(lines) else ""
    key = _KEY.fullmatch(line.rstrip())
    beside = list[int]()
    opener = ""
    for own in _above(number, lines):
        if _indent(lines[own]) < _indent(line):
            opener = lines[own].strip()
            break
        if _indent(lines[own]) == _indent(line):
            beside.append(own)
    dashed = _DASHED.fullmatch(lines[beside[0]].rstrip()) if len(beside) == 1 else None
    if not key or not dashed or not opener.endswith(":"):
        return None
    name = opener.removeprefix("- ").rstrip(":")
    are_days = weekday_said(key[1]) and weekday_said(dashed[2])
    are_named = not {key[1], dashed[2]} & field_names()
    if not are_days and not are_named and not holds_fields(name):
        return None
    message = f"a dash begins an item of a list, and '{excerpt(name)}' holds fields"
    return (beside[0], _indent(line)), message, f"write {excerpt(dashed[1])}, without the dash"


def _colon_in_row(number: int, lines: Sequence[str]) -> Recognised | None:
    """A colon behind a word of a list in brackets."""
    line = _line(number, lines)
    found = _IN_ROW.search(line)
    if not found:
        return None
    message = f"a colon stands behind '{found[1]}', which is an item of a list"
    return (number, found.start(1)), message, f"write {found[1]}, without the colon"


def _too_far_in(number: int, lines: Sequence[str]) -> Recognised | None:
    """A field of the entry itself that has blanks before it."""
    line = _line(number, lines)
    key = _KEY.fullmatch(line.rstrip())
    if not key or not _indent(line) or key[1] not in of_entries_alone():
        return None
    message = f"'{key[1]}' is a field of the entry, and begins too far in"
    return (number, _indent(line)), message, "write it at the margin, without blanks before it"


def _too_far_out(number: int, lines: Sequence[str]) -> Recognised | None:
    """A line, or a few, further out than the fields above and below, told at the one below."""
    line = lines[number] if number < len(lines) else ""
    above = list(_above(number, lines))
    if not above or not 0 < _indent(lines[above[0]]) < _indent(line):
        return None
    out = _indent(lines[above[0]])
    run = list[int]()
    for own in above:
        key = _KEY.fullmatch(lines[own].rstrip())
        if _indent(lines[own]) != out or not key or not key[2] or len(run) > _MOST_OUT:
            break
        run.append(own)
    before = next((own for own in above if own not in run), None)
    if not run or before is None or not _KEY.fullmatch(line.rstrip()):
        return None
    last, first = _KEY.fullmatch(lines[before].rstrip()), run[-1]
    many = _indent(line) - out
    name = lines[first].strip().partition(":")[0]
    if not last or _indent(lines[before]) != (_indent(line) if last[2] else out):
        return None
    message = f"'{excerpt(name)}' begins further out than the lines around it"
    if not last[2]:
        message = f"'{excerpt(name)}' begins no further in than '{last[1]}', which it belongs to"
    few = {1: "", 2: ", and before the line below it"}
    rest = few.get(len(run), f", and before the {len(run) - 1} lines below it")
    return (first, out), message, f"write {many} more blank{'s' * (many != 1)} before it{rest}"


def _list_too_far_out(number: int, lines: Sequence[str]) -> Recognised | None:
    """The first item of a list further out than the field that the list is of."""
    line = _line(number, lines)
    above = next((lines[own] for own in _above(number, lines)), "")
    key = _KEY.fullmatch(above.rstrip())
    if not line.lstrip().startswith("- ") or not key or key[2] or _indent(above) <= _indent(line):
        return None
    message = f"the list of '{key[1]}' begins further out than its field"
    many = _indent(above) + 2 - _indent(line)
    return (number, _indent(line)), message, f"write {many} more blanks before the dash"


def _of_item(number: int, lines: Sequence[str]) -> Recognised | None:
    """A field of an item of a list that begins as far out as its dash."""
    line = _line(number, lines)
    key = _KEY.fullmatch(line.rstrip())
    beside = next((own for own in _above(number, lines) if _indent(lines[own]) <= _indent(line)), 0)
    dashed = _DASHED.fullmatch(lines[beside].rstrip()) if lines else None
    is_beside = dashed and _indent(lines[beside]) == _indent(line)
    if not key or not dashed or not is_beside or key[1] not in field_names():
        return None
    message = f"'{key[1]}' begins too far out: it belongs to the item above it"
    return (number, _indent(line)), message, f"line it up with '{dashed[2]}'"


def too_deep(number: int, lines: Sequence[str]) -> Recognised | None:
    """A field further in than the one above, which has its value already."""
    line = _line(number, lines)
    key, above = _KEY.fullmatch(line.rstrip()), next(_above(number, lines), None)
    if not key or above is None or key[1] not in field_names():
        return None
    beside, dashed = _KEY.fullmatch(lines[above].rstrip()), _DASHED.fullmatch(lines[above].rstrip())
    name = beside[1] if beside and beside[2] else dashed[2] if dashed else ""
    is_open = lines[above].rstrip().endswith((":", ">-", ">", "|", "|-"))
    start = _indent(lines[above]) + 2 * bool(dashed)
    if not name or is_open or start >= _indent(line):
        return None
    message = f"'{key[1]}' begins further in than the field above it"
    return (number, _indent(line)), message, f"line it up with '{name}'"


_LOOKS = (
    _colon_in_row, _first_dash, _too_far_in, _list_too_far_out, _too_far_out, _of_item,
)  # fmt: skip
