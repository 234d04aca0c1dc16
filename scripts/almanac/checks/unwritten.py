"""Rules on what nobody has written yet: the sentences that a starter came with, reviews that have
not been.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from difflib import SequenceMatcher
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids, warns
from almanac.source.reader import DataPath
from almanac.source.starters import WITH_STARTER, sentences

_LIKE = 0.85  # of the letters that two sentences share in order: a word or two is another
_LENGTHS = _LIKE / (2 - _LIKE)  # less alike in length, and they cannot share so many
_FEW_WORDS = 5  # of so few, another word makes another sentence
_MOST_SHOWN = 60
_BETWEEN_WORDS = re.compile(r"\W+")


@forbids("starter-text")
def starter_text(analysis: Analysis) -> Iterator[Problem]:
    """No sentence is left that `almanac new` has put there to be replaced, as it was or with a word
    or two changed.
    """
    own = {kind: sentences(kind) for kind in WITH_STARTER}
    everywhere = {
        _ending_off(text) for of in own.values() for texts in of.values() for text in texts
    }
    shortest = min(map(len, everywhere))  # ids and words are shorter than any sentence
    for entry in analysis.catalogue.entries.values():
        if entry.kind not in own:
            continue
        data, of_kind = analysis.catalogue.documents[entry.kind, entry.id].data, own[entry.kind]
        for path, names, text in _texts(data):
            same = names in of_kind and _is_like(text, of_kind[names])
            if same or (len(text) >= shortest and _ending_off(text) in everywhere):
                shown = text if len(text) <= _MOST_SHOWN else f"{text[: _MOST_SHOWN - 1]}…"
                message = f"this is still the starter's sentence: '{shown}'"
                yield Problem(entry, path, message, "write your own, or take it out")


def _ending_off(text: str) -> str:
    return text.casefold().rstrip(".?! ")


def _is_like(text: str, same_place: tuple[str, ...]) -> bool:
    for own in same_place:
        if _LENGTHS <= len(text) / len(own) <= 1 / _LENGTHS:
            one, other = _plain(text), _plain(own)
            if one == other:
                return True
            if len(other.split()) >= _FEW_WORDS and _share(one, other) >= _LIKE:
                return True
    return False


def _share(one: str, other: str) -> float:
    if len({*one.split()} & {*other.split()}) * 2 < len(other.split()):
        return 0
    matcher = SequenceMatcher(None, one, other, autojunk=False)
    return matcher.ratio() if matcher.quick_ratio() >= _LIKE else 0


def _plain(text: str) -> str:
    """A text in small letters, its words with one blank between them."""
    return " ".join(_BETWEEN_WORDS.split(text.casefold())).strip()


def _texts(data: Any) -> list[tuple[DataPath, DataPath, str]]:
    """Every text in data: its path, the names alone on the way to it, and what it says."""
    found: list[tuple[DataPath, DataPath, str]] = []

    def gather(value: Any, path: DataPath, names: DataPath) -> None:
        for key, inner in value.items() if isinstance(value, dict) else enumerate(value):
            if isinstance(inner, (str, dict, list)):  # numbers are no texts
                here = (*names, key) if isinstance(value, dict) else names
                if isinstance(inner, str):
                    found.append(((*path, key), here, inner))
                else:
                    gather(inner, (*path, key), here)

    gather(data, (), ())
    return found


@warns("review-ahead")
def review_ahead(analysis: Analysis) -> Iterator[Problem]:
    """A review bears the day on which it was, and not one that is still to come."""
    for entry in analysis.catalogue.entries.values():
        if entry.review and entry.review.on > analysis.today:
            message = f"reviewed on {entry.review.on}, which is still to come"
            hint = "write the day on which somebody looked it over, or take the review out"
            yield Problem(entry, ("review", "on"), message, hint)
