"""How hard: the forms that an effort may be written in."""

from __future__ import annotations

from dataclasses import dataclass

from almanac.model.entry import Ids


@dataclass(frozen=True)
class Hold:
    """One effort throughout."""

    word: str


@dataclass(frozen=True)
class Build:
    """Faster within the rep: speed rises evenly with distance from ``first`` to ``last``."""

    first: str
    last: str


@dataclass(frozen=True)
class Descend:
    """Each rep faster: from ``first`` at the first rep to ``last`` at the last, evenly by target
    time. ``build`` is the shape of each where it is built as well.
    """

    first: str
    last: str
    build: Build | None = None


@dataclass(frozen=True)
class Rotate:
    """These words in turn, one a rep."""

    words: Ids


Effort = Hold | Descend | Build | Rotate


def words_of(effort: Effort) -> Ids:
    """The words that an effort names; what lies between two of them it does not."""
    match effort:
        case Hold(word):
            return (word,)
        case Build(first, last):
            return (first, last)
        case Descend(first, last, build):
            return (first, last, *(words_of(build) if build else ()))
        case Rotate(words):
            return words
