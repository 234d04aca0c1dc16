"""The finder: one compact table of all that has a page, and the page that searches and narrows it
in the browser.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.drill import Drill
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.site.entry_parts import Parts
from almanac.site.finder_facts import VOCABULARIES, Facts, FinderFacts
from almanac.site.finder_rows import kinds, lane_groups, rows, talk_s
from almanac.site.links import Page
from almanac.site.pictures import named
from almanac.site.preferences import preferences
from almanac.site.search_documents import SearchedPage, synonyms, texts_file
from almanac.site.search_pages import alarms, page_documents
from almanac.site.templates import script_json
from almanac.units import COURSES

VERSION = 2
NARROWED = (Drill.kind, SwimSet.kind, Practice.kind)  # the kinds that choices narrow
# choices of "minutes left"; any other stands in the address
MINUTES = (5, 8, 10, 12, 15, 20, 25, 30, 40, 60, 75, 90)
FACET_TITLES = {
    "minutes": "Minutes",
    "gear": "Gear at hand",
    "goal": "Goal",
    "fault": "Fault",
    "level": "Level",
    "effort": "Efforts",
    "position": "Position",
    "stroke": "Stroke",
    "whom": "For whom",
    "lanes": "Groups, lanes",
    "kind": "Kind",
    "words": "Words",
}
_FIRST = ("minutes", "gear", "lanes", "goal")  # on a phone; the others under "More"
_CHIPS = (
    "minutes",
    "gear",
    "lanes",
    "goal",
    "fault",
    "level",
    "effort",
    "position",
    "stroke",
    "whom",
)


@dataclass(frozen=True)
class Finder:
    """All that has a page, with the facts of every drill, set and practice of a catalogue;
    ``parts`` holds what is known of each entry, ``pages`` the Markdown of what is no entry's page,
    by file.
    """

    parts: Parts
    pages: Mapping[str, str] = field(default_factory=dict)

    @property
    def analysis(self) -> Analysis:
        """What it is of."""
        return self.parts.analysis

    @cached_property
    def _known(self) -> FinderFacts:
        pictures = named(self.parts.pictures())
        return FinderFacts(self.analysis, pictures, self.parts.times, self.parts.words)

    @cached_property
    def facts(self) -> list[Facts]:
        """Drills in teaching order, then sets and practices by level and title."""
        return list(self._known)

    @cached_property
    def documents(self) -> list[SearchedPage]:
        """All that is found by words."""
        of_pages = page_documents(self.analysis.catalogue, self.pages)
        return [*self.parts.documents(), *of_pages]

    @cached_property
    def _found(self) -> list[tuple[SearchedPage, Facts | None]]:
        """Every document, those with facts first and in their order."""
        known = {document.key: document for document in self.documents if document.key}
        with_facts = [(known[fact.entry.kind, fact.entry.id], fact) for fact in self.facts]
        done = {document.location for document, _ in with_facts}
        others = [(own, None) for own in self.documents if own.location not in done]
        return [*with_facts, *others]

    @cached_property
    def words(self) -> dict[str, list[tuple[str, str]]]:
        """By facet the words that some entry carries, each with its title, in their order."""
        catalogue = self.analysis.catalogue
        used = {
            facet: {word for fact in self.facts for word in fact.words[facet]}
            for facet in (*VOCABULARIES, "fault", "whom")
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
        found["fault"] = _titles(
            own for own in catalogue.faults.values() if own.id in used["fault"]
        )
        found["whom"] = _titles(own for own in catalogue.needs.values() if own.id in used["whom"])
        found["gear"] = _titles(own for own in catalogue.gear.values() if own.id in gear)
        return found

    def data(self) -> dict[str, Any]:
        """The table as the browser reads it."""
        catalogue, words = self.analysis.catalogue, self.words
        number = {
            facet: {word: at for at, (word, _) in enumerate(pairs)}
            for facet, pairs in words.items()
        }
        number["group"] = {id: at for at, id in enumerate(catalogue.lane_groups)}
        texts = {document.location: at for at, document in enumerate(self.documents)}
        found = rows(self._found, number, texts)
        row_of = {document.key: at for at, (document, _) in enumerate(self._found)}
        mended_by = self._known.mended_by
        return {
            "version": VERSION,
            "titles": FACET_TITLES,
            "kinds": kinds(self.documents),
            "narrowed": NARROWED,
            "words": words,
            "fast": list(self.analysis.scale.fast),
            "synonyms": synonyms(catalogue),
            "alarms": alarms(catalogue),
            "first": [
                [row_of[Drill.kind, id] for id in mended_by[fault]] for fault, _ in words["fault"]
            ],
            "pools": list(COURSES),
            "groups": lane_groups(catalogue),
            "lanes": self._most_lanes,
            "owned": [catalogue.club.gear_owned.get(id, 0) for id, _ in words["gear"]],
            "talk_s": talk_s(catalogue),
            "columns": list(found[0]) if found else [],
            "rows": [list(row.values()) for row in found],
        }

    def page(self) -> Page:
        """The finder's page."""
        has_lanes = bool(self.analysis.catalogue.club.waters)
        facets = [
            {
                "id": facet,
                "title": FACET_TITLES[facet] if has_lanes else FACET_TITLES[facet].split(",")[0],
                "words": [] if facet == "lanes" else self._choices(facet),
                "first": facet in _FIRST,
            }
            for facet in _CHIPS
        ]
        context = {
            "facets": facets,
            "kinds": kinds(self.documents),
            "choosing": preferences(self.analysis),
            "lane_numbers": list(range(1, self._most_lanes + 1)),
            "data": script_json(self.data()),
            "hints": {
                "gear": "Tick what lies on the deck: what needs nothing else is shown.",
                "effort": "Tick several: a set then holds each of them.",
                "whom": "What leaves out nothing for them; each page says what changes.",
            },
        }
        return Page("find.md", "find", context)

    def texts(self) -> tuple[str, str]:
        """The file with the texts that are searched after titles and facts."""
        return texts_file(self.documents)

    @property
    def _most_lanes(self) -> int:
        return max((pool.lanes for pool in self.analysis.catalogue.club.pools.values()), default=1)

    def _choices(self, facet: str) -> list[tuple[str, str]]:
        if facet == "minutes":
            return [("", "Any"), *((str(step), f"{step} min") for step in MINUTES)]
        pairs = self.words[facet]
        if facet == "gear":
            uses = Counter(id for fact in self.facts for id in (*fact.needs, *fact.suits))
            often = sorted(pairs, key=lambda pair: -uses[pair[0]])  # what most use comes first
            return [("none", "Nothing at all"), *often]
        if facet not in VOCABULARIES:
            return pairs
        words = self.analysis.catalogue.words(VOCABULARIES[facet])
        return [(word, title) for word, title in pairs if not words[word].quiet]


def _titles(entries: Iterable[Any]) -> list[tuple[str, str]]:
    """Entries by title, each with its id."""
    found = sorted(entries, key=lambda entry: entry.title.casefold())
    return [(entry.id, entry.title) for entry in found]
