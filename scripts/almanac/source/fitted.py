"""What the program lends a club, without what names a word or an entry that the club has not."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from math import ceil
from typing import Any

import yaml

from almanac.kinds import KIND
from almanac.resources import HOME
from almanac.source.lent import POLICY
from almanac.source.names import Names
from almanac.source.reader import Document

_BY_EFFORT = ("land_effort_most", "back_without_flags_most")
"""Limits that are the highest rating of an effort, and so mean a word of the program's."""


def fitted(
    documents: Mapping[tuple[str, str], Document], key: tuple[str, str], names: Names
) -> Document:
    """A document of the program without what names a word or an entry that the club has not, its
    limits of an effort moved to the ratings of the club's own efforts.
    """
    document = documents[key]
    data = document.data
    if document.file == POLICY:
        efforts = documents.get(("vocabulary", "efforts"))
        own = efforts.data.get("words") if efforts and not efforts.lent else None
        data = _by_own_efforts(_policy(data, names), _hardest(own, names))
    elif "words" in data:
        data = {**data, "words": dict(_words(data["words"], names))}
    return Document(document.file, document.text, data, lent=True)


def _hardest(own: object, names: Names) -> dict[float, float]:
    """By the highest rating of each of the program's efforts that of the club's word for it."""
    path = HOME / KIND["vocabulary"].files / "efforts.yml"
    if not isinstance(own, dict) or not path.is_file():
        return {}
    theirs = yaml.load(path.read_text("utf-8"), yaml.CSafeLoader)["words"]
    found: dict[float, float] = {}
    for word, about in theirs.items():
        mine = own.get(word) or own.get(names.by_name("vocabulary", "efforts", word))
        rating = mine.get("rating") if isinstance(mine, dict) else None
        if isinstance(rating, dict) and isinstance(rating.get("to"), int | float):
            found[about["rating"]["to"]] = rating["to"]
    return found


def _by_own_efforts(data: dict[str, Any], hardest: Mapping[float, float]) -> dict[str, Any]:
    """The limits of an effort, each as far up as the club's word for the effort that it means."""

    def moved(limits: Mapping[str, Any]) -> dict[str, Any]:
        return {
            name: {**own, "value": hardest.get(own["value"], own["value"])}
            if name in _BY_EFFORT
            else own
            for name, own in limits.items()
        }

    levels = {level: moved(own) for level, own in data["levels"].items()}
    return {**data, "limits": moved(data["limits"]), "levels": levels}


def _words(words: Mapping[str, Any], names: Names) -> Iterator[tuple[str, Any]]:
    levels, drills = names.of("vocabulary", "levels"), names.of("reference", "drill")
    for word, about in words.items():
        by_level = _known(about.get("by_level", {}), levels)
        own = {**_without(about, "by_level"), **({"by_level": by_level} if by_level else {})}
        yield word, own if own.get("shown_by") in drills else _without(own, "shown_by")


def _policy(data: Mapping[str, Any], names: Names) -> dict[str, Any]:
    """The limits and preferences; which goals a club has no drills for is its own to say."""
    sources = names.of("reference", "source")
    levels = _known(data["levels"], names.of("vocabulary", "levels"))
    return {
        **_without(data, "gaps"),
        "limits": {name: _sourced(own, sources) for name, own in data["limits"].items()},
        "levels": {
            level: {
                name: _sourced(own, sources) if isinstance(own, dict) else own
                for name, own in limits.items()
            }
            for level, limits in levels.items()
        },
        "rest": _rest(data["rest"], names),
    }


def _rest(rules: Mapping[str, Any], names: Names) -> dict[str, Any]:
    """For each effort of the club the rest that the program's effort of that name wants; else that
    of the hardest which it stands for by another name; else of the one at its place in the scale,
    the harder where it lies between two.
    """
    own, theirs = list(names.of("vocabulary", "efforts")), list(rules)
    found = {}
    for place, word in enumerate(own):
        also = [it for it in theirs if names.by_name("vocabulary", "efforts", it) == word]
        steps = ceil(place * (len(theirs) - 1) / max(1, len(own) - 1))
        found[word] = rules[word if word in rules else also[-1] if also else theirs[steps]]
    return found


def _sourced(limit: Mapping[str, Any], sources: Mapping[str, str]) -> dict[str, Any]:
    """A limit with those of its sources that are entries here; in words it names all of them."""
    own = [source for source in limit.get("sources", ()) if source in sources]
    return {**_without(limit, "sources"), **({"sources": own} if own else {})}


def _known(given: Mapping[str, Any], words: Iterable[str]) -> dict[str, Any]:
    return {word: own for word, own in given.items() if word in words}


def _without(given: Mapping[str, Any], name: str) -> dict[str, Any]:
    return {field: own for field, own in given.items() if field != name}
