"""Rules on what the catalogue as a whole covers."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids, warns


@warns("coverage-hole")
def coverage_hole(analysis: Analysis) -> Iterator[Problem]:
    """Each goal has, at each level, a drill of that level or a lower one and a set of that level.

    A hole that is meant is stated under ``gaps`` in the policy, with its reason. While an entry is
    broken nothing is said: it may be the one that fills the hole. Nor is it of a club that has not
    chosen its goals itself, in a file of its own.
    """
    chosen = not analysis.catalogue.documents["vocabulary", "goals"].lent
    if not (analysis.catalogue.is_whole and chosen):
        return
    stated = {(gap.goal, gap.level) for gap in analysis.catalogue.policy.gaps}
    goals = analysis.catalogue.vocabularies["goals"]
    for row in analysis.coverage:
        for cell in row:
            if cell.is_hole and (cell.goal, cell.level) not in stated:
                what = " and ".join(
                    word
                    for word, count in (("no drill", cell.drills_up_to), ("no set", cell.sets))
                    if count == 0
                )
                message = f"'{cell.goal}' has {what} at level {cell.level}"
                yield Problem(
                    goals,
                    ("words", cell.goal),
                    message,
                    "write one, or state the gap in plans/policy.yml",
                    True,
                )


@forbids("gap-filled")
def gap_filled(analysis: Analysis) -> Iterator[Problem]:
    """A gap that the policy states is still a gap."""
    if not analysis.catalogue.is_whole:
        return
    holes = {(cell.goal, cell.level) for row in analysis.coverage for cell in row if cell.is_hole}
    for number, gap in enumerate(analysis.catalogue.policy.gaps):
        if (gap.goal, gap.level) not in holes:
            message = f"'{gap.goal}' at level {gap.level} has drills and sets by now"
            yield Problem(analysis.catalogue.policy, ("gaps", number), message, "remove the gap")
