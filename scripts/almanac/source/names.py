"""The words and ids of one catalogue, by which documents are checked."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field
from itertools import chain
from typing import NamedTuple

from almanac.findings import Finding
from almanac.source.lent import lent_words
from almanac.source.paths import is_id
from almanac.source.suggest import fold, one_letter_off

Question = tuple[str, str, str]  # keyword, name of the list, word
Answer = bool | None


class Unfound(NamedTuple):
    """A word that is not of a list: the keyword and the name of that list, the word, the one that
    surely was meant, or "", and what is told of it.
    """

    keyword: str
    name: str
    word: str
    certain: str
    finding: Finding


@dataclass(frozen=True)
class Names:
    """Every word and id of the present catalogue.

    ``words`` maps ("vocabulary", name) and ("reference", kind) to the words in order, each with the
    file that defines it; ``moved`` maps (kind, old id) to the present id at the end of the way, or
    to "" where the way leads nowhere. ``called`` maps each list's other names, folded, to the word;
    ``looked_for`` what people look a word up by, which is no name of it;
    ``told_by`` the words that tell what one word of a list means, and no other;
    ``retired`` are those of the moved ids whose entry has another in its place;
    ``misplaced`` are ids whose files stand where none is read, which is told of the files;
    ``lent`` are the lists that the program lends, of which a club may have its own;
    ``renamed`` tells, by kind and old id, the id of a file that was renamed since the last commit;
    ``is_guessing`` is whether hints may offer what is only near or likely.
    """

    words: Mapping[tuple[str, str], Mapping[str, str]]
    moved: Mapping[tuple[str, str], str] = field(default_factory=dict)
    called: Mapping[tuple[str, str], Mapping[str, str]] = field(default_factory=dict)
    looked_for: Mapping[tuple[str, str], Mapping[str, str]] = field(default_factory=dict)
    told_by: Mapping[tuple[str, str], Mapping[str, str]] = field(default_factory=dict)
    retired: Collection[tuple[str, str]] = ()
    misplaced: Collection[str] = ()
    lent: Collection[str] = ()
    renamed: Callable[[str, str], str] = lambda kind, id: ""
    is_guessing: bool = True

    def answer(self, keyword: str, name: str, word: str) -> Answer:
        """Whether a list holds a word; None where the list itself is missing: a file that is
        missing or broken makes no word wrong.
        """
        known = self.words.get((keyword, name))
        if known is None:
            return None
        return word in known or (keyword == "reference" and word in self.misplaced)

    def certain(self, keyword: str, name: str, word: str) -> str:
        """What was surely meant by a word that is not of a list: what it names, or but for one
        letter says; "" where it is open, as with what people only look another word up by.
        """
        if found := self.by_name(keyword, name, word):
            return found
        lists = self.words.values()
        is_other = keyword == "reference" and any(word in own for own in lists)
        if is_other or self.likely(name, word) or self._is_named_so(keyword, name, word):
            return ""
        known = filter(is_id, self.of(keyword, name))
        return one_letter_off(word, known, chain.from_iterable(lists))

    def _is_named_so(self, keyword: str, name: str, word: str) -> bool:
        """Whether a word is another name of what is not there any more."""
        return fold(word) in self.called.get((keyword, name), {}) or (
            keyword == "reference" and bool(self.renamed(name, word))
        )

    def by_name(self, keyword: str, name: str, word: str) -> str:
        """What a word that is not of a list names: the same in another style, by its title or
        another name, or by the name of a file before it was renamed; "" for none.
        """
        known = {own for own in self.of(keyword, name) if is_id(own)}
        if not word or not known:
            return ""
        folded = fold(word)
        found = folded if folded in known else self.called.get((keyword, name), {}).get(folded, "")
        if not found and keyword == "reference":
            found = self.renamed(name, word)
        elif not found and self.lent and folded in lent_words(name):
            found = self.likely(name, word)
        return found if found in known else ""

    def likely(self, name: str, word: str) -> str:
        """The word of a vocabulary that people look up by another, which a person has to choose;
        "" for none.
        """
        known = self.looked_for.get(("vocabulary", name), {})
        return known.get(fold(word)) or known.get(fold(word).removesuffix("s"), "")

    def meaning(self, name: str, word: str) -> str:
        """The only word of a vocabulary in whose meaning another stands; "" for none."""
        known = self.told_by.get(("vocabulary", name), {})
        return known.get(fold(word)) or known.get(fold(word).removesuffix("s"), "")

    def of(self, keyword: str, name: str) -> Mapping[str, str]:
        """The words of one list; none where the list itself is missing."""
        return self.words.get((keyword, name), {})
