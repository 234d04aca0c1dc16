"""The page of a timetable: each day's lanes as a grid, and the single days that are otherwise."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAY_NAMES, DAYS
from almanac.arithmetic.pool_slots import SlotDay, every_day, grid
from almanac.checks.pool_words import lane_words
from almanac.findings import Finding
from almanac.model.catalogue import Catalogue
from almanac.model.club import Squad
from almanac.model.timetable import PoolSlot, Timetable
from almanac.report.shown import date_words
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.links import Page


@dataclass(frozen=True)
class LaneCell:
    """Lanes side by side: how many, which, and whose they are, "" for nobody's."""

    many: int
    lanes: str
    whose: str


@dataclass(frozen=True)
class LaneRow:
    """A stretch of a day: from when to when, and its lanes from the first to the last."""

    begins: str
    ends: str
    cells: tuple[LaneCell, ...]


@dataclass(frozen=True)
class LaneGrid:
    """A pool on the days that are alike there: what they are called, the ``weekdays`` by number
    from Sunday, 0, as browsers count, ``on`` a single day; lanes and rows.
    """

    days: str
    weekdays: str
    on: str
    pool: str
    lanes: int
    rows: tuple[LaneRow, ...]


def timetable_page(analysis: Analysis, timetable: Timetable, findings: Sequence[Finding]) -> Page:
    """The page of a timetable."""
    catalogue = analysis.catalogue
    grids = list(_grids(catalogue, timetable))
    return entry_page(
        catalogue,
        timetable,
        first=date_words(timetable.first),
        last=date_words(timetable.last),
        week=[own for own in grids if not own.on],
        single=[own for own in grids if own.on],
        squads=list(_squads(catalogue, timetable)),
        findings=findings_on(timetable, findings),
    )


def _grids(catalogue: Catalogue, timetable: Timetable) -> Iterator[LaneGrid]:
    """A grid for each pool and each day, those of a week that are alike together."""
    alike: dict[tuple[str, str, tuple[LaneRow, ...]], list[SlotDay]] = {}
    for day in every_day(timetable):
        for pool, rows in _rows(catalogue, [slot for _, slot in day.slots]):
            single = str(day.on) if day.on else ""
            if not single or any(day.on in slot.on for _, slot in day.slots if slot.pool == pool):
                alike.setdefault((single, pool, rows), []).append(day)
    for (single, pool, rows), days in alike.items():
        own = catalogue.club.pools[pool]
        numbers = [DAYS.index(day.day) for day in days]
        name = ", ".join(DAY_NAMES[number] for number in numbers)
        if days[0].on:
            name = f"{name} {date_words(days[0].on)}"
        weekdays = " ".join(str((number + 1) % len(DAYS)) for number in numbers)
        yield LaneGrid(name, weekdays, single, own.title, own.lanes, rows)


def _rows(
    catalogue: Catalogue, slots: Sequence[PoolSlot]
) -> Iterator[tuple[str, tuple[LaneRow, ...]]]:
    squads = catalogue.club.squads
    for pool in dict.fromkeys(slot.pool for slot in slots):
        here = [slot for slot in slots if slot.pool == pool]
        rows = grid(here, catalogue.club.pools[pool].lanes)
        cut = (LaneRow(row.begins, row.ends, tuple(_cells(row.cells, squads))) for row in rows)
        yield pool, tuple(cut)


def _cells(cells: Sequence[tuple[int, str]], squads: Mapping[str, Squad]) -> Iterator[LaneCell]:
    lane = 1
    for many, id in cells:
        last = lane + many - 1
        lanes = str(lane) if many == 1 else f"{lane}–{last}"
        yield LaneCell(many, lanes, squads[id].title if id else "")
        lane = last + 1


def _squads(catalogue: Catalogue, timetable: Timetable) -> Iterator[tuple[str, list[str]]]:
    """Each squad with its slots in words."""
    for id, squad in catalogue.club.squads.items():
        own = [_words(catalogue, slot) for slot in timetable.slots if slot.squad == id]
        if own:
            yield squad.title, own


def _words(catalogue: Catalogue, slot: PoolSlot) -> str:
    """``Tuesday, Thursday 16:30 to 17:30, lanes 1 to 3 of …, 3 adults; laid out: 15 kickboard``."""
    days = [DAY_NAMES[DAYS.index(day)] for day in slot.days] or [date_words(on) for on in slot.on]
    pool = catalogue.club.pools[slot.pool].title
    words = f"{', '.join(days)} {slot.begins} to {slot.ends}, {lane_words(slot.lanes)} of {pool}"
    if slot.adults:
        words += f", {slot.adults} adult{'s' if slot.adults > 1 else ''}"
    laid = [f"{catalogue.gear[id].title.lower()} {many}" for id, many in slot.gear.items()]
    return words + (f"; laid out: {', '.join(laid)}" if laid else "")
