"""What somebody put together that stands apart: several fields in a line, fields where a list
belongs.
"""

from __future__ import annotations

import re
from typing import Any

from almanac.source.failure import Failure
from almanac.source.meant.words import as_written, word_meant
from almanac.source.paths import plain_id
from almanac.source.scalars import in_quotes, scalar
from almanac.source.syntax.slips import excerpt
from almanac.units import TimeError, parse_written_time

_ISO_DAY = re.compile(r"(?:19|20)[0-9]{2}-[0-9]{2}-[0-9]{2}", re.ASCII)
_OF_DAY = re.compile(r"[0-9]{1,2}:[0-9]{2}")
_MOST_TOKENS = 8


def taken(failure: Failure, piece: dict[str, Any], text: str) -> str:
    """How a piece of a schema has a word, an id, a choice, a time or a day that a text surely is;
    "" for none.
    """
    piece = failure.resolved(piece)
    if piece.get("format") == "date":
        return text if _ISO_DAY.fullmatch(text) else ""
    if "clock" in piece:
        try:
            parse_written_time(text)
        except TimeError:
            return ""
        return text if ":" in text else ""
    if "pattern" in piece and _OF_DAY.fullmatch(text):
        return f'"{text}"' if re.search(piece["pattern"], text) else ""
    known = failure.names.of("vocabulary", piece.get("vocabulary", "")) or failure.names.of(
        "reference", piece.get("reference", "")
    )
    return text if text in known else word_meant(failure, piece, text, is_sure=True)


def is_free_text(failure: Failure, piece: dict[str, Any]) -> bool:
    """Whether a piece of a schema takes any text."""
    piece = failure.resolved(piece)
    closed = {"vocabulary", "reference", "clock", "enum", "format"}
    return piece.get("type") == "string" and not closed & piece.keys()


def in_one_line(failure: Failure, text: str) -> str:
    """Fields that stand in one text, each known by what it is, as they are written; "" where a word
    of it is of no field.
    """
    told: dict[str, str] = {}
    tokens = [own for own in re.split(r"[\s,;]+", text.strip()) if own][: _MOST_TOKENS + 1]
    for token in tokens:
        free = [name for name in failure.fields if name not in told]
        name = next((own for own in free if taken(failure, failure.fields[own], token)), "")
        if not name:
            return ""
        told[name] = taken(failure, failure.fields[name], token)
    return as_written(failure, told) if 0 < len(tokens) <= _MOST_TOKENS else ""


def text_of_field(failure: Failure, text: str) -> str:
    """A sentence where fields belong, under the first that takes one; "" where none does."""
    needed = failure.says("required", [])
    first = "own" if "own" in failure.fields else ""
    name = first or next((own for own in needed if is_free_text(failure, failure.fields[own])), "")
    is_sentence = " " in text.strip() and not re.search(r"[0-9]", text)
    return as_written(failure, {name: scalar(excerpt(text))}) if name and is_sentence else ""


def number_meant_for(failure: Failure, text: str) -> str:
    """For a text or number where fields belong: the one that takes texts only with a number in
    them, as one to call; "" where none does.
    """
    for name in failure.fields:
        piece, said = failure.resolved(failure.fields[name]), text.removeprefix(f"{name} ")
        pattern = piece.get("pattern", "")
        is_numbered = is_free_text(failure, piece) and not re.search(pattern, "a")
        if is_numbered and len(said) > 1 and re.search(pattern, said):
            return f"write {as_written(failure, {name: in_quotes(excerpt(said))})}"
    return ""


def dashes_meant(failure: Failure) -> str:
    """For fields where a list belongs: what to put a dash before."""
    keys = list(failure.value)
    node = failure.document.node(failure.path)
    is_row = all(value is None for value in failure.value.values())
    if is_row and getattr(node, "flow_style", False):
        return f"write [{', '.join(map(str, keys))}], in square brackets"
    if all(isinstance(key, int) or str(key).isdigit() for key in keys):
        return f"write a dash in place of each number: '- ' for '{keys[0]}:'"
    return f"this is a list: write a dash and a space before '{excerpt(str(keys[0]))}'"


def names_meant(failure: Failure) -> str:
    """For a list where fields belong that are named by ids: how they are written; "" elsewhere."""
    piece = failure.resolved(failure.schema)
    if failure.value and all(own in failure.fields for own in map(str, failure.value)):
        return f"write each with a colon, without a dash or brackets: {failure.value[0]}: ..."
    words = [own for own in failure.value if isinstance(own, str)]
    if "propertyNames" not in piece or not words or len(words) < len(failure.value):
        return ""
    own = failure.resolved(piece.get("additionalProperties") or {})
    behind = "how many" if own.get("type") == "integer" else "..."
    return f"write each with a colon, without a dash or brackets: {excerpt(words[0])}: {behind}"


def by_id(failure: Failure) -> str:
    """For a list of fields where each stands below its id: how it is written; "" elsewhere."""
    inner = failure.resolved(failure.schema).get("additionalProperties")
    if not isinstance(inner, dict) or not all(isinstance(own, dict) for own in failure.value):
        return ""
    known = {*failure.resolved(inner).get("properties", {})}
    first = failure.value[0] if failure.value else {}
    if not {*first} & known:
        return ""
    said = next((first[own] for own in ("id", "name", "title") if own in first), "")
    id = plain_id(said) if isinstance(said, str) else ""
    return (
        f"write '{id or 'its-id'}:' without a dash, and its fields below it, two spaces further in"
    )


def without_dashes(failure: Failure) -> str:
    """For a list of single fields where they belong together: how they are written; ""
    elsewhere.
    """
    rows = [own for own in failure.value if isinstance(own, dict) and len(own) == 1]
    fields = {str(key): value for row in rows for key, value in row.items()}
    if not rows or len(rows) < len(failure.value) or len(fields) < len(rows):
        return ""
    first = next(iter(fields))
    if not getattr(failure.document.node(failure.path), "flow_style", False):
        return f"write each without its dash: {excerpt(first)}: ..."
    plain = {key: value for key, value in fields.items() if isinstance(value, str | int | float)}
    if len(plain) < len(fields) or any(isinstance(own, bool) for own in plain.values()):
        return "write it in braces, {...}, not in square brackets"
    told = ", ".join(f"{key}: {_as_it_was(own)}" for key, own in plain.items())
    return f"write {{{told}}}"


def _as_it_was(value: str | float) -> str:
    return scalar(excerpt(value)) if isinstance(value, str) else str(value)
