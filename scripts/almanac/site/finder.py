"""The finder: one compact table of drills and sets, and the page that narrows it in the browser."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.kinds import KIND
from almanac.model.catalogue import Key
from almanac.model.knowledge import Drill
from almanac.model.swim_set import SwimSet
from almanac.site.finder_facts import VOCABULARIES, Facts, FinderFacts, Minutes
from almanac.site.links import Page
from almanac.site.preferences import preferences
from almanac.site.search_documents import synonyms
from almanac.units import COURSES

VERSION = 1
FOUND = (Drill.kind, SwimSet.kind)  # the kinds that it finds
# choices of "minutes left"; any other stands in the address
MINUTES = (5, 8, 10, 12, 15, 20, 25, 30, 40)
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


@dataclass(frozen=True)
class Finder:
    """The facts of every drill and set of a catalogue; ``pictures`` names each drill's drawing,
    ``minutes`` gives those of an entry where they are known already.
    """

    analysis: Analysis
    pictures: Mapping[str, str]
    minutes: Callable[[Key], Minutes] | None = None

    @cached_property
    def _known(self) -> FinderFacts:
        return FinderFacts(self.analysis, self.pictures, self.minutes)

    @cached_property
    def facts(self) -> list[Facts]:
        """Drills in teaching order, then sets by level and title."""
        return list(self._known)

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
        found["kind"] = [(kind, KIND[kind].title) for kind in FOUND]
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
            "synonyms": synonyms(catalogue),
            "first": [
                [row_of[id] for id in self._known.mended_by[fault]] for fault, _ in words["fault"]
            ],
            "pools": list(COURSES),
            "groups": [(id, group.title) for id, group in catalogue.lane_groups.items()],
            "folders": {kind: KIND[kind].pages for kind in FOUND},
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
            "choosing": preferences(self.analysis),
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
        if facet not in VOCABULARIES:
            return pairs
        words = self.analysis.catalogue.words(VOCABULARIES[facet])
        return [(word, title) for word, title in pairs if not words[word].quiet]


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
