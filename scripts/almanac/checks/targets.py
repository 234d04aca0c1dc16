"""Rules on what lane groups can swim at all: a known target, at a speed that keeps them up."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.checks.lanes import Swum, swum_by_groups
from almanac.checks.rule import Problem, warns
from almanac.source.reader import DataPath
from almanac.units import show_number


@warns("too-slow-to-stay-up")
def too_slow_to_stay_up(analysis: Analysis) -> Iterator[Problem]:
    """At its effort a lane group is not slower than the speed at which its level stays up
    (``slowest_afloat`` in the policy): below it there is no such rep, and so no target.
    """
    club = analysis.catalogue.club
    for swum, group, path, missing in _without_target(analysis, {Because.TOO_SLOW}):
        level = club.squads[club.lane_groups[group].squad].level
        slowest = show_number(analysis.catalogue.policy.slowest_afloat(level), 2)
        drill = analysis.catalogue.drills[missing.drill].title
        message = (
            f"{club.lane_groups[group].title}: {drill} would be slower than {slowest} m/s, "
            f"at which nobody of this level stays up"
        )
        hint = "ask for a harder effort, or for shorter reps with gear that carries"
        yield Problem(swum.entry, path, message, hint)


def _without_target(
    analysis: Analysis, because: Collection[Because]
) -> Iterator[tuple[Swum, str, DataPath, NoNumber]]:
    """For each lane group, the items of which a rep has no target for one of these reasons, each
    item and drill once.
    """
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            told: set[tuple[DataPath, str]] = set()
            for timed in run.reps:
                for missing in timed.pieces:
                    if not isinstance(missing, NoNumber) or missing.because not in because:
                        continue
                    if (timed.rep.path, missing.drill) not in told:
                        told.add((timed.rep.path, missing.drill))
                        yield swum, group, (*swum.path, *timed.rep.path), missing
