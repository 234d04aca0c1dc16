"""The working behind a figure, as an expression whose value *is* the figure, so that the two cannot
part.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from statistics import linear_regression

from almanac.frozen import kept, quick


@quick
@dataclass(frozen=True, slots=True)
class Known:
    """A number that stands in an entry or a test, with what it is and its unit ("" for a bare
    number). ``digits`` are the decimals that it is shown with.
    """

    value: float
    what: str = ""
    unit: str = ""
    digits: int = 3


@quick
@dataclass(frozen=True)
class Sum:
    """Terms added up."""

    terms: tuple[Working, ...]

    @kept
    def value(self) -> float:
        """The sum; exact for whole numbers."""
        return sum((term.value for term in self.terms), 0)


@quick
@dataclass(frozen=True)
class Product:
    """Factors multiplied."""

    factors: tuple[Working, ...]

    @kept
    def value(self) -> float:
        """The product; exact for whole numbers."""
        return math.prod(factor.value for factor in self.factors)


@quick
@dataclass(frozen=True)
class Quotient:
    """One working over another."""

    over: Working
    under: Working

    @kept
    def value(self) -> float:
        """The quotient. Raises ZeroDivisionError where the lower part is zero: callers rule that
        out.
        """
        return self.over.value / self.under.value


@quick
@dataclass(frozen=True)
class Difference:
    """One working less another."""

    whole: Working
    less: Working

    @kept
    def value(self) -> float:
        """The difference."""
        return self.whole.value - self.less.value


@quick
@dataclass(frozen=True)
class Power:
    """A working raised to a power."""

    base: Working
    exponent: float

    @kept
    def value(self) -> float:
        """The power."""
        return float(self.base.value**self.exponent)


@quick
@dataclass(frozen=True)
class Slope:
    """How far each second goes over several tests: the slope of the line of least squares of
    distance on time through ``trials``, which are (metres, seconds).
    """

    trials: tuple[tuple[float, float], ...]

    @kept
    def value(self) -> float:
        """Metres a second. Raises StatisticsError where the times are all one."""
        metres, seconds = zip(*self.trials, strict=True)
        return linear_regression(seconds, metres).slope


@quick
@dataclass(frozen=True)
class UpTo:
    """Rounded up to the next multiple of ``step``, in seconds, or "" where it is a count."""

    inner: Working
    step: float
    unit: str = "s"

    @kept
    def value(self) -> float:
        """The least multiple of the step that is not below the inner value, to a thousandth of a
        step.
        """
        return math.ceil(round(self.inner.value / self.step, 3)) * self.step


@quick
@dataclass(frozen=True)
class Labelled:
    """A working under a name, with its unit: a step of a longer one."""

    inner: Working
    what: str
    unit: str = ""

    @kept
    def value(self) -> float:
        """The value of what it names."""
        return self.inner.value


@quick
@dataclass(frozen=True)
class PowerLaw:
    """Time over ``metres`` on the line T = reference × (metres / reference_m) ^ exponent.

    ``tests`` are the (metres, seconds) that the line was drawn through.
    """

    reference: Known
    reference_m: float
    metres: float
    exponent: float
    tests: tuple[tuple[float, float], ...] = ()

    @kept
    def value(self) -> float:
        """Seconds."""
        return float(self.reference.value * (self.metres / self.reference_m) ** self.exponent)


@quick
@dataclass(frozen=True)
class Between:
    """A time that lies ``along`` (0 to 1) of the way from the first to the last of a descend."""

    first: Working
    last: Working
    along: float

    @kept
    def value(self) -> float:
        """Seconds, evenly spaced by time."""
        return self.first.value + self.along * (self.last.value - self.first.value)


@quick
@dataclass(frozen=True)
class BuildTime:
    """The time of a piece whose speed rises evenly with distance.

    ``slow`` and ``fast`` are the times of the whole piece at its first and at its last speed. With
    v = v_a + (v_b - v_a) x / D, the time is the integral of dx / v: D ln(v_b / v_a) / (v_b - v_a).
    """

    slow: Working
    fast: Working

    @kept
    def value(self) -> float:
        """Seconds."""
        slow, fast = self.slow.value, self.fast.value
        if math.isclose(slow, fast):
            return slow
        return slow * fast * math.log1p((slow - fast) / fast) / (slow - fast)


Working = (
    Known
    | Sum
    | Product
    | Quotient
    | Difference
    | Power
    | Slope
    | UpTo
    | Labelled
    | PowerLaw
    | Between
    | BuildTime
)


def total(terms: Iterable[Working]) -> Working:
    """A sum without its zero terms; the term itself where only one is left."""
    kept = tuple(term for term in terms if term.value != 0)
    return kept[0] if len(kept) == 1 else Sum(kept)


def gathered(terms: Iterable[Working]) -> Working:
    """A sum in which equal terms stand once with their count, in order of first appearance: 12 ×
    1:05 + 1:00.
    """
    each = tuple(terms)
    counts = Counter(map(id, each))  # many are one object, and long to compare
    alike: dict[float, list[Working]] = {}  # only what comes to the same can be the same
    for term in {id(term): term for term in each}.values():
        known = alike.setdefault(term.value, [])
        first = next((other for other in known if other == term), None)
        if first is None:
            known.append(term)
        else:
            counts[id(first)] += counts.pop(id(term))
    firsts = {id(term): term for term in each if id(term) in counts}
    return total(times(counts[own], term) for own, term in firsts.items())


def times(count: int, working: Working, what: str = "") -> Working:
    """``count`` × a working; the working itself where the count is 1."""
    return working if count == 1 else Product((Known(count, what), working))
