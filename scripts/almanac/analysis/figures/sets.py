"""The figures of a set."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from operator import attrgetter

from almanac.analysis.figures.facets import FACET_WORD, SHARES, facet_words, part_estimated, partly
from almanac.analysis.figures.figure import Figure, Section, Shown
from almanac.arithmetic.by_time import lengths_in
from almanac.arithmetic.clock import Clock, suggest
from almanac.arithmetic.expand import expand
from almanac.arithmetic.facets import distance_working
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.manners import wait_after
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.set_workings import lengths, metres, rep_count, yards
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.table import ItemRow, item_rows
from almanac.source.reader import DataPath


@dataclass(frozen=True)
class SetForGroup:
    """A set and the lane group that its clock is asked for, None where no clock is."""

    summary: SetSummary
    group: str | None

    @property
    def swum(self) -> Swum:
        """What the lane group swims."""
        return self.summary.of(self.group)


def _unit(swum: Swum) -> str:
    return swum.course.unit.value


def _itself(whole: SetForGroup) -> Iterator[tuple[str, Swum]]:
    yield "{}", whole.swum


def _clock(whole: SetForGroup) -> Iterator[tuple[str, GroupClock]]:
    if whole.group is not None:
        yield "{}", whole.summary.clocks[whole.group]


def _items(whole: SetForGroup) -> Iterator[tuple[str, ItemRow]]:
    """``target 1.2`` is the second item of the first round; it tells of the item's slowest rep."""
    for _, run in _clock(whole):
        for row in item_rows(run):
            yield f"{{}} {item_place(row.path)}", row


def item_place(path: DataPath) -> str:
    """Where an item stands, counted from 1 through the rounds around it: ``1.2``."""
    return ".".join(str(step + 1) for step in path if isinstance(step, int))


TOTALS: tuple[Figure[Swum], ...] = (
    Figure("distance", "Distance", attrgetter("distance"), Shown.DISTANCE, _unit,
           (distance_working, lengths_in), partly=partly),
    Figure("reps", "Reps", rep_count, Shown.NUMBER, explained=(expand,)),
    Figure("lengths", "Lengths", lengths, Shown.NUMBER, partly=part_estimated),
    Figure("metres", "In metres", metres, Shown.DISTANCE, "m", converts=True,
           partly=part_estimated),
    Figure("yards", "In yards", yards, Shown.DISTANCE, "yd", converts=True,
           partly=part_estimated),
)  # fmt: skip

ON_THE_CLOCK: tuple[Figure[GroupClock], ...] = (
    Figure("clock", "Clock", attrgetter("clock"), Shown.TIME, explained=(Clock.run,)),
    Figure("last touch", "Last touch", attrgetter("last_touch"), Shown.TIME,
           explained=(Clock.last_touch,)),
    Figure("work", "Work", attrgetter("work"), Shown.TIME, explained=(Pacer.whole,)),
    Figure("rest", "Rest", attrgetter("rest"), Shown.TIME, explained=(GroupClock.rest,)),
    Figure("density", "Density", attrgetter("density"), Shown.SHARE,
           explained=(GroupClock.density,)),
    Figure("rated work", "Rated work", attrgetter("rated_work"), Shown.NUMBER,
           explained=(GroupClock.rated_work,)),
)  # fmt: skip

OF_ITEMS: tuple[Figure[ItemRow], ...] = (
    Figure("target", "Target", attrgetter("target"), Shown.TENTHS, explained=(Pacer.piece,)),
    Figure("sendoff", "Send-off", attrgetter("slowest.sendoff"), Shown.TIME,
           explained=(Clock.rep, suggest)),
    Figure("rest", "Rest", attrgetter("slowest.rest"), Shown.TIME,
           explained=(Clock.rep, wait_after)),
    Figure("aim", "Asked for", attrgetter("aim"), Shown.TENTHS, explained=(ItemRow.aim,)),
)  # fmt: skip

SET = (
    Section("set", _itself, {"totals": TOTALS}, "Distance"),
    Section("facet", lambda whole: facet_words(whole.swum, _unit(whole.swum)),
            {"words": FACET_WORD}, "Distance"),
    Section("group", _clock, {"clock": ON_THE_CLOCK}, "Clock"),
    Section("item", _items, {"rows": OF_ITEMS}, "Clock"),
    Section("shares", _itself, {"shares": SHARES}, "Distance"),
)  # fmt: skip
