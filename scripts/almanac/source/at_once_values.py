"""What a schema takes of texts and numbers, told without the library: see ``at_once``."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from functools import cache, partial
from typing import Any

from almanac.source.names import Answer
from almanac.units import TimeError, parse_whole_time, parse_written_time

Ask = Callable[[str, str, str], Answer]
Test = Callable[[Any, Ask], bool]
Limit = Callable[[float, float], bool]

# Keywords that forbid nothing beyond the type, and those that hold for values of every type.
_SAYING = {
    "default", "sorted", "description", "says", "title", "seldom", "looser", "tells", "$schema",
    "$id",
}  # fmt: skip
OF_ALL = _SAYING | {"type", "enum", "const", "clock"}
OF_TEXT = {"minLength", "maxLength", "pattern", "vocabulary", "reference", "format"}
OF_NUMBER = {"minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "multipleOf"}


def text_tests(piece: Mapping[str, Any]) -> Iterator[Test]:
    """What a text has to pass, where a piece of a schema lets it be a text."""
    yield from _fixed(piece)
    least, most = piece.get("minLength", 0), piece.get("maxLength")
    if least or most is not None:
        yield lambda value, _: least <= len(value) and (most is None or len(value) <= most)
    if "pattern" in piece:
        search = exact(piece["pattern"]).search
        yield lambda value, _: search(value) is not None
    for keyword in ("vocabulary", "reference"):
        if keyword in piece:
            yield partial(_is_known, keyword, piece[keyword])
    if "format" in piece:
        is_date = piece["format"] == "date"
        yield lambda value, _: is_date and _is_day(value)


def number_tests(piece: Mapping[str, Any]) -> Iterator[Test]:
    """What a number has to pass, where a piece of a schema lets it be a number."""
    yield from _fixed(piece)
    for keyword, holds in _LIMITS.items():
        if keyword in piece:
            yield partial(_is_within, holds, piece[keyword])


def _is_known(keyword: str, name: str, value: str, ask: Ask) -> bool:
    return bool(ask(keyword, name, value))


def _is_within(holds: Limit, limit: float, value: float, ask: Ask) -> bool:
    return holds(value, limit)


def _is_one_of(texts: frozenset[str], value: object, ask: Ask) -> bool:
    return value in texts


def _is_multiple(value: float, of: float) -> bool:
    # As the library tells it, to the last bit.
    if isinstance(of, float):
        return float(value / of).is_integer()
    return not value % of


_LIMITS: Mapping[str, Limit] = {
    "minimum": lambda value, limit: value >= limit,
    "maximum": lambda value, limit: value <= limit,
    "exclusiveMinimum": lambda value, limit: value > limit,
    "exclusiveMaximum": lambda value, limit: value < limit,
    "multipleOf": _is_multiple,
}


def _fixed(piece: Mapping[str, Any]) -> Iterator[Test]:
    """Whether it is one of certain texts, and a time on a clock. No number is surely one of a row:
    1 and 1.0 and true are told apart by the library.
    """
    for allowed in ([piece["const"]] if "const" in piece else None, piece.get("enum")):
        if allowed is not None:
            texts = frozenset(own for own in allowed if isinstance(own, str))
            yield partial(_is_one_of, texts)
    if "clock" in piece:
        parse = {True: parse_written_time, "whole": parse_whole_time}.get(piece["clock"])
        yield lambda value, _: parse is not None and _is_parsed(parse, value)


def _is_parsed(parse: Callable[[Any], object], value: Any) -> bool:
    try:
        parse(value)
    except TimeError:
        return False
    return True


def _is_day(value: str) -> bool:
    try:
        date.fromisoformat(value)
    except ValueError:
        return False
    return len(value) == len("2026-01-31")  # Python reads shorter forms too


@cache
def exact(pattern: str) -> re.Pattern[str]:
    """A pattern of a schema as a browser reads it: ``$`` is the end of the text, not before a last
    line end, and a digit is 0 to 9.
    """
    return re.compile(re.sub(r"\$$", r"\\Z", pattern).replace(r"\d", "[0-9]"))
