"""Who is where in a pool and starts how, and which drills and items ask anything of a pool."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.arithmetic.crews import Crew
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.pool_fit import (
    PoolPlace,
    PoolRules,
    StartHere,
    starts_here,
)
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.start_limits import IN_THE_WATER, enters
from almanac.arithmetic.under_water import counts
from almanac.model.catalogue import Catalogue
from almanac.model.entry import ANY_DEPTH
from almanac.model.policy import Word
from almanac.model.pool import ENDS, Pool
from almanac.model.practice import Practice
from almanac.model.swim_set import Item, changes_of, reps_of
from almanac.source.reader import DataPath


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
