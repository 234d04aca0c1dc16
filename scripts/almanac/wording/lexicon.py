"""Words looked up: forms written out, misspellings found, words that were run together cut."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from typing import NamedTuple

from almanac.wording.words import LOOSE, MEANINGS

Meanings = frozenset[str]
NOTHING: Meanings = frozenset()

# Words whose misspellings count too: one letter lost, doubled or changed over.
_OFTEN_MISSPELT = (
    "breath", "breathe", "breathing", "breaths", "without", "underwater", "surface", "surfacing",
    "oxygen", "inhale", "submerged", "hyperventilate", "dizzy", "hypoxic", "lungs", "length",
    "bottom", "longest", "furthest", "swallow", "holding", "contractions",
)  # fmt: skip
_NO_MISSPELLING = {"breast", "berth", "lugs", "lunge", "lunges", "hold", "wreath"}
_RUN_TOGETHER_FROM = 5
_WORTH_CUTTING = {"AIR", "BREATHE", "APNOEA", "UNDERWATER", "SURFACE", "NO_AIR"}


def forms(written: str) -> Iterator[str]:
    """The forms that ``hold|s|ing`` stands for."""
    for word in written.split():
        stem, *endings = word.split("|")
        if not endings:
            yield stem
            continue
        # "inhal|e|es": a stem that is no word by itself has "e" or "y" among its endings.
        if not {"e", "y", "ie", "c", "iness", "ed_in"} & set(endings) or stem in _WHOLE_STEMS:
            yield stem
        yield from (stem + ending for ending in endings)


_WHOLE_STEMS = {"breath"}


AMOUNTS = frozenset(
    {
        *("COUNT_DOWN", "COUNT_UP"),
        *("CLOCK", "DIST", "NEAR", "SHALLOW", "LONG_TIME", "BRIEF"),
        *("NUM", "NO", "ONE", "SOME", "MANY"),
    }
)
"""Meanings that a number may have."""


@cache
def words() -> dict[str, Meanings]:
    """Every word and joined phrase, with its meanings."""
    found: dict[str, set[str]] = {}
    for meaning, written in MEANINGS.items():
        for form in forms(written):
            found.setdefault(form, set()).add(meaning)
    return {form: frozenset(meanings) for form, meanings in found.items()}


@cache
def firm() -> frozenset[str]:
    """The words and phrases of every meaning that is not loose."""
    written = [written for meaning, written in MEANINGS.items() if meaning not in LOOSE]
    return frozenset(form for words_of_it in written for form in forms(words_of_it))


class Beginning(NamedTuple):
    """What may follow the first word of phrases: the words after it, joined where a phrase among
    them may have been, and how many words the longest has.
    """

    seconds: frozenset[str]
    most: int


Beginnings = Mapping[str, Beginning]


@cache
def phrases() -> Beginnings:
    """The first word of every phrase."""
    return _beginnings(firm(), firm())


@cache
def loose_phrases() -> Beginnings:
    """The first word of phrases that stay several words."""
    loose = {form for written in LOOSE.values() for form in forms(written)}
    return _beginnings(loose, words())


def _beginnings(of: Iterable[str], known: Iterable[str]) -> Beginnings:
    most: dict[str, int] = {}
    for form in of:
        first, *others = form.split("_")
        if others:
            most[first] = max(most.get(first, 0), len(others) + 1)
    seconds: dict[str, set[str]] = {first: set() for first in most}
    for form in known:
        first, *others = form.split("_")
        if first in seconds:
            seconds[first] |= {"_".join(others[:size]) for size in range(1, len(others) + 1)}
    return {first: Beginning(frozenset(seconds[first]), most[first]) for first in most}


@cache
def misspellings() -> dict[str, str]:
    """Misspelt words, and what each of them means."""
    found: dict[str, str] = {}
    for word in _OFTEN_MISSPELT:
        for at in range(1, len(word)):
            found[word[:at] + word[at + 1 :]] = word
            found[word[:at] + word[at] + word[at:]] = word
            if at + 1 < len(word):
                found[word[:at] + word[at + 1] + word[at] + word[at + 2 :]] = word
    return {
        slip: word
        for slip, word in found.items()
        if len(slip) >= 5 and slip not in words() and slip not in _NO_MISSPELLING
    }


def meant(word: str) -> str:
    """The word that is meant: itself, or the one that it misspells."""
    return word if word in words() else misspellings().get(word, word)


@cache
def _of_worth() -> re.Pattern[str]:
    """Looks for a word for whose sake another is cut: nearly every word that nobody knows holds
    none, and is done with.
    """
    worth = [form for form in firm() if _WORTH_CUTTING & words()[form]]
    return re.compile("|".join(map(re.escape, sorted(worth, key=len))))


@cache
def _last_letters() -> frozenset[str]:
    """The last two letters of all that a word that was run together may end in."""
    return frozenset(form[-2:] for form in firm() if len(form) > 1)


def cut(word: str) -> tuple[str, ...]:
    """The known words that were run together in one, as in a hashtag; the word itself where it
    does not come out even.
    """
    if len(word) < _RUN_TOGETHER_FROM:
        return (word,)
    if word[-2:] not in _last_letters() and word[-1] != "a" and not word[-1].isdigit():
        return (word,)
    if not _of_worth().search(word):
        return (word,)
    return _cut(word)


def _cut(word: str) -> tuple[str, ...]:
    if meant(word) in words() or not word.isalnum():
        return (word,)
    known = words()
    whole = firm()
    ways: dict[int, tuple[str, ...]] = {0: ()}
    for end in range(1, len(word) + 1):
        for start in range(end):
            piece = word[start:end]
            is_word = piece in whole or piece.isdigit()
            if start in ways and is_word and (len(piece) > 1 or piece.isdigit() or piece == "a"):
                way = (*ways[start], piece)
                if end not in ways or len(way) < len(ways[end]):
                    ways[end] = way
    pieces = ways.get(len(word), ())
    worth = any(_WORTH_CUTTING & known.get(piece, NOTHING) for piece in pieces)
    return pieces if worth and 1 < len(pieces) <= 2 + len(word) // 4 else (word,)
