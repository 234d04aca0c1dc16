"""Topics: wide groups of words that speak of one matter, plainly or in pictures.

A meaning is what a pattern asks for; a topic is wider, and only weighed. A word may be of several.
``come_up`` stands for two words that follow one another.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise
from typing import NamedTuple

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
def _phrases() -> Mapping[tuple[str, str], Sequence[Phrase]]:
    """The phrases of several words by the first two of them: the words after the first, and the
    topics.
    """
    found: dict[tuple[str, str], list[Phrase]] = {}
    for form, topics in _of_forms().items():
        first, *others = form.split("_")
        if others:
            found.setdefault((first, others[0]), []).append((others, topics))
    return found


class Joined(NamedTuple):
    """The words that a token joins, and their topics."""

    parts: Sequence[str]
    topics: Topics


def joined(token: Token) -> Joined:
    """What topics a token is of by itself."""
    known, text = _of_forms(), token.text
    if "_" not in text or token.value is not None:
        return Joined((text,), known.get(text, _NONE))
    parts = text.split("_")
    return Joined(parts, _NONE.union(*[known.get(part, _NONE) for part in parts]))


def of_phrases(read: Sequence[Joined]) -> dict[int, Topics]:
    """The topics of each token that a phrase ends with, its own among them."""
    found: dict[int, Topics] = {}
    own, phrases = [word for one in read for word in one.parts], _phrases()
    begun = [number for number, two in enumerate(pairwise(own)) if two in phrases]
    if not begun:
        return found
    places = [at for at, one in enumerate(read) for _ in one.parts]
    for number in begun:
        for others, topics in phrases[own[number], own[number + 1]]:
            last = number + len(others)
            if own[number + 1 : last + 1] == others:
                at = places[last]
                found[at] = found.get(at, read[at].topics) | topics
    return found


def topics_of(row: Sequence[Token]) -> list[Topics]:
    """The topics of each token, as it stands in the row."""
    read = [joined(token) for token in row]
    ending = of_phrases(read)
    return [ending.get(at, one.topics) for at, one in enumerate(read)]
