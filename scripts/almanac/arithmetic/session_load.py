"""The load of a session before it is swum: its minutes times its rating (Foster)."""

from __future__ import annotations

from collections.abc import Iterable

from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.timed_reps import TimedRep
from almanac.arithmetic.working import (
    Difference,
    Known,
    Labelled,
    Product,
    Quotient,
    Working,
    gathered,
)

SECONDS_A_MINUTE = 60.0


def session_minutes(summary: PracticeSummary, group: str) -> Working | None:
    """Minutes of a session for a lane group: from its first start to its last finish, rests, talk
    and gear changes between them included; never the slot.

    None where a clock before the last finish is not known. Source: from the start of the warm-up
    to the end of the cool-down, as session load is taken (Foster et al. 2001, J Strength Cond Res
    15:109-15).
    """
    rows = [row for row in summary.rows_of(group) if row.run.of(group).reps]
    if not rows:
        return Known(0, "min")
    ends = {cell.group: cell.ends_s for cell in rows[-1].cells}
    last, first = ends[group], rows[0].starts_s
    if last is None or first is None:
        return None
    span = Difference(Known(last, "last finish", "s"), Known(first, "first start", "s"))
    return Quotient(span, Known(SECONDS_A_MINUTE, "s a minute"))


def session_rating(summary: PracticeSummary, group: str) -> Working | None:
    """The rating that a session is planned at: the mean rating of its reps, 0 to 10, each weighted
    by its time on the clock, rests included.

    A coach may state a rating instead, and a reported one takes the place of both when the day is
    kept. None where the clock of a rep is not known. The weighting is house preference: no standard
    for a planned session was found.
    """
    seconds: dict[float, float] = {}
    for run in summary.runs_of(group):
        for timed in run.clocks[group].reps:
            if timed.clock is None:
                return None
            rating = timed.rep.mean_rating
            seconds[rating] = seconds.get(rating, 0.0) + timed.clock.value
    if not seconds:
        return Known(0, "rating")
    weighted = gathered(
        Product((Known(spent, "on the clock", "s"), Known(rating, "rating")))
        for rating, spent in seconds.items()
    )
    return Quotient(weighted, Known(sum(seconds.values()), "on the clock", "s"))


def mean_rating(reps: Iterable[TimedRep]) -> float | None:
    """The mean rating of reps, 0 to 10, each weighted by its time on the clock; None where a clock
    is not known, or nothing is done.
    """
    spent, weighted = 0.0, 0.0
    for timed in reps:
        if timed.clock is None:
            return None
        spent += timed.clock.value
        weighted += timed.clock.value * timed.rep.mean_rating
    return weighted / spent if spent else None


def planned_load(
    summary: PracticeSummary, group: str, stated: float | None = None
) -> Working | None:
    """Session load of a practice for a lane group, in arbitrary units: minutes of the session times
    its rating, which the coach may state.

    None where minutes or rating are not known. Source: Foster 1998, Med Sci Sports Exerc
    30:1164-8; Foster et al. 2001, J Strength Cond Res 15:109-15.
    """
    minutes = session_minutes(summary, group)
    rating = session_rating(summary, group) if stated is None else Known(stated, "rating stated")
    if minutes is None or rating is None:
        return None
    return Product((Labelled(minutes, "min"), Labelled(rating, "rating")))
