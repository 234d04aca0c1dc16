"""What sets and practices ask of the pools that they are done in, and do not get there."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from almanac.arithmetic.crews import Crew
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.pool_fit import (
    Misplaced,
    PoolPlace,
    PoolRules,
    StartHere,
    misplaced,
    starts_here,
)
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.start_limits import IN_THE_WATER, enters
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import counts
from almanac.model.catalogue import Catalogue
from almanac.model.entry import ANY_DEPTH
from almanac.model.policy import Word
from almanac.model.pool import ENDS, Pool
from almanac.model.practice import Practice
from almanac.model.swim_set import Item, SwimSet, changes_of, reps_of
from almanac.source.reader import DataPath
from almanac.units import Course


@dataclass(frozen=True)
class PartMisplaced:
    """What a crew asks of the pool in a part of a practice and does not get."""

    run: PartRun
    crew: Crew
    found: Misplaced

    @property
    def path(self) -> DataPath:
        """Where it stands in the practice's file."""
        if self.run.swim_set:
            return (*self.run.path, "set")
        return (*self.run.path, *self.found.path)


@dataclass(frozen=True)
class PoolMisplaced:
    """What a set asks of a pool, and no lane of it gives, whichever end one leaves from."""

    pool: str
    found: tuple[Misplaced, ...]


def words_of(catalogue: Catalogue, vocabulary: str) -> Mapping[str, Word]:
    """The words of a vocabulary that a catalogue may do without."""
    return catalogue.words(vocabulary) if vocabulary in catalogue.vocabularies else {}


def rules_for(catalogue: Catalogue, level: str) -> PoolRules:
    """What is asked of a pool for a level."""
    starts, partners = words_of(catalogue, "starts"), words_of(catalogue, "partners")
    return PoolRules(catalogue.policy, level, starts, partners)


def crews_in_water(summary: PracticeSummary) -> Iterator[tuple[PartRun, Crew]]:
    """Each crew in each part that is in the water, once."""
    seen: set[tuple[DataPath, str]] = set()
    for run in summary.runs:
        for crew in run.crews:
            if run.is_in_water and (run.path, crew.name) not in seen:
                seen.add((run.path, crew.name))
                yield run, crew


def place_of(practice: Practice, pool: Pool, run: PartRun, crew: Crew) -> PoolPlace:
    """Where a crew does a part. One that is somewhere else (``place``) says in which lanes."""
    said = not run.doing.place or crew.group in run.doing.lanes
    return PoolPlace(pool, crew.lanes, run.doing.end, said)


def practice_fit(
    catalogue: Catalogue, summary: PracticeSummary, drills: frozenset[str]
) -> tuple[PartMisplaced, ...]:
    """What a practice asks of its pool and does not get there, in the lanes that each crew has.
    ``drills`` are those that are ``demanding``.
    """
    practice = summary.practice
    rules = rules_for(catalogue, catalogue.club.squads[practice.squad].level)
    known: dict[tuple[int, tuple[int, ...], str, bool], tuple[Misplaced, ...]] = {}
    found = []
    for run, crew in crews_in_water(summary):
        items = run.swim_set.items if run.swim_set else run.doing.items
        if not asks(items, drills):
            continue
        swum, place = run.of(crew.group), place_of(practice, summary.pool, run, crew)
        key = id(swum), place.lanes, place.end, place.lanes_said
        if key not in known:
            known[key] = misplaced(swum.reps, place, rules)
        found += [PartMisplaced(run, crew, own) for own in known[key]]
    return tuple(found)


def starts_of(
    catalogue: Catalogue, summary: PracticeSummary
) -> Iterator[tuple[PartRun, Crew, StartHere]]:
    """Every start of a practice, once a part and crew."""
    starts, drills = words_of(catalogue, "starts"), starting_drills(catalogue)
    for run, crew in crews_in_water(summary):
        if not asks(run.swim_set.items if run.swim_set else run.doing.items, drills):
            continue
        place = place_of(summary.practice, summary.pool, run, crew)
        for start in dict.fromkeys(starts_here(run.of(crew.group).reps, place, starts)):
            yield run, crew, start


