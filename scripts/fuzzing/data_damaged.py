"""Damage to the data of an entry: its structure, and single values."""

from __future__ import annotations

import copy
import json
import random
from collections.abc import Iterator
from typing import Any

import yaml
from case import Case, Sound

from almanac.source.reader import DataPath

VALUES = (
    None, True, False, 0, -1, 1, 6.0, 2.5, 1e-7, 10**14, -(10**14), 0.1 + 0.2, "", "x", " ",
    "\u200b", "0:00", "0:01", "1:75", "23:59:59", "59:59.99", "2026-02-30", "1900-01-01",
    "2199-12-31", "0001-01-01", "9999-12-31", "easy", "fast", "back-kick", "fins", "heron-1",
    "supine", "kick", "swim", "drill", "flutter", "25m", "25yd", "50m", "mon", "17:30", "24:00",
    [], {}, [[]], ["easy"], ["fast", "easy"], {"from": 9, "to": 1}, {"from": 1, "to": 1},
    "é" * 500, "x" * 5000, {"descend": ["easy", "fast"]}, {"build": ["fast", "easy"]},
    {"rotate": ["fast", "easy"]}, {"pause": "0:01"}, {"heron-1": "1:00"}, {"last": {"reps": 1}},
    {"moved_to": "back-kick"},
    {"rounds": 50, "items": [{"reps": 100, "distance": 5000, "do": "back-kick", "effort": "fast"}]},
)  # fmt: skip
KEYS = (
    "rest",
    "gear",
    "time",
    "parts",
    "expect",
    "moved_to",
    "accepts",
    "notes",
    "from",
    "to",
    "words",
    "x",
    "0",
    "own",
    "groups",
)


def paths(value: Any, path: DataPath = ()) -> Iterator[DataPath]:
    """The path of every value below another."""
    inner = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for step, item in inner:
        yield (*path, step)
        yield from paths(item, (*path, step))


def in_structure(sound: Sound, chance: random.Random) -> Case:
    """A value moved, nested, renamed, left out or made into another sort of value."""
    data = copy.deepcopy(sound.data)
    every = list(paths(data))
    path = chance.choice(every)
    *way, last = path
    holder = _at(data, way)
    what = chance.choice(("sort", "sort", "out", "rename", "nest", "elsewhere", "swap"))
    known: DataPath | None = path
    if what == "sort":
        holder[last] = _of_another_sort(holder[last], chance)
    elif what == "out":
        del holder[last]
        known = None
    elif what == "rename" and isinstance(holder, dict):
        holder[chance.choice(KEYS)] = holder.pop(last)
        known = None
    elif what == "nest":
        holder[last] = chance.choice(({"x": holder[last]}, [holder[last]], [[holder[last]]]))
        known = None  # a list of one may be right
    elif what == "elsewhere":
        holder[last] = copy.deepcopy(_at(data, chance.choice(every)))
        known = None
    else:
        *way, other = chance.choice(every)
        place = _at(data, way)
        holder[last], place[other] = copy.deepcopy(place[other]), copy.deepcopy(holder[last])
        known = None
    return Case(sound, f"{what} at {path}", _written(data, chance), path=known)


def _of_another_sort(value: Any, chance: random.Random) -> Any:
    """A value that no field that takes this one takes."""
    if isinstance(value, (dict, list)):
        return chance.choice((None, 7.25, True))
    return chance.choice((None, {"x": {"x": 1}}, [[[1]]]))


def in_values(sound: Sound, chance: random.Random) -> Case:
    """One or two values replaced by others that are seldom, or of another field; a field added."""
    data = copy.deepcopy(sound.data)
    done = []
    for _ in range(chance.choice((1, 1, 2))):
        every = list(paths(data))
        if not every:
            break
        *way, last = path = chance.choice(every)
        holder = _at(data, way)
        value = copy.deepcopy(chance.choice((chance.choice(VALUES), _near(holder[last], chance))))
        if isinstance(holder, dict) and chance.random() < 0.15:
            last = chance.choice(KEYS)
        done.append(f"{value!r:.60} at {path}")
        holder[last] = value
    return Case(sound, "; ".join(done), _written(data, chance))


def _near(value: Any, chance: random.Random) -> Any:
    """A value of the same sort at the end of what may be."""
    if isinstance(value, bool) or value is None:
        return not value
    if isinstance(value, (int, float)):
        return chance.choice(
            (0, 1, -value, value * 10, value * 1000, value + 1, value / 2, 1, 50, 100, 999)
        )
    if isinstance(value, str):
        return chance.choice(
            (
                "0:01",
                "59:59",
                "2199-12-31",
                "1900-01-01",
                value[: len(value) // 2],
                value * 3,
                value.upper(),
            )
        )
    if isinstance(value, list):
        return chance.choice(([], value[:1], value * 2, value[::-1], value * 9))
    return chance.choice(
        ({}, dict(list(value.items())[:1]), dict(list(value.items())[1:]), {**value, "x": 1})
    )


def _at(value: Any, way: list[str | int] | DataPath) -> Any:
    for step in way:
        value = value[step]
    return value


def _written(data: Any, chance: random.Random) -> bytes:
    if chance.random() < 0.5:
        return json.dumps(data, ensure_ascii=False, indent=chance.choice((None, 1))).encode(
            "utf-8", "replace"
        )
    plain: str = yaml.dump(
        data,
        Dumper=yaml.CSafeDumper,
        allow_unicode=True,
        sort_keys=False,
        width=chance.choice((60, 1000)),
        default_flow_style=False,
    )
    return plain.encode()
