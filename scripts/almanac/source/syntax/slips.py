"""Slips of a hand new to YAML, recognised by the lines where the parser gave up: a list's mark or a
colon left out, quotation marks in a text that stands in some, a line too far in.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Any

from almanac.kinds import KIND
from almanac.source import schemas

Position = tuple[int, int]  # line and column from 0
Recognised = tuple[Position, str, str]  # where, what is wrong, the mend

LIST_MARK = re.compile(
    r"(?:[-–—−*•·▪◦]+|\+(?= )|[0-9]{1,2}(?:[.)]|:(?= ))|[a-z]\)(?= )|\[[ xX]?\])\s*(?=\S)"
)
CURLY = "“”„‘’«»"
_NO_COLON = re.compile(r"([A-Za-z_]+)\s*(?:[-=]>|[→=;,：./]| [-–] |\s)\s*(\S.*)")
_CAPITAL = re.compile(r"[A-Z][a-z_]+ ?[-=→;,：./]")  # and no sentence
_NO_SPACE = re.compile(r"(?:- )?([A-Za-z_]+):(?:[,;=.] ?)?([^\s:].*)")
_FIELD = re.compile(r"((?:- )?[a-z_]+: )([^\s\"'\[{|>&*!%@`].*)")
_NEXT_FIELD = re.compile(r"\s*[a-z0-9_-]+: ")
_ITEM_FIELD = re.compile(r"- ([a-z_]+):(?: |$)")
_DASHED_FIELD = re.compile(r"\s*- +([A-Za-z0-9_-]+: \S.*)")
_QUOTED_ROW = re.compile(r"\"[^\"]*\"(?:, ?\"[^\"]*\")+|'[^']*'(?:, ?'[^']*')+")
_OPEN_IN_ROW = re.compile(r"\"([^\",]+), (\"[^\"]*\"(?:, ?\"[^\"]*\")*)[\]},].*")
_DASHED_TEXT = re.compile(r" *- +([^:\[{\"'|>]+)")
_REPS = re.compile(r"([1-9][0-9]?) ?[x×*] ?([1-9][0-9]{1,3}) ?(?:m|yd|yards|metres)?")
_NUMBERED = re.compile(r"\s*(?:[0-9]{1,2}[.)]\s+|[•·▪◦]\s*)\S")
_LONGEST = 100


def indent_of(line: str) -> int:
    """How many blanks stand before what a line holds."""
    return len(line) - len(line.lstrip(" "))


def holds(line: str) -> bool:
    """Whether anything but a comment stands in a line."""
    return bool(line.strip()) and not line.lstrip().startswith("#")


@cache
def field_names() -> frozenset[str]:
    """The name of every field of every kind, those inside others too."""

    def named(piece: Any) -> set[str]:
        if isinstance(piece, list):
            return set().union(*map(named, piece))
        if not isinstance(piece, dict):
            return set()
        own = piece.get("properties")
        return set(own if isinstance(own, dict) else ()).union(*map(named, piece.values()))

    return frozenset(set().union(*(named(schemas.raw(name)) for name in ("common", *KIND))))


def recognised(said: str, at: Position, since: Position, lines: Sequence[str]) -> Recognised | None:
    """The slip behind what the parser said, or None. ``at`` is where it gave up, ``since`` where
    what it was reading began.
    """
    if "alphabetic or numeric" in said and lines[since[0]][since[1] :].startswith("* "):
        return without_dash(since[0], lines)
    if found := _in_quotes(said, at, lines):
        return found
    if found := _stray_dash(at, lines):
        return found
    if "expected ':'" in said and _NUMBERED.match(lines[since[0]]):
        return without_dash(since[0], lines)
    number = since[0] if "expected ':'" in said else at[0]
    if "expected" in said and (found := _in_list(number, lines) or _field(number, lines)):
        return found
    if "did not find expected" in said and (found := _first_too_far_in(at, lines)):
        return found
    return _colon(at, lines) if "mapping values" in said else None


def _stray_dash(at: Position, lines: Sequence[str]) -> Recognised | None:
    """A dash before one of several fields that are no list."""
    line = lines[at[0]] if at[0] < len(lines) else ""
    found, indent = _DASHED_FIELD.fullmatch(line.rstrip()), len(line) - len(line.lstrip())
    above = next((one for one in reversed(lines[: at[0]]) if _is_content(one)), "")
    if not found or len(above) - len(above.lstrip()) != indent or not _NEXT_FIELD.match(above):
        return None
    message = "a dash begins an item of a list, and the lines above it are fields"
    return (at[0], indent), message, f"write {excerpt(found[1])}, without the dash"


def excerpt(text: str) -> str:
    """A piece of a file for a mend: on one line, not too long."""
    text = "".join(char if char.isprintable() else " " for char in text.strip())
    return text if len(text) <= _LONGEST else text[:_LONGEST] + "…"


def without_dash(number: int, lines: Sequence[str]) -> Recognised:
    """A line of a list that begins with another mark than a dash, or with none."""
    line = lines[number]
    text = line.strip()
    mark = LIST_MARK.match(text)
    return (
        (number, len(line) - len(line.lstrip())),
        "this line of a list does not begin with a dash and a space",
        f"write - {excerpt(text[mark.end() :] if mark else text)}",
    )


def _in_list(number: int, lines: Sequence[str]) -> Recognised | None:
    """A line beside the dashes of a list that has none of its own."""
    line = lines[number] if number < len(lines) else ""
    indent, text = len(line) - len(line.lstrip()), line.strip()
    above = next((one for one in reversed(lines[:number]) if one.strip()), "")
    if not text or text.startswith("- ") or not above.strip().startswith("- "):
        return None
    if indent != len(above) - len(above.lstrip()):
        return None
    first, name = _ITEM_FIELD.match(above.strip()), text.partition(":")[0]
    if first and name in field_names():
        message = f"'{name}' begins too far out: it belongs to the item above it"
        return (number, indent), message, f"line it up with '{first[1]}'"
    return None if _field(number, lines) else without_dash(number, lines)


def _field(number: int, lines: Sequence[str]) -> Recognised | None:
    """A line that begins with a field's name, and no colon behind it."""
    tight = _NO_SPACE.fullmatch(lines[number].strip()) if number < len(lines) else None
    if tight and tight[1].lower() in field_names():
        where = (number, lines[number].index(":"))
        hint = f"write {tight[1].lower()}: {excerpt(tight[2])}"
        return where, "no space stands after this colon", hint
    line = lines[number] if number < len(lines) else ""
    text = line.strip()
    if text in field_names():
        where = (number, len(line) - len(line.lstrip()) + len(text))
        return where, f"no colon stands behind '{text}'", f"write {text}:"
    match = _NO_COLON.fullmatch(text)
    is_name = match and (match[1] in field_names() or _CAPITAL.match(text))
    if not match or not is_name or match[1].lower() not in field_names():
        return None
    column = len(line) - len(line.lstrip()) + len(match[1])
    return (
        (number, column),
        f"no colon stands behind '{match[1]}'",
        f"write {match[1].lower()}: {excerpt(match[2])}",
    )


