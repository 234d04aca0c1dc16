"""Which words of the trade a club explains: by its terms, its other vocabularies, its gear."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from almanac.model.catalogue import Catalogue
from almanac.model.policy import Word

TERMS = "terms"
OTHER_WORDS = "other-words"


@dataclass(frozen=True)
class Explained:
    """Words that are explained, each as ``plain`` makes it."""

    words: frozenset[str]

    @staticmethod
    def plain(word: str) -> str:
        """A word without what differs by its place in a sentence: small, one blank, no plural."""
        small = re.sub(r"[\s-]+", " ", word.lower()).strip()
        return small.removesuffix("s") if len(small) > 3 else small


def terms(catalogue: Catalogue) -> Mapping[str, Word]:
    """The club's terms by key; none where it has no such list."""
    vocabulary = catalogue.vocabularies.get(TERMS)
    return vocabulary.words if vocabulary else {}


def explained(catalogue: Catalogue) -> Explained:
    """All words that some list explains."""
    return Explained(frozenset(map(Explained.plain, _said(catalogue))))


def _said(catalogue: Catalogue) -> Iterator[str]:
    for vocabulary in catalogue.vocabularies.values():
        for key, word in vocabulary.words.items():
            yield from (key, word.title, *word.also, *word.forms)
    for gear in catalogue.gear.values():
        yield from (gear.title, *gear.also_called)
