"""Patterns of meanings: ``WITHOUT ~ AIR|BREATHE`` is found in "without so much as a breath".

A pattern is a row of steps. A step names meanings (capitals) or words (small letters), ``|``
between those that may stand there; ``?`` after it: may be missing; ``*``: any number of them; ``!``
before it: none of these stands there. ``~`` is up to two other words, ``..`` up to four, ``...``
up to nine, which may go over a comma; ``//`` is the end of a sentence or of half of one. Patterns
with ``&`` between them are all found in one half of a sentence, in any order; with ``&&``, in one
sentence.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from almanac.wording.families import FAMILIES
from almanac.wording.tokens import Token

_GAPS = {"~": (0, 2, True), "..": (0, 4, True), "...": (0, 9, False)}
_NAMELESS = {*_GAPS, "//", "&", "&&"}
_FIRST_SIGN = 0x100
_signs: dict[str, str] = {}


def _split(step: str) -> list[str]:
    return step.strip("!?*").split("|")


def _names(step: str) -> Iterator[str]:
    """The meanings and words that a step stands for, families opened up."""
    for name in _split(step):
        yield from _names(FAMILIES[name]) if name in FAMILIES else (name,)


def _sign(name: str) -> str:
    """One character for a meaning, or for a word that some pattern names."""
    if name not in _signs:
        _signs[name] = chr(_FIRST_SIGN + len(_signs))
    return _signs[name]


@dataclass(frozen=True)
class TokenRow:
    """The tokens of a text, written so that patterns are looked for quickly."""

    tokens: Sequence[Token]

    @cached_property
    def written(self) -> str:
        return "".join([_written(token) for token in self.tokens])

    @cached_property
    def holds(self) -> frozenset[str]:
        """Every sign that stands in the row."""
        return frozenset(self.written)


@lru_cache(maxsize=16384)
def _written(token: Token) -> str:
    """The signs of what a token means and of the word that it is."""
    return (
        "".join(_signs[name] for name in (*sorted(token.meanings), token.text) if name in _signs)
        + " "
    )


@dataclass(frozen=True, eq=False)
class Pattern:
    """A pattern of meanings, as it is written."""

    steps: str

    def __post_init__(self) -> None:
        for step in self.steps.split():
            if step not in _NAMELESS:
                for name in _names(step):
                    _sign(name)

    @property
    def names(self) -> frozenset[str]:
        """Every meaning, family and word that it names, families opened up too."""
        own = {
            name for step in self.steps.split() if step not in _NAMELESS for name in _split(step)
        }
        return frozenset(own.union(*map(_names, own)))

    def found_in(self, row: TokenRow) -> Iterator[tuple[int, int]]:
        """Where it stands: the numbers of its first token and of the one after its last."""
        for needed in self._needed:
            if row.holds.isdisjoint(needed):
                return
        first, *others = self._compiled
        for match in first.finditer(row.written):
            spans = [match.span()]
            if others:
                spans += _near(row.written, match.start(), others, self._breaks)
            if len(spans) > len(others):
                starts, ends = zip(*spans, strict=True)
                start = row.written.count(" ", 0, min(starts))
                yield start, row.written.count(" ", 0, max(ends))

    @property
    def rarest(self) -> frozenset[str]:
        """The signs of which it needs one, of the step that names the fewest; none where no step
        must be there.
        """
        return min(self._needed, key=len, default=frozenset())

    @cached_property
    def _needed(self) -> tuple[frozenset[str], ...]:
        return tuple(
            frozenset(map(_sign, _names(step)))
            for step in self.steps.split()
            if step not in _NAMELESS and step[-1] not in "?*" and step[0] != "!"
        )

    @cached_property
    def _compiled(self) -> tuple[re.Pattern[str], ...]:
        return tuple(
            re.compile(r"(?:^|(?<= ))" + "".join(map(_step, part.split())))
            for part in re.split(" &&? ", self.steps)
        )

    @cached_property
    def _breaks(self) -> Sequence[str]:
        """What ends the stretch of text that all its parts stand in."""
        return [_sign("FULL")] if " && " in self.steps else [_sign("FULL"), _sign("HALF")]


def _near(
    written: str, within: int, others: Iterable[re.Pattern[str]], breaks: Sequence[str]
) -> list[tuple[int, int]]:
    """Where the others stand between the breaks around a place; those that do not are left out."""
    start = max(written.rfind(sign, 0, within) for sign in breaks) + 1
    ends = [at for sign in breaks if (at := written.find(sign, within)) >= 0]
    end = min(ends, default=len(written)) + 2
    found = (other.search(written, start, end) for other in others)
    return [match.span() for match in found if match]


def _step(step: str) -> str:
    breaks = "".join(map(_sign, ("FULL", "HALF", "COMMA")))
    full = _sign("FULL")
    if step in _GAPS:
        least, most, stays = _GAPS[step]
        return rf"(?:[^ {breaks if stays else full}]* ){{{least},{most}}}?"
    if step == "//":
        return rf"[{full}{_sign('HALF')}] "
    anyhow = "".join(map(_sign, _names(step)))
    one = rf"(?>[^ ]*?[{anyhow}])[^ ]* "
    if step[0] == "!":
        return rf"(?!{one})"
    return rf"(?:{one}){step[-1]}" if step[-1] in "?*" else one
