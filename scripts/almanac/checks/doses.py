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
    long (gently swum ``dose_gentle_rep_most`` times as far), and between reps there is at least
    ``dose_rest_share`` of the dose's rest. A set and a practice hold at most what the ``most`` of
    the dose comes to, for swimmers above the drill's level ``dose_level_more`` times as much more
    (not fast, nor with gear that resists); and of wall work, of work under water and on land no
    more reps than that, each wall a rep.
    A timed test, done once, is as far and as hard as its benchmark says.
    """
    yield from _found(analysis, "drill-dose")
