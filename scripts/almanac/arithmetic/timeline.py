"""A set along the clock: when each piece of each rep begins, for the strip."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Break, Event
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.timed_reps import TimedRep
from almanac.frozen import quick


@quick
@dataclass(frozen=True, slots=True)
class WorkStretch:
    """A stretch of work: ``start`` and ``length`` in seconds, and the word that its mean effort
    falls in.
    """

    start: float
    length: float
    effort: str


def timeline(
    events: tuple[Event, ...], run: GroupClock, scale: EffortScale
) -> tuple[WorkStretch, ...] | None:
    """Every stretch of work in order, or None where a time is not known.

    A piece that builds is cut at the border of two words, evenly by distance.
    """
    if run.clock is None or run.work is None:
        return None
    return tuple(_moments(events, run, scale))


def _moments(
    events: tuple[Event, ...], run: GroupClock, scale: EffortScale
) -> Iterator[WorkStretch]:
    timed = iter(run.reps)
    waits = {id(change.before): change.uncovered_s for change in run.changes}
    now = 0.0
    for event in events:
        if isinstance(event, Break):
            now += event.seconds
            continue
        now += waits.get(id(event), 0.0)
        rep = next(timed)
        yield from _pieces(rep, now, scale)
        now += rep.clock.value if rep.clock else 0.0


def _pieces(timed: TimedRep, start: float, scale: EffortScale) -> Iterator[WorkStretch]:
    for piece, target in zip(timed.rep.pieces, timed.pieces, strict=True):
        if isinstance(target, NoNumber):
            return
        start += piece.change_s
        for word, share in scale.split(piece.effort).items():
            length = target.seconds * float(share)
            yield WorkStretch(start, length, word)
            start += length
        start += piece.rest_s
