"""Moments of a run sheet in words: when a part begins, when a crew is done, how long it waits."""

from __future__ import annotations

from decimal import Decimal

from almanac.arithmetic.moment import Moment
from almanac.arithmetic.run_sheet import SheetCell
from almanac.rounding import difference
from almanac.units import clock_time, show_time

TOUCH_TOLD_FROM_S = 10  # both are told where the last touch is so far from the leader's end


def moment_words(start: str, moment: Moment) -> str:
    """A moment by the clock: ``18:40:00``, or ``from 18:40:00 on`` where it is the earliest."""
    time = clock_time(start, moment.s)
    return f"from {time} on" if moment.missing else time


def short_moment(start: str, moment: Moment) -> str:
    """The same without seconds where there are none: ``18:40``, ``from 18:40:05 on``."""
    return moment_words(start, moment).replace(":00 on", " on").removesuffix(":00")


def cell_words(start: str, cell: SheetCell) -> str:
    """When a crew is done, how long it then waits, and for whom."""
    if cell.ends.missing:
        return f"until some time {moment_words(start, cell.ends)}"
    over, touch = cell.clock_over_s, cell.last_touch_s
    late = 0.0 if over is None or touch is None else touch - over
    words = f"until {clock_time(start, cell.ends.s)}"
    if over is not None and late >= TOUCH_TOLD_FROM_S:
        words += f" (last touch; the leader's clock ends {clock_time(start, over)})"
    words += waits_words(cell)
    if touch is not None and late <= -TOUCH_TOLD_FROM_S:
        words += f"; last touch {clock_time(start, touch)}"
    return words


def short_until(start: str, cell: SheetCell) -> str:
    """The same in short: ``to 19:04, waits 1:20 for Osprey, lanes 4 to 6``."""
    if cell.ends.missing:
        return cell_words(start, cell)
    return f"to {clock_time(start, cell.ends.s).removesuffix(':00')}{waits_words(cell)}"


def waits_words(cell: SheetCell) -> str:
    """How long a crew then waits, and for whom, as a reader reckons it from the two times that are
    shown; "" where it does not.
    """
    if not cell.waits_s:
        return ""
    waits = difference(cell.ends.s + cell.waits_s, cell.ends.s, Decimal(1))
    whom = f" for {cell.waits_for.title}" if cell.waits_for else ""
    return f", waits {show_time(float(waits))}{whom}"
