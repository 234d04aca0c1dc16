"""How much two texts say the same: shared runs of three words."""

from __future__ import annotations

import itertools
import math
import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

Run = tuple[str, ...]
_WORD = re.compile(r"[^\W_]+", re.UNICODE)
_PLAIN_WORD = re.compile(r"[a-z0-9]+")  # the same of a text in ASCII, sooner


@dataclass(frozen=True)
class Likeness:
    """Two ids and the share of their runs of three words that both have, 0 to 1."""

    first: str
    second: str
    share: float


def runs_of_words(text: str) -> frozenset[Run]:
    """The different runs of three words of a text, without case and punctuation."""
    return frozenset(_in_runs(text))


def _in_runs(text: str) -> Iterator[Run]:
    if text.isascii():  # there lower case is all that case folding makes
        words = _PLAIN_WORD.findall(text.lower())
    else:
        words = [word.casefold() for word in _WORD.findall(text)]
    return zip(words, words[1:], words[2:], strict=False)


def alike(texts: Mapping[str, str], least: float) -> Iterator[Likeness]:
    """Pairs of texts whose likeness is at least ``least``, the most alike first.

    Likeness is the number of runs of three words that both have, over those that either has
    (Jaccard 1901); one that very many texts have counts as no text's. Only pairs that share a run
    are looked at, and of those only such as can be alike enough (prefix filter: Chaudhuri, Ganti
    and Kaushik 2006), so the work grows with what is shared. A run is known by its hash of 64 bits,
    as in Broder 1997: two of ten million are the same once in a hundred thousand catalogues.
    """
    runs = {id: frozenset(map(hash, _in_runs(text))) for id, text in texts.items()}
    sizes = {id: len(own) for id, own in runs.items()}
    counted = _counted(runs)
    found: list[Likeness] = []
    for one, other in _candidates(sizes, counted, least):
        count = len(counted[one] & counted[other])
        share = count / (sizes[one] + sizes[other] - count)
        if share >= least:
            found.append(Likeness(one, other, share))
    yield from sorted(found, key=lambda pair: (-pair.share, pair.first, pair.second))


def _counted(runs: Mapping[str, frozenset[int]]) -> dict[str, frozenset[int]]:
    """By text the runs that some other text has too, and not very many: as numbers, which are quick
    to compare, the rarest first.
    """
    once: set[int] = set()
    several: set[int] = set()
    for own in runs.values():  # quicker than to count every run
        several |= once & own
        once |= own
    shared = {id: own & several for id, own in runs.items()}
    holders = Counter(itertools.chain.from_iterable(shared.values()))
    kept = [run for run, count in holders.items() if count <= _COMMONPLACE]
    number = {run: at for at, run in enumerate(sorted(kept, key=holders.__getitem__))}
    return {id: frozenset([number[r] for r in own if r in number]) for id, own in shared.items()}


def _candidates(
    sizes: Mapping[str, int], counted: Mapping[str, frozenset[int]], least: float
) -> set[tuple[str, str]]:
    """The pairs that can be alike enough, each in the order of the texts.

    A text shares at least the part ``least`` of its runs with any that is so like it. Of all but
    so many of its runs less one, the rarest first, any such text then has one among its own.
    """
    by_run: dict[int, list[str]] = defaultdict(list)
    for id, own in counted.items():
        needed = max(1, math.ceil(least * sizes[id] - _A_LITTLE))
        for run in sorted(own)[: max(0, len(own) - needed + 1)]:
            by_run[run].append(id)
    return {pair for ids in by_run.values() for pair in itertools.combinations(ids, 2)}


_COMMONPLACE = 40  # a run that so many texts hold is a turn of the trade and tells nothing
_A_LITTLE = 1e-9  # of the machine
