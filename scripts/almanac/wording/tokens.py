"""A text as a row of tokens: each a word, a phrase, an amount or a break, with its meanings."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import chain

from almanac.wording.folding import fold
from almanac.wording.lexicon import (
    NOTHING,
    Beginnings,
    Meanings,
    cut,
    firm,
    loose_phrases,
    meant,
    phrases,
    words,
)

_MOST_PIECES = 50_000  # that are remembered

_PIECE = re.compile(
    r"\d*:\d\d(?:\.\d+)?|\d+(?:st|nd|rd|th)\b|\d+(?:\.\d+)?|c?o2|u/w|w/o|[a-z]+(?:'[a-z]+)?"
    r"|\.(?=[\s\"')]|$)|[.!]{2,}| - |--| / |[!;:?,()\[\]/>+-]"
)
_FULL, _HALF = (".", "!"), (":", ";", "?", " - ", "--")
_COMMA = (",", "(", ")", "[", "]", " / ")
_CONTRACTED = re.compile(
    r"\b(ca|wo|do|does|did|is|are|was|would|should|could|must|need|have|has)n't\b"
)
_IN_FULL = {"ca": "can", "wo": "will"}
_NOT = {"not", "never", "no", "dont", "nobody"}
_NO_REASONS = {"not_a_reason", "no_reason", "not_an_excuse", "no_excuse"}
_NO_STOP = {*_NOT, "rather_than", "instead_of"}
NUMBER_WORDS = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
    "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14,
    "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20,
    "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90, "hundred": 100, "dozen": 12, "twice": 2,
    "couple": 2, "third": 3, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
    "tenth": 10, "eleventh": 11,
}  # fmt: skip


@dataclass(
    frozen=True, eq=False
)  # one and the same for a word, so that what is kept of it is found
class Token:
    """A piece of a text, with what it means; of a number, its value."""

    text: str
    meanings: Meanings = NOTHING
    value: float | None = None

    def __str__(self) -> str:
        return self.text.replace("_", " ")


FULL, HALF, COMMA, JOINT = (
    Token(sign, frozenset({name}))
    for sign, name in ((".", "FULL"), (":", "HALF"), (",", "COMMA"), ("-", "JOINT"))
)


_ON = Token("on", frozenset({"PERSIST"}))


def plain_tokens(text: str) -> list[Token]:
    """The tokens of a text, its hidden characters undone and its phrases joined; numbers have
    their value and no meaning yet.
    """
    folded = fold(text)
    if "n't" in folded:
        folded = _CONTRACTED.sub(_written_out, folded)
    found = [*chain.from_iterable(map(_pieces.__getitem__, _PIECE.findall(folded)))]
    found = _joined(_rejoined(found) if JOINT in found else found)
    return _without_denied_stops(_marked(found))


def _written_out(contracted: re.Match[str]) -> str:
    return f"{_IN_FULL.get(contracted[1], contracted[1])} not"


class _Pieces(dict[str, tuple[Token, ...]]):
    """The tokens of pieces that were met before."""

    def __missing__(self, piece: str) -> tuple[Token, ...]:
        if len(self) >= _MOST_PIECES:
            self.clear()
        self[piece] = found = _of_piece(piece)
        return found


_pieces = _Pieces()


def _of_piece(piece: str) -> tuple[Token, ...]:
    if piece[0].isalpha():
        return tuple([_of_word(meant(word)) for word in cut(piece.removesuffix("'s"))])
    if piece[0].isdigit() and piece[-1].isalpha():
        return (Token(piece, value=float(piece[:-2])),)
    if piece[-1].isdigit():
        return (
            Token(piece, frozenset({"CLOCK"}))
            if ":" in piece
            else Token(piece, value=float(piece)),
        )
    if piece[0] in _FULL:
        return (FULL,)
    return (HALF if piece in _HALF else COMMA if piece in _COMMA else JOINT,)


@cache
def _known_words() -> Mapping[str, Token]:
    """The tokens of all words and joined phrases that mean something."""
    known = words()
    return {
        word: Token(word, known.get(word, NOTHING), NUMBER_WORDS.get(word))
        for word in (*known, *NUMBER_WORDS)
    }


def _of_word(word: str) -> Token:
    """The token of a word or of a joined phrase."""
    known = _known_words().get(word)
    return known or Token(word, NOTHING, float(word) if word.isdigit() else None)


def _rejoined(found: list[Token]) -> list[Token]:
    """A word that a hyphen cuts ("br-eath") whole again; other joints gone, but between numbers."""
    out: list[Token] = []
    for token in found:
        if token is not JOINT and len(out) > 1 and out[-1] is JOINT:
            before = out[-2]
            whole = meant(before.text + token.text)
            if whole in words() and not (before.text in words() and token.text in words()):
                out[-2:] = [_of_word(whole)]
                continue
            if before.value is None or token.value is None:
                out.pop()
        if token is not JOINT or out:
            out.append(token)
    return out


def _joined(found: list[Token]) -> list[Token]:
    """Of several words that make a phrase, one token."""
    own = [token.text for token in found]
    out: list[Token] = []
    done = 0
    for at in _begun(own, phrases()):
        size = _size_of_phrase(own, at) if at >= done else 0
        if size:
            out += found[done:at]
            out.append(_of_word("_".join(own[at : at + size])))
            done = at + size
    return out + found[done:] if done else found


def _begun(own: list[str], beginnings: Beginnings) -> list[int]:
    """Where a phrase may begin."""
    return [
        at
        for at, text in enumerate(own[:-1])
        if text in beginnings and own[at + 1] in beginnings[text].seconds
    ]


def _size_of_phrase(own: list[str], at: int) -> int:
    """How many words make the longest phrase that begins at a place; 0 where none does."""
    most, known = phrases()[own[at]].most, firm()
    sizes = range(min(most, len(own) - at), 1, -1)
    return next((size for size in sizes if "_".join(own[at : at + size]) in known), 0)


def _marked(found: list[Token]) -> list[Token]:
    """The last word of a loose phrase has the phrase's meaning besides its own."""
    beginnings, known = loose_phrases(), words()
    own = [token.text for token in found]
    for at in _begun(own, beginnings):
        for size in range(2, min(beginnings[own[at]].most, len(own) - at) + 1):
            meanings = known.get("_".join(own[at : at + size]))
            if meanings:
                last = at + size - 1
                found[last] = _meaning(found[last], found[last].meanings | meanings)
    return found


@lru_cache(maxsize=16384)
def _meaning(token: Token, meanings: Meanings) -> Token:
    return Token(token.text, meanings, token.value)


def _without_denied_stops(found: list[Token]) -> list[Token]:
    """Not to stop is to go on, and not to heed is no heed."""
    for at, token in enumerate(found):
        if not token.meanings:
            continue
        if "STOP" in token.meanings and at and found[at - 1].text in _NO_STOP:
            found[at] = _meaning(token, token.meanings - {"STOP"} | {"PERSIST"})
        elif "STOP" in token.meanings and at > 1 and found[at - 2].text in _NO_REASONS:
            found[at] = _ON
        elif "HEED" in token.meanings and any(
            one.text in _NOT for one in found[max(0, at - 3) : at]
        ):
            found[at] = _meaning(token, token.meanings - {"HEED"})
    return found
