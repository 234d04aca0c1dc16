"""What a comma in braces cuts off: the year of a day, ``on: September 1, 2026``."""

from __future__ import annotations

from almanac.source.failure import Failure
from almanac.source.said.days import day_meant


def whole_day(before: object, key: object) -> str:
    """The day that a text and the year behind it are; "" where they are none."""
    return day_meant(f"{before}, {key}") if isinstance(before, str) else ""


def cut_from_year(failure: Failure) -> bool:
    """Whether the year of a day reads as a field of its own, where it is told."""
    behind = dict(zip(failure.siblings, [*failure.siblings][1:], strict=False))
    key = behind.get(str(failure.path[-1]), "") if failure.path else ""
    return bool(key and failure.siblings[key] is None and whole_day(failure.value, key))
