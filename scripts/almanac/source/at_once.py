"""What a schema takes, told without the library: nearly all of an entry is sound, and to ask the
library of each text and number takes most of a check.

Only a yes counts. Whatever is not plain here (a choice, a condition, a keyword that is not listed)
is left to the library, and so is every value that is not taken: it alone says what is wrong.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date
from functools import cache
from typing import Any

from almanac.source.names import Answer
from almanac.units import TimeError, parse_time, parse_whole_time

Ask = Callable[[str, str, str], Answer]
Piece = Mapping[str, Any]

# Keywords that forbid nothing beyond the type.
_SAYING = {"type", "default", "sorted", "description", "says"}
_OF_TEXT = {*_SAYING, "minLength", "maxLength", "pattern", "vocabulary", "reference", "format"}
_OF_TIME = {*_SAYING, "clock", "pattern", "exclusiveMinimum", "exclusiveMaximum", "multipleOf"}
_CLOCK = ["string", "number"]
_OF_NUMBER = {*_SAYING, "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"}
_OF_LIST = {*_SAYING, "items", "minItems", "maxItems", "uniqueItems"}
_OF_FIELDS = {
    *_SAYING, "properties", "required", "additionalProperties", "minProperties", "maxProperties",
}  # fmt: skip


def takes(piece: Piece, value: Any, ask: Ask) -> bool:
    """Whether a piece of a schema surely takes a value. ``ask`` answers whether a list of names
    holds a word.
    """
    kind = piece.get("type")
    if isinstance(value, str):
        if kind == "string":
            return _takes_text(piece, value, ask)
        return kind == _CLOCK and _takes_time(piece, value)
    if isinstance(value, bool) or value is None:
        return False
    if isinstance(value, list):
        return kind == "array" and _takes_list(piece, value, ask)
    if isinstance(value, dict):
        return kind == "object" and _takes_fields(piece, value, ask)
    is_number = kind == "number" or (kind == "integer" and isinstance(value, int))
    return is_number and _takes_number(piece, value)


def _takes_text(piece: Piece, value: str, ask: Ask) -> bool:
    if not piece.keys() <= _OF_TEXT:
        return False
    return (
        piece.get("minLength", 0) <= len(value) <= piece.get("maxLength", len(value))
        and ("pattern" not in piece or exact(piece["pattern"]).search(value) is not None)
        and ("vocabulary" not in piece or bool(ask("vocabulary", piece["vocabulary"], value)))
        and ("reference" not in piece or bool(ask("reference", piece["reference"], value)))
        and ("format" not in piece or (piece["format"] == "date" and _is_day(value)))
    )


def _is_day(value: str) -> bool:
    try:
        date.fromisoformat(value)
    except ValueError:
        return False
    return len(value) == len("2026-01-31")  # Python reads shorter forms too


def _takes_time(piece: Piece, value: str) -> bool:
    if not piece.keys() <= _OF_TIME or piece.get("clock") not in (True, "whole"):
        return False
    if "pattern" in piece and exact(piece["pattern"]).search(value) is None:
        return False
    try:
        (parse_whole_time if piece["clock"] == "whole" else parse_time)(value)
    except TimeError:
        return False
    return True


def _takes_number(piece: Piece, value: float) -> bool:
    return (
        piece.keys() <= _OF_NUMBER
        and piece.get("minimum", value) <= value <= piece.get("maximum", value)
        and ("exclusiveMinimum" not in piece or piece["exclusiveMinimum"] < value)
        and ("exclusiveMaximum" not in piece or value < piece["exclusiveMaximum"])
    )


def _takes_list(piece: Piece, value: list[Any], ask: Ask) -> bool:
    if not piece.keys() <= _OF_LIST or "items" not in piece:
        return False
    if not piece.get("minItems", 0) <= len(value) <= piece.get("maxItems", len(value)):
        return False
    if piece.get("uniqueItems") and not _are_different_texts(value):
        return False
    items = piece["items"]
    return isinstance(items, dict) and all(takes(items, item, ask) for item in value)


def _are_different_texts(value: list[Any]) -> bool:
    return all(isinstance(item, str) for item in value) and len({*value}) == len(value)


def _takes_fields(piece: Piece, value: dict[str, Any], ask: Ask) -> bool:
    if not piece.keys() <= _OF_FIELDS or piece.get("additionalProperties") is not False:
        return False
    if not piece.get("minProperties", 0) <= len(value) <= piece.get("maxProperties", len(value)):
        return False
    fields = piece.get("properties", {})
    return all(name in value for name in piece.get("required", ())) and all(
        name in fields and takes(fields[name], inner, ask) for name, inner in value.items()
    )


@cache
def exact(pattern: str) -> re.Pattern[str]:
    """A pattern of a schema as a browser reads it: ``$`` is the end of the text, not before a last
    line end, and a digit is 0 to 9.
    """
    return re.compile(re.sub(r"\$$", r"\\Z", pattern).replace(r"\d", "[0-9]"))
