"""Words that ask for a dive: so that none hides in a text where no start is said."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.start_limits import (
    DIVE,
    IN_THE_WATER,
    StartLimits,
    enters,
    start_shortfall,
)
from almanac.checks.pool_words import FIRST
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import entry_level
from almanac.model.catalogue import Catalogue
from almanac.model.pool import ENDS
from almanac.model.swim_set import Item, changes_of, reps_of
from almanac.model.walk import drills_named, told_with_paths, written_notes
from almanac.wording.dives import names_a_dive, names_a_start


@refuses("dive-unsaid")
def dive_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Where a drill's name or steps, or a note of a set or a practice, asks for a dive, a start off
    a block or a jump off the edge, the drill or the reps say so under ``start``: else nobody asks
    how deep the water is. A push from the wall is no such start.
    """
    catalogue = analysis.catalogue
    for drill in catalogue.drills.values():
        if not _is_above(catalogue, drill.start):
            for path, text in told_with_paths(drill):
                if names_a_start(text):
                    said = "it names a start from above the water, and `start` says none"
                    yield Problem(drill, path, said, _SAY, level=drill.level)
                    break
    told = set[int]()
    for entry, items, path, note in written_notes(catalogue):
        if id(items) not in told and names_a_start(note) and not _says_start(catalogue, items):
            told.add(id(items))
            said = "the note names a start from above the water, and no reps say `start`"
            yield Problem(entry, path, said, _SAY, level=entry_level(catalogue, entry))


@refuses("benchmark-start")
def benchmark_start(analysis: Analysis) -> Iterator[Problem]:
    """A benchmark that starts from a dive or off a block, by its own words, has a pool of its
    course where that is known to be deep enough for teaching it, at some end and in some lane.
    """
    policy, pools = analysis.catalogue.policy, analysis.catalogue.club.pools.values()
    highest = max(policy.of_level(level).limit("platform_most") for level in policy.levels)
    limits = StartLimits(policy.limit("teaching_depth_least"), highest)
    for benchmark in analysis.catalogue.benchmarks.values():
        if not names_a_dive(benchmark.protocol.start):
            continue
        if not any(
            start_shortfall(pool, end, lane, DIVE, limits) is None
            for pool in pools
            if pool.course == benchmark.protocol.course
            for end in ENDS
            for lane in range(1, pool.lanes + 1)
        ):
            said = f"it starts with a dive, and no {benchmark.protocol.course} pool is deep enough"
            mend = f"start it with a push from the wall, or measure the pool's ends; {FIRST}"
            yield Problem(benchmark, ("protocol", "start"), said, mend)


_SAY = "write start: with a word of starts (dive, say), or take that out of the text"


def _is_above(catalogue: Catalogue, start: str) -> bool:
    """Whether a start is one from above the water; a push-off is none, and nor is none at all."""
    return bool(start) and enters(catalogue.words("starts")[start]) != IN_THE_WATER


def _says_start(catalogue: Catalogue, items: tuple[Item, ...]) -> bool:
    """Whether some reps say that they start above the water, or a drill of theirs does."""
    reps = tuple(reps_of(items))
    starts = (
        *(one.start for one in reps),
        *(one.start for one in changes_of(items)),
        *(catalogue.drills[id].start for id in drills_named(items)),
    )
    return any(_is_above(catalogue, start or "") for start in starts)
