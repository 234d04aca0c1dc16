"""Cords and ropes that tie swimmers: which gear does, who holds the end, how many are in use."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.at_once import Busy, moments
from almanac.arithmetic.events import Rep
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.run_sheet import SheetRow
from almanac.model.gear import Gear
from almanac.model.manner import ADULT, SWIMMER
from almanac.model.policy import LevelLimits
from almanac.model.vocabularies import LINE


def ties(gear: Mapping[str, Gear]) -> frozenset[str]:
    """The gear that ties a swimmer to somebody or something."""
    return frozenset(id for id, piece in gear.items() if piece.ties)


def tows(gear: Mapping[str, Gear]) -> frozenset[str]:
    """The gear whose wearer tows a line that can catch somebody, a parachute say: it resists, ties
    nobody, and names that danger.
    """
    return frozenset(
        id
        for id, piece in gear.items()
        if piece.resists and not piece.ties and any(own.hazard == LINE for own in piece.hazards)
    )


def is_tied(rep: Rep, tying: frozenset[str]) -> bool:
    """Whether somebody is tied in a rep."""
    return any(not tying.isdisjoint(piece.gear) for piece in rep.pieces)


@dataclass(frozen=True)
class CordsAtOnce:
    """Cords in use at one moment: how many in all, how many of these adults hold, how many
    swimmers do. ``run`` is a part of that moment, ``others`` whether anybody does something else.
    """

    run: PartRun
    cords: int
    by_adults: int
    by_swimmers: int
    others: bool

    def adults(self, limits: LevelLimits) -> int:
        """The adults that are needed: one at each cord that an adult holds, one for so many of the
        others (``cords_each_adult_most``), and one for everybody else.
        """
        each = max(1.0, limits.limit("cords_each_adult_most"))
        return self.by_adults + math.ceil((self.cords - self.by_adults) / each) + self.others


def cords_at_once(
    sheet: Sequence[SheetRow], tying: frozenset[str], owned: Mapping[str, int]
) -> Iterator[CordsAtOnce]:
    """The cords that are in use at each moment of a practice at which any is: as many as there are
    heads at once for them, and no more than the club owns.
    """
    for busy in moments(sheet):
        found = _at_once(busy, tying, owned)
        if found:
            yield found


def _at_once(
    busy: tuple[Busy, ...], tying: frozenset[str], owned: Mapping[str, int]
) -> CordsAtOnce | None:
    heads = dict.fromkeys(tying, 0)
    by = {ADULT: 0, SWIMMER: 0}
    where: PartRun | None = None
    all_heads = 0
    for row, cell in busy:
        at_once = cell.crew.heads_at_once(row.run.most_in_lane)
        all_heads += cell.crew.heads
        swum = row.run.of(cell.group)
        for id in tying.intersection(swum.gear):
            heads[id] += at_once
            where = where or row.run
            for held_by in {
                rep.item.cord.held_by for rep in swum.reps if rep.item.cord
            } & by.keys():
                by[held_by] += at_once
    if where is None:
        return None
    cords = sum(min(count, owned.get(id, count)) for id, count in heads.items())
    adults, swimmers = min(by[ADULT], cords), min(by[SWIMMER], cords)
    return CordsAtOnce(where, cords, adults, swimmers, all_heads > cords)
