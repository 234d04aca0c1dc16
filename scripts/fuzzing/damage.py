"""Entries damaged by chance: their bytes, the structure of their data, single values. The same seed
and number give the same case.
"""

from __future__ import annotations

import copy
import json
import random
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from almanac.source.files import entry_files
from almanac.source.reader import DataPath, read

SORTS = ("bytes", "structure", "values")
PIECES = (
    ": ", "- ", "? ", "\n", "\n  ", "\n    ", "[", "]", "{", "}", ", ", "'", '"', "\\", "\\x41",
    "\\u200b", "&a ", "*a", "!t ", "!!str ", "<<: ", "|", ">-", "|2", "%YAML 1.1\n", "---\n",
    "...\n", " # ", "#", "\t", "\r\n", "\r", "\ufeff", "\x00", "\x85", "\u2028", "\u202e",
    "\u200b", "é", "\U0001f3ca", "1:15", "0x1f", "1e3", ".inf", "yes", "null", "~", "2026-01-01",
    "@", "`", "<<<<<<< HEAD\n", "title: Six\n", "items:\n  - reps: 6\n", "[" * 40, "- " * 40,
    "a: " * 9, " " * 200, "9" * 40,
)  # fmt: skip
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


@dataclass(frozen=True)
class Sound:
    """An entry before anything happens to it."""

    kind: str
    id: str
    file: str
    text: str
    data: Any


@dataclass(frozen=True)
class Case:
    """A damaged entry; what was done; and where that must be told, as far as it is known: a code
    with line and column, or the path of the value that was damaged.
    """

    sound: Sound
    done: str
    raw: bytes
    told: tuple[str, int, int] | None = None
    path: DataPath | None = None


def sound_entries(root: Path) -> list[Sound]:
    """Every entry below a root."""
    found = []
    for entry in entry_files(root)[0]:
        text = (root / entry.file).read_text("utf-8")
        document, _ = read(text.encode(), entry.file)
        assert document is not None
        found.append(Sound(entry.kind, entry.id, entry.file, text, document.data))
    return found


def damaged(sort: str, seed: int, number: int, entries: list[Sound]) -> Case:
    """One case of a sort."""
    chance = random.Random(f"{sort} {seed} {number}")
    sound = chance.choice(entries)
    if sort == "bytes":
        return chance.choice((_bytes, _bytes, _bytes, _told))(sound, chance)
    return (_structure if sort == "structure" else _value)(sound, chance)


# ---- bytes


def _bytes(sound: Sound, chance: random.Random) -> Case:
    raw = bytearray(sound.text.encode())
    done = []
    for _ in range(chance.choice((1, 1, 2, 5))):
        at, to = sorted(chance.randrange(len(raw) + 1) for _ in range(2))
        to = min(to, at + chance.choice((1, 3, 30, 300)))
        what = chance.choice(("piece", "piece", "flip", "cut", "again", "noise", "end"))
        done.append(f"{what} at {at}")
        if what == "piece":
            raw[at:at] = chance.choice(PIECES).encode()
        elif what == "flip" and at < len(raw):
            raw[at] ^= 1 << chance.randrange(8)
        elif what == "cut":
            del raw[at:to]
        elif what == "again":
            raw[at:at] = raw[at:to] * chance.choice((1, 2, 40))
        elif what == "noise":
            raw[at:to] = chance.randbytes(to - at)
        else:
            del raw[at:]
        raw = raw or bytearray(b"\n")
    return Case(sound, ", ".join(done), bytes(raw))


def _told(sound: Sound, chance: random.Random) -> Case:
    """A slip whose place is known."""
    lines = sound.text.split("\n")
    number = chance.randrange(max(1, len(lines) - 1))
    line = lines[number]
    slips = ["control", "bytes"]
    if re.match(r"[a-z_]+: [A-Za-z][^:#\[{]*$", line):
        slips += ["again", "anchor", "tag", "comment"] * 2
    if line.startswith("  ") and line.strip():
        slips.append("tab")
    slip = chance.choice(slips)
    value = line.find(": ") + 2
    at = chance.randrange(len(line) + 1)
    cases: dict[str, tuple[str, tuple[str, int, int] | None]] = {
        "control": (line[:at] + "\x07" + line[at:], ("control-character", number + 1, at + 1)),
        "bytes": (line[:at] + "\udcff" + line[at:], ("not-utf8", number + 1, at + 1)),
        "again": (f"{line}\n{line}", ("duplicate-key", number + 2, 1)),
        "anchor": (f"{line[:value]}&x {line[value:]}", ("anchor", number + 1, value + 1)),
        "tag": (f"{line[:value]}!x {line[value:]}", ("tag", number + 1, value + 1)),
        "tab": ("\t" + line[1:], ("tab-indent", number + 1, 1)),
        "comment": (line + " #2", None),
    }
    if slip == "again" and number + 1 < len(lines) and lines[number + 1].startswith(" "):
        slip = "control"  # the text goes on
    lines[number], told = cases[slip]
    if slip == "comment" and line.split(":")[0] in {"title", "summary", "focus", "care"}:
        told = ("cut-text", number + 1, value + 1)
        if number + 1 < len(lines) and lines[number + 1].startswith(" "):
            told = None
    return Case(
        sound,
        f"{slip} on line {number + 1}",
        "\n".join(lines).encode("utf-8", "surrogateescape"),
        told,
    )


# ---- structure and values


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


def _structure(sound: Sound, chance: random.Random) -> Case:
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


def _value(sound: Sound, chance: random.Random) -> Case:
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
