"""Rules that hold what is swum to what each drill says of itself: how hard, how far, how often, and
with how much rest.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.doses_judged import judged
from almanac.checks.once import once
from almanac.checks.rule import Problem, refuses, warns

_found = once(judged)


@refuses("drill-too-hard")
def drill_too_hard(analysis: Analysis) -> Iterator[Problem]:
    """No drill is done harder than its own range of effort goes to, at any point of a rep, of a
    descend or of a build.
    """
    yield from _found(analysis, "drill-too-hard")


@warns("drill-too-easy")
def drill_too_easy(analysis: Analysis) -> Iterator[Problem]:
    """No drill is done more easily than its own range of effort begins: it then teaches nothing."""
    yield from _found(analysis, "drill-too-easy")


@refuses("drill-dose")
def drill_dose(analysis: Analysis) -> Iterator[Problem]:
    """Each rep keeps to the dose of its drill: it is at most ``dose_rep_most`` times as far or as
    long (gently swum ``dose_gentle_rep_most`` times as far, and the whole stroke farther by those
    above the drill's level), and between reps there is at least ``dose_rest_share`` of its rest.

    A set and a practice hold at most what the ``most`` of the dose comes to; those above the
    drill's level do ``dose_level_more`` times as much more for each level, neither fast nor with
    gear that resists. Of wall work, of work under water and on land they hold no more reps than
    that, each wall a rep. A timed test, done once, is as far and as hard as its benchmark says.
    """
    yield from _found(analysis, "drill-dose")
