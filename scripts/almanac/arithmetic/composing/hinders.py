"""Where no practice fits, which wish hinders."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from almanac.arithmetic.composing.asked import (
    ADULTS,
    GEAR,
    LATELY,
    LEFT_OUT,
    ROOM,
    Asked,
    in_a_lane,
)
from almanac.arithmetic.composing.best import fits
from almanac.arithmetic.composing.pieces import COOL_DOWN, MAIN, ROLES, UNKNOWN, WARM_UP
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.unmet import EFFORT, GOAL, KEEP, MINUTES, TAUGHT
from almanac.arithmetic.composing.wishes import MINUTES_LEAST, MINUTES_MOST, Wishes

PIECE, FULL, TOGETHER = "piece", "room", "together"
"""Beside the reasons why a piece may not stand (``composing.asked``): wishes, what is missing, and
what has no room for so many, and wishes of which no single one is in the way.
"""
_STEP, _STEPS = 5, 6  # minutes more or fewer that are tried, and how often
_FIELDS = {
    LATELY: ("days",), GEAR: ("gear",), ADULTS: ("adults",), EFFORT: ("effort",),
    TAUGHT: ("taught",), KEEP: ("kept",), LEFT_OUT: ("left_out",), ROOM: ("lanes", "heads"),
}  # fmt: skip
"""What of the wishes each of them is."""


@dataclass(frozen=True)
class Hinders:
    """A wish without which there would be a practice: ``which`` goal or gear, how many minutes or
    how many in a lane, by number (``UNKNOWN`` for the others). ``heads`` are those of the lane
    groups that would then be fewer; of a role without room those that are in a lane. ``drops`` are
    the wishes that are in the way together; ``instead`` are the wishes that would do.
    """

    wish: str
    which: int
    heads: tuple[tuple[int, int], ...] = ()
    drops: tuple[str, ...] = ()
    instead: Wishes | None = field(default=None, compare=False)


def hindering(table: ComposeTable, wishes: Wishes) -> tuple[Hinders, ...]:
    """Where nothing fits, what there is no piece for at all; else each wish that by itself is in
    the way, and of minutes the nearest that would do.
    """
    asked = Asked(table, wishes)
    pieces = [table.pieces[offer.piece] for offer in asked.offers]
    roles = {role for piece in pieces for role in asked.roles_of(piece)}
    lacking = [role for role in (WARM_UP, MAIN, COOL_DOWN) if role not in roles]
    if lacking:
        return tuple(Hinders(PIECE, ROLES.index(role)) for role in lacking)
    found = [*_without_room(asked)]
    found += [
        _fewer(table, wishes, other) if wish == ROOM else Hinders(wish, which, instead=other)
        for wish, which, other in _without_one(table, wishes)
        if other != wishes and fits(table, other)
    ]
    for minutes in _near_minutes(table, wishes):
        other = replace(wishes, minutes=minutes)
        if minutes != wishes.minutes and fits(table, other):
            return (*found, Hinders(MINUTES, minutes, instead=other))
    return (
        tuple(found) if any(own.instead for own in found) else (*found, *_together(table, wishes))
    )


def _near_minutes(table: ComposeTable, wishes: Wishes) -> Iterator[int]:
    """The minutes that are wished, and those around them that can be, the nearest first."""
    steps = (_STEP * step for step in range(1, _STEPS + 1))
    for minutes in (0, *(by for step in steps for by in (step, -step))):
        if MINUTES_LEAST <= wishes.minutes + minutes <= min(MINUTES_MOST, table.squad.minutes):
            yield wishes.minutes + minutes


def _together(table: ComposeTable, wishes: Wishes) -> Iterator[Hinders]:
    """The fewest wishes without which, all together, there would be a practice."""
    ways: dict[str, Wishes] = {}
    for wish, _, other in _without_one(table, wishes):
        if other != wishes and wish != GOAL:
            ways.setdefault(wish, other)
    for minutes in _near_minutes(table, wishes):
        drops = list(ways)
        other = _without_all(replace(wishes, minutes=minutes), ways, drops)
        if not fits(table, other):
            continue
        for wish in ways:
            fewer = [own for own in drops if own != wish]
            less = _without_all(replace(wishes, minutes=minutes), ways, fewer)
            if fits(table, less):
                drops, other = fewer, less
        yield Hinders(TOGETHER, minutes, drops=tuple(drops), instead=other)
        return


def _without_all(wishes: Wishes, ways: Mapping[str, Wishes], drops: Iterable[str]) -> Wishes:
    """The wishes without several, each as it is dropped alone."""
    for wish in drops:
        own = ways[wish]
        wishes = replace(wishes, **{name: getattr(own, name) for name in _FIELDS[wish]})
    return wishes


def _without_room(asked: Asked) -> Iterator[Hinders]:
    """What every practice has, and no piece stands as because its lanes are too full."""
    fullest = max(asked.in_lane(group) for group in asked.wishes.groups)
    for role in (WARM_UP, MAIN, COOL_DOWN):
        reasons = {
            asked.why_not(own, role)
            for own in asked.offers
            if role in asked.roles_of(asked.table.pieces[own.piece])
        }
        if ROOM in reasons and "" not in reasons:
            yield Hinders(FULL, ROLES.index(role), ((UNKNOWN, fullest),))


def _fewer(table: ComposeTable, wishes: Wishes, usually: Wishes) -> Hinders:
    """The most in a lane with whom something fits, from the usual on, and the heads that are then
    fewer; UNKNOWN where not even as many as usual do in so many lanes, but ``usually`` it does.
    """
    asked, groups = Asked(table, wishes), table.squad.groups
    usual = [in_a_lane(own.heads, own.lanes) for own in groups]
    found = Hinders(ROOM, UNKNOWN, instead=usually)
    for most in range(
        min(usual[own] for own in wishes.groups), max(asked.in_lane(own) for own in wishes.groups)
    ):
        heads = tuple(
            min(number, max(most, usual[place]) * wishes.lanes[place])
            for place, number in enumerate(wishes.heads)
        )
        other = replace(wishes, heads=heads)
        if not fits(table, other):
            break
        less = [own for own in wishes.groups if heads[own] < wishes.heads[own]]
        found = Hinders(ROOM, most, tuple((own, heads[own]) for own in less), instead=other)
    return found


def _without_one(table: ComposeTable, wishes: Wishes) -> Iterator[tuple[str, int, Wishes]]:
    """The wishes without one of them at a time."""
    yield LATELY, UNKNOWN, replace(wishes, days={})
    yield from _without_gear(table, wishes)
    yield ADULTS, UNKNOWN, replace(wishes, adults=UNKNOWN)
    yield EFFORT, UNKNOWN, replace(wishes, effort=UNKNOWN)
    yield TAUGHT, UNKNOWN, replace(wishes, taught=frozenset(range(len(table.drills))))
    yield KEEP, UNKNOWN, replace(wishes, kept=())
    yield LEFT_OUT, UNKNOWN, replace(wishes, left_out=frozenset())
    groups = table.squad.groups
    lanes, heads = tuple(own.lanes for own in groups), tuple(own.heads for own in groups)
    yield ROOM, UNKNOWN, replace(wishes, lanes=lanes, heads=heads)
    for goal in reversed(wishes.goals):
        others = tuple(own for own in wishes.goals if own != goal)
        if others:
            yield GOAL, goal, replace(wishes, goals=others)


def _without_gear(table: ComposeTable, wishes: Wishes) -> Iterator[tuple[str, int, Wishes]]:
    """With all of the one gear that is missing, where that will do; else with all gear."""
    owned = tuple(gear.owned for gear in table.gear)
    for place, count in enumerate(owned):
        other = (*wishes.gear[:place], count, *wishes.gear[place + 1 :])
        if other != wishes.gear and fits(table, replace(wishes, gear=other)):
            yield GEAR, place, replace(wishes, gear=other)
            return
    yield GEAR, UNKNOWN, replace(wishes, gear=owned)
