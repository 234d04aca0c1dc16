"""The workings behind the figures of a practice on the clock."""

from __future__ import annotations

from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.working import Difference, Known, Labelled, Working, total


def practice_time(summary: PracticeSummary) -> Working | None:
    """When the last lane group is done: talk, gear changes and the slowest lane group of each part,
    one after the other. None where a clock is not known.
    """
    if summary.ends_s is None:
        return None
    terms: list[Working] = []
    for number, row in enumerate(summary.sheet, 1):
        terms += [Known(row.talk_s, "talk", "s"), Known(row.gear_s, "gear", "s")]
        clocks = [
            clock for group in summary.groups if (clock := row.run.clocks[group].clock) is not None
        ]
        terms.append(Labelled(max(clocks, key=lambda clock: clock.value), f"part {number}", "s"))
    return total(terms)


def slack(summary: PracticeSummary) -> Working | None:
    """What the slot leaves after the practice; below zero where it overruns."""
    ends = practice_time(summary)
    if ends is None:
        return None
    slot = Known(60 * summary.practice.slot.minutes, "slot", "s")
    return Difference(slot, Labelled(ends, "practice", "s"))
