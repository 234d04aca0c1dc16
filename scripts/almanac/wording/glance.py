"""A text at a glance: which dangers it has the words for, before it is read."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, reduce
from operator import or_

from almanac.wording.dangers import DANGERS, Danger, Saying
from almanac.wording.folding import is_plain
from almanac.wording.lexicon import A_NUMBER, NUMBERS
from almanac.wording.tokens import NUMBER_WORDS

Said = tuple[Danger, Saying]

_WORD = re.compile(r"c?o2|u/w|w/o|[a-z]+|\d+")
_RUN_TOGETHER = re.compile(r"[a-z]breath")


@cache
def all_said() -> tuple[Said, ...]:
    """Every danger with each of the ways of asking for it."""
    return tuple((danger, saying) for danger in DANGERS for saying in danger.sayings)


class _Words:
    """Words, and phrases by the longest of their words, of which a text is asked which it holds."""

    def __init__(self, all_words: Iterable[str]) -> None:
        self._single = frozenset(word for word in all_words if " " not in word)
        self._phrases: dict[str, list[str]] = {}
        for phrase in all_words:
            if " " in phrase:
                self._phrases.setdefault(max(phrase.split(), key=len), []).append(phrase)

    def held_by(self, words: frozenset[str], row: str) -> list[str]:
        """Those that stand among the words; of phrases those that stand in the row of them."""
        held = list(self._single & words)
        for word in self._phrases.keys() & words:
            held += [phrase for phrase in self._phrases[word] if f" {phrase} " in row]
        return held


@dataclass(frozen=True)
class _Index:
    """What the words of a text tell at once. Each set of words of which a way of asking needs one
    has a bit: ``bits`` gives a word or a phrase the bits of the sets that it is in. ``ways`` are by
    the words of their rarest set, each with the bits of all its sets.
    """

    bits: Mapping[str, int]
    ways: Mapping[str, Sequence[tuple[int, Said]]]
    words: _Words
    keys: _Words


@cache
def _index() -> _Index:
    places: dict[frozenset[str], int] = {}
    ways: dict[str, list[tuple[int, Said]]] = {}
    for said in all_said():
        pattern = said[1].pattern
        needed = (1 << places.setdefault(words, len(places)) for words in pattern.needed_words)
        bits_of_all = reduce(or_, needed, 0)
        for word in pattern.key_words:
            ways.setdefault(word, []).append((bits_of_all, said))
    bits: dict[str, int] = {}
    for words, place in places.items():
        for word in words:
            bits[word] = bits.get(word, 0) | 1 << place
    return _Index(bits, ways, _Words(bits.keys()), _Words(ways.keys()))


def worth_a_look(text: str) -> Sequence[Said]:
    """The ways of asking for a danger that a text has the words for; all of them where it hides
    its letters.
    """
    lowered = text.lower()
    if not is_plain(text) or ("breath" in lowered and _RUN_TOGETHER.search(lowered)):
        return all_said()
    found = _WORD.findall(lowered.replace("n't", " not"))
    words = frozenset(found)
    if "-" in lowered:  # a hyphen may join two words or cut one
        words = words.union(_WORD.findall(lowered.replace("-", "")))
    row = f" {' '.join(found)} "
    index = _index()
    spoken = index.keys.held_by(words, row)
    if not spoken:
        return ()
    held = index.words.held_by(words, row)
    numbers = sum(word in NUMBER_WORDS or word[0].isdigit() for word in found)
    held += [A_NUMBER, NUMBERS][: min(numbers, 2)]
    has = reduce(or_, [index.bits.get(word, 0) for word in held], 0)
    ways = [said for word in spoken for bits, said in index.ways[word] if bits & has == bits]
    return list(dict.fromkeys(ways)) if len(ways) > 1 else ways