def _in_quotes(said: str, at: Position, lines: Sequence[str]) -> Recognised | None:
    """Quotation marks inside a text that stands in the same sort of them."""
    line = lines[at[0]] if at[0] < len(lines) else ""
    before = line[: at[1]].rstrip()
    mark = before[-1:]
    opened = before.find(mark) if mark in {'"', "'"} else -1
    if "expected" not in said or not line[at[1] :].strip() or not 0 <= opened < len(before) - 1:
        return None
    if line[opened - 1 : opened] not in {" ", "[", "{", ""} or _NEXT_FIELD.match(line, at[1]):
        return None
    whole = line[opened:].strip()
    where = (at[0], len(before) - 1)
    if _QUOTED_ROW.fullmatch(whole):
        return where, "several texts make a list, which stands in brackets", f"write [{whole}]"
    if open_text := _OPEN_IN_ROW.fullmatch(whole):
        said = "the quotation mark that opens here is not closed"
        return (at[0], opened), said, f'write "{open_text[1]}", {excerpt(open_text[2])}'
    inner = whole[1:-1] if whole.endswith(mark) and len(whole) > 1 else ""
    if mark == "'" and inner and '"' not in inner:
        said = "the apostrophe ends the text, which stands in single quotation marks"
        return where, said, f'write "{excerpt(inner)}"'
    if mark == '"' and inner and "'" not in inner:
        said = "this quotation mark ends the text, and more of it follows"
        return where, said, f"write '{excerpt(inner)}'"
    hint = "put the quotation marks round the whole of it, or leave them out"
    if mark == '"' and "'" not in whole and " #" not in whole:
        hint = f"write '{excerpt(whole)}'"
    return where, "text goes on behind the closing quotation mark", hint


