"""A text weighed by its traits, and the words of it that weigh most.

The weights are those of a logistic model: of the traits that have one, the sum over the square root
of how many they are, so that a long text weighs no more than a short one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations_with_replacement, permutations
from math import sqrt
from typing import TypeVar

from almanac.wording.phrases import weight_of_phrases
from almanac.wording.tokens import Token
from almanac.wording.traits import REACH, Groups, Pair, Traits, stem
from almanac.wording.weights import ByPair, weights

T = TypeVar("T")

_TOLD = 3  # how many of the heaviest traits a finding names the words of
_MOST_PAIRS = 50_000  # that are remembered, of each sort


def _pairs(known: ByPair, first: Iterable[str], second: Iterable[str]) -> Iterator[int]:
    """The numbers of the pairs that have a weight, one of the first with one of the second."""
    for group in first:
        if row := known.get(group):
            for other in second:
                if (number := row.get(other)) is not None:
                    yield number


class _Following(dict[Pair, tuple[int, ...]]):
    """The numbers of the groups of one token that have a weight before those of another."""

    def __missing__(self, pair: Pair) -> tuple[int, ...]:
        return _kept(self, pair, _pairs(weights().following, *pair))


class _Beside(dict[Pair, tuple[int, ...]]):
    """The numbers of the groups of two tokens that have a weight in one text."""

    def __missing__(self, pair: Pair) -> tuple[int, ...]:
        known, (one, other) = weights().beside, pair
        return _kept(self, pair, (*_pairs(known, one, other), *_pairs(known, other, one)))


class _Placed(dict[tuple[str, Groups], tuple[int, ...]]):
    """The numbers of the groups of a token that have a weight where it stands."""

    def __missing__(self, where: tuple[str, Groups]) -> tuple[int, ...]:
        place, groups = where
        return _kept(self, where, _pairs(weights().placed, (place,), groups))


def _kept(of: dict[T, tuple[int, ...]], key: T, numbers: Iterable[int]) -> tuple[int, ...]:
    if len(of) >= _MOST_PAIRS:
        of.clear()
    of[key] = found = tuple(numbers)
    return found


_following, _beside, _placed = _Following(), _Beside(), _Placed()


@dataclass(frozen=True)
class Weighed:
    """A text with what it weighs."""

    text: str
    tokens: Sequence[Token]

    @cached_property
    def _traits(self) -> Traits:
        return Traits(self.text, self.tokens)

    def _found(self) -> set[int]:
        """The traits that have a weight, by their numbers."""
        known, traits = weights(), self._traits
        found: set[int] = set()
        for known_ones, names in (
            (known.words, traits.words),
            (known.shapes, traits.shape),
            (known.groups, traits.all_groups),
        ):
            found.update([known_ones[name] for name in names if name in known_ones])
        beside = combinations_with_replacement({groups for _, groups in traits.kinds}, 2)
        return found.union(
            *map(_following.__getitem__, traits.following),
            *map(_beside.__getitem__, beside),
            *map(_placed.__getitem__, traits.placed),
        )

    @cached_property
    def weight(self) -> float:
        """What the traits weigh together, and the phrases beside them."""
        values, found = weights().values, self._found()
        total = sum([values[number] for number in found])
        traits = total / sqrt(len(found) or 1) + weights().bounds["bias"]
        return traits + weight_of_phrases(self.text)

    @cached_property
    def heaviest(self) -> list[Token]:
        """The tokens of the heaviest words and pairs, in the order that they stand in."""
        ranked = sorted(self._on_tokens(), reverse=True)
        places = sorted({at for _, own in ranked[:_TOLD] for at in own})
        heaviest = [self.tokens[at] for at in places]
        return [one for one in heaviest if "LIGHT" not in one.meanings] or heaviest

    def _on_tokens(self) -> Iterator[tuple[float, tuple[int, ...]]]:
        """What words, groups and pairs weigh, each with the tokens that it stands on."""
        known, kinds = weights(), self._traits.kinds
        for at, token in enumerate(self.tokens):
            if (number := known.words.get(stem(token.text))) is not None:
                yield known.values[number], (at,)
        for at, groups in kinds:
            for group in groups:
                if (number := known.groups.get(group)) is not None:
                    yield known.values[number], (at,)
        for (at, one), (later, other) in permutations(kinds, 2):
            if at < later <= at + REACH:
                for number in _pairs(known.following, one, other):
                    yield known.values[number], (at, later)
            for number in _pairs(known.beside, one, other):
                yield known.values[number], (at, later)
