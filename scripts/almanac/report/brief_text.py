"""A brief in words: the gravest hazards in full, the others in one line, each with its source."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from almanac.arithmetic.brief import IN_FULL, BriefHazard, BriefSource
from almanac.findings import counted
from almanac.model.catalogue import Catalogue, Key
from almanac.model.policy import HouseRule

MOST_IN_SIGHT = 540
"""Characters that the hazards told in full may have together, so that a brief fits one screen of a
phone: what an entry adds of its own beyond them is opened by a tap.
"""


MOST_LEFT = 240
"""Characters of what an entry adds elsewhere that a third of a printed page has room for."""
_HALF_A_PAGE = 45  # characters of 11 pt


@dataclass(frozen=True)
class ShownHazard:
    """A hazard of a brief as pages and reports show it. ``here`` is what the entry itself adds,
    as far as it stands in sight, and ``does`` what of that is done about it; ``whence`` says in
    short where else it comes from, ``adds`` by title what each of these adds. Where others stand in
    full, ``on_paper`` is its one line, and ``left`` what the entry adds that is not in sight, as
    far as a page has room.
    """

    title: str
    gravity: str
    control: str
    here: str
    does: str
    whence: str
    adds: tuple[tuple[str, str], ...]
    on_paper: str
    left: str


def shown_brief(
    catalogue: Catalogue, brief: Iterable[BriefHazard], key: Key, is_whole: bool = False
) -> tuple[ShownHazard, ...]:
    """The lines of the brief of the entry with this key. ``is_whole`` where all that the entry adds
    stands in sight, however long.
    """
    room, room_left, lines = MOST_IN_SIGHT, MOST_LEFT, list(brief)
    room -= sum(len(line.title) + len(line.control) for line in lines[:IN_FULL])
    shown = []
    for number, line in enumerate(lines):
        own = [source for source in line.sources if source.key == key]
        here = " ".join(map(own_words, own))
        in_sight = is_whole or (number < IN_FULL and 0 < len(here) <= room)
        room -= len(here) if in_sight else 0
        left = "" if in_sight or len(here) > room_left else here
        room_left -= len(left)
        others = [source for source in line.sources if source.key != key or not in_sight]
        adds = ((_title(catalogue, source.key), own_words(source)) for source in others)
        elsewhere = [other for other in line.keys if other != key]
        shown.append(
            ShownHazard(
                title=line.title,
                gravity=_gravity(catalogue, line.gravity),
                control=line.control,
                here=here if in_sight else "",
                does=" ".join(_sentence(source.control) for source in own),
                whence=_whence(catalogue, elsewhere, is_short=False),
                adds=tuple((title, words) for title, words in adds if words),
                on_paper=_on_paper(catalogue, line.title, elsewhere),
                left=left,
            )
        )
    return tuple(shown)


def own_words(source: BriefSource) -> str:
    """What an entry adds to a hazard, as a text: how it comes about there, and what is done."""
    return " ".join(text for text in (_sentence(source.own), _sentence(source.control)) if text)


def brief_lines(
    catalogue: Catalogue, brief: Iterable[BriefHazard], key: Key | None = None
) -> Iterator[str]:
    """The lines under the word Brief: the gravest in full, the rest a line each."""
    yield "Brief:"
    for number, line in enumerate(brief):
        titles = "; ".join(source_titles(catalogue, line.keys))
        here = [own_words(source) for source in line.sources if source.key == key]
        if number < IN_FULL:
            yield f"  - {line.title} ({_gravity(catalogue, line.gravity).lower()}): {line.control}"
            yield f"    [{titles}]"
        else:
            yield f"  - {line.title} [{titles}]"
        yield from (f"    here: {words}" for words in here if words)
    rules = "; ".join(rule.title for rule in house_rules(catalogue))
    yield f"House rules, in plans/policy.yml: {rules}"


def brief_json(brief: Iterable[BriefHazard]) -> list[dict[str, Any]]:
    """The brief as data, whole: every hazard with all that it comes from and what each adds."""
    return [
        {
            "hazard": line.hazard,
            "title": line.title,
            "gravity": line.gravity,
            "control": line.control,
            "from": list(line.ids),
            "adds": [
                {"from": source.key[1], "own": source.own, "control": source.control}
                for source in line.sources
                if source.own or source.control
            ],
        }
        for line in brief
    ]


def source_titles(catalogue: Catalogue, keys: Iterable[Key]) -> list[str]:
    """The titles of the entries that a danger comes from."""
    return [_title(catalogue, key) for key in keys]


def _title(catalogue: Catalogue, key: Key) -> str:
    entry = catalogue.entries.get(key)
    return entry.title if entry else key[1]


def _whence(catalogue: Catalogue, keys: Iterable[Key], is_short: bool) -> str:
    """Where a hazard comes from, in short: gear by its title, drills and sets by their number; one
    alone by its title unless ``is_short``.
    """
    by_kind: dict[str, list[str]] = {}
    for key in keys:
        by_kind.setdefault(key[0], []).append(_title(catalogue, key))
    gear = [title.lower() for title in by_kind.pop("gear", [])]
    named = [*gear, *(title.lower() for title in by_kind.pop("vocabulary", []))]
    for kind, titles in by_kind.items():
        is_named = len(titles) == 1 and not is_short
        named.append(titles[0] if is_named else counted(len(titles), kind))
    return ", ".join(named)


def _on_paper(catalogue: Catalogue, title: str, keys: Iterable[Key]) -> str:
    """Where a hazard comes from, where that fits behind its title on one line of half a page."""
    words = _whence(catalogue, keys, is_short=True)
    return words if len(title) + len(words) <= _HALF_A_PAGE else ""


def _gravity(catalogue: Catalogue, word: str) -> str:
    gravities = catalogue.vocabularies.get("gravities")
    return gravities.words[word].title if gravities and word in gravities.words else word


def _sentence(text: str) -> str:
    return text if not text or text[-1] in '.!?"' else f"{text}."


def house_rules(catalogue: Catalogue) -> tuple[HouseRule, ...]:
    """The rules of the house that are shown with every brief, once."""
    return tuple(catalogue.policy.house_rules.values())
