"""Effort words from 0 to 10: their ratings, their shares of best speed, and what lies between."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from almanac.model.effort_plans import Build, Descend, Effort, Hold, Rotate
from almanac.model.policy import Word


@dataclass(frozen=True)
class EffortSpan:
    """The effort of one piece of a rep.

    ``start`` and ``end`` are ratings from 0 to 10, the same where the effort is even. ``words`` are
    the two words that the target time is built from; ``along`` says how far it lies from the first
    to the second (0 to 1) where reps descend, and is None where the effort rises within the piece.
    """

    start: Fraction
    end: Fraction
    words: tuple[str, str]
    along: Fraction | None

    def __hash__(self) -> int:
        return self._hash

    @cached_property
    def _hash(self) -> int:
        return hash((self.start, self.end, self.words, self.along))

    @cached_property
    def mean(self) -> Fraction:
        """The mean rating."""
        return (self.start + self.end) / 2


@dataclass(frozen=True)
class EffortScale:
    """Effort words, easiest first, each with the ratings from its least up to below its most."""

    words: Mapping[str, Word]

    def rating(self, word: str) -> Fraction:
        """The middle of the word's interval."""
        return self._middles[word]  # the check 'effort-scale' has seen to it that each has one

    @cached_property
    def _middles(self) -> dict[str, Fraction]:
        return {word: (least + most) / 2 for word, (least, most) in self._intervals.items()}

    @cached_property
    def titles(self) -> dict[str, str]:
        """What the words are called in a sentence."""
        return {name: word.title.lower() for name, word in self.words.items()}

    def around(self, rating: float) -> tuple[str, str, Fraction]:
        """The two words whose middles lie around a rating, and how far it lies from the first to
        the second, 0 to 1; one word twice, and 0, at a middle and beyond the outermost.
        """
        if rating not in self._around:
            # A float is near the middle of a word, and never at it; as a short fraction it is.
            self._around[rating] = self._words_around(Fraction(rating).limit_denominator(10_000))
        return self._around[rating]

    @cached_property
    def _around(self) -> dict[float, tuple[str, str, Fraction]]:
        """What has been asked for: a catalogue has few ratings."""
        return {}

    def _words_around(self, rating: Fraction) -> tuple[str, str, Fraction]:
        for (easier, low), (harder, high) in itertools.pairwise(self._middles.items()):
            if low < rating < high:
                return easier, harder, (rating - low) / (high - low)
        nearest = min(self._middles, key=lambda word: abs(self._middles[word] - rating))
        return nearest, nearest, Fraction(0)

    def share(self, word: str, level: str = "") -> float:
        """Speed at this effort as a share of the best speed over its reference distance, above 0
        and at most 1; a level may have its own.
        """
        share = self.words[word].by_level.get(level, self.words[word].share_of_best)
        assert share is not None
        return share

    def reference_m(self, word: str) -> float:
        """The distance in metres up to which reps are all swum at one speed at this effort; 0 where
        each is a share of the best over its own distance.
        """
        return self.words[word].reference_m or 0.0

    @cached_property
    def easiest(self) -> str:
        """The first of the words."""
        return next(iter(self.words))

    @cached_property
    def hardest(self) -> str:
        """The last of the words."""
        return list(self.words)[-1]

    @cached_property
    def fast(self) -> tuple[str, ...]:
        """The efforts that count as fast: those that say so and whatever is harder than one of
        them, else the two hardest.
        """
        counted = self._counted("fast")
        if not counted:
            return tuple(self.words)[-2:]
        known = self._intervals
        least = min((known[name][0] for name in counted if name in known), default=Fraction(10))
        return tuple(
            name
            for name in self.words
            if name in counted or (name in known and known[name][0] >= least)
        )

    @cached_property
    def gentle(self) -> tuple[str, ...]:
        """The efforts that count as gentle: those that say so, else the two easiest."""
        return self._counted("gentle") or tuple(self.words)[:2]

    def _counted(self, how: str) -> tuple[str, ...]:
        return tuple(name for name, word in self.words.items() if word.counts_as == how)

    def fast_words(self, joined_by: str) -> str:
        """The efforts that count as fast by title, as they stand in a sentence: ``fast or
        all-out`` where they are joined by `or`.
        """
        *titles, last = (self.titles[name] for name in self.fast)
        return f"{', '.join(titles)} {joined_by} {last}" if titles else last

    def word_at(self, rating: Fraction) -> str:
        """The word that owns a rating; 10 belongs to the hardest word."""
        owner = ""
        for name, (least, _) in self._intervals.items():
            if least <= rating:
                owner = name
        return owner

    @cached_property
    def _intervals(self) -> dict[str, tuple[Fraction, Fraction]]:
        """The least and the most rating of each word."""
        ratings = {name: word.rating for name, word in self.words.items() if word.rating}
        return {
            name: (Fraction(str(own.least)), Fraction(str(own.most)))
            for name, own in ratings.items()
        }

    def split(self, span: EffortSpan) -> Mapping[str, Fraction]:
        """Shares of a span by word, in proportion to the length of the span inside each word's
        interval.
        """
        if span not in self._splits:
            self._splits[span] = self._split(span)
        return self._splits[span]

    @cached_property
    def _splits(self) -> dict[EffortSpan, Mapping[str, Fraction]]:
        """The splits that have been asked for: a catalogue has few spans, and asks for each many
        times.
        """
        return {}

    def _split(self, span: EffortSpan) -> Mapping[str, Fraction]:
        low, high = sorted((span.start, span.end))
        if low == high:
            return {self.word_at(low): Fraction(1)}
        shares: dict[str, Fraction] = {}
        for name, (least, most) in self._intervals.items():
            inside = min(high, most) - max(low, least)
            if inside > 0:
                shares[name] = inside / (high - low)
        return shares

    def span(self, effort: Effort, number: int, of: int) -> EffortSpan:
        """The effort of one rep of an item: rep ``number`` of so many, from 1.

        A descend goes evenly from the middle of its first word to the middle of its last, so that
        its rating keeps step with its target time; a build spans the same way inside the rep. Where
        reps descend and are built as well, the descend fixes the time of each, and the build only
        its shape: the rating rises by as much as the build does, around that of the descend.
        """
        match effort:
            case Hold(word):
                return self.even(word)
            case Rotate(words):
                return self.even(words[(number - 1) % len(words)])
            case Build(first, last):
                return EffortSpan(self.rating(first), self.rating(last), (first, last), None)
            case Descend(first, last, build):
                along = Fraction(number - 1, of - 1) if of > 1 else Fraction(0)
                rating = self.rating(first) + along * (self.rating(last) - self.rating(first))
                half = self._half(build, rating) if build else Fraction(0)
                return EffortSpan(rating - half, rating + half, (first, last), along)

    def _half(self, build: Build, rating: Fraction) -> Fraction:
        """Half of what the rating rises by in a rep, as far as the scale goes on both sides."""
        rise = (self.rating(build.last) - self.rating(build.first)) / 2
        return max(Fraction(0), min(rise, rating, 10 - rating))

    def even(self, word: str) -> EffortSpan:
        """The effort of what is held evenly at a word."""
        return self._evens[word]

    @cached_property
    def _evens(self) -> dict[str, EffortSpan]:
        """The span of each word held evenly: one object for all its pieces, which are then quick to
        tell alike.
        """
        ratings = {word: self.rating(word) for word in self._intervals}
        return {
            word: EffortSpan(rating, rating, (word, word), Fraction(0))
            for word, rating in ratings.items()
        }
