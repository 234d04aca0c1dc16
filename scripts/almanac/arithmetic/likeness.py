"""How much two texts say the same: shared runs of three words."""

from __future__ import annotations

import itertools
import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

_WORD = re.compile(r"[^\W_]+", re.UNICODE)


@dataclass(frozen=True)
class Likeness:
    """Two ids and the share of their runs of three words that both have, 0 to 1."""

    first: str
    second: str
    share: float


def runs_of_words(text: str) -> frozenset[tuple[str, ...]]:
    """The different runs of three words of a text, without case and punctuation."""
    if text.isascii():  # there lower case is all that case folding makes
        words = _WORD.findall(text.lower())
    else:
        words = [word.casefold() for word in _WORD.findall(text)]
    return frozenset(zip(words, words[1:], words[2:], strict=False))


def alike(texts: Mapping[str, str], least: float) -> Iterator[Likeness]:
    """Pairs of texts whose likeness is at least ``least``, the most alike first.

    Likeness is the number of runs of three words that both have, over those that either has
    (Jaccard 1901). Only pairs that share a run are looked at, so the work grows with what is
    shared.
    """
    runs = {id: runs_of_words(text) for id, text in texts.items()}
    met: set[tuple[str, ...]] = set()
    common: set[tuple[str, ...]] = set()  # most runs stand in one text alone
    for own in runs.values():
        common |= met & own
        met |= own
    holders: dict[tuple[str, ...], list[str]] = defaultdict(list)
    for id, own in runs.items():
        for run in own & common:
            holders[run].append(id)
    shared: Counter[tuple[str, str]] = Counter()
    for ids in holders.values():
        if len(ids) <= _COMMONPLACE:
            shared.update(itertools.combinations(ids, 2))
    sizes = {id: len(own) for id, own in runs.items()}
    found = [  # of thousands of pairs few are alike enough
        Likeness(one, other, share)
        for (one, other), count in shared.items()
        if (share := count / (sizes[one] + sizes[other] - count)) >= least
    ]
    yield from sorted(found, key=lambda pair: (-pair.share, pair.first, pair.second))


_COMMONPLACE = 40  # a run that so many texts hold is a turn of the trade and tells nothing
