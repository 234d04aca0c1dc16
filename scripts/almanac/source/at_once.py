"""What a schema takes, told without the library: nearly every entry is sound, and to ask the
library of each of its texts and numbers takes most of a check.

Only a yes counts. Whatever is not plain here (a keyword that is not listed, a condition of another
form) is left to the library, and so is every value that is not taken: it alone says what is wrong.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from typing import Any

from almanac.source.at_once_values import OF_ALL, OF_NUMBER, OF_TEXT, Ask, number_tests, text_tests

Piece = Mapping[str, Any]
Takes = Callable[[Any, Ask], bool]
Tests = tuple[Takes, ...]

_OF_LIST = {"items", "minItems", "maxItems", "uniqueItems"}
_OF_FIELDS = {
    "properties", "required", "additionalProperties", "propertyNames", "minProperties",
    "maxProperties", "dependentRequired", "not_with",
}  # fmt: skip
_OF_CASES = {"if", "then", "else"}
_KNOWN = OF_ALL | OF_TEXT | OF_NUMBER | _OF_LIST | _OF_FIELDS | _OF_CASES | {"$ref", "$defs"}
_TYPES = {
    str: ("string",), int: ("integer", "number"), float: ("number",), list: ("array",),
    dict: ("object",), bool: ("boolean",),
}  # fmt: skip
_ALIKE: tuple[set[type], ...] = (set(), {str}, {int})
_REF = "#/$defs/"
_made: dict[int, tuple[Piece, Takes]] = {}  # a piece is kept, so that no other has its number


def takes(piece: Piece, value: Any, ask: Ask) -> bool:
    """Whether a piece of a schema, or a whole one, surely takes a value. ``ask`` answers whether a
    list of names holds a word.
    """
    return _of(piece, piece.get("$defs", {}))(value, ask)


def _of(piece: Piece, pieces: Mapping[str, Piece]) -> Takes:
    known = _made.get(id(piece))
    if known is None:
        _made[id(piece)] = known = piece, _made_of(piece, pieces)
    return known[1]


def _never(value: Any, ask: Ask) -> bool:
    return False


def _made_of(piece: Piece, pieces: Mapping[str, Piece]) -> Takes:
    if not isinstance(piece, dict) or not piece.keys() <= _KNOWN:
        return _never
    types = piece.get("type", [name for names in _TYPES.values() for name in names])
    types = {types} if isinstance(types, str) else set(types)
    by_class: dict[type, Tests] = {}
    of_cases = tuple(_of_cases(piece, pieces))

    def tests(value: Any) -> Tests | None:
        """Made when a value of the class is first met: a piece may hold itself."""
        kind = value.__class__
        if kind not in by_class and types & set(_TYPES.get(kind, ())):
            by_class[kind] = (*_tests(kind, piece, pieces), *of_cases)
        return by_class.get(kind)

    def taken(value: Any, ask: Ask) -> bool:
        own = by_class.get(value.__class__) or tests(value)
        if own is None:
            return False
        for test in own:  # noqa: SIM110 (a generator for each value takes longer)
            if not test(value, ask):
                return False
        return True

    return taken


def _of_cases(piece: Piece, pieces: Mapping[str, Piece]) -> Iterator[Takes]:
    """What is asked of a value of any class: what stands elsewhere, and in a case."""
    if "$ref" in piece:
        target = piece["$ref"].removeprefix(_REF)
        yield lambda value, ask: target in pieces and _of(pieces[target], pieces)(value, ask)
    if "if" in piece:
        holds = _condition(piece["if"])
        then, other = (
            _of(piece[name], pieces) if name in piece else _always for name in ("then", "else")
        )
        if holds is None:
            yield _never
        else:
            yield lambda value, ask: (then if holds(value) else other)(value, ask)


def _always(value: Any, ask: Ask) -> bool:
    return True


def _condition(piece: Piece) -> Callable[[Any], bool] | None:
    """Whether a value meets a condition: of a type, with certain fields, some of them certain
    texts. None for a condition of another form.
    """
    fields = piece.get("properties", {})
    is_plain = piece.keys() <= {"type", "required", "properties"} and all(
        own.keys() == {"const"} and isinstance(own["const"], str) for own in fields.values()
    )
    if not is_plain or not isinstance(piece.get("type", ""), str):
        return None
    kind, required = piece.get("type"), piece.get("required", ())
    wanted = {name: own["const"] for name, own in fields.items()}

    def holds(value: Any) -> bool:
        if kind is not None and kind not in _TYPES.get(value.__class__, ()):
            return False
        if not isinstance(value, dict):
            return True
        return all(name in value for name in required) and all(
            value[name] == text for name, text in wanted.items() if name in value
        )

    return holds


def _tests(kind: type, piece: Piece, pieces: Mapping[str, Piece]) -> Iterator[Takes]:
    if kind is str:
        yield from text_tests(piece)
    elif kind is int or kind is float:
        yield from number_tests(piece)
    elif kind is list:
        yield from _list_tests(piece, pieces)
    elif kind is dict:
        yield from _field_tests(piece, pieces)
    elif "enum" in piece:
        yield _never
    elif "const" in piece:
        wanted = piece["const"]
        yield lambda value, _: value is wanted  # no number is True


def _list_tests(piece: Piece, pieces: Mapping[str, Piece]) -> Iterator[Takes]:
    if "enum" in piece or "const" in piece:
        yield _never
    least, most = piece.get("minItems", 0), piece.get("maxItems")
    yield lambda value, _: least <= len(value) and (most is None or len(value) <= most)
    if piece.get("uniqueItems"):
        yield lambda value, _: _are_different(value)
    if "items" in piece:
        item = _of(piece["items"], pieces)
        yield lambda value, ask: all(item(inner, ask) for inner in value)


def _are_different(value: list[Any]) -> bool:
    """Whether they are all texts or all whole numbers, no two the same."""
    return {item.__class__ for item in value} in _ALIKE and len({*value}) == len(value)


def _has_with(key: str, needed: Sequence[str], value: dict[str, Any], ask: Ask) -> bool:
    return key not in value or all(name in value for name in needed)


def _has_without(key: str, others: Sequence[str], value: dict[str, Any], ask: Ask) -> bool:
    return key not in value or all(name not in value for name in others)


def _field_tests(piece: Piece, pieces: Mapping[str, Piece]) -> Iterator[Takes]:
    if "enum" in piece or "const" in piece:
        yield _never
    least, most = piece.get("minProperties", 0), piece.get("maxProperties")
    if least or most is not None:
        yield lambda value, _: least <= len(value) and (most is None or len(value) <= most)
    if required := piece.get("required", ()):
        yield lambda value, _: all(name in value for name in required)
    for key, needed in piece.get("dependentRequired", {}).items():
        yield partial(_has_with, key, needed)
    for key, others in piece.get("not_with", {}).items():
        yield partial(_has_without, key, others)
    if "propertyNames" in piece:
        name_takes = _of(piece["propertyNames"], pieces)
        yield lambda value, ask: all(name_takes(name, ask) for name in value)
    fields = {name: _of(inner, pieces) for name, inner in piece.get("properties", {}).items()}
    more = piece.get("additionalProperties", True)
    other = (_always if more else _never) if isinstance(more, bool) else _of(more, pieces)

    def every_field(value: dict[str, Any], ask: Ask) -> bool:
        for name, inner in value.items():  # noqa: SIM110 (as above)
            if not fields.get(name, other)(inner, ask):
                return False
        return True

    yield every_field
