"""What the search reads: a row a page with the words that it is found by, the texts beside them,
and the other words of the trade.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from almanac.analysis.texts import sentences, strings
from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue, Key
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.fault import Fault
from almanac.model.practice import Practice
from almanac.model.published import Source
from almanac.model.reps import Distance, Reps
from almanac.model.swim_set import Item, Round, SwimSet
from almanac.model.vocabularies import HAZARDS
from almanac.site.entry_facts import fact_of
from almanac.site.links import page_of

FILE = "search/texts.js"
_SHOWN_APART = {"title", "summary", "also_called", "asked_as", "review", "accepts", "moved_to"}
_TAGGED = (
    "goals", "levels", "positions", "strokes", "kicks", "efforts", "effects", "test-uses",
)  # fmt: skip


@dataclass(frozen=True)
class SearchedPage:
    """A page as it is found: where it is, the words in their order of weight, and one ``fact`` that
    a list shows of it. ``key`` is its entry's, None where it is none's.
    """

    key: Key | None
    location: str
    kind: str
    title: str
    also: str
    tags: str
    summary: str
    fact: str
    asked: str
    text: str


def texts_file(found: Iterable[SearchedPage]) -> tuple[str, str]:
    """The file with what is typed for each document and its text, in their order: a script, for a
    page opened from a folder may fetch nothing. Returns its path below the site's root, and what it
    holds.
    """
    pairs = [[one.asked, one.text] for one in found]
    texts = json.dumps(pairs, ensure_ascii=False, separators=(",", ":"))
    return FILE, f"self.almanacTexts={texts};\n"


def synonyms(catalogue: Catalogue) -> list[list[str]]:
    """Lists of names for one thing: ``also`` of every vocabulary, and what gear is also called.
    What hazards are looked for by is no name of what entries say: each is found by itself.
    """
    others = [
        (word.title, word.also)
        for name, list in catalogue.vocabularies.items()
        for word in list.words.values()
        if name != HAZARDS
    ]
    others += [(gear.title, gear.also_called) for gear in catalogue.gear.values()]
    return [[title, *also] for title, also in others if also]


def document_of(catalogue: Catalogue, entry: Entry) -> SearchedPage:
    """What an entry with a page is found by."""
    key = entry.kind, entry.id
    data = catalogue.documents[key].data
    own = {name: value for name, value in data.items() if name not in _SHOWN_APART}
    return SearchedPage(
        key=key,
        location=page_of(entry),
        kind=entry.kind,
        title=entry.title,
        also="; ".join([*entry.also_called, *_cited(entry)]),
        tags="; ".join(_tags(catalogue, entry, own)),
        summary=entry.summary,
        fact=fact_of(catalogue, entry),
        asked="; ".join([*entry.asked_as, *_reps(entry)]),
        text=once(" ".join([*sentences(own), *_as_asked(catalogue, entry)])),
    )


def _cited(entry: Entry) -> list[str]:
    """A source is asked for by its authors."""
    return [entry.cited] if isinstance(entry, Source) else []


def _tags(catalogue: Catalogue, entry: Entry, data: Mapping[str, Any]) -> list[str]:
    """The kind, titles of the words that an entry carries, and of the gear and faults it names."""
    carried = {text for text in strings(data) if " " not in text}
    words = [
        word.title
        for name in _TAGGED
        for id, word in catalogue.words(name).items()
        if id in carried and id not in {"any", "none"}
    ]
    sets = [catalogue.sets[own.id] for own in entry.references() if own.kind == SwimSet.kind]
    goals = catalogue.words("goals")
    trained = [goals[id].title for own in sets for id in own.goals if isinstance(entry, Practice)]
    named = _named(catalogue, entry, "gear", "fault")
    return list(dict.fromkeys([KIND[entry.kind].title, *words, *trained, *named]))


def _named(catalogue: Catalogue, entry: Entry, *kinds: str) -> list[str]:
    """Titles of the entries of some kinds that an entry names."""
    named = dict.fromkeys((reference.kind, reference.id) for reference in entry.references())
    return [catalogue.entries[key].title for key in named if key[0] in kinds]


def _as_asked(catalogue: Catalogue, entry: Entry) -> Iterator[str]:
    """What else it is looked for by: the drills that it names, other names of the faults."""
    yield from _named(catalogue, entry, Drill.kind, SwimSet.kind)
    for reference in entry.references():
        if reference.kind == Fault.kind:
            yield from catalogue.faults[reference.id].also_called


def _reps(entry: Entry) -> list[str]:
    """The reps and distances of a set as coaches write them, 8x50: as they stand, and with their
    rounds.
    """
    if not isinstance(entry, SwimSet):
        return []
    return list(dict.fromkeys(f"{reps}x{far}" for reps, far in _counted(entry.items, 1)))


def _counted(items: tuple[Item, ...], rounds: int) -> Iterator[tuple[int, Distance]]:
    for item in items:
        if isinstance(item, Round):
            yield from _counted(item.items, rounds * item.rounds)
        elif isinstance(item, Reps) and item.distance:
            yield from ((item.reps, item.distance), (rounds * item.reps, item.distance))


def once(text: str) -> str:
    """The words of a text, each once: enough for finding it, at a third of the weight."""
    return " ".join(dict.fromkeys(re.findall(r"\w+(?:[-'’]\w+)*", text.lower())))
