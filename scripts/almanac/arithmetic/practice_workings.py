"""The workings behind the figures of a practice on the clock."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from operator import attrgetter

from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.arithmetic.working import Difference, Known, Labelled, Working, total


def practice_time(summary: PracticeSummary) -> Working | None:
    """When a practice is over: talk, changing over, gear changes and what each part takes the
    slowest lane group, one after the other. Of parts that run beside each other those count that
    are done last. None where a clock is not known.
    """
    if summary.ends_s is None:
        return None
    terms: list[Working] = []
    for row in _last_to_end(summary.sheet):
        terms += [Known(row.talk_s, "talk", "s"), Known(row.gear_s, "gear", "s")]
        terms.append(Known(row.change_s, "change over", "s"))
        takes = [own for cell in row.cells if (own := row.run.takes(cell.group)) is not None]
        if takes:
            slowest = max(takes, key=attrgetter("value"))
            terms.append(Labelled(slowest, f"part {row.stage.number}", "s"))
    return total(terms)


def _last_to_end(sheet: tuple[SheetRow, ...]) -> Iterator[SheetRow]:
    """The rows of the track of each stage that is done last."""
    for _, of_stage in groupby(sheet, key=lambda row: id(row.stage)):
        rows = tuple(of_stage)
        track = max(rows, key=lambda row: row.ends.s).track
        yield from (row for row in rows if row.track == track)


def slack(summary: PracticeSummary) -> Working | None:
    """What the slot leaves after the practice; below zero where it overruns."""
    ends = practice_time(summary)
    if ends is None:
        return None
    slot = Known(60 * summary.practice.slot.minutes, "slot", "s")
    return Difference(slot, Labelled(ends, "practice", "s"))
