"""Brackets that the parser found open, or closed by another, and what is missing in them."""

from __future__ import annotations

import re

from almanac.source.scalars import in_quotes
from almanac.source.syntax.slips import Position, excerpt

_FIELD_IN_LIST = re.compile(r", *[a-z_]+: ")
_PAIRS = {"[": "]", "{": "}"}
_NEXT_FIELD = re.compile(r" *(?:- )?[a-z_]+:(?: |$)")
_COLON_IN_TEXT = re.compile(r"(?<=[{ ])([a-z_]+): ([^\[\]{},\"':]+: [^\[\]{},\"':]+)(?=[,}])")


def nothing_there(at: Position, lines: list[str]) -> tuple[Position, str, str]:
    """A bracket whose file ends before a value comes, or a value left out between commas."""
    if "".join(lines[at[0] : at[0] + 1])[at[1] :].strip():
        is_comma = lines[at[0]][at[1] : at[1] + 1] == ","
        mend = "write it, or put the text in quotes"
        return (
            at,
            "a value is missing before this",
            "take one of the two commas out, or write what belongs between" if is_comma else mend,
        )
    opened = [
        (number, line.rindex(char))
        for number, line in enumerate(lines[: at[0] + 1])
        for char in "[{"
        if char in line
    ]
    return (
        max(opened, default=at),
        "the bracket that opens here is not closed",
        "add the closing bracket",
    )


def crossed(
    said: str, at: Position, since: Position, lines: list[str]
) -> tuple[Position, str, str] | None:
    """A bracket that another closes: written in place of its own, or its own left out before it.
    Asked before any line is moved, which might hide it in a text.
    """
    line, opening = ("".join(lines[own[0] : own[0] + 1]) for own in (at, since))
    opened, closed = opening[since[1] : since[1] + 1], line[at[1] : at[1] + 1]
    own = _PAIRS.get(opened, closed)
    if "did not find expected ',' or" not in said or own == closed:
        return None
    if closed not in _PAIRS.values():
        return None
    held = line[since[1] : at[1]] if at[0] == since[0] else ""
    if held.startswith("[") and (behind := _FIELD_IN_LIST.search(held)):
        where = (at[0], since[1] + behind.start())
        said = f"{held[: behind.start()]}]{held[behind.start() :]}{closed}"
        return where, "']' is missing before this", f"write {excerpt(said)}"
    if held and _open(line[: since[1]], closed) > -_open(line[at[1] + 1 :], closed):
        return (
            at,
            f"'{own}' is missing before this '{closed}'",
            f"write {excerpt(held)}{own}{closed}",
        )
    return at, f"'{opened}' is closed by '{closed}' here", f"write {own} in its place"


def _open(text: str, closed: str) -> int:
    """How many brackets of a sort a text opens more than it closes."""
    return sum(text.count(char) for char in _PAIRS if _PAIRS[char] == closed) - text.count(closed)


def open_bracket(at: Position, since: Position, lines: list[str]) -> tuple[Position, str, str]:
    """A list or mapping in brackets that goes on where it should not: a comma or the closing
    bracket is missing.
    """
    line = lines[at[0]] if at[0] < len(lines) else ""
    if at[0] == since[0] and (row := re.search(r"\{[^{}]*;[^{}]*\}", line)):
        said = excerpt(row[0].replace(";", ","))
        return (at[0], line.index(";")), "a ';' stands where a comma belongs", f"write {said}"
    for text in _COLON_IN_TEXT.finditer(line) if at[0] == since[0] else ():
        if text.start(2) <= at[1] <= text.end():
            where, said = (at[0], text.start(2)), excerpt(text[2])
            amiss = "a second colon in a text would begin another field"
            return where, amiss, f"put the text in quotes: {text[1]}: {in_quotes(said)}"
    if at[0] == since[0] and line[at[1] :].strip():
        return (
            at,
            "a comma is missing before this, or the bracket is not closed",
            "add it, or put the text in quotes",
        )
    mark = lines[since[0]][since[1] : since[1] + 1]
    last = max(since[0], *(n for n in range(since[0], at[0]) if lines[n].strip()), -1)
    hint = "add the closing bracket"
    if last > since[0] and mark in _PAIRS and _NEXT_FIELD.match(line):
        hint += f" {_PAIRS[mark]} at the end of line {last + 1}"
    return since, "the bracket that opens here is not closed", hint
