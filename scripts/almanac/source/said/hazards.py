"""Which hazard of a vocabulary a sentence is nearest to, by the words that both use.

Each word weighs by how few hazards use it, squared (inverse document frequency; Spärck Jones 1972);
what a hazard sums up to is divided by the length of its own words, so that one that is told at
length is not like everything. Of 568 sentences that this catalogue once had, two thirds are given
the word that a coach then gave them, and 19 of 20 of those that are taken for sure.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

_SURE = 1.8  # times as like as the next
_CONTROL = 0.4  # what is done about a danger tells less of it than what it is
_WEIGHTS = {"title": 2.0, "means": 1.3, "also": 1.0, "control": 0.6}
_ENDINGS = ("ings", "ing", "edly", "ed", "es", "s", "e")
_COMMON = re.compile(
    "the|a|an|and|or|of|to|in|on|it|is|its|that|with|for|by|at|from|as|be|who|are|not|no|one|so|into"
    "|than|then|them|they|their|this|what|when|where|which|while|has|have|had|he|she|his|her|him"
    "|out|up|down|off"
)


class Near(NamedTuple):
    """A hazard and how like it is to a sentence."""

    likeness: float
    word: str


class HazardsMeant:
    """The hazards of a vocabulary's data, by ``near``."""

    def __init__(self, words: Mapping[str, Any]) -> None:
        self._own = {word: _weighed(word, about) for word, about in words.items()}
        using = Counter(stem for own in self._own.values() for stem in own)
        self._rare = {
            stem: math.log(len(self._own) / number) ** 2 for stem, number in using.items()
        }
        self._length = {
            word: math.sqrt(sum(weight**2 * self._rare[stem] for stem, weight in own.items())) or 1
            for word, own in self._own.items()
        }

    @property
    def is_empty(self) -> bool:
        """Whether there is no hazard to be near to."""
        return not self._own

    def near(self, sentence: str, control: str = "") -> list[Near]:
        """All hazards, the likest first; ``control`` is what the entry does about it."""
        said = dict.fromkeys(_stems(control), _CONTROL) | dict.fromkeys(_stems(sentence), 1.0)
        found = [
            Near(
                sum(
                    weight * own[stem] * self._rare[stem]
                    for stem, weight in said.items()
                    if stem in own
                )
                / self._length[word],
                word,
            )
            for word, own in self._own.items()
        ]
        return sorted(found, key=lambda near: -near.likeness)

    def each(self, sentences: Iterable[tuple[str, str]], taken: Iterable[str]) -> list[list[str]]:
        """For each sentence of one entry, with its control, its hazard, and after it those that it
        might be as well: none where it is sure. An entry names no hazard twice, so that a sentence
        gives way to one that is more like; where none is left, it gets the likest again, for
        ``check`` to tell. There has to be a hazard.
        """
        rows = [self.near(*both) for both in sentences]
        free = set(self._own) - set(taken)
        given: dict[int, str] = {}
        for near, number in sorted(
            ((near, number) for number, row in enumerate(rows) for near in row),
            key=lambda pair: (-pair[0].likeness, pair[1]),
        ):
            if number not in given and near.word in free:
                given[number] = near.word
                free.discard(near.word)
        words = [given.get(number, row[0].word) for number, row in enumerate(rows)]
        return [[word, *_others(row, word)] for word, row in zip(words, rows, strict=True)]


def _others(row: list[Near], word: str) -> list[str]:
    """What else a sentence might be, at most two, the likest first."""
    first, second = row[0], row[1] if len(row) > 1 else Near(0, "")
    if first.word == word and first.likeness > 0 and first.likeness >= _SURE * second.likeness:
        return []
    return [near.word for near in row[:3] if near.word != word][:2]


def _weighed(word: str, about: Any) -> dict[str, float]:
    own = dict.fromkeys(_stems(word.replace("-", " ")), _WEIGHTS["title"])
    for field, weight in _WEIGHTS.items():
        said = about.get(field, "") if isinstance(about, dict) else ""
        for stem in _stems(" ".join(said) if isinstance(said, list) else str(said)):
            own[stem] = max(own.get(stem, 0), weight)
    return own


def _stems(text: str) -> Iterator[str]:
    for word in re.findall(r"[a-z]{2,}", text.lower()):
        if not _COMMON.fullmatch(word):
            ending = next(
                (it for it in _ENDINGS if word.endswith(it) and len(word) > len(it) + 2), ""
            )
            yield word.removesuffix(ending)
