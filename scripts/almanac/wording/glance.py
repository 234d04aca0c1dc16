"""A text at a glance: whether its plain words, or those of a part of it, are such as a danger is
asked for in. Nearly all texts are done with here.
"""

from __future__ import annotations

import re
from functools import lru_cache
from math import sqrt

from almanac.wording.folding import is_plain
from almanac.wording.lexicon import cut, meant
from almanac.wording.phrases import pieces
from almanac.wording.traits import stem
from almanac.wording.weights import weights

_MOST_WORDS = 100_000  # that are remembered
_A_LITTLE = 1e-9  # of the machine: sums of the same in another order
_SIGNS = re.compile(r"[a-z]+|\d+|[.!?;,]")
_SENTENCE_ENDS = frozenset(".!?")
_SENTENCE_END = re.compile(r"[.!?]\W*\s\w")  # with another one behind it
_MARKS = frozenset(".!?;,")
_CUTS = _MARKS | {"then", "and", "but", "so"}
_UNCLEAR = re.compile(r"\s(?:[^a-z\d\s]*\s|[a-z]\W+[a-z]\W)")
"""Two blanks, signs that stand alone, letters side by side: what a word is depends on the cut."""


def plain_stem(word: str) -> str:
    """What a word is looked up by at a glance: a number by a sign."""
    return "#" if word[0].isdigit() else stem(meant(word))


class _Glance(dict[str, float]):
    """The weight of a word as it stands; of one that hides others, of the heaviest of them."""

    def __missing__(self, word: str) -> float:
        known, cut_in = weights().glance, cut(word)
        if len(cut_in) == 1:
            found = known.get(plain_stem(word), 0.0)
        else:
            found = max([known.get(plain_stem(piece), 0.0) for piece in cut_in])
        if len(self) >= _MOST_WORDS:
            self.clear()
        self[word] = found
        return found


_glance = _Glance()


@lru_cache(maxsize=8)  # a text is looked at as a whole, and then for its parts
def _weights_of(text: str) -> list[float]:
    """What the plain words of a text weigh, in order."""
    return [*map(_glance.__getitem__, pieces(text))]


def worth_weighing(text: str, more: float = 0.0) -> bool:
    """Whether the plain words of a text are such as a danger is asked for in; or so much ``more``
    so.
    """
    own = _weights_of(text)
    return bool(own) and sum(own) / sqrt(len(own)) > weights().bounds["glance"] + more


def may_hold(text: str, words_least: int, clause_more: float) -> bool:
    """Whether a part of a text, of ``words_least`` words at least, may be worth weighing by itself;
    a clause has to be so by ``clause_more`` more.

    Never False where such a part is, wherever ``parts_of`` cuts: every place where it may cut is
    one here.
    """
    own = _weights_of(text)
    if len(own) < 2 * words_least:
        return False
    run, bound = _heaviest_run(own), weights().bounds["glance"]
    if run <= bound * sqrt(words_least):
        return False
    small = f" {text.lower()} "
    if not text.isascii() or _UNCLEAR.search(small) or not is_plain(text):
        return True
    if _SENTENCE_END.search(small) is None and run <= (bound + clause_more) * sqrt(words_least):
        return False
    return _some_part_may(*_stretches(small), words_least, clause_more)


def _heaviest_run(own: list[float]) -> float:
    """What words that stand side by side weigh at most, wherever a text is cut: Kadane's."""
    run = most = 0.0
    for weight in own:
        if run > 0.0:
            run += weight
        else:
            run = weight
        if run > most:
            most = run
    return most


def _stretches(small: str) -> tuple[list[float], list[int], list[bool]]:
    """What stands between two places where a text may be cut: of each stretch its weight and its
    words so far, both from the beginning of the text, and whether a sentence may end with it.
    """
    weight, words = 0.0, 0
    so_heavy, so_many, ends = [0.0], [0], [True]
    for sign in _SIGNS.findall(small):
        if sign in _CUTS:
            if words > so_many[-1]:
                so_heavy.append(weight)
                so_many.append(words)
                ends.append(sign in _SENTENCE_ENDS)
            elif sign in _SENTENCE_ENDS:
                ends[-1] = True
        if sign not in _MARKS:
            weight += _glance[sign]
            words += 1
    if words > so_many[-1]:
        so_heavy.append(weight)
        so_many.append(words)
        ends.append(True)
    return so_heavy, so_many, ends


def _some_part_may(
    so_heavy: list[float],
    so_many: list[int],
    ends: list[bool],
    words_least: int,
    clause_more: float,
) -> bool:
    """Whether stretches that follow one another, and are not the whole text, may weigh enough."""
    least = weights().bounds["glance"] - _A_LITTLE
    lightest = least * sqrt(words_least)
    last = len(ends) - 1
    for start in range(last):
        for end in range(start + 1, last + 1):
            weight, words = so_heavy[end] - so_heavy[start], so_many[end] - so_many[start]
            if weight > lightest and words >= words_least and (start or end < last):
                bound = least if ends[start] and ends[end] else least + clause_more
                if weight > bound * sqrt(words):
                    return True
    return False
