"""A text at a glance: which dangers it has the words for, before it is read."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
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


Ways = Sequence[tuple[int, Said]]


@dataclass
class _Entry:
    """What a word tells at once. Each set of words of which a way of asking needs one has a bit:
    ``bits`` are those of the sets that the word is in. ``ways`` are those whose rarest set it is
    in, each with the bits of all its sets. ``phrases`` are those of which it is the rarest word.
    """

    bits: int = 0
    ways: Ways = ()
    phrases: list[tuple[str, int, Ways]] = field(default_factory=list)


@cache
def _index() -> Mapping[str, _Entry]:
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
    return _entries(bits, ways)


def _entries(
    bits: Mapping[str, int], ways: Mapping[str, list[tuple[int, Said]]]
) -> Mapping[str, _Entry]:
    phrases = [words for words in bits if " " in words]
    entries = {
        word: _Entry(own, ways.get(word, ())) for word, own in bits.items() if " " not in word
    }
    uses = Counter(word for phrase in phrases for word in phrase.split())
    for phrase in phrases:
        rarest = min(phrase.split(), key=lambda word: (uses[word], -len(word)))
        entry = entries.setdefault(rarest, _Entry())
        entry.phrases.append((f" {phrase} ", bits[phrase], ways.get(phrase, ())))
    return entries


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
    has, groups = _held(words, f" {' '.join(found)} ")
    if not groups:
        return ()
    numbers = sum(word in NUMBER_WORDS or word[0].isdigit() for word in found)
    entries = _index()
    for sign in [A_NUMBER, NUMBERS][: min(numbers, 2)]:
        has |= entries[sign].bits
    ways = [said for group in groups for bits, said in group if bits & has == bits]
    return list(dict.fromkeys(ways)) if len(ways) > 1 else ways


def _held(words: frozenset[str], row: str) -> tuple[int, list[Ways]]:
    """The bits and the ways of the words, and of the phrases that stand in the row of them."""
    has = 0
    groups: list[Ways] = []
    entry_of = _index().get
    for word in words:
        entry = entry_of(word)
        if entry is None:
            continue
        has |= entry.bits
        if entry.ways:
            groups.append(entry.ways)
        for apart, bits, ways in entry.phrases:
            if apart in row:
                has |= bits
                if ways:
                    groups.append(ways)
    return has, groups
