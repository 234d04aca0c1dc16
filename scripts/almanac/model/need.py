"""Needs: something about a swimmer that changes what is done. Never who the swimmer is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import ClassVar

from almanac.model.entry import Entry, Evidence, Ids, Reference, leans_on, references

AS_IS, CHANGED, LEAVE_OUT = "as-is", "changed", "leave-out"
FITS = (AS_IS, CHANGED, LEAVE_OUT)
"""How a drill, a set or a piece of gear fits a need, the freest first."""
UNDER_WATER = "under_water"
"""The field of ``Where`` that holds no words."""


@dataclass(frozen=True)
class Adapt:
    """What an entry itself says for a need: how it fits, and what changes, "" for nothing."""

    need: str
    fits: str
    change: str = ""


@dataclass(frozen=True)
class Where:
    """Of which drills and gear a rule holds: all that is named must agree, each with one of its
    words. ``efforts`` are those that a drill cannot be done below, ``gear`` and ``effects`` are of
    what it needs; ``under_water`` of whatever goes below the surface on purpose.
    """

    modes: Ids = ()
    strokes: Ids = ()
    kicks: Ids = ()
    positions: Ids = ()
    arms: Ids = ()
    levels: Ids = ()
    starts: Ids = ()
    efforts: Ids = ()
    hazards: Ids = ()
    gear: Ids = ()
    effects: Ids = ()
    under_water: bool = False

    @cached_property
    def named(self) -> tuple[tuple[str, Ids], ...]:
        """The fields that it names something in, each with its words."""
        words = {name: value for name, value in vars(self).items() if isinstance(value, tuple)}
        if self.under_water:
            words[UNDER_WATER] = (UNDER_WATER,)
        return tuple((name, own) for name, own in words.items() if own)


@dataclass(frozen=True)
class NeedRule:
    """What a need changes, and of which drills and gear."""

    where: Where
    fits: str
    change: str


@dataclass(frozen=True, kw_only=True)
class Need(Entry):
    """Something about a swimmer that changes what is done: in general, when to stop, whom to refer
    to, and by rule for every drill and piece of gear.
    """

    kind: ClassVar[str] = "need"
    change: tuple[str, ...]
    stop: tuple[str, ...]
    refer_on: str
    evidence: tuple[Evidence, ...]
    rules: tuple[NeedRule, ...] = ()
    house_rules: Ids = ()

    def references(self) -> Iterator[Reference]:
        for rule in self.rules:
            yield from references("gear", rule.where.gear, "rule")
        yield from leans_on(self.evidence)


def adapts(lines: tuple[Adapt, ...]) -> Iterator[Reference]:
    """The needs that an entry's own lines name."""
    return references("need", (line.need for line in lines), "adapt")
