"""A text cut into what is read by itself: its sentences, and the clauses of each.

A danger that is asked for in one clause weighs little beside twenty harmless words, so that it
would pass in a paragraph though it is found alone. What is too short to be understood by itself
stays with what stands before it; a question and a mere condition wait for what follows.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from almanac.wording.clauses import denies

FEWEST = 5
"""The words that a part has at least."""
_SENTENCE_ENDS = re.compile(r"""(?<=[.!?])["”’')]*\s+""")
_CLAUSE_ENDS = re.compile(
    r"""(?<=;)["”’')]*\s+|\s+[–—-]+\s+|,?\s+(?=then\s)|,?\s+(?=(?:and|but|so)\s)|,\s+"""
)
_CONDITION = re.compile(
    r"""["“‘'(]*(?:if|when|whenever|should|unless|because|whoever|in case|who|which|whether|any"""
    r"""|as soon as)\b(?:\W+\w+){,6}\W*$""",
    re.IGNORECASE,
)
_QUESTION = re.compile(r"""\?["”’')]*$""")
_DENIES = denies(
    "wrong|false|myth|banned|forbidden|refuse[ds]?|stop|stops|out|danger|dangerous|old|outdated"
)


class TextPart(NamedTuple):
    """A part of a text, whether it is only a clause of a sentence, and what stands beside it."""

    text: str
    is_clause: bool
    beside: tuple[str, ...] = ()

    @property
    def may_be_denied(self) -> bool:
        """Whether what stands beside it may deny it."""
        return any(map(_DENIES.search, self.beside))


def parts_of(text: str) -> Iterator[TextPart]:
    """The sentences of a text that has several, and the clauses of a sentence that has several."""
    sentences = _cut(_SENTENCE_ENDS, text)
    if len(sentences) > 1:
        yield from _read_alone(sentences, False)
    for sentence in sentences:
        clauses = _cut(_CLAUSE_ENDS, sentence)
        if len(clauses) > 1:
            yield from _read_alone(clauses, True)


def _read_alone(pieces: list[str], are_clauses: bool) -> Iterator[TextPart]:
    for at, piece in enumerate(pieces):
        waits = _QUESTION.search(piece) or (are_clauses and _CONDITION.match(piece))
        if not waits:
            beside = pieces[max(0, at - 1) : at] + pieces[at + 1 : at + 2]
            yield TextPart(piece, are_clauses, tuple(beside))


def _cut(ends: re.Pattern[str], text: str) -> list[str]:
    """A text cut, with nothing of it too short."""
    found: list[str] = []
    for piece in ends.split(text):
        if found and min(found[-1].count(" "), piece.count(" ")) < FEWEST - 1:
            found[-1] += f" {piece}"
        else:
            found.append(piece)
    return found
