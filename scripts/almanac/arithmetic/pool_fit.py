"""What reps need of the pool that they are done in, and what of it is not there: depth and platform
for starts, depth for what is done upright or under water, flags for work on the back.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from almanac.arithmetic.events import Rep
from almanac.arithmetic.lap_ends import BOTH, Ends, PlacedPiece, in_order, laps, placed_pieces
from almanac.arithmetic.start_limits import (
    BACKWARDS,
    Lack,
    Shortfall,
    enters,
    start_limits,
    start_shortfall,
)
from almanac.arithmetic.under_water import counts
from almanac.model.entry import ANY_DEPTH, DepthNeeded
from almanac.model.policy import Policy, Word
from almanac.model.pool import Pool
from almanac.source.reader import DataPath


@dataclass(frozen=True)
class PoolPlace:
    """Where reps are done: lanes of a pool, and the end that they leave from. ``lanes_said`` is
    False where they are somewhere else in it and nobody says in which lanes.
    """

    pool: Pool
    lanes: tuple[int, ...]
    end: str
    lanes_said: bool = True


@dataclass(frozen=True)
class PoolRules:
    """What is asked: the policy's limits for a level, and the words for starts and partners."""

    policy: Policy
    level: str
    starts: Mapping[str, Word]
    partners: Mapping[str, Word]


@dataclass(frozen=True)
class Misplaced:
    """Something that is asked of a place which does not give it: at which rep, for what (a word of
    starts or partners, or a drill, by id), at which end and in which lanes; ``both_ends`` where it
    is begun at the other end too.
    """

    path: DataPath
    what: str
    is_start: bool
    end: str
    lanes: tuple[int, ...]
    shortfall: Shortfall
    both_ends: bool = False


@dataclass(frozen=True)
class StartHere:
    """A start as it is done: its word, whether a drill teaches it, and the ends it is done at."""

    path: DataPath
    word: str
    taught: bool
    ends: Ends


def starts_here(
    reps: Iterable[Rep], place: PoolPlace, starts: Mapping[str, Word]
) -> Iterator[StartHere]:
    """Every start of the reps, those that a drill itself holds too."""
    course = place.pool.course
    for rep, begins in laps(reps, course, place.end, starts):
        if rep.item.start in starts:
            yield StartHere(rep.path, rep.item.start, False, begins)
        for own in placed_pieces(rep, begins, course):
            if own.piece.drill.start in starts:
                yield StartHere(rep.path, own.piece.drill.start, True, own.begins)


def misplaced(reps: Iterable[Rep], place: PoolPlace, rules: PoolRules) -> tuple[Misplaced, ...]:
    """Everything that reps ask of a place and do not get there, once each."""
    reps = tuple(reps)
    found = [*_starts_misplaced(reps, place, rules)]
    course = place.pool.course
    without_flags = frozenset(end for end in BOTH if not place.pool.has_flags(end))
    for rep, begins in laps(reps, course, place.end, rules.starts):
        partner = rules.partners.get(rep.item.partner)
        if partner:
            short = _need(rep.path, rep.item.partner, partner.depth_m, begins, place, False)
            found += short
        for own in placed_pieces(rep, begins, course):
            found += _piece_misplaced(rep, own, place, rules, without_flags)
    return tuple(dict.fromkeys(found))


def _starts_misplaced(
    reps: tuple[Rep, ...], place: PoolPlace, rules: PoolRules
) -> Iterator[Misplaced]:
    for start in dict.fromkeys(starts_here(reps, place, rules.starts)):
        word = rules.starts[start.word]
        limits = start_limits(rules.policy, rules.level, word, start.taught)
        for end in in_order(start.ends):
            lacks: dict[Shortfall, list[int]] = {}
            for lane in place.lanes:
                short = start_shortfall(place.pool, end, lane, word, limits)
                if not short and not place.lanes_said and limits.depth_least:
                    short = Shortfall(Lack.LANES_UNSAID)
                if short:
                    lacks.setdefault(short, []).append(lane)
            for short, lanes in lacks.items():
                both = len(start.ends) > 1
                yield Misplaced(start.path, start.word, True, end, tuple(lanes), short, both)
            most = DepthNeeded(most=word.depth_m.most)
            yield from _need(start.path, start.word, most, frozenset((end,)), place, True)
            far = next(iter(BOTH - {end}))
            if enters(word) == BACKWARDS and not place.pool.has_flags(far):
                lack = Shortfall(Lack.NO_FLAGS)
                yield Misplaced(start.path, start.word, True, far, place.lanes, lack)


def _piece_misplaced(
    rep: Rep, own: PlacedPiece, place: PoolPlace, rules: PoolRules, without_flags: Ends
) -> Iterator[Misplaced]:
    piece, drill = own.piece, own.piece.drill
    if drill.is_on_land:
        return
    least = drill.depth_m.least
    if counts(drill, rules.policy.limit("push_off_most")):
        least = max(least or 0.0, rules.policy.limit("under_water_depth_least"))
    needed = DepthNeeded(least, drill.depth_m.most)
    if needed != ANY_DEPTH and not place.lanes_said:
        lack = Shortfall(Lack.LANES_UNSAID)
        yield Misplaced(rep.path, drill.id, False, place.end, place.lanes, lack)
    else:
        yield from _need(rep.path, drill.id, needed, own.begins, place, drill.travels)
    if not (drill.is_on_back or (drill.is_backstroke and not drill.is_on_front)):
        return
    hardest = max(piece.effort.start, piece.effort.end)
    if hardest > rules.policy.limit("back_without_flags_most"):
        for end in in_order(own.reaches & without_flags):
            lack = Shortfall(Lack.NO_FLAGS)
            yield Misplaced(rep.path, drill.id, False, end, place.lanes, lack)


def _need(
    path: DataPath, what: str, needed: DepthNeeded, begins: Ends, place: PoolPlace, travels: bool
) -> Iterator[Misplaced]:
    """The lanes that lack the depth which something needs where it begins; what stays in place is
    done at whichever end has it.
    """
    if needed.least is None and needed.most is None:
        return
    ends = in_order(begins) if travels else [place.end]
    for end in ends:
        lacks: dict[Shortfall, list[int]] = {}
        for lane in place.lanes:
            short = _depth_shortfall(place.pool, end, lane, needed, travels)
            if short:
                lacks.setdefault(short, []).append(lane)
        for short, lanes in lacks.items():
            yield Misplaced(path, what, False, end, tuple(lanes), short, len(ends) > 1)


def _depth_shortfall(
    pool: Pool, end: str, lane: int, needed: DepthNeeded, travels: bool
) -> Shortfall | None:
    known = {name: own.in_lane(lane).depth_m for name, own in pool.ends.items()}
    if travels:
        shallow, deep = known.get(end, pool.depth_m.least), known.get(end, pool.depth_m.most)
    elif len(known) == len(BOTH):
        shallow, deep = max(known.values()), min(known.values())
    else:  # somewhere in it there is this much, and this little
        shallow, deep = pool.depth_m.most, pool.depth_m.least
    if needed.least is not None and shallow < needed.least:
        return Shortfall(Lack.SHALLOW, shallow, needed.least)
    if needed.most is not None and deep > needed.most:
        return Shortfall(Lack.DEEP, deep, needed.most)
    return None
