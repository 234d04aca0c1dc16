"""A text read: every place where it asks for a danger."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import NamedTuple

from almanac.wording.amounts import tokens
from almanac.wording.dangers import BY_WEIGHT, DANGERS, FURTHER_BY_WEIGHT, Danger, Saying
from almanac.wording.denial import is_excused
from almanac.wording.glance import may_hold, worth_weighing
from almanac.wording.parts import FEWEST, parts_of
from almanac.wording.patterns import TokenRow
from almanac.wording.phrases import weight_of_phrases
from almanac.wording.tokens import Token
from almanac.wording.topics import OF_AIR_AND_DEPTH, OF_OTHER_HARM, topics_of
from almanac.wording.weighing import Weighed
from almanac.wording.weights import weights

CLAUSE = 2.5
"""How much more a clause weighs that is found by itself."""
DENIED = 2.0
"""And a part that may be denied by what stands beside it."""
AT_A_GLANCE = 0.4
"""And how much of that at a first look."""
PHRASES_LEAST = -2.5
"""What the phrases of a text that asks for a danger weigh at least: of 13,269 that are taught none
weighs less than -1.4, of 1,100 that are not none less than -2; most harmless texts do.
"""


@dataclass(frozen=True)
class Asking:
    """A danger that a text asks for, and the words that do."""

    danger: Danger
    words: str
    pattern: str = ""


@lru_cache(maxsize=65536)
def asked_for(text: str, tells: bool = False) -> tuple[Asking, ...]:
    """The dangers that a text asks for. A text that ``tells`` may say what goes wrong; what it
    asks for is still found.

    A text is read as a whole, and sentence by sentence and clause by clause: among many harmless
    words one danger weighs little. A clause must weigh more, and so must what stands beside a
    denial, since what excuses it may stand there.
    """
    asked = _asked_in(text, tells, 0.0)
    if asked or not may_hold(text, FEWEST, AT_A_GLANCE * CLAUSE):
        return asked
    found = (
        _asked_in(part.text, tells, CLAUSE * part.is_clause + DENIED * part.may_be_denied)
        for part in parts_of(text)
        if worth_weighing(part.text, AT_A_GLANCE * CLAUSE * part.is_clause)
    )
    return tuple(dict.fromkeys(one for own in found for one in own))


def _asked_in(text: str, tells: bool, more: float) -> tuple[Asking, ...]:
    """The dangers that a text, read in one, asks for where it weighs so much ``more``.

    Two readings are laid together: patterns of meaning, which know what is denied, and the weight
    of all the text's words, which knows pictures that no pattern has. A pattern counts where the
    text weighs enough besides; without one a text must weigh more.
    """
    if not worth_weighing(text, more * AT_A_GLANCE) or weight_of_phrases(text) < PHRASES_LEAST:
        return ()
    row = TokenRow(tokens(text))
    weighed = Weighed(text, row.tokens)
    bounds = weights().bounds
    if weighed.weight < bounds["least"]:
        return ()
    hits = tuple(hits_of(row))
    asked = tuple(hit.asking(row) for hit in hits if not hit.is_excused(row, tells))
    weight = weighed.weight + weight_of(hits, bool(asked)) - more
    if asked and weight > bounds["backed"]:
        return asked
    if weight > bounds["alone"] and not tells:
        heaviest = weighed.heaviest
        return (Asking(_danger_of(heaviest), " ... ".join(map(str, heaviest))),)
    return ()


def _danger_of(heaviest: Sequence[Token]) -> Danger:
    """The danger of a text that no pattern knows, by what its heaviest words speak of."""
    topics = frozenset().union(*topics_of(heaviest))
    is_further = topics & OF_OTHER_HARM and not topics & OF_AIR_AND_DEPTH
    return FURTHER_BY_WEIGHT if is_further else BY_WEIGHT


class Hit(NamedTuple):
    """A place where a pattern is found, and none of its harmless readings."""

    danger: Danger
    saying: Saying
    start: int
    end: int

    def is_excused(self, row: TokenRow, tells: bool) -> bool:
        """Whether what it says is denied in its own clause, or only told."""
        return is_excused(row.tokens, self.start, self.end, tells)

    def asking(self, row: TokenRow) -> Asking:
        """What it asks for, and the words that do."""
        words = " ".join(map(str, row.tokens[self.start : self.end]))
        return Asking(self.danger, words, self.saying.pattern.steps)


def hits_of(row: TokenRow) -> Iterator[Hit]:
    """Every place where a pattern is found, denied or not."""
    by_sign, all_sayings = _sayings_by_sign(), _all_sayings()
    near = {number for sign in row.holds for number in by_sign.get(sign, ())}
    for number in sorted(near.union(by_sign.get("", ()))):
        danger, saying = all_sayings[number]
        for start, end in saying.pattern.found_in(row):
            if not _is_harmless(saying, danger.of_sentence, row, start, end):
                yield Hit(danger, saying, start, end)


@cache
def _all_sayings() -> Sequence[tuple[Danger, Saying]]:
    return [(danger, saying) for danger in DANGERS for saying in danger.sayings]


@cache
def _sayings_by_sign() -> Mapping[str, Sequence[int]]:
    """The numbers of the sayings that may be found where a sign stands; under "" those that may be
    found anywhere.
    """
    found: dict[str, list[int]] = {}
    for number, (_, saying) in enumerate(_all_sayings()):
        for sign in saying.pattern.rarest or ("",):
            found.setdefault(sign, []).append(number)
    return found


def weight_of(hits: Sequence[Hit], are_asked: bool) -> float:
    """What patterns add: each danger that is named once, and that it is not denied."""
    known = weights().hits
    named = sum(known.get(name, 0.0) for name in {hit.danger.name for hit in hits})
    return named + are_asked * known.get("asked", 0.0)


def _is_harmless(saying: Saying, of_sentence: bool, row: TokenRow, start: int, end: int) -> bool:
    if not saying.unless:
        return False
    first, last = start, end
    breaks = {"FULL"} if of_sentence else {"FULL", "HALF"}
    while first and not row.tokens[first - 1].meanings & breaks:
        first -= 1
    while last < len(row.tokens) and not row.tokens[last].meanings & breaks:
        last += 1
    clause = TokenRow(row.tokens[first:last])
    return any(True for other in saying.unless for _ in other.found_in(clause))
