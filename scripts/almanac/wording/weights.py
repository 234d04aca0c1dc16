"""What traits weigh: the file that ``scripts/teach`` writes, read once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

FILE = Path(__file__).with_name("weights.tsv")
ById = dict[str, int]
ByPair = dict[str, ById]


@dataclass
class Weights:
    """The weight of every trait by its number, and the numbers of traits by what they are.

    ``bounds`` are what a text must weigh: ``glance`` for its words to be read at all, ``least`` for
    patterns to count, ``backed`` with a pattern that asks for a danger, ``alone`` without one.
    """

    bounds: dict[str, float] = field(default_factory=dict)
    glance: dict[str, float] = field(default_factory=dict)
    hits: dict[str, float] = field(default_factory=dict)
    phrases: dict[str, float] = field(default_factory=dict)
    values: list[float] = field(default_factory=list)
    words: ById = field(default_factory=dict)
    shapes: ById = field(default_factory=dict)
    groups: ById = field(default_factory=dict)
    placed: ByPair = field(default_factory=dict)
    following: ByPair = field(default_factory=dict)
    beside: ByPair = field(default_factory=dict)


@cache
def weights() -> Weights:
    """The weights as they were taught."""
    read = Weights()
    numbers: Mapping[str, ById] = {
        "word": read.words,
        "shape": read.shapes,
        "group": read.groups,
    }
    paired = {"placed": read.placed, "following": read.following, "beside": read.beside}
    plain = {
        "bound": read.bounds,
        "glance": read.glance,
        "hit": read.hits,
        "phrase": read.phrases,
    }
    for line in FILE.read_text("utf-8").splitlines():
        if line.startswith("#"):
            continue
        kind, *names, weight = line.split("\t")
        if kind in plain:
            plain[kind][names[0]] = float(weight)
            continue
        if kind in numbers:
            numbers[kind][names[0]] = len(read.values)
        else:
            paired[kind].setdefault(names[0], {})[names[1]] = len(read.values)
        read.values.append(float(weight))
    return read