def dry_starts_of(
    catalogue: Catalogue, summary: PracticeSummary
) -> Iterator[tuple[PartRun, Crew, StartHere]]:
    """Every start of a practice that is more than a push in the water, once a part and crew."""
    words = words_of(catalogue, "starts")
    for run, crew, start in starts_of(catalogue, summary):
        if enters(words[start.word]) != IN_THE_WATER:
            yield run, crew, start


def starting_drills(catalogue: Catalogue) -> frozenset[str]:
    """The drills that hold a start which is no push in the water."""
    words = words_of(catalogue, "starts")
    dry = {id for id, word in words.items() if enters(word) != IN_THE_WATER or word.depth_m.least}
    return frozenset(id for id, drill in catalogue.drills.items() if drill.start in dry)


def demanding(catalogue: Catalogue) -> frozenset[str]:
    """The drills that ask anything of a pool: all others need not be looked at."""
    pools, starting = catalogue.club.waters.values(), starting_drills(catalogue)
    push_off = catalogue.policy.limit("push_off_most")
    bare = any(not pool.has_flags(end) for pool in pools for end in ENDS)
    return frozenset(
        id
        for id, drill in catalogue.drills.items()
        if id in starting
        or drill.depth_m != ANY_DEPTH
        or counts(drill, push_off)
        or (bare and (drill.is_on_back or drill.is_backstroke))
    )


def asks(items: tuple[Item, ...], drills: frozenset[str]) -> bool:
    """Whether items ask anything of a pool."""
    for reps in reps_of(items):
        if reps.start or reps.partner:
            return True
        if any(not drills.isdisjoint(part.drills) for part in reps.parts):
            return True
    return any(
        change.start
        or change.do in drills
        or any(not drills.isdisjoint(part.drills) for part in change.parts or ())
        for change in changes_of(items)
    )


def set_fit(
    catalogue: Catalogue, swim_set: SwimSet, ways_in: Callable[[Course], Iterable[Swum]]
) -> tuple[PoolMisplaced, ...]:
    """What a set asks of a pool that it names, and gets in no lane of it from either end. One that
    names none is held against the pools of its course, unless a practice has it: one must do.
    ``ways_in`` gives the ways of swimming it in a course.
    """
    rules, pools = rules_for(catalogue, swim_set.level), catalogue.club.pools
    if swim_set.pools:
        tried = [
            PoolMisplaced(id, _best(ways_in(pools[id].course), pools[id], rules))
            for id in swim_set.pools
        ]
        return tuple(own for own in tried if own.found)
    if any(True for _ in catalogue.users(swim_set, Practice)):
        return ()
    tried = []
    for id, pool in pools.items():
        if pool.course == swim_set.course:
            found = _best(ways_in(pool.course), pool, rules)
            if not found:
                return ()
            tried.append(PoolMisplaced(id, found))
    return tuple(tried[:1])


def _best(ways: Iterable[Swum], pool: Pool, rules: PoolRules) -> tuple[Misplaced, ...]:
    """What is missing where the least is: nothing where a lane and an end have all."""
    ways = tuple(ways)
    tried = (
        tuple(
            one for way in ways for one in misplaced(way.reps, PoolPlace(pool, (lane,), end), rules)
        )
        for end in ENDS
        for lane in _unlike_lanes(pool)
    )
    best: tuple[Misplaced, ...] | None = None
    for found in tried:
        if not found:
            return ()
        if best is None or len(found) < len(best):
            best = found
    return best or ()


def _unlike_lanes(pool: Pool) -> Iterator[int]:
    """A lane of each sort that the pool has."""
    known = set()
    for lane in range(1, pool.lanes + 1):
        sort = tuple(end.lanes.get(str(lane)) for end in pool.ends.values())
        if sort not in known:
            known.add(sort)
            yield lane
