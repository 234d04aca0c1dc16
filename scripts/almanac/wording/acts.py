"""Acts that texts ask for, each by its words: patterns that are looked for only in texts with one
of the words that each such text has.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from almanac.wording.clauses import denies, sentences

_LETTERS = 4  # of a word: enough to tell it by, whatever its ending


class Acts:
    """Acts that are looked for together, by name. Of each, the first letters of words (four at
    most) of which one stands wherever it is asked for, after ``&`` those of which a second one
    does; and its pattern. ``ends`` are words, as patterns, with which an act ends.
    """

    def __init__(self, every: Mapping[str, tuple[str, str]], ends: Iterable[str]) -> None:
        self._acts: dict[str, list[tuple[frozenset[str], re.Pattern[str]]]] = {}
        self._ends = re.compile(rf"\b(?:{'|'.join(ends)})\b", re.IGNORECASE)
        for words, pattern in every.values():
            compiled = re.compile(rf"\b(?:{pattern})", re.IGNORECASE)
            first, _, second = words.partition("&")
            for start in first.split():
                self._acts.setdefault(start, []).append((frozenset(second.split()), compiled))
        self._starts = frozenset(self._acts)

    def asked_in(self, text: str, starts: frozenset[str]) -> str:
        """The words of a text, whose words have these ``starts``, that ask for one of the acts; ""
        where none do. A denial before them excuses, and so does what ends it in their sentence.
        """
        if self._starts.isdisjoint(starts):  # of most texts that is all
            return ""
        near = [own for start in self._starts & starts for own in self._acts[start]]
        patterns = [pattern for more, pattern in near if not more or not more.isdisjoint(starts)]
        found = (
            match[0].strip()
            for sentence in (sentences(text) if patterns else ())
            for pattern in patterns
            if (match := pattern.search(sentence)) and not self._is_excused(sentence, match)
        )
        return next(found, "")

    def _is_excused(self, sentence: str, match: re.Match[str]) -> bool:
        rest = sentence[: match.start()], sentence[match.end() :]
        return bool(_DENIES.search(rest[0]) or any(map(self._ends.search, rest)))


_DENIES = denies("avoid", "less")


def starts_of(text: str) -> frozenset[str]:
    """The first letters of the words of a text, as many as acts are told by."""
    return frozenset([word[:_LETTERS] for word in text.lower().split()])