def _first_too_far_in(at: Position, lines: Sequence[str]) -> Recognised | None:
    """The first field with blanks before it, and the others with none."""
    first = next((number for number, line in enumerate(lines) if _is_content(line)), None)
    if first is None or first == at[0] or at[1] != 0 or not lines[first].startswith(" "):
        return None
    name = lines[first].strip().partition(":")[0]
    message = "this field begins further in than the fields below it"
    blanks = len(lines[first]) - len(lines[first].lstrip())
    return (first, blanks), message, f"take out the blanks before '{excerpt(name)}'"


def _is_content(line: str) -> bool:
    return bool(line.strip()) and not line.lstrip().startswith("#")


def _colon(at: Position, lines: Sequence[str]) -> Recognised | None:
    """A colon where a text was being read."""
    line = lines[at[0]]
    text = line.strip()
    if ":" in line[: at[1]].rstrip(":") and (match := _FIELD.fullmatch(text)):
        whole = match[2].split(" #", 1)[0].strip(CURLY + " ")
        if '"' in whole or "\\" in whole:
            return None
        curly = "curly quotation marks hold nothing together, and " if match[2][0] in CURLY else ""
        message = f"{curly}a second colon on the line would begin another field"
        if time := re.fullmatch(r"([0-9]{1,2}):\s+([0-5][0-9])", whole):
            message = "a blank stands inside this time"
            return at, message, f"write {match[1]}{time[1]}:{time[2]}"
        if whole.endswith("}") and "{" not in whole:
            return at, f"'{{' is missing before '{excerpt(whole)}'", f"write {match[1]}{{{whole}"
        two = re.fullmatch(r"(\S.*?)(?:, *| {2,}|\t+)([a-z_]+): *(\S.*)", whole)
        if two and two[2] in field_names():
            own = f"'{match[1]}{excerpt(two[1])}' and '{two[2]}: {excerpt(two[3])}'"
            return at, message, f"write each field on a line of its own: {own}"
        return at, message, f'put the text in quotes: {match[1]}"{excerpt(whole)}"'
    name = text.partition(":")[0]
    if name in field_names() and (found := _before_fields(at[0], lines)):
        return found
    is_bare = name in field_names() and at[0] > 0 and ":" not in lines[at[0] - 1]
    if is_bare and (found := _field(at[0] - 1, lines)):
        return found
    if name in field_names() and at[0] > 0 and not _NO_SPACE.match(lines[at[0] - 1].strip()):
        indent = len(line) - len(line.lstrip())
        message = f"'{name}' begins further in than the line above it allows"
        return (at[0], indent), message, "line it up with the fields that it belongs to"
    return None


def _before_fields(number: int, lines: Sequence[str]) -> Recognised | None:
    """A text behind a dash, where the first of the fields below belongs."""
    above = next((own for own in range(number - 1, -1, -1) if _is_content(lines[own])), 0)
    own, line = _DASHED_TEXT.fullmatch(lines[above].rstrip()), lines[number]
    if not own or own.start(1) != len(line) - len(line.lstrip()):
        return None
    message = "a text stands before the fields of this item, and behind no field's name"
    hint = f"write it behind one, say - note: {excerpt(own[1])}"
    if reps := _REPS.fullmatch(own[1]):
        hint = f"write - reps: {reps[1]}, and distance: {reps[2]} on a line of its own below it"
    return (above, own.start(1)), message, hint
