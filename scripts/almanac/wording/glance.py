"""A text at a glance: which dangers it has the words for, before it is read."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, reduce
from itertools import pairwise
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


@dataclass(frozen=True)
class _Index:
    """What the words of a text tell at once. Each set of words of which a way of asking needs one
    has a bit: ``bits`` gives a word, or a pair of words, the bits of the sets that it is in.
    ``ways`` are by the words of their rarest set, each with the bits of all its sets.
    """

    bits: Mapping[str, int]
    ways: Mapping[str, Sequence[tuple[int, Said]]]
    of_keys: frozenset[str]  # the words of ``ways``, of a pair the longer


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
    return _Index(bits, ways, frozenset(max(word.split(), key=len) for word in ways))


def worth_a_look(text: str) -> Sequence[Said]:
    """The ways of asking for a danger that a text has the words for; all of them where it hides
    its letters.
    """
    lowered = text.lower()
    if not is_plain(text) or ("breath" in lowered and _RUN_TOGETHER.search(lowered)):
        return all_said()
    row = _WORD.findall(lowered.replace("n't", " not"))
    words = set(row)
    index = _index()
    if words.isdisjoint(index.of_keys):
        return ()
    words.update(map(" ".join, pairwise(row)))
    spoken = words & index.ways.keys()
    return _of_spoken(row, words, spoken) if spoken else ()


def _of_spoken(row: list[str], words: set[str], spoken: set[str]) -> Sequence[Said]:
    numbers = sum(word in NUMBER_WORDS or word[0].isdigit() for word in row)
    if numbers:
        words.update((A_NUMBER,) if numbers == 1 else (A_NUMBER, NUMBERS))
    index = _index()
    has = reduce(or_, [index.bits[word] for word in words & index.bits.keys()], 0)
    ways = [said for word in spoken for bits, said in index.ways[word] if bits & has == bits]
    return list(dict.fromkeys(ways)) if len(ways) > 1 else ways
