"""Fields of which a colon made what is none: a word of one as the name of another, reps as on a
whiteboard, a sentence with a colon in it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from almanac.source.days_said import weekday_said
from almanac.source.failure import Failure, quote
from almanac.source.meant.put_together import is_free_text, taken
from almanac.source.meant.stands_for import stands_for
from almanac.source.meant.whiteboard import rep_meant
from almanac.source.meant.words import as_written
from almanac.source.scalars import in_quotes, scalar
from almanac.source.suggest import fold, one_letter_off
from almanac.source.syntax.slips import excerpt, field_names

# What coaches call a field, and the field. Of those that are sure nothing else can be meant:
# an interval may be one of rest.
_SURELY = {
    "turnaround": "sendoff", "send_off": "sendoff", "leave_every": "sendoff",
    "drill": "do", "name": "title", "equipment": "gear", "kit": "gear", "notes": "note",
    "correct": "right", "repeats": "reps", "shallow": "from", "shallowest": "from", "deep": "to",
    "deepest": "to", "min": "from", "max": "to", "minimum": "from", "maximum": "to",
}  # fmt: skip
ALSO_CALLED = {
    **_SURELY, "interval": "sendoff", "on": "sendoff", "recovery": "rest", "intensity": "effort",
    "zone": "effort",
    "rest_between": "pause_between", "stroke_drill": "do", "description": "summary",
    "comment": "note", "repeat": "rounds", "times": "reps",
}  # fmt: skip


def sure_keys(failure: Failure) -> dict[str, str]:
    """The keys that belong nowhere here and surely mean a field that is not there yet: written with
    a capital, a blank or a hyphen, in the plural or the singular, with one letter wrong, or by
    another name of it; with that field.
    """
    known = [*failure.fields, *failure.instead]
    by_fold = {fold(name): name for name in known}
    found: dict[str, str] = {}
    for key in failure.value:
        said = fold(str(key).rstrip(":"))
        name = by_fold.get(said) or _SURELY.get(said.replace("-", "_"), "")
        name = name or weekday_said(said)
        if not name and str(key) not in field_names() and said not in ALSO_CALLED:
            name = _with_or_without_s(said, by_fold) or one_letter_off(said, known)
        is_new = key not in failure.fields and name not in failure.value
        if is_new and name in known and name not in found.values():
            found[key] = name
    return found


def _with_or_without_s(said: str, by_fold: Mapping[str, str]) -> str:
    return by_fold.get(f"{said}s") or by_fold.get(said.removesuffix("s"), "")


def put_together(failure: Failure) -> tuple[str, str, str] | None:
    """A key into which a colon made what is none: it, what is wrong, the mend."""
    if sure_keys(failure) or any(isinstance(failure.value[it], int) for it in stands_for(failure)):
        return None
    if meant := by_key(failure) or reps_by_key(failure):
        return meant[0], f"there is no field {quote(meant[0])} here", meant[1]
    if meant := cut_by_colon(failure):
        return meant[0], "a colon in a text begins a field", meant[1]
    return None


def by_key(failure: Failure) -> tuple[str, str] | None:
    """For fields of which one is named by what another of them takes, ``side-deck: Knees stay
    under`` for ``from: side-deck``: that name, and the fields as they are written.
    """
    strange = [key for key in failure.value if key not in failure.fields]
    if len(strange) != 1 or not failure.path or not isinstance(strange[0], str):
        return None
    key, value = strange[0], failure.value[strange[0]]
    free = [name for name in failure.fields if name not in failure.value]
    for name in free:
        text = key.removeprefix(f"{name} ")
        word = taken(failure, failure.fields[name], text) if _is_named(failure, name) else ""
        if word:
            told = {name: word}
            if value is not None and (other := _place_of(failure, value, free, name)):
                told[other[0]] = other[1]
            elif "items" in free and isinstance(value, str) and (reps := rep_meant(failure, value)):
                told["items"] = f"[{reps}]"
            if len(failure.value) > 1:  # the others stay
                fields = " and ".join(f"'{name}: {own}'" for name, own in told.items())
                return key, f"write {fields} in its place"
            return key, f"write {as_written(failure, told)}"
    return None


def _is_named(failure: Failure, name: str) -> bool:
    """Whether a field takes one word of a list, or one id."""
    piece = failure.resolved(failure.fields[name])
    return bool({"vocabulary", "reference", "enum"} & piece.keys())


def _place_of(failure: Failure, value: Any, free: list[str], but: str) -> tuple[str, str] | None:
    """The free field that a value belongs to, and how it is written there."""
    if not isinstance(value, str | int | float):
        return None
    others = [name for name in free if name != but]
    for name in others:
        if word := taken(failure, failure.fields[name], str(value)):
            return name, word
    needed = failure.says("required", [])
    for name in others:
        if name in (*needed, "own") and is_free_text(failure, failure.fields[name]):
            return name, scalar(excerpt(str(value)))
    return None


def reps_by_key(failure: Failure) -> tuple[str, str] | None:
    """For reps of which a colon makes a field, ``6 x 50: back kick``: its name, and the fields that
    the line falls into.
    """
    strange = [str(key) for key in failure.value if key not in failure.fields]
    if len(strange) != 1 or failure.path[-2:-1] != ("items",) or not re.search("[x×*]", strange[0]):
        return None
    value = failure.value.get(strange[0])
    meant = rep_meant(failure, f"{strange[0]} {'' if value is None else value}")
    if not meant or isinstance(value, dict | list):
        return None
    if len(failure.value) > 1:  # the others stay
        names = [own for own in failure.value if own != strange[0]]
        own = [own for own in meant[1:-1].split(", ") if own.partition(":")[0] not in names]
        return strange[0], f"write {', '.join(own)} in its place"
    return strange[0], f"write {meant}"


def cut_by_colon(failure: Failure) -> tuple[str, str] | None:
    """For a sentence of which a colon makes a field, ``- the mat: it takes trust``: what stands
    before the colon, and the fields with the whole in quotes.
    """
    if len(failure.value) != 1 or not failure.path:
        return None
    key, value = next(iter(failure.value.items()))
    needed = [own for own in failure.says("required", []) if own in failure.fields]
    name = next((own for own in needed if is_free_text(failure, failure.fields[own])), "")
    if " " not in str(key) or not name or not isinstance(value, str | int | float):
        return None
    whole = in_quotes(excerpt(f"{key}: {value}"))
    return str(key), f"put the text in quotes: {as_written(failure, {name: whole})}"
