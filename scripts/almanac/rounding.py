"""How each kind of number is rounded and shown, on pages, cards, terminals, in CSV and JSON: the
one place that decides.

What is shown adds up. Parts of a whole are rounded together, so that they sum to the whole as it is
shown (largest remainder); a difference is shown as the difference of what is shown.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from functools import lru_cache
from typing import Any

_WIDE = Context(prec=400)  # digits enough for any number there is
TENTH = Decimal("0.1")
SECOND = Decimal(1)


def half_up(value: float | Fraction, step: Decimal = SECOND) -> Decimal:
    """A number to the nearest multiple of ``step``, a power of ten; halves go away from 0."""
    return Decimal(repr(float(value))).quantize(step, ROUND_HALF_UP, _WIDE)


@lru_cache(maxsize=2**14)
def tenths(seconds: float) -> float:
    """Seconds in tenths, as JSON holds them: 599.999 is 600.0."""
    return decimals(seconds, 1)


def decimals(value: float | Fraction, places: int) -> float:
    """A number for JSON or CSV with so many decimals."""
    number = float(value)
    if round(number, places) == number:  # most are, and rounding takes its time
        return number + 0.0  # -0.0 is 0.0
    return float(half_up(number, Decimal(1).scaleb(-places))) + 0.0


def in_tenths(value: Any, name: str = "") -> Any:
    """JSON with every number of seconds in tenths: what stands under a name that ends with
    ``_s``.
    """
    if isinstance(value, dict):
        return {key: in_tenths(inner, key) for key, inner in value.items()}
    if isinstance(value, list):
        return [in_tenths(inner, name) for inner in value]
    return tenths(value) if isinstance(value, float) and name.endswith("_s") else value


@lru_cache(maxsize=2**14)
def difference(whole: float, less: float, step: Decimal = TENTH) -> Decimal:
    """What is left of a whole, as a reader reckons it from the two numbers that are shown."""
    return half_up(whole, step) - half_up(less, step)


def apportion(
    parts: Sequence[float | Fraction], step: Decimal, whole: Decimal | None = None
) -> list[Decimal]:
    """Parts in multiples of ``step`` that sum to their whole, rounded: the largest remainder.

    Each part is rounded down to a multiple; what is then lacking of the whole goes, a step each, to
    the parts that lost most, of two alike to the larger, so that no order changes its share. Where
    ``whole`` is given the parts are scaled to it: shares of a hundred. Parts are not below zero; of
    nothing there is nothing.
    """
    ratios = [part.as_integer_ratio() for part in parts]
    common = math.lcm(*(under for _, under in ratios))
    exact = [over * (common // under) for over, under in ratios]  # as whole numbers: quick to add
    total = sum(exact)
    if not total:
        return [step * 0 for _ in exact]
    if whole is None:
        whole = half_up(Fraction(total, common), step)
    in_steps = Fraction(whole) / Fraction(step)
    scale = total * in_steps.denominator
    split = [divmod(part * in_steps.numerator, scale) for part in exact]
    counts = [count for count, _ in split]
    lacking = int(whole / step) - sum(counts)
    by_loss = sorted(range(len(counts)), key=lambda at: (-split[at][1], -exact[at]))
    for at in by_loss[:lacking]:
        counts[at] += 1
    return [count * step for count in counts]


# The same times and numbers stand on many pages.
@lru_cache(maxsize=2**14)
def show_time(seconds: float | Decimal, tenths: bool = False) -> str:
    """A time as a coach writes it: ``0:45``, ``1:15``, ``1:02:30``; with ``tenths``, ``0:45.3``.

    Rounds half up to the second or the tenth. Without ``tenths``, a fraction that a whole second
    would lose is rounded, not cut.
    """
    rounded = half_up(float(seconds), TENTH if tenths else SECOND)
    sign, rounded = ("-", -rounded) if rounded < 0 else ("", rounded)
    whole = int(rounded)
    hours, minutes, rest = whole // 3600, whole % 3600 // 60, whole % 60
    tail = f"{rest:02d}" + (f".{int((rounded - whole) * 10)}" if tenths else "")
    return f"{sign}{hours}:{minutes:02d}:{tail}" if hours else f"{sign}{minutes}:{tail}"


@lru_cache(maxsize=2**14)
def show_number(value: float | Fraction | Decimal, digits: int = 1) -> str:
    """A number with grouping and no idle decimals: 1000 -> ``1,000``, 12.50 -> ``12.5``."""
    number = float(value)
    if number.is_integer():  # most are, and rounding takes its time
        return f"{int(number):,}"
    rounded = half_up(number, Decimal(1).scaleb(-digits))
    if rounded == int(rounded):
        return f"{int(rounded):,}"
    return f"{rounded:,.{digits}f}".rstrip("0").rstrip(".")


def show_share(share: float | None) -> str:
    """A share as a percentage: 0.7 -> ``70 %``; None, where the whole is zero, -> ``none``."""
    if share is None:
        return "none"
    if 0 < share < 0.005:
        return "under 1 %"
    return f"{half_up(100 * share)} %"


def show_shares(parts: Sequence[float | Fraction]) -> list[str]:
    """Parts of one whole as percentages that sum to 100; a part that gets none of it is ``under 1
    %``.
    """
    percents = apportion(parts, SECOND, Decimal(100))
    return [
        "under 1 %" if part and not percent else f"{percent} %"
        for part, percent in zip(parts, percents, strict=True)
    ]


def show_change(change: float | None) -> str:
    """A change as a signed percentage: 0.12 -> ``+12 %``; None, where there is nothing to compare,
    -> ``–``.
    """
    if change is None:
        return "–"
    percent = int(half_up(100 * change))
    return f"{'+' if percent > 0 else '−' if percent < 0 else ''}{abs(percent)} %"


def seconds_of_day(start: str) -> int:
    """The seconds from midnight to a time of day, HH:MM."""
    hours, minutes = map(int, start.split(":"))
    return hours * 3600 + minutes * 60


def time_of_day(seconds: float) -> str:
    """A time of day, HH:MM, by the seconds from midnight to it."""
    minutes = int(half_up(seconds / 60))
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def clock_time(start: str, seconds: float) -> str:
    """The time of day, HH:MM:SS, so many seconds after ``start`` (HH:MM); past midnight it begins
    again.
    """
    whole = (seconds_of_day(start) + int(half_up(seconds))) % 86400
    return f"{whole // 3600:02d}:{whole % 3600 // 60:02d}:{whole % 60:02d}"
