"""A calculator's answer in words: what was given read and refused in sentences, numbers as they are
shown, for a terminal, for JSON and for the vectors that a page's script is held to.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from typing import Any

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Found,
    Given,
    How,
    Line,
    NoAnswer,
    Takes,
)
from almanac.rounding import decimals, half_up, show_number, show_time
from almanac.units import TimeError, parse_time

VERSION = 1
_TITLES = {Takes.TIME: "a time, as m:ss", Takes.NUMBER: "a number", Takes.WHOLE: "a whole number"}


class NotTaken(Exception):
    """What a field was given and does not take, in one sentence."""


def read(field: Field, text: str) -> Given | None:
    """What was typed into a field; None where nothing was. A list is typed with blanks between.

    Raises NotTaken with a sentence.
    """
    words = text.split() if field.many else [text.strip()]
    if not any(words):
        if field.optional:
            return None
        raise NotTaken(f"{field.title}: {_wanted(field)} is missing")
    if field.takes is Takes.CHOICE:
        if words[0] not in dict(field.choices):
            raise NotTaken(f"{field.title}: one of {', '.join(dict(field.choices))}")
        return words[0]
    values = [_number(field, word) for word in words]
    return values if field.many else values[0]


def _number(field: Field, text: str) -> float:
    try:
        if _timed(field):
            value = round(parse_time(text if ":" in text else float(text)), 2)
        else:
            value = float(text)
    except (ValueError, TimeError):
        raise NotTaken(f"{field.title}: {text!r} is not {_wanted(field)}") from None
    if not math.isfinite(value):
        raise NotTaken(f"{field.title}: {text!r} is not {_wanted(field)}")
    if field.takes is Takes.WHOLE and value != int(value):
        raise NotTaken(f"{field.title}: {text!r} is not a whole number")
    if not field.least <= value <= field.most:
        raise NotTaken(
            f"{field.title}: {_given(field, value)} is not between {_given(field, field.least)} "
            f"and {_given(field, field.most)}"
        )
    return value


def shown_default(field: Field) -> str:
    """What stands in a field at first, as it would be typed."""
    if field.default is None or isinstance(field.default, str):
        return field.default or ""
    return _as_timed(field.default) if _timed(field) else show_number(field.default, 3)


def _timed(field: Field) -> bool:
    return field.takes is Takes.TIME


def _wanted(field: Field) -> str:
    return _TITLES.get(field.takes, "a choice")


def answer(
    calculator: Calculator, values: Mapping[str, Given], club: ClubNumbers
) -> tuple[Answer | None, tuple[str, ...]]:
    """The answer and its sentences; no answer where none can be given, and the sentence why."""
    given = {
        field.name: _given(field, values[field.name])
        for field in calculator.fields(club)
        if field.name in values
    }
    try:
        found = calculator.work(values, club)
    except NoAnswer as none:
        told = {name: show_number(value, 2) for name, value in none.numbers.items()}
        return None, (_filled(calculator.refusals[none.why], given | told),)
    shown = given | {
        line.name: shown_line(line, found.numbers[line.name])
        for line in calculator.lines
        if line.name in found.numbers
    }
    return found, tuple(_filled(calculator.sentences[said], shown) for said in found.says)


def _filled(sentence: str, shown: Mapping[str, str]) -> str:
    return re.sub(r"\{([a-z0-9-]+)\}", lambda name: shown[name[1]], sentence)


def shown_line(line: Line, found: Found) -> str:
    """A line's number as it is read, with its unit; of a row each."""
    if isinstance(found, Sequence):
        return " · ".join(shown_line(line, each) for each in found)
    if line.how is not How.NUMBER:
        return show_time(found, tenths=line.how is How.TIME)
    return f"{show_number(found, line.places)} {line.unit}".rstrip()


def _given(field: Field, value: Given) -> str:
    """What was given, as it is read back."""
    if isinstance(value, str):
        return dict(field.choices)[value].lower()
    if isinstance(value, Sequence):
        return " · ".join(_given(field, each) for each in value)
    if field.takes is Takes.TIME:
        return _as_timed(value)
    return f"{show_number(value, 3)} {field.unit}".rstrip()


def _as_timed(seconds: float) -> str:
    """A time as a stopwatch gave it: with as many decimals as it has, two at most."""
    hundredths = int(half_up(seconds * 100))
    whole, rest = divmod(hundredths, 100)
    return show_time(whole) + (f".{rest:02d}".rstrip("0") if rest else "")


def as_text(calculator: Calculator, found: Answer, says: Sequence[str]) -> str:
    """The answer for a terminal: what to read first, then each number, then its limits."""
    lines = (
        f"  {line.title}: {shown_line(line, found.numbers[line.name])}"
        for line in calculator.lines
        if line.name in found.numbers
    )
    return "\n".join((*says, *lines, calculator.limits))


def as_json(
    calculator: Calculator, values: Mapping[str, Given], found: Answer | None, says: Sequence[str]
) -> dict[str, Any]:
    """The contract of ``calc --json``: numbers with six decimals, and each as it is shown."""
    numbers = {} if found is None else found.numbers
    return {
        "version": VERSION,
        "calculator": calculator.name,
        "given": dict(values),
        "numbers": {name: _plain(value) for name, value in numbers.items()},
        "shown": {
            line.name: shown_line(line, numbers[line.name])
            for line in calculator.lines
            if line.name in numbers
        },
        "says": list(says),
    }


def _plain(found: Found) -> float | list[float]:
    if isinstance(found, Sequence):
        return [decimals(each, 6) for each in found]
    return decimals(found, 6)
