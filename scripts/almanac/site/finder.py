"""The finder: one compact table of drills and sets, and the page that narrows it in the browser."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.clock import Clock
from almanac.arithmetic.glance import chief_drill, drill_seconds, whole_minutes
from almanac.arithmetic.summary import SetSummary, clock_for
from almanac.model.entry import Entry
from almanac.model.knowledge import Drill
from almanac.model.swim_set import SwimSet
from almanac.site.links import FOLDER_OF, Page
from almanac.site.preferences import choosing
from almanac.units import COURSES, show_distance

VERSION = 1
MINUTES = (
    5,
    8,
    10,
    12,
    15,
    20,
    25,
    30,
    40,
)  # choices of "minutes left"; any other stands in the address
VOCABULARIES = {
    "goal": "goals",
    "position": "positions",
    "stroke": "strokes",
    "effort": "efforts",
    "level": "levels",
}
FACET_TITLES = {
    "kind": "Drill or set",
    "goal": "Goal",
    "fault": "Fault",
    "minutes": "Minutes left",
    "gear": "Gear at hand",
    "level": "Level",
    "effort": "Effort",
    "position": "Position",
    "stroke": "Stroke",
    "words": "Words",
}
_NO_CHOICE = {"any"}


@dataclass(frozen=True)
class Facts:
    """What the finder knows of one entry. Words by facet; ``minutes`` by pool and lane group, None
    where not known.

    A set mends what the drill mends that it is mostly made of, and shows that drill's figure.
    """

    entry: Entry
    words: Mapping[str, tuple[str, ...]]
    needs: tuple[str, ...]
    suits: tuple[str, ...]
    minutes: list[list[int | None]]
    figure: str
    distance: str
    more: tuple[str, ...]


@dataclass(frozen=True)
class Finder:
    """The facts of every drill and set of a catalogue; ``pictures`` names the body figure of each
    drill.
    """

    analysis: Analysis
    pictures: Mapping[str, str]

    @cached_property
    def facts(self) -> list[Facts]:
        """Drills in teaching order, then sets by level and title."""
        catalogue = self.analysis.catalogue
        order = {id: number for number, id in enumerate(self.analysis.teaching_order)}
        levels = list(catalogue.words("levels"))
        drills = sorted(
            catalogue.drills.values(), key=lambda drill: order.get(drill.id, len(order))
        )
        sets = sorted(
            self.analysis.computable.values(),
            key=lambda item: (levels.index(item.level), item.title.casefold()),
        )
        return [*map(self._drill, drills), *map(self._set, sets)]

    @cached_property
    def _mended_by(self) -> Mapping[str, tuple[str, ...]]:
        """By fault, the drills that mend it: as its causes name them, then those that say so
        themselves.
        """
        catalogue = self.analysis.catalogue
        found = {
            id: dict.fromkeys(drill for cause in fault.causes for drill in cause.mended_by)
            for id, fault in catalogue.faults.items()
        }
        for drill in catalogue.drills.values():
            for fault in drill.mends:
                found[fault].setdefault(drill.id)
        return {fault: tuple(drills) for fault, drills in found.items()}

    @cached_property
    def _faults_of(self) -> Mapping[str, tuple[str, ...]]:
        faults: dict[str, list[str]] = {}
        for fault, drills in self._mended_by.items():
            for drill in drills:
                faults.setdefault(drill, []).append(fault)
        return {drill: tuple(found) for drill, found in faults.items()}

    @cached_property
    def _clocks(self) -> list[list[Clock]]:
        catalogue = self.analysis.catalogue
        return [
            [clock_for(catalogue, group, course) for group in catalogue.lane_groups]
            for course in COURSES.values()
        ]

    def _drill(self, drill: Drill) -> Facts:
        efforts = list(self.analysis.catalogue.efforts)
        first, last = efforts.index(drill.effort.easiest), efforts.index(drill.effort.hardest)
        words = {
            "goal": drill.goals,
            "fault": self._faults_of.get(drill.id, ()),
            "position": (drill.position,),
            "stroke": (drill.stroke,),
            "effort": tuple(efforts[first : last + 1]),
            "level": (drill.level,),
        }
        minutes = [
            [whole_minutes(drill_seconds(drill, clock)) for clock in clocks]
            for clocks in self._clocks
        ]
        more = (*drill.also_called, *drill.cues)
        return Facts(
            drill,
            words,
            drill.gear.needs,
            drill.gear.may_add,
            minutes,
            self.pictures[drill.id],
            "",
            more,
        )

    def _set(self, swim_set: SwimSet) -> Facts:
        analysis = self.analysis
        summary = analysis.summary(swim_set.id)
        chief = chief_drill(summary.pieces)
        words = {
            "goal": swim_set.goals,
            "fault": self._faults_of.get(chief.id, ()) if chief else (),
            **{
                facet: self._in_order(facet, summary.by[facet])
                for facet in ("position", "stroke", "effort")
            },
            "level": (swim_set.level,),
        }
        return Facts(
            entry=swim_set,
            words=words,
            needs=summary.gear,
            suits=(),
            minutes=[
                _set_minutes(analysis.laid(swim_set.id, course)) for course in COURSES.values()
            ],
            figure=self.pictures[chief.id] if chief else "",
            distance=show_distance(summary.distance.value, summary.course.unit),
            more=swim_set.also_called,
        )

    def _in_order(self, facet: str, split: Iterable[str]) -> tuple[str, ...]:
        found = set(split)
        return tuple(
            word for word in self.analysis.catalogue.words(VOCABULARIES[facet]) if word in found
        )

    @cached_property
    def words(self) -> dict[str, list[tuple[str, str]]]:
        """By facet the words that some entry carries, each with its title, in their order."""
        catalogue = self.analysis.catalogue
        used = {
            facet: {word for fact in self.facts for word in fact.words[facet]}
            for facet in (*VOCABULARIES, "fault")
        }
        gear = {id for fact in self.facts for id in (*fact.needs, *fact.suits)}
        found = {
            facet: [
                (word, meaning.title)
                for word, meaning in catalogue.words(vocabulary).items()
                if word in used[facet]
            ]
            for facet, vocabulary in VOCABULARIES.items()
        }
        found["kind"] = [("drill", "Drill"), ("set", "Set")]
        found["fault"] = [
            (fault.id, fault.title)
            for fault in _by_title(catalogue.faults.values())
            if fault.id in used["fault"]
        ]
        found["gear"] = [
            (item.id, item.title) for item in _by_title(catalogue.gear.values()) if item.id in gear
        ]
        return found

    def data(self) -> dict[str, Any]:
        """The table as the browser reads it: words once, and rows that name them by number."""
        catalogue, words = self.analysis.catalogue, self.words
        number = {
            facet: {word: at for at, (word, _) in enumerate(pairs)}
            for facet, pairs in words.items()
        }
        row_of = {
            fact.entry.id: at for at, fact in enumerate(self.facts) if isinstance(fact.entry, Drill)
        }
        rows = [dict(_row(fact, number)) for fact in self.facts]
        return {
            "version": VERSION,
            "titles": FACET_TITLES,
            "words": words,
            "also": {
                id: " ".join(fault.also_called)
                for id, fault in catalogue.faults.items()
                if fault.also_called
            },
            "first": [[row_of[id] for id in self._mended_by[fault]] for fault, _ in words["fault"]],
            "pools": list(COURSES),
            "groups": [(id, group.title) for id, group in catalogue.lane_groups.items()],
            "folders": {kind: FOLDER_OF[kind] for kind in ("drill", "set")},
            "columns": list(rows[0]) if rows else [],
            "rows": [list(row.values()) for row in rows],
        }

    def page(self) -> Page:
        """The finder's page."""
        facets = [
            {"id": facet, "title": title, "words": self._choices(facet)}
            for facet, title in FACET_TITLES.items()
            if facet != "words"
        ]
        context = {
            "facets": facets,
            "choosing": choosing(self.analysis),
            "data": _script_json(self.data()),
            "hints": {
                "gear": "Tick what lies on the deck: what needs nothing else is shown.",
                "minutes": "A set by its clock; a drill by its fewest reps at its easiest effort.",
            },
        }
        return Page("find.md", "find", context)

    def _choices(self, facet: str) -> list[tuple[str, str]]:
        if facet == "minutes":
            return [("", "Any"), *((str(step), f"{step}") for step in MINUTES)]
        pairs = self.words[facet]
        if facet == "gear":
            return [("none", "Nothing at all"), *pairs]
        return [(word, title) for word, title in pairs if word not in _NO_CHOICE]


def _set_minutes(laid: SetSummary) -> list[int | None]:
    return [whole_minutes(run.clock.value if run.clock else None) for run in laid.clocks.values()]


def _by_title(entries: Iterable[Any]) -> list[Any]:
    return sorted(entries, key=lambda entry: entry.title.casefold())


def _row(fact: Facts, number: Mapping[str, Mapping[str, int]]) -> Iterator[tuple[str, Any]]:
    entry = fact.entry
    yield "kind", entry.kind
    yield "id", entry.id
    yield "title", entry.title
    yield "summary", entry.summary
    for facet, words in fact.words.items():
        yield facet, [number[facet][word] for word in words]
    yield "needs", [number["gear"][id] for id in fact.needs]
    yield "suits", [number["gear"][id] for id in fact.suits]
    yield "minutes", [[minutes or 0 for minutes in groups] for groups in fact.minutes]
    yield "figure", fact.figure
    yield "distance", fact.distance
    yield "more", "; ".join(fact.more)


def _script_json(value: Any) -> Markup:
    """JSON to stand inside a script element: nothing in it can end the element, or a Markdown
    block.
    """
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026"))
