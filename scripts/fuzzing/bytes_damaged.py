"""Damage to the bytes of an entry: pieces put in, cut, said again, and slips whose place is
known.
"""

from __future__ import annotations

import random
import re

from case import Case, Sound

PIECES = (
    ": ", "- ", "? ", "\n", "\n  ", "\n    ", "[", "]", "{", "}", ", ", "'", '"', "\\", "\\x41",
    "\\u200b", "&a ", "*a", "!t ", "!!str ", "<<: ", "|", ">-", "|2", "%YAML 1.1\n", "---\n",
    "...\n", " # ", "#", "\t", "\r\n", "\r", "\ufeff", "\x00", "\x85", "\u2028", "\u202e",
    "\u200b", "é", "\U0001f3ca", "1:15", "0x1f", "1e3", ".inf", "yes", "null", "~", "2026-01-01",
    "@", "`", "<<<<<<< HEAD\n", "title: Six\n", "items:\n  - reps: 6\n", "[" * 40, "- " * 40,
    "a: " * 9, " " * 200, "9" * 40,
)  # fmt: skip


def in_bytes(sound: Sound, chance: random.Random) -> Case:
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


def in_a_known_place(sound: Sound, chance: random.Random) -> Case:
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
