"""Slips that are sound YAML and read as something else: a dash or a blank left out, a '#' before a
value, fields that lost their indent. Each is told once, by its cause.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

import yaml

from almanac.findings import Finding, Place, error
from almanac.source import schemas
from almanac.source.explain.around import line_of, of_row
from almanac.source.failure import Failure
from almanac.source.meant.cut_off import whole_day
from almanac.source.scalars import in_quotes, scalar
from almanac.source.suggest import listed
from almanac.source.syntax.slips import LIST_MARK, excerpt

_ONLY_A_COMMENT = re.compile(r"(?:- )?([a-z_]+):[ \t]+#[ \t]*(\S.*?)[ \t]*")


def of_type(failure: Failure) -> Finding | None:
    """The slip by which a value has another type than it should, or None."""
    if failure.value is None:
        return _behind_a_hash(failure) or _lost_indent(failure)
    wanted = failure.wanted if isinstance(failure.wanted, list) else [failure.wanted]
    if "array" in wanted and isinstance(failure.value, str):
        return _without_dashes(failure)
    return None


def text_hint(failure: Failure) -> str:
    """For a text that reads as something else: what to write; "" where nothing is known."""
    value = failure.value
    if value is None:
        if failure.says("vocabulary"):
            return ""
        return f"write it behind the colon: {_about(failure)}".rstrip(": ")
    if isinstance(value, list) and len(value) == 1 and isinstance(value[0], str):
        if not isinstance((failure.path or ("",))[-1], int):
            return f"write it without a dash or brackets: {excerpt(value[0])}"
        return f"one dash is enough: - {excerpt(value[0])}"
    if isinstance(value, list) and (own := _known(failure)):
        return f"one belongs here: write {listed(own)}"
    if isinstance(value, list) and value and all(isinstance(own, str) for own in value):
        whole = ", ".join(value)
        if re.search(failure.says("pattern"), whole):
            return f"write it as one text: {scalar(excerpt(whole))}"
    if isinstance(value, dict) and value:
        line = of_row(failure) or line_of(failure).removeprefix("- ")
        whole = re.split(r"\s#", line)[0].strip()
        if whole.startswith("? "):
            return f"a text cannot begin with '? ': put it in quotes: {in_quotes(whole)}"
        if whole and not whole.startswith(("{", "[")):
            return f"a colon in a text begins a field: put the text in quotes: {in_quotes(whole)}"
    return ""


def _known(failure: Failure) -> list[str]:
    """The items of a list that could each stand in its place: words or ids that there are."""
    known: set[str] = set()
    for keyword in ("vocabulary", "reference"):
        if name := failure.says(keyword):
            known |= {*failure.names.of(keyword, name)}
    return [own for own in failure.value if isinstance(own, str) and own in known]


def _about(failure: Failure) -> str:
    said = str(failure.says("says") or failure.says("description"))
    return said[:1].lower() + said[1:].rstrip(".")


def _without_dashes(failure: Failure) -> Finding | None:
    """A list of which a line begins otherwise than with a dash and a blank."""
    document, node = failure.document, failure.document.node(failure.path)
    if not isinstance(node, yaml.ScalarNode) or node.style:
        return None
    lines = document.text.split("\n")
    first = node.start_mark.line
    is_alone = not lines[first][: node.start_mark.column].strip()
    text = lines[first][node.start_mark.column :].strip()
    mark = LIST_MARK.match(text)
    if not is_alone and not mark:
        return None
    return error(
        "wrong-type",
        Place(document.file, first + 1, node.start_mark.column + 1),
        f"this line of {failure.name} does not begin with a dash and a space, as a list does",
        f"write - {excerpt(text[mark.end() :] if mark else text)}",
    )


def _behind_a_hash(failure: Failure) -> Finding | None:
    """A value that a '#' makes a comment."""
    document = failure.document
    key = document.place(failure.path, of_key=True)
    line = document.text.split("\n")[key.line - 1].rstrip("\r")
    found = _ONLY_A_COMMENT.fullmatch(line.strip())
    if not found or not failure.path or found[1] != failure.path[-1]:
        return None
    return error(
        "cut-text",
        Place(document.file, key.line, line.index("#") + 1),
        f"'#' begins a comment, so that nothing is left of {failure.name}",
        f"write {found[1]}: {excerpt(found[2])}",
    )


def lost_fields(kind: str, data: Mapping[str, Any]) -> dict[str, list[str]]:
    """By an entry's field that is empty and should hold fields: those below it that belong to it,
    and to no entry of the kind.
    """
    own = schemas.fields(kind)
    found: dict[str, list[str]] = {}
    empty, inner, is_by_id = "", dict[str, Any](), False
    for key, value in data.items():
        if value is None and key in own:
            piece = schemas.resolve(own[key])
            empty, inner = key, piece.get("properties", {})
            is_by_id = isinstance(piece.get("additionalProperties"), dict)
        elif key not in own and (key in inner or (is_by_id and isinstance(value, dict))):
            found.setdefault(empty, []).append(key)
        else:
            empty, inner, is_by_id = "", {}, False
    return found


def _lost_indent(failure: Failure) -> Finding | None:
    if len(failure.path) != 1:
        return None
    lost = lost_fields(failure.kind, failure.document.data).get(str(failure.path[0]))
    if not lost:
        return None
    names = listed(lost).replace(" or ", " and ")
    belong = "belongs" if len(lost) == 1 else "belong"
    return failure.say(
        "wrong-type",
        f"{failure.name} is empty, and {names} below it {belong} to it",
        f"write two spaces before each line that belongs to {failure.name}",
    )


def hashed_out(failure: Failure, key: str) -> Place | None:
    """Where the line of a field stands behind a '#', in the entry or in the piece that lacks it."""
    document = failure.document
    if document.lent:
        return None
    lines, first, last = document.text.split("\n"), 0, None
    if failure.path:
        node = document.node(failure.path)
        first, last = node.start_mark.line, node.end_mark.line + 1
        if isinstance(node, yaml.MappingNode) and node.flow_style:
            return None
    dash = "- " if failure.path and isinstance(failure.path[-1], int) else ""
    out = re.compile(rf"( *)(?:{dash})?# *(?:{dash})?{re.escape(key)}:(?: |$)")
    for number in range(first, len(lines[:last])):
        found = out.match(lines[number])
        if found and (failure.path or not found[1]):
            return Place(document.file, number + 1, lines[number].index("#") + 1)
    return None


def cut_by_comma(failure: Failure, key: str) -> str:
    """For words behind a comma, which in brackets read as a field: the whole text in quotes; ""
    where no text stands before them.
    """
    before = list(failure.value)[: list(failure.value).index(key)]
    value = failure.value[before[-1]] if before else None
    if failure.value[key] is not None or not isinstance(value, str) or " " not in f"{value}{key}":
        return ""
    name = before[-1]
    if day := whole_day(value, key):
        return f"write {name}: {day}"
    return f"a comma ends a text in brackets: write {name}: {in_quotes(excerpt(f'{value}, {key}'))}"


def cut_word(failure: Failure, key: str) -> str:
    """For a word behind a comma which in brackets reads as a field, where the field before it takes
    one alone; "" elsewhere.
    """
    before = list(failure.value)[: list(failure.value).index(key)]
    if failure.value[key] is not None or not before or before[-1] not in failure.fields:
        return ""
    one = f"{before[-1]}: {excerpt(str(failure.value[before[-1]]))}"
    return f"'{before[-1]}' takes one, and a comma begins another field: write {one}"
