"""Units as they are said elsewhere, and amounts with their unit in one."""

from __future__ import annotations

import re
from collections.abc import Iterable

from almanac.source.suggest import fold

_SAID = {
    "s": "sec secs second seconds", "min": "mins minute minutes", "h": "hr hrs hour hours",
    "m": "metre metres meter meters mtr", "cm": "centimetre centimetres centimeter centimeters",
    "share": "part fraction ratio", "%": "percent per-cent pct", "°C": "c celsius degrees ° °c ºc",
    "reps": "repetition repetitions repeats rep", "heads": "swimmers people children athletes",
    "adults": "coaches helpers adult", "m/s": "mps metres-per-second metres-a-second", "times": "x",
    "sessions": "practices trainings session", "days": "d day", "sets": "set", "cords": "cord",
}  # fmt: skip
UNITS = (*_SAID, "exponent", "AU", "pieces", "rating")
_BY_WORD = {word: unit for unit, words in _SAID.items() for word in words.split()}
_AMOUNT = re.compile(r"([0-9]+(?:[.,][0-9]+)?) ?([^\W\d_%°º][^\d]*|%|[°º] ?[cC]?)")


def unit_said(text: str, units: Iterable[str]) -> str:
    """The one of some units that a text stands for; "" for none."""
    known = {fold(own): own for own in units}
    return known.get(fold(text)) or known.get(fold(_BY_WORD.get(fold(text), "")), "")


def apart(text: object, units: Iterable[str]) -> tuple[str, str] | None:
    """An amount and its unit, of which both stand in a text, ``10 s``; None for any other."""
    found = _AMOUNT.fullmatch(text.strip()) if isinstance(text, str) else None
    unit = unit_said(found[2], units) if found else ""
    return (found[1].replace(",", "."), unit) if found and unit else None
