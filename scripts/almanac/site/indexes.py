"""Home, the lists by goal, fault, gear, position and level, and an index for each kind of entry."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.fault import Fault
from almanac.model.swim_set import SwimSet
from almanac.site.kind_indexes import INDEXES
from almanac.site.links import Link, Page, link, links
from almanac.site.lists import grouped, list_page, section, set_link
from almanac.site.preferences import preferences
from almanac.site.settings import settings_of
from almanac.site.tonight import home_data, tonight_page


def index_pages(analysis: Analysis) -> Iterator[Page]:
    """Home and every list. They serve without JavaScript."""
    yield Page("index.md", "home", {"data": home_data(analysis), **_greeting(analysis)})
    yield tonight_page(analysis)
    shown = [kind for kind in INDEXES if any(own == kind for own, _ in analysis.catalogue.entries)]
    more = {"kinds": [_index_link(kind) for kind in shown], "choosing": preferences(analysis)}
    yield Page("more.md", "more", more)
    yield Page("settings.md", "settings", {"choosing": preferences(analysis)})
    for kind, index in INDEXES.items():
        own = _index_link(kind)
        file = own.href.removesuffix(".html") + ".md"
        # from what is seen to a drill is three taps: the first stroke's faults stand open
        opens = kind == Fault.kind
        yield list_page(file, own.title, own.summary, index(analysis), opens, kind)
    for name, (title, summary, sections) in _by_word(analysis).items():
        yield list_page(f"by/{name}.md", title, summary, sections)


def _greeting(analysis: Analysis) -> dict[str, str]:
    catalogue = analysis.catalogue
    return {"name": settings_of(catalogue).name, "welcome": catalogue.club.site.welcome}


def _index_link(kind: str) -> Link:
    names = KIND[kind]
    return Link(f"{names.pages}/index.html", names.plural, names.about)


def _by_word(analysis: Analysis) -> dict[str, tuple[str, str, list[dict[str, Any]]]]:
    catalogue = analysis.catalogue
    return {
        "goal": (
            "By goal",
            "I want to train something.",
            _drills_and_sets(analysis, "goals", lambda entry: entry.goals),
        ),
        "level": (
            "By level",
            "What a swimmer can do, never how old they are.",
            _drills_and_sets(analysis, "levels", lambda e: [e.level]),
        ),
        "position": (
            "By position",
            "How the body lies.",
            _drills_only(catalogue, "positions", lambda drill: [drill.position]),
        ),
        "fault": ("By fault", "I see something wrong.", list(_faults(catalogue))),
        "gear": ("By gear", "What can be done with what lies on the deck.", list(_gear(catalogue))),
    }


def _drills_and_sets(
    analysis: Analysis, vocabulary: str, words_of: Callable[[Any], Iterable[str]]
) -> list[dict[str, Any]]:
    catalogue = analysis.catalogue
    by_word: Mapping[str, Any] = catalogue.words(vocabulary)
    return [
        section(
            word,
            meaning.title,
            meaning.means,
            (
                "Drills",
                links(drill for drill in catalogue.drills.values() if word in words_of(drill)),
            ),
            (
                "Sets",
                [
                    set_link(analysis, item)
                    for item in _by_title(catalogue.sets)
                    if word in words_of(item)
                ],
            ),
        )
        for word, meaning in by_word.items()
    ]


def _by_title(entries: Mapping[str, SwimSet]) -> list[SwimSet]:
    return sorted(entries.values(), key=lambda entry: entry.title.casefold())


def _drills_only(
    catalogue: Catalogue, vocabulary: str, words_of: Callable[[Drill], Iterable[str]]
) -> list[dict[str, Any]]:
    return grouped(catalogue, vocabulary, catalogue.drills.values(), words_of)


def _faults(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    for fault in sorted(catalogue.faults.values(), key=lambda fault: fault.title.casefold()):
        ids = dict.fromkeys(id for cause in fault.causes for id in cause.mended_by)
        drills = [link(catalogue.drills[id]) for id in ids]
        own = section(
            fault.id, fault.title, fault.summary, ("Mended by, the first to try first", drills)
        )
        yield {**own, "more": link(fault)}


def _gear(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    bare = [drill for drill in catalogue.drills.values() if not drill.gear.needs]
    yield section("none", "Nothing at all", "Drills that need no gear.", ("Drills", links(bare)))
    for gear in sorted(catalogue.gear.values(), key=lambda gear: gear.title.casefold()):
        needs, suits = (links(_drills_with(catalogue, gear, role)) for role in ("needs", "may_add"))
        sets = links(catalogue.users(gear, SwimSet))
        own = section(
            gear.id,
            gear.title,
            gear.summary,
            ("Needed by", needs),
            ("Suits", suits),
            ("Sets", sets),
        )
        yield {**own, "more": link(gear)}


def _drills_with(catalogue: Catalogue, gear: Entry, role: str) -> Iterator[Drill]:
    return catalogue.users(gear, Drill, role)
