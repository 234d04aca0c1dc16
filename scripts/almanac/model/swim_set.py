"""Sets and what they are made of beside reps: rounds, pauses, items."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from almanac.model.entry import Entry, Hazard, Ids, Reference, Seconds, references
from almanac.model.expectation import Expectation
from almanac.model.need import Adapt, adapts
from almanac.model.reps import Change, Part, Reps
from almanac.model.sendoff import Sendoff
from almanac.units import LAND, Course


@dataclass(frozen=True)
class Pause:
    """Rest of ``seconds``, for a reason."""

    seconds: Seconds
    note: str = ""


@dataclass(frozen=True)
class RoundsChange:
    """How often a lane group goes round instead, and the pause between; None for what stays.
    ``rounds`` of 0 leaves them out.
    """

    rounds: int | None = None
    pause_between: Seconds | None = None


@dataclass(frozen=True)
class Round:
    """Items done ``rounds`` times, with ``pause_between`` seconds between one round and the
    next.

    ``by_round`` holds what is different in a round, by its number or ``last``, for all reps in it;
    ``by_group`` and ``by_variant`` how often a lane group, or a variant, goes round.
    ``rounds_between`` are the least and the most that the set may be asked for.
    """

    rounds: int
    items: tuple[Item, ...]
    pause_between: Seconds | None = None
    note: str = ""
    rounds_between: tuple[int, int] | None = None
    by_round: Mapping[str, Change] = field(default_factory=dict)
    by_group: Mapping[str, RoundsChange] = field(default_factory=dict)
    by_variant: Mapping[str, RoundsChange] = field(default_factory=dict)

    @property
    def most(self) -> int:
        """The rounds of whoever does the most of them."""
        changes = (*self.by_group.values(), *self.by_variant.values())
        return max(self.rounds, *(change.rounds or 0 for change in changes), 0)


Item = Reps | Pause | Round


def reps_of(items: tuple[Item, ...]) -> Iterator[Reps]:
    """Every reps item, once each however many rounds hold it."""
    for item in items:
        if isinstance(item, Round):
            yield from reps_of(item.items)
        elif isinstance(item, Reps):
            yield item


def changes_of(items: tuple[Item, ...]) -> Iterator[Change]:
    """Every change that items hold, of a lane group or a round."""
    for item in items:
        if isinstance(item, Round):
            yield from item.by_round.values()
            yield from changes_of(item.items)
        elif isinstance(item, Reps):
            yield from item.by_group.values()
            yield from item.by_variant.values()
            yield from item.by_round.values()


def groups_named(items: tuple[Item, ...]) -> Iterator[str]:
    """Every lane group for which something of items is different."""
    for item in items:
        if isinstance(item, Round):
            yield from item.by_group
            yield from groups_named(item.items)
        elif isinstance(item, Reps):
            yield from item.by_group


def item_references(items: tuple[Item, ...]) -> Iterator[Reference]:
    """The drills, gear and lane groups that items name."""
    yield from references("lane_group", groups_named(items), "by_group")
    for reps in reps_of(items):
        if reps.assume:
            yield from references("lane_group", reps.assume.by_group, "assume")
        yield from _references(reps.gear, reps.sendoff, reps.parts)
        if reps.aim:
            yield from references("lane_group", reps.aim.by_group, "aim")
    for change in changes_of(items):
        yield from _references(change.gear or (), change.sendoff, change.parts or ())
        if change.do:
            yield Reference("drill", change.do, "uses")


def _references(gear: Ids, sendoff: Sendoff | None, parts: tuple[Part, ...]) -> Iterator[Reference]:
    yield from references("gear", gear, "uses")
    if sendoff:
        yield from references("lane_group", sendoff.by_group, "sendoff")
    for part in parts:
        yield from references("drill", part.drills, "uses")
        yield from references("gear", part.gear, "uses")


@dataclass(frozen=True, kw_only=True)
class SwimSet(Entry):
    """Reps, rounds and pauses with a purpose, written for one course, and for ``pools`` if named.
    ``variants`` are its versions by name, each with the lane groups that are given it.
    """

    kind: ClassVar[str] = "set"
    purpose: str
    goals: Ids
    level: str
    course: Course
    items: tuple[Item, ...]
    expect: Expectation = field(default_factory=Expectation)
    hazards: tuple[Hazard, ...] = ()
    pools: Ids = ()
    most_in_lane: int | None = None
    variants: Mapping[str, Ids] = field(default_factory=dict)
    adapt: tuple[Adapt, ...] = ()

    @property
    def is_on_land(self) -> bool:
        """Whether it is a circuit on land, the same in every pool."""
        return self.course == LAND

    def references(self) -> Iterator[Reference]:
        yield from item_references(self.items)
        yield from references("pool", self.pools, "in")
        yield from references("lane_group", self.expect.clock, "expect")
        for groups in self.variants.values():
            yield from references("lane_group", groups, "variants")
        yield from references("lane_group", self.expect.by_group, "expect")
        yield from adapts(self.adapt)
