"""What a change of one guard lets by: which items go, which come, which are worded otherwise."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from difflib import SequenceMatcher
from typing import Any

from almanac.model.catalogue import Key
from almanac.source.looser import Guard
from almanac.source.reader import Document
from almanac.units import TimeError, parse_time

GONE, ACCEPTED, LOOSER, OTHER = "gone", "accepted", "looser", "other"
_REWORDED = 0.6  # two texts with at least this share of letters in common are one, reworded
_MOST_PAIRS, _MOST_LETTERS = 400, 400  # no list of an entry is so long; what is broken may be
Documents = Mapping[Key, Document]


def of_steps(old: list[Any], new: list[Any]) -> Iterator[Told]:
    """Steps that go, are worded otherwise, or come: under water each of them is a guard."""
    gone = [step for step in old if step not in new]
    come = [step for step in new if step not in old]
    pairs = _pairs(gone, come)
    for number, step in enumerate(gone):
        yield (OTHER, step, come[pairs[number]]) if number in pairs else (GONE, step, None)
    yield from ((OTHER, None, step) for n, step in enumerate(come) if n not in pairs.values())


Told = tuple[str, Any, Any]


def of_guard(was: Guard | None, now: Guard | None, words: Documents) -> Iterator[Told]:
    """What of one guard goes, is looser, accepted or worded otherwise: sort, before and after."""
    guard = now or was
    assert guard is not None
    old, new = was.value if was else None, now.value if now else None
    if guard.way == "neither" or old == new:
        return
    if isinstance(old, list) or isinstance(new, list):
        yield from _of_lists(guard.way, items_of(old), items_of(new))
    elif old is None:
        if guard.way == "any":
            yield OTHER, None, new
        return  # else a limit where none was
    elif guard.way in ("other", "any"):
        yield (GONE if new is None else OTHER, old, new)
    elif new is None:
        yield GONE, old, None
    else:
        one, other = (size(value, guard.vocabulary, words) for value in (old, new))
        if one is None or other is None or _unit(old) != _unit(new):
            yield OTHER, old, new
        elif (other > one) if guard.way == "more" else (other < one):
            yield LOOSER, old, new


def _of_lists(way: str, old: list[Any], new: list[Any]) -> Iterator[Told]:
    """Items that go where fewer is looser, and items that come where more is."""
    gone = [item for item in old if item not in new]
    come = [item for item in new if item not in old]
    pairs = _pairs(gone, come)
    if way == "more":
        for number, item in enumerate(come):
            earlier = next((one for one, other in pairs.items() if other == number), None)
            yield ACCEPTED, None if earlier is None else gone[earlier], item
        return
    for number, item in enumerate(gone):
        if number in pairs:
            yield OTHER, item, come[pairs[number]]
        else:
            yield GONE, item, None


def _pairs(gone: list[Any], come: list[Any]) -> dict[int, int]:
    """Which item that goes is which item that comes, worded otherwise: of the same name, else the
    one most alike.
    """
    pairs: dict[int, int] = {}
    if len(gone) * len(come) > _MOST_PAIRS:
        return pairs
    for number, item in enumerate(gone):
        shares = [
            (_likeness(item, other), -place)
            for place, other in enumerate(come)
            if place not in pairs.values()
        ]
        share, place = max(shares, default=(0.0, 0))
        if share >= _REWORDED:
            pairs[number] = -place
    return pairs


def _likeness(one: Any, other: Any) -> float:
    """From 0 to 1; 2 where both are of one name, and two names are never alike."""
    if isinstance(one, str) and " " not in one:
        return 0.0
    for key in ("hazard", "check", "job"):
        if isinstance(one, dict) and isinstance(other, dict) and " " not in str(one.get(key, " ")):
            return 2.0 if one[key] == other.get(key) else 0.0
    old, new = (json.dumps(item, default=str)[:_MOST_LETTERS] for item in (one, other))
    return SequenceMatcher(None, old, new, autojunk=False).ratio()


def items_of(value: Any) -> list[Any]:
    """A value as a list of items: of none an empty one."""
    if value is None:
        return []
    return value if isinstance(value, list) else [value]


def size(value: Any, vocabulary: str, words: Documents) -> float | None:
    """A value as a number: of a limit its value, of a span its end, a time in seconds, a word by
    its place in its vocabulary; None where it has no size.
    """
    if isinstance(value, Mapping):
        return size(value.get("value", value.get("to")), vocabulary, words)
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        return None
    if vocabulary:
        listed = words.get(("vocabulary", vocabulary))
        known = list(listed.data.get("words") or ()) if listed else []
        return float(known.index(value)) if value in known else None
    try:
        return parse_time(value) if isinstance(value, str) else float(value)
    except TimeError:
        return None


def _unit(value: Any) -> Any:
    return value.get("unit") if isinstance(value, Mapping) else None
