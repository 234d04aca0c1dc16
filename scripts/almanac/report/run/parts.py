"""The parts of a practice in the data of its run: who does what, from when, and in which blocks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.lap_ends import Ends, laps
from almanac.arithmetic.moment import Moment
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_blocks import run_blocks
from almanac.arithmetic.run_crews import RunCrew, key_of, run_crews
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.arithmetic.swum import Swum
from almanac.checks.run_days import RunOffers, practice_offers
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Hazard
from almanac.model.manner import STARTS
from almanac.model.pool import START_END
from almanac.report.hands_words import help_words
from almanac.report.run.blocks_json import BlocksOfCrew, ItemsOfPart
from almanac.report.run.items import number


@dataclass(frozen=True)
class PartsOfRun:
    """Writes the parts of one practice."""

    analysis: Analysis
    summary: PracticeSummary
    _ends: dict[tuple[int, str], tuple[Ends, ...]] = field(default_factory=dict)

    @property
    def catalogue(self) -> Catalogue:
        """Where words and titles stand."""
        return self.analysis.catalogue

    @cached_property
    def _crews(self) -> tuple[RunCrew, ...]:
        return run_crews(self.summary)

    @cached_property
    def offers(self) -> RunOffers:
        """What may be changed on the deck."""
        return practice_offers(self.analysis, self.summary)

    @cached_property
    def _stages(self) -> dict[int, int]:
        return {id(stage): place for place, stage in enumerate(self.summary.stages)}

    def crews(self) -> Iterator[dict[str, Any]]:
        """Who is who: each lane group, or each half of one whose halves are apart somewhere."""
        for own in self._crews:
            yield {
                "key": own.key,
                "group": own.usual.group,
                "half": own.usual.half,
                "title": own.usual.title,
                "lanes": list(own.usual.lanes),
                "heads": own.usual.heads,
                "meant": True,
            }

    def parts(self) -> list[dict[str, Any]]:
        """The rows of the run sheet."""
        return [self._part(number, row) for number, row in enumerate(self.summary.sheet)]

    def _part(self, number_: int, row: SheetRow) -> dict[str, Any]:
        run, doing = row.run, row.run.doing
        title = self.catalogue.words("practice-parts")[run.word].title
        led_by = self.catalogue.words("roles")[doing.led_by].title if doing.led_by else ""
        items = ItemsOfPart(self.catalogue, run.course)
        crews = {
            crew.key: self._crew_part(number_, crew, row, cell, items)
            for crew in self._crews
            for place, _, cell in crew.rows
            if place == number_
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
            "skip": number_ in self.offers.skips,
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

    def _crew_part(
        self, number_: int, crew: RunCrew, row: SheetRow, cell: SheetCell, items: ItemsOfPart
    ) -> dict[str, Any]:
        run, clock, offer = (
            row.run,
            row.run.clocks[cell.group],
            self.offers.crews[number_, crew.key],
        )
        swum, waits_for = run.of(cell.group), cell.waits_for
        begins = self._begins(swum, run.doing.end) if run.is_in_water else ()
        blocks = run_blocks(swum.events, clock)
        seconds = {
            "clock_over_s": cell.clock_over_s,
            "last_touch_s": cell.last_touch_s,
            "waits_s": cell.waits_s,
        }
        told: dict[str, Any] = {
            "lanes": [] if cell.crew.lanes == crew.usual.lanes else [*cell.crew.lanes],
            **{key: number(value) for key, value in seconds.items() if value},
            "waits_for": key_of(waits_for) if waits_for else "",
            "meet": offer.meet,
        }
        has_home = run.is_in_water and not clock.unfit
        return {
            **_moment("ends_s", cell.ends),
            **{key: value for key, value in told.items() if value},
            "blocks": BlocksOfCrew(items, begins, offer, has_home).written(blocks),
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


def _moment(key: str, moment: Moment) -> dict[str, Any]:
    """A moment in seconds from the start of the slot; ``from`` where it is only the earliest."""
    return {key: number(moment.s), **({"from": True} if moment.missing else {})}
