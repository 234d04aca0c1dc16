"""Numbers with what they count: how far, how long, how many, and rows that rise or fall."""

from __future__ import annotations

from itertools import pairwise

from almanac.wording.lexicon import Meanings
from almanac.wording.tokens import JOINT, Token, plain_tokens

_FAR_M = 15  # a head is up by the 15 m mark in every race
_DIVE_M = 1.35  # the least depth for a dive
_LONG_S = 8
_MANY = 5
_RESTRAINED = 7  # "3-5-7" strokes to a breath; "2, 4 and 6" is every second
_POOL_LENGTHS = {25, 33, 50, 66, 75, 100, 125, 150, 200, 400}  # a distance without its unit
_UNITS = frozenset({"UNIT_M", "UNIT_S", "UNIT_MIN"})
_TENS = frozenset({"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"})
_UNITS_IN_WORDS = frozenset(
    {"one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}
)
_BETWEEN = {"to", "then", "and", "down", "every", "on", "into", ","}


def tokens(text: str) -> tuple[Token, ...]:
    """The tokens of a text, with the meanings of words, phrases and amounts."""
    found = plain_tokens(text)
    if [token for token in found if token.value is not None]:
        found = _with_series(_with_amounts(_with_compounds(found)))
    return tuple([token for token in found if token is not JOINT] if JOINT in found else found)


def _with_compounds(found: list[Token]) -> list[Token]:
    """Twenty-five as one number."""
    out: list[Token] = []
    for token in found:
        tens = None
        if token.text in _UNITS_IN_WORDS:
            tens = next((one for one in reversed(out) if one is not JOINT), None)
        if tens and tens.text in _TENS:
            while out[-1] is JOINT:
                out.pop()
            value = (tens.value or 0) + (token.value or 0)
            out[-1] = Token(f"{tens.text}-{token.text}", tens.meanings, value)
        else:
            out.append(token)
    return out


def _with_amounts(found: list[Token]) -> list[Token]:
    out: list[Token] = []
    for token in found:
        unit = token.meanings & _UNITS
        if unit and out and out[-1].value is not None:
            out[-1] = _amount(out[-1], token, next(iter(unit)))
        elif token.value is not None:
            out.append(Token(token.text, token.meanings | _of_number(token.value), token.value))
        else:
            out.append(token)
    return out


def _amount(number: Token, unit: Token, kind: str) -> Token:
    value = number.value or 0.0
    text = f"{number.text} {unit.text}"
    if unit.text == "s" and value in _POOL_LENGTHS:
        meanings = {"DIST", "LONG_TIME"}  # "25s" are lengths or seconds
    elif kind == "UNIT_M":
        meanings = {"DIST" if value > _FAR_M else "NEAR"} | (
            {"SHALLOW"} if value < _DIVE_M else set()
        )
    else:
        meanings = {"LONG_TIME" if kind == "UNIT_MIN" or value >= _LONG_S else "BRIEF"}
    return Token(text, frozenset(meanings), value)


def _of_number(value: float) -> Meanings:
    if value < 2:
        return frozenset({"NUM", "ONE" if value else "NO"})
    sort = "DIST" if value in _POOL_LENGTHS else "MANY" if value >= _MANY else "SOME"
    return frozenset({"NUM", sort})


def _with_series(found: list[Token]) -> list[Token]:
    """Three numbers or more that rise or fall ("5-4-3", "three, five, seven") as one token; two
    where it is said that they go down.
    """
    if sum([token.value is not None for token in found]) < 2:
        return found
    out: list[Token] = []
    at = 0
    while at < len(found):
        if found[at].value is None:
            out.append(found[at])
            at += 1
            continue
        values, end, falls = _run(found, at)
        steps = [after - before for before, after in pairwise(values)]
        down, up = all(step < 0 for step in steps), all(step > 0 for step in steps)
        up = bool(steps) and up and values[-1] >= _RESTRAINED
        if steps and (len(values) > 2 or falls) and (down or up):
            text = "-".join(f"{value:g}" for value in values)
            out.append(Token(text, frozenset({"COUNT_DOWN" if down else "COUNT_UP"})))
            at = end
        else:
            out.append(found[at])
            at += 1
    return out


def _run(found: list[Token], start: int) -> tuple[list[float], int, bool]:
    """The numbers that follow one another from a place on, where the row ends, and whether it is
    said to fall.
    """
    values: list[float] = []
    end, falls = start, False
    for at in range(start, len(found)):
        token = found[at]
        if token.value is not None and "NUM" in token.meanings:
            values.append(token.value)
            end = at + 1
        elif not values or not (token is JOINT or token.text in _BETWEEN):
            break
        falls = falls or token.text == "down"
    return values, end, falls
