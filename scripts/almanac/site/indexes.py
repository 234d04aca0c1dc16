"""Home, the lists by goal, fault, gear, position and level, and an index for each kind of entry."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.model.knowledge import Drill
from almanac.model.plans import Block, Practice
from almanac.model.swim_set import SwimSet
from almanac.site.links import FOLDER_OF, Link, Page, link, links
from almanac.site.preferences import preferences
from almanac.units import show_distance

KIND_TITLES = {
    "drill": ("Drills", "By family, in teaching order."),
    "fault": ("Faults", "What a coach sees go wrong, by stroke."),
    "gear": ("Gear", "What it does to the swimmer, its dangers, its drag."),
    "benchmark": ("Benchmarks", "Timed tests that give a lane group its paces."),
    "progression": ("Progressions", "Ordered stages, each with a test for moving on."),
    "set": ("Sets", "By level, with the distance added up."),
    "practice": ("Practices", "Sessions on the clock, by squad."),
    "block": ("Blocks", "Weeks of sessions, by squad."),
}


def index_pages(analysis: Analysis) -> Iterator[Page]:
    """Home and every list. They serve without JavaScript."""
    catalogue = analysis.catalogue
    home = {
        "faults": links(catalogue.faults.values()),
        "goals": _goal_links(catalogue),
        "choosing": preferences(analysis),
    }
    yield Page("index.md", "home", home)
    for kind, sections in _by_kind(analysis).items():
        title, summary = KIND_TITLES[kind]
        yield _list_page(f"{FOLDER_OF[kind]}/index.md", title, summary, sections)
    for name, (title, summary, sections) in _by_word(analysis).items():
        yield _list_page(f"by/{name}.md", title, summary, sections)


def _list_page(file: str, title: str, summary: str, sections: list[dict[str, Any]]) -> Page:
    return Page(
        file,
        "list",
        {
            "title": title,
            "summary": summary,
            "sections": [part for part in sections if part["lists"]],
        },
    )


def _section(id: str, title: str, summary: str, *lists: tuple[str, list[Link]]) -> dict[str, Any]:
    return {
        "id": id,
        "title": title,
        "summary": summary,
        "lists": [(name, found) for name, found in lists if found],
    }


def _goal_links(catalogue: Catalogue) -> list[Link]:
    used = {goal for entry in _with_goals(catalogue) for goal in entry.goals}
    return [
        Link(f"by/goal.html#{goal}", word.title, word.means)
        for goal, word in catalogue.words("goals").items()
        if goal in used
    ]


def _with_goals(catalogue: Catalogue) -> Iterator[Drill | SwimSet]:
    yield from catalogue.drills.values()
    yield from catalogue.sets.values()


def _by_kind(analysis: Analysis) -> dict[str, list[dict[str, Any]]]:
    catalogue = analysis.catalogue
    order = {id: number for number, id in enumerate(analysis.teaching_order)}
    families: dict[str, list[Drill]] = {}
    for drill in sorted(
        catalogue.drills.values(), key=lambda drill: order.get(drill.id, len(order))
    ):
        families.setdefault(drill.family, []).append(drill)
    return {
        "drill": [
            _section(
                family,
                family.replace("-", " ").capitalize(),
                "",
                ("", [link(drill) for drill in drills]),
            )
            for family, drills in sorted(families.items(), key=lambda item: -len(item[1]))
        ],
        "fault": _grouped(
            catalogue, "strokes", catalogue.faults.values(), lambda fault: [fault.stroke]
        ),
        "gear": _grouped(catalogue, "effects", catalogue.gear.values(), lambda gear: [gear.effect]),
        "benchmark": _grouped(
            catalogue, "modes", catalogue.benchmarks.values(), lambda test: [test.mode]
        ),
        "progression": _grouped(
            catalogue, "levels", catalogue.progressions.values(), lambda item: [item.level]
        ),
        "practice": _by_squad(catalogue, catalogue.practices.values()),
        "block": _by_squad(catalogue, catalogue.blocks.values()),
        "set": _grouped(
            catalogue,
            "levels",
            catalogue.sets.values(),
            lambda item: [item.level],
            lambda item: _set_link(analysis, item),
        ),
    }


def _by_squad(catalogue: Catalogue, entries: Iterable[Practice | Block]) -> list[dict[str, Any]]:
    ordered = sorted(entries, key=lambda entry: entry.title.casefold())
    return [
        _section(id, squad.title, "", ("", [link(entry) for entry in ordered if entry.squad == id]))
        for id, squad in catalogue.club.squads.items()
    ]


def _set_link(analysis: Analysis, swim_set: SwimSet) -> Link:
    if swim_set.id not in analysis.computable:
        return link(swim_set)
    summary = analysis.summary(swim_set.id)
    distance = show_distance(summary.distance.value, summary.course.unit)
    return Link(
        link(swim_set).href,
        swim_set.title,
        f"{distance}, {summary.course} pool. {swim_set.summary}".strip(),
    )


def _grouped(
    catalogue: Catalogue,
    vocabulary: str,
    entries: Iterable[Any],
    words_of: Callable[[Any], Iterable[str]],
    to_link: Callable[[Any], Link] = link,
) -> list[dict[str, Any]]:
    """A section for each word of a vocabulary, in its order, with the entries that carry it, by
    title.
    """
    ordered = sorted(entries, key=lambda entry: entry.title.casefold())
    return [
        _section(
            word,
            meaning.title,
            meaning.means,
            ("", [to_link(entry) for entry in ordered if word in words_of(entry)]),
        )
        for word, meaning in catalogue.words(vocabulary).items()
    ]


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
        _section(
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
                    _set_link(analysis, item)
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
    return _grouped(catalogue, vocabulary, catalogue.drills.values(), words_of)


def _faults(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    for fault in sorted(catalogue.faults.values(), key=lambda fault: fault.title.casefold()):
        ids = dict.fromkeys(id for cause in fault.causes for id in cause.mended_by)
        drills = [link(catalogue.drills[id]) for id in ids]
        section = _section(
            fault.id, fault.title, fault.summary, ("Mended by, the first to try first", drills)
        )
        yield {**section, "more": link(fault)}


def _gear(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    bare = [drill for drill in catalogue.drills.values() if not drill.gear.needs]
    yield _section("none", "Nothing at all", "Drills that need no gear.", ("Drills", links(bare)))
    for gear in sorted(catalogue.gear.values(), key=lambda gear: gear.title.casefold()):
        needs, suits = (links(_drills_with(catalogue, gear, role)) for role in ("needs", "may_add"))
        sets = links(catalogue.users(gear, SwimSet))
        section = _section(
            gear.id,
            gear.title,
            gear.summary,
            ("Needed by", needs),
            ("Suits", suits),
            ("Sets", sets),
        )
        yield {**section, "more": link(gear)}


def _drills_with(catalogue: Catalogue, gear: Entry, role: str) -> Iterator[Drill]:
    return catalogue.users(gear, Drill, role)
