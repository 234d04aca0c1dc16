"""A danger: a meaning that no text may ask for, with the patterns that ask for it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from almanac.wording.patterns import Pattern


@dataclass(frozen=True, eq=False)
class Saying:
    """A pattern, and the harmless readings of it."""

    pattern: Pattern
    unless: tuple[Pattern, ...] = ()


@dataclass(frozen=True, eq=False)
class Danger:
    """A group of meaning: its name, what a text asks for that says it, what to write instead.

    A harmless reading counts where it stands in the same half of a sentence; where
    ``of_sentence``, in the same sentence.
    """

    name: str
    asks: str
    mend: str
    sayings: tuple[Saying, ...]
    of_sentence: bool = False


def danger(
    name: str, asks: str, mend: str, ways: str, unless: str = "", of_sentence: bool = False
) -> Danger:
    """A danger from its patterns, one a line; a line that is set in goes on with the one before.

    After ``--`` stand the harmless readings of a pattern, after ``unless`` those of every one.
    """
    of_all = _patterns(unless)
    lines = re.sub(r"\n {5,}", " ", re.sub(r"\|\n +", "|", ways)).strip().splitlines()
    return Danger(name, asks, mend, tuple(_saying(line, of_all) for line in lines), of_sentence)


def _saying(line: str, of_all: tuple[Pattern, ...]) -> Saying:
    pattern, _, unless = line.partition("--")
    return Saying(Pattern(pattern.strip()), (*_patterns(unless), *of_all))


def _patterns(written: str) -> tuple[Pattern, ...]:
    return tuple(Pattern(" ".join(one.split())) for one in written.split(";") if one.strip())
