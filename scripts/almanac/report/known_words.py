"""What a lane group's times stand on, in words: old tests, assumptions, and why there is none."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date

from almanac.arithmetic.group_clock import DoesNotFit, GroupClock
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.model.catalogue import Catalogue
from almanac.model.club import LaneGroup
from almanac.report.board_line import BoardLine
from almanac.report.shown import date_words, day_words
from almanac.units import show_time

_BASES: tuple[tuple[str, Callable[[Target], bool]], ...] = (
    ("from one test and so estimated", lambda target: target.estimated and not target.assumed),
    ("tested in another pool", lambda target: target.other_course),
    ("from an old test", lambda target: target.stale),
    ("assumed, as no test tells it", lambda target: target.assumed),
)


def basis_words(catalogue: Catalogue, run: GroupClock) -> Iterator[str]:
    """Of which drills the times stand on less than fresh tests over more than one distance; what
    hangs on an assumed one is told to do so.
    """
    for words, holds in _BASES:
        drills = {
            piece.drill.id: catalogue.drills[piece.drill.id].title
            for timed in run.reps
            for piece, target in zip(timed.rep.pieces, timed.pieces, strict=True)
            if isinstance(target, Target) and holds(target)
        }
        if drills:
            beyond = ", and what hangs on it" if words.startswith("assumed") else ""
            yield f"{words}: the time of {', '.join(drills.values())}{beyond}"


def paces_words(group: LaneGroup, today: date) -> str:
    """The days of the tests that a lane group's paces come from, as they are known on a day."""
    days = sorted({test.on for test in group.tests if test.on <= today})
    if not days:
        return "Paces: no test yet"
    if len(days) == 1:
        return f"Paces of {date_words(days[0])}"
    first = day_words if days[0].year == days[-1].year else date_words
    return f"Paces of {first(days[0])} to {date_words(days[-1])}"


def unfit_words(unfit: DoesNotFit) -> str:
    """That a set does not fit a lane group, where, and the nearest send-off that does."""
    item = unfit.timed.rep.item
    hold_s = item.parts[0].hold_s
    what = f"{item.reps} × {show_time(hold_s) if hold_s else item.distance}"
    return (
        f"does not fit: {what} on {show_time(unfit.sendoff_s)}, which takes "
        f"{show_time(unfit.done_s, tenths=True)}; the nearest send-off that fits is "
        f"{show_time(unfit.fits_s)}"
    )


def unfit_lines(
    catalogue: Catalogue, clocks: Mapping[str, GroupClock], groups: Iterable[str]
) -> list[BoardLine]:
    """Lines for the whiteboard: for each lane group that the set does not fit, where and why."""
    return [
        BoardLine(0, unfit_words(unfit), whose=catalogue.lane_groups[group].title, groups=(group,))
        for group in groups
        for unfit in clocks[group].unfit
    ]


def no_number_words(catalogue: Catalogue, missing: NoNumber | DoesNotFit) -> str:
    """Why there is no number, and which benchmark or send-off would give it."""
    if isinstance(missing, DoesNotFit):
        return f"the set {unfit_words(missing)}"
    why = f"{catalogue.drills[missing.drill].title}: {missing.because.value}"
    if missing.because is Because.TOO_SLOW or not missing.benchmark:
        return why
    benchmark = catalogue.benchmarks[missing.benchmark].title
    return f"{why}; the benchmark “{benchmark}” would give it"
