"""Values of an entry as a reviewer reads them: in full, field by field, and what differs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from almanac.report.fenced import difference, fenced

WHOLE = 700  # characters: no field of a danger or an acceptance is longer


def words_in_a_row(value: Any) -> str:
    """A list of words, or a few fields, in a row; anything else as it is."""
    if isinstance(value, list):
        return ", ".join(map(words_in_a_row, value))
    if isinstance(value, Mapping) and list(value) == ["from", "to"]:
        return f"{value['from']} to {value['to']}"
    if isinstance(value, Mapping):
        return ", ".join(f"{key} {words_in_a_row(own)}" for key, own in value.items())
    return str(value)


def in_words(value: Any) -> str:
    """A value in full, each of its fields by name."""
    if isinstance(value, Mapping):
        return "; ".join(f"{_name(key)} {in_words(own)}" for key, own in value.items())
    return fenced(value, WHOLE)


def differences(before: Any, after: Any) -> str:
    """Each field that differs, before and after, in full."""
    if not (isinstance(before, Mapping) and isinstance(after, Mapping)):
        return difference(before, after, WHOLE)
    return "; ".join(
        f"{_name(key)} {difference(before.get(key, ''), after.get(key, ''), WHOLE)}"
        for key in dict.fromkeys([*before, *after])
        if before.get(key) != after.get(key)
    )


def _name(key: Any) -> str:
    """A field's name: the program's own words plain, any other fenced."""
    return key if key in {"hazard", "own", "control", "reason", "text"} else fenced(key)


def amount(value: Any) -> str:
    """A number with its unit, or a time, fenced."""
    if isinstance(value, Mapping) and "value" in value:
        return fenced(f"{value['value']} {value.get('unit', '')}".strip())
    return fenced(value.get("to", value) if isinstance(value, Mapping) else value)


def is_sentence(value: Any) -> bool:
    """Whether a value says something in words, rather than being a number or one of a list."""
    return isinstance(value, str) and value.endswith(".")
