"""The parts of a practice in the data of its run: who does what, from when, and in which blocks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from almanac.arithmetic.crews import HALVES, Crew, crew_of
from almanac.arithmetic.lap_ends import Ends, laps
from almanac.arithmetic.moment import Moment
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_blocks import run_blocks
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.arithmetic.swum import Swum
from almanac.model.catalogue import Catalogue
from almanac.model.club import START_END
from almanac.model.entry import Hazard
from almanac.model.manner import STARTS
from almanac.report.hands_words import help_words
from almanac.report.run_blocks_json import BlocksOfCrew, ItemsOfPart
from almanac.report.run_items import number


@dataclass(frozen=True)
class PartsOfRun:
    """Writes the parts of one practice."""

    catalogue: Catalogue
    summary: PracticeSummary
    _ends: dict[tuple[int, str], tuple[Ends, ...]] = field(default_factory=dict)

    @cached_property
    def halved(self) -> frozenset[str]:
        """The lane groups of which some part has a half alone."""
        cells = (cell for row in self.summary.sheet for cell in row.cells)
        return frozenset(cell.group for cell in cells if cell.crew.half)

    @cached_property
    def _stages(self) -> dict[int, int]:
        return {id(stage): place for place, stage in enumerate(self.summary.stages)}

    def crews(self) -> Iterator[dict[str, Any]]:
        """Who is who: each lane group, or each half of one whose halves are apart somewhere."""
        for group in self.summary.groups:
            for half in HALVES if group in self.halved else ("",):
                crew = self._usual(group, half)
                yield {
                    "key": _key(group, half),
                    "group": group,
                    "half": half,
                    "title": crew.title,
                    "lanes": list(crew.lanes),
                    "heads": crew.heads,
                    "meant": True,
                }

    def part(self, row: SheetRow) -> dict[str, Any]:
        """One row of the run sheet."""
        run, doing = row.run, row.run.doing
        title = self.catalogue.words("practice-parts")[run.word].title
        led_by = self.catalogue.words("roles")[doing.led_by].title if doing.led_by else ""
        items = ItemsOfPart(self.catalogue, run.course)
        crews = {
            key: self._crew_part(row, cell, items)
            for cell in row.cells
            for key in self._keys(cell.crew)
        }
        told: dict[str, Any] = {
            "set": doing.set,
            "turn": row.stage.turn,
            "talk_s": number(row.talk_s),
            "change_s": number(row.change_s),
            "gear_s": number(row.gear_s),
            "place": doing.place,
            "led_by": led_by,
            "end": doing.end if doing.end != START_END else "",
            "note": doing.note,
            "joins": row.joins,
            "helpers": [help_words(own, led_by.lower() or "coach") for own in row.helps],
            "hazards": own_hazards(self.catalogue, run.swim_set.hazards if run.swim_set else ()),
        }
        return {
            "stage": self._stages[id(row.stage)],
            "number": row.stage.number,
            "word": run.word,
            "title": f"{title}: {run.swim_set.title}" if run.swim_set else title,
            **_moment("starts_s", row.starts),
            **{key: value for key, value in told.items() if value},
            "items": items.items,
            "crews": crews,
        }

    def _usual(self, group: str, half: str) -> Crew:
        return crew_of(group, half, self.summary.groups, self.summary.practice.lanes, {})

    def _keys(self, crew: Crew) -> tuple[str, ...]:
        """The rows of a run that a crew is: both halves of a lane group where they are together
        here and apart elsewhere.
        """
        if crew.half or crew.group not in self.halved:
            return (_key(crew.group, crew.half),)
        return tuple(_key(crew.group, half) for half in HALVES)

    def _crew_part(self, row: SheetRow, cell: SheetCell, items: ItemsOfPart) -> dict[str, Any]:
        run, clock = row.run, row.run.clocks[cell.group]
        swum, waits_for = run.of(cell.group), cell.waits_for
        usual = self._usual(cell.group, cell.crew.half)
        begins = self._begins(swum, run.doing.end) if run.is_in_water else ()
        blocks = run_blocks(swum.events, clock)
        seconds = {
            "clock_over_s": cell.clock_over_s,
            "last_touch_s": cell.last_touch_s,
            "waits_s": cell.waits_s,
        }
        told: dict[str, Any] = {
            "lanes": list(cell.crew.lanes) if cell.crew.lanes != usual.lanes else [],
            **{key: number(value) for key, value in seconds.items() if value},
            "waits_for": _key(waits_for.group, waits_for.half) if waits_for else "",
        }
        has_home = run.is_in_water and not clock.unfit
        return {
            **_moment("ends_s", cell.ends),
            **{key: value for key, value in told.items() if value},
            "blocks": BlocksOfCrew(items, begins, has_home).written(blocks),
        }

    def _begins(self, swum: Swum, end: str) -> tuple[Ends, ...]:
        if (id(swum), end) not in self._ends:
            self._ends[id(swum), end] = ends_of_reps(self.catalogue, swum, end)
        return self._ends[id(swum), end]


def ends_of_reps(catalogue: Catalogue, swum: Swum, end: str) -> tuple[Ends, ...]:
    """At which ends of the pool each rep may begin, for those who leave from one."""
    words = catalogue.vocabularies.get(STARTS)
    starts = words.words if words else {}
    return tuple(begins for _, begins in laps(swum.reps, swum.course, end, starts))


def own_hazards(catalogue: Catalogue, hazards: Iterable[Hazard]) -> list[dict[str, str]]:
    """What an entry itself names: each hazard with what is done about it there, else always."""
    words = catalogue.words("hazards")
    return [
        {"title": word.title, "control": own.control or word.control}
        for own in hazards
        if (word := words.get(own.hazard))
    ]


def _key(group: str, half: str) -> str:
    return f"{group}/{half}" if half else group


def _moment(key: str, moment: Moment) -> dict[str, Any]:
    """A moment in seconds from the start of the slot; ``from`` where it is only the earliest."""
    return {key: number(moment.s), **({"from": True} if moment.missing else {})}
