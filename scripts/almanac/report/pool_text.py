"""Pools in words: where a practice starts and how deep it is there, what drills and sets need."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.pool_starts import dry_starts_of, words_of
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.start_limits import (
    DIVE,
    EDGE_DIVE,
    HEAD_FIRST,
    IN_THE_WATER,
    enters,
    height_of,
    start_limits,
    start_shortfall,
)
from almanac.arithmetic.under_water import counts
from almanac.checks.pool_words import FIRST, end_words, lane_words
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.manner import Cord
from almanac.model.policy import Word
from almanac.model.pool import ENDS, Depth, Pool
from almanac.model.swim_set import SwimSet, reps_of

UNKNOWN = "not known"


def start_lines(catalogue: Catalogue, summary: PracticeSummary) -> list[str]:
    """The starts of a practice: at which end, in which lanes, how deep it is and how high one
    stands; those that a part has at one place in one line.
    """
    starts, pool = words_of(catalogue, "starts"), summary.pool
    found: dict[tuple[str, str], dict[str, list[int]]] = {}
    for run, crew, start in dry_starts_of(catalogue, summary):
        word = starts[start.word]
        title = catalogue.words("practice-parts")[run.word].title
        for end in sorted(start.ends):
            for lane in crew.lanes:
                where = f"{end_words(pool, end)}, {_water(pool, end, lane, word)}"
                lanes = found.setdefault((title, where), {}).setdefault(word.title.lower(), [])
                lanes.append(lane)
    together: dict[tuple[str, str, tuple[int, ...]], list[str]] = {}
    for (title, where), own in found.items():
        for how, lanes in own.items():
            together.setdefault((title, where, tuple(sorted(set(lanes)))), []).append(how)
    return [
        f"{title}: {' and '.join(how)} at {where}, in {lane_words(lanes)}; {FIRST}."
        for (title, where, lanes), how in together.items()
    ]


def _water(pool: Pool, end: str, lane: int, word: Word) -> str:
    """How deep it is where somebody starts, and how high one stands."""
    own = pool.ends.get(end)
    if own is None:
        return f"depth {UNKNOWN}"
    here = own.in_lane(lane)
    deep = f"{here.depth_m:g} m deep to 6 m out"
    if enters(word) != HEAD_FIRST:
        return deep
    height = height_of(here, word)
    return f"{deep}, {UNKNOWN if height is None else f'{height:g} m'} above the water"


def needs_words(catalogue: Catalogue, drill: Drill) -> str:
    """What a drill asks of the water; "" where any will do."""
    told = []
    word = words_of(catalogue, "starts").get(drill.start)
    if word and enters(word) != IN_THE_WATER:
        told.append(_start_words(catalogue, drill.level, word, taught=True))
    told += _depth_words(catalogue, drill)
    return "; ".join(told)


def _start_words(catalogue: Catalogue, level: str, word: Word, taught: bool) -> str:
    limits = start_limits(catalogue.policy, level, word, taught)
    words = f"{word.title.lower()}: {limits.depth_least:g} m or deeper to 6 m out"
    if enters(word) == HEAD_FIRST:
        words += f", off {limits.platform_most:g} m at most"
    return f"{words}; {FIRST}"


def _depth_words(catalogue: Catalogue, drill: Drill) -> Iterator[str]:
    least, most = drill.depth_m.least, drill.depth_m.most
    if counts(drill, catalogue.policy.limit("push_off_most")) and not drill.is_on_land:
        least = max(least or 0.0, catalogue.policy.limit("under_water_depth_least"))
    if least:
        yield f"{least:g} m or deeper"
    if most:
        yield f"{most:g} m at most, where everybody stands"


def set_needs(catalogue: Catalogue, swim_set: SwimSet) -> list[str]:
    """What a set says of pools, and what its starts ask of the water."""
    pools = catalogue.club.pools
    told = [f"Written for {pools[id].title}." for id in swim_set.pools]
    starts = words_of(catalogue, "starts")
    for name in dict.fromkeys(reps.start for reps in reps_of(swim_set.items) if reps.start):
        if enters(starts[name]) != IN_THE_WATER:
            words = _start_words(catalogue, swim_set.level, starts[name], taught=False)
            told.append(f"{words[0].upper()}{words[1:]}.")
    cords = dict.fromkeys(reps.cord for reps in reps_of(swim_set.items) if reps.cord)
    return [*told, *(cord_words(cord) for cord in cords)]


def cord_words(cord: Cord) -> str:
    """Who holds the end of a cord, and where."""
    who = {"adult": "an adult holds it", "swimmer": "a swimmer holds it", "anchor": "an anchor"}
    return f"The end of the cord: {who[cord.held_by]}. {cord.at}"


@dataclass(frozen=True)
class EndRow:
    """One end of a pool in words, with the levels that may dive there in some lane."""

    pool: str
    end: str
    depth: str
    platform: str
    flags: str
    dives: str


def end_rows(catalogue: Catalogue) -> Iterator[EndRow]:
    """Every end of every pool: its depth, its platform, its flags, and who may dive there; of no
    hall.
    """
    for pool in catalogue.club.waters.values():
        for name in ENDS:
            own = pool.ends.get(name)
            flags = "yes" if pool.has_flags(name) else "none"
            title = end_words(pool, name).removeprefix("the ")
            if own is None:
                depth = f"{UNKNOWN}; the pool {_from_to(pool.depth_m)}"
                yield EndRow(pool.title, title, depth, UNKNOWN, flags, "nobody")
                continue
            height = UNKNOWN if own.platform_m is None else f"{own.platform_m:g} m"
            dives = _dives(catalogue, pool, name)
            yield EndRow(pool.title, title, f"{own.depth_m:g} m", height, flags, dives)


def _from_to(depth: Depth) -> str:
    ends = dict.fromkeys((f"{depth.least:g}", f"{depth.most:g}"))
    return f"{' to '.join(ends)} m"


def _dives(catalogue: Catalogue, pool: Pool, end: str) -> str:
    """Who may dive at an end off what is there, in which lanes where not in all, and the lanes in
    which nobody starts.
    """
    own = pool.ends[end]
    closed = [lane for lane in range(1, pool.lanes + 1) if not own.in_lane(lane).starts]
    told = ", ".join(_divers(catalogue, pool, end, DIVE, closed)) or "nobody"
    if own.edge_m is not None:
        at_edge = ", ".join(_divers(catalogue, pool, end, EDGE_DIVE, closed)) or "nobody"
        told = f"off the platform: {told}; off the edge: {at_edge}"
    if closed and len(closed) < pool.lanes:
        told += f"; no starts in {lane_words(tuple(closed))}"
    return told


def _divers(
    catalogue: Catalogue, pool: Pool, end: str, dive: Word, closed: list[int]
) -> Iterator[str]:
    open_lanes = [lane for lane in range(1, pool.lanes + 1) if lane not in closed]
    for level, word in catalogue.words("levels").items():
        limits = start_limits(catalogue.policy, level, dive, False)
        lanes = [
            lane for lane in open_lanes if start_shortfall(pool, end, lane, dive, limits) is None
        ]
        if lanes:
            where = "" if lanes == open_lanes else f" (in {lane_words(tuple(lanes))})"
            yield word.title.lower() + where
