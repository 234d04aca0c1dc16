"""Topics: wide groups of words that speak of one matter, plainly or in pictures.

A meaning is what a pattern asks for; a topic is wider, and only weighed. A word may be of several.
``come_up`` stands for two words that follow one another.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache

from almanac.wording import topics_of_air, topics_of_people, topics_of_sense, topics_of_water
from almanac.wording.lexicon import forms
from almanac.wording.tokens import Token

TOPICS = {
    **topics_of_air.TOPICS,
    **topics_of_water.TOPICS,
    **topics_of_people.TOPICS,
    **topics_of_sense.TOPICS,
}
OF_AIR_AND_DEPTH = frozenset({"BREATHS", "PUFFING_UP", "HOLDING", "DOWN", "GOING_UNDER", "FLOORS"})
OF_OTHER_HARM = frozenset(
    {
        *("BINDING", "CHILL", "FORCING", "LEAPS", "SHALLOWS", "SORENESS", "STORMS", "UNSEEN"),
        *("WATCHERS", "WILD_WATER"),
    }
)
Topics = frozenset[str]
_NONE: Topics = frozenset()
Phrase = tuple[Sequence[str], Topics]


@cache
def _of_forms() -> Mapping[str, Topics]:
    found: dict[str, set[str]] = {}
    for topic, written in TOPICS.items():
        for form in forms(written):
            found.setdefault(form, set()).add(topic)
    return {form: frozenset(topics) for form, topics in found.items()}


@cache
def _phrases() -> Mapping[str, Sequence[Phrase]]:
    """The phrases of several words by the first of them: the words after it, and the topics."""
    found: dict[str, list[Phrase]] = {}
    for form, topics in _of_forms().items():
        first, *others = form.split("_")
        if others:
            found.setdefault(first, []).append((others, topics))
    return found


@lru_cache(maxsize=16384)
def _of_token(token: Token) -> tuple[Sequence[str], Topics, bool]:
    """The words that a token joins, their topics, and whether one of them begins a phrase."""
    parts = token.text.split("_") if token.value is None else [token.text]
    known, phrases = _of_forms(), _phrases()
    own = _NONE.union(*(known.get(part, _NONE) for part in parts))
    return parts, own, any(part in phrases for part in parts)


def topics_of(row: Sequence[Token]) -> list[Topics]:
    """The topics of each token; those of a phrase stand at its last word."""
    read = [_of_token(token) for token in row]
    found = [topics for _, topics, _ in read]
    if any(begins for _, _, begins in read):
        words = [(word, at) for at, (parts, _, _) in enumerate(read) for word in parts]
        for number, (word, _) in enumerate(words):
            for others, topics in _phrases().get(word, ()):
                after = words[number + 1 : number + 1 + len(others)]
                if [word for word, _ in after] == others:
                    last = after[-1][1]
                    found[last] |= topics
    return found
