"""A text read: every place where it asks for a danger."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from almanac.wording.amounts import tokens
from almanac.wording.dangers import Danger, Saying
from almanac.wording.denial import is_excused
from almanac.wording.glance import Said, worth_a_look
from almanac.wording.patterns import Row


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
    """
    ways = worth_a_look(text)
    return tuple(_asked_for(ways, Row(tokens(text)), tells)) if ways else ()


def _asked_for(ways: Iterable[Said], row: Row, tells: bool) -> Iterator[Asking]:
    for danger, saying in ways:
        for start, end in saying.pattern.found_in(row):
            if _is_harmless(saying, danger.of_sentence, row, start, end):
                continue
            if not is_excused(row.tokens, start, end, tells):
                words = " ".join(str(token) for token in row.tokens[start:end])
                yield Asking(danger, words, saying.pattern.steps)


def _is_harmless(saying: Saying, of_sentence: bool, row: Row, start: int, end: int) -> bool:
    if not saying.unless:
        return False
    first, last = start, end
    breaks = {"FULL"} if of_sentence else {"FULL", "HALF"}
    while first and not row.tokens[first - 1].meanings & breaks:
        first -= 1
    while last < len(row.tokens) and not row.tokens[last].meanings & breaks:
        last += 1
    clause = Row(row.tokens[first:last])
    return any(True for other in saying.unless for _ in other.found_in(clause))
