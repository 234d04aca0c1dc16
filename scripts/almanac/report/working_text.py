"""A working, told: as one line of sums, and as steps from the tests to the figure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from almanac.arithmetic.working import (
    Between,
    BuildTime,
    Difference,
    Known,
    Labelled,
    Power,
    PowerLaw,
    Product,
    Quotient,
    Slope,
    Sum,
    UpTo,
    Working,
)
from almanac.frozen import quick
from almanac.units import show_number, show_time


@quick
@dataclass(frozen=True, slots=True)
class Step:
    """One step: what it gives, how, and the value."""

    what: str
    how: str
    value: str


def show_value(value: float, unit: str = "", digits: int = 3) -> str:
    """A value with its unit. Seconds from a minute on are shown as a clock does."""
    if unit == "s":
        return (
            show_time(value, tenths=value != round(value))
            if value >= 60
            else f"{show_number(value)} s"
        )
    return f"{show_number(value, digits)} {unit}".rstrip()


# The same times, distances and counts stand in many workings.
@lru_cache(maxsize=2**14)
def _named_value(value: float, what: str, unit: str, digits: int) -> str:
    return f"{show_value(value, unit, digits)} {what}".strip()


def formula(working: Working) -> str:
    """A working as one line: ``2 × (6 × 50 + 2 × (25 + 50)) + 100``. Named steps stand as their
    value and name.
    """
    match working:
        case Known(value, what, unit, digits):
            return _named_value(value, what, unit, digits)
        case Labelled(_, what, unit):
            return f"{show_value(working.value, unit)} {what}".strip()
        case Sum(terms):
            return " + ".join(formula(term) for term in terms) if terms else "0"
        case Product(factors):
            return " × ".join(map(_bracketed, factors))
        case Quotient(over, under):
            return f"{_bracketed(over)} ÷ {_bracketed(under)}"
        case Difference(whole, less):
            return (
                f"{_bracketed(whole) if isinstance(whole, UpTo) else formula(whole)} − "
                f"{_bracketed(less)}"
            )
        case Power(base, exponent):
            bare = isinstance(base, (Known, Labelled))
            text = formula(base) if bare else f"({formula(base)})"
            return f"{text} ^ {show_number(exponent, 3)}"
        case UpTo(inner, step, unit):
            up_to = f"{show_number(step)} {unit}" if unit else "whole one"
            return f"{formula(inner)}, up to the next {up_to}"
        case _:
            return _of_times(working)


def _of_times(working: Slope | PowerLaw | Between | BuildTime) -> str:
    """A working that joins several times, as one line."""
    match working:
        case Slope(trials):
            return f"slope of distance on time over {_tests(trials)}"
        case PowerLaw(reference, reference_m, metres, exponent):
            ratio = f"({show_number(metres)} m ÷ {show_number(reference_m)} m)"
            return f"{show_value(reference.value, 's')} × {ratio} ^ {show_number(exponent, 3)}"
        case Between(first, last, along):
            share = show_number(100 * along)
            return (
                f"{share} % of the way from {show_value(first.value, 's')} to "
                f"{show_value(last.value, 's')}"
            )
        case BuildTime(slow, fast):
            return (
                f"building from {show_value(slow.value, 's')} to {show_value(fast.value, 's')} pace"
            )


def _bracketed(working: Working) -> str:
    if isinstance(working, Known):  # as most are
        return _named_value(working.value, working.what, working.unit, working.digits)
    text = formula(working)
    loose = isinstance(working, (Difference, UpTo)) or (
        isinstance(working, Sum) and len(working.terms) > 1
    )
    return f"({text})" if loose else text


def _inner(working: Working) -> tuple[Working, ...]:
    match working:
        case Sum(terms):
            return terms
        case Product(factors):
            return factors
        case Quotient(over, under):
            return (over, under)
        case Difference(whole, less):
            return (whole, less)
        case UpTo(inner, _) | Labelled(inner, _, _) | Power(inner, _):
            return (inner,)
        case Between(first, last, _):
            return (first, last)
        case BuildTime(slow, fast):
            return (slow, fast)
        case _:
            return ()


def steps(working: Working, what: str, unit: str = "") -> list[Step]:
    """The working as steps, the first things first and the figure itself last; no step twice."""
    inner = list(_inner_steps(working))
    last = Step(what, formula(working), show_value(working.value, unit))
    return list(dict.fromkeys([*inner, last]))


def _inner_steps(working: Working) -> Iterator[Step]:
    for inner in _inner(working):
        yield from _inner_steps(inner)
    if isinstance(working, PowerLaw) and working.tests:
        tests = _tests(working.tests)
        law = f"{show_value(working.reference.value, 's')} for {show_number(working.reference_m)} m"
        yield Step(
            "line through the tests", tests, f"{law}, exponent {show_number(working.exponent, 3)}"
        )
    elif isinstance(working, Labelled):
        yield Step(working.what, formula(working.inner), show_value(working.value, working.unit))
    elif isinstance(working, (Between, BuildTime)):
        for end, name in zip(_inner(working), ("first", "last"), strict=True):
            yield Step(f"time at the {name} effort", formula(end), show_value(end.value, "s"))


def _tests(trials: tuple[tuple[float, float], ...]) -> str:
    return ", ".join(
        f"{show_number(metres)} m in {show_time(seconds, tenths=True)}"
        for metres, seconds in trials
    )
