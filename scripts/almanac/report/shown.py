"""How each sort of number is shown: the one place where a figure becomes text."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from datetime import date
from decimal import Decimal
from functools import lru_cache

from almanac.analysis.figures.figure import NamedFigure, Shown
from almanac.arithmetic.timed_reps import TimedRep
from almanac.arithmetic.working import Difference
from almanac.report.working_text import formula
from almanac.rounding import (
    SECOND,
    TENTH,
    difference,
    half_up,
    show_change,
    show_number,
    show_share,
    show_time,
)

Format = Callable[[float, str], str]

FORMATS: Mapping[Shown, Format] = {
    Shown.TIME: lambda value, unit: show_time(value),
    Shown.TENTHS: lambda value, unit: show_time(value, tenths=True),
    Shown.PACE: lambda value, unit: f"{show_time(value, tenths=True)} {unit.removeprefix('s ')}",
    Shown.DISTANCE: lambda value, unit: f"{show_number(value)} {unit}",
    Shown.METRES: lambda value, unit: f"{show_number(value, 0)} {unit}",
    Shown.SHARE: lambda value, unit: show_share(value),
    Shown.CHANGE: lambda value, unit: show_change(value),
    Shown.WHOLE: lambda value, unit: show_number(value, 0),
    Shown.NUMBER: lambda value, unit: show_number(value),
    Shown.HUNDREDTHS: lambda value, unit: show_number(value, 2),
    Shown.SPEED: lambda value, unit: f"{value:.3f} {unit}",
}
# Decimals in JSON of a figure that the contract gives no key of its own.
DECIMALS: Mapping[Shown, int] = {
    Shown.TIME: 1,
    Shown.TENTHS: 1,
    Shown.PACE: 1,
    Shown.DISTANCE: 3,
    Shown.METRES: 1,
    Shown.SHARE: 4,
    Shown.CHANGE: 4,
    Shown.WHOLE: 1,
    Shown.NUMBER: 3,
    Shown.HUNDREDTHS: 4,
    Shown.SPEED: 4,
}


def shown(figure: NamedFigure) -> str:
    """A figure as a reader sees it; what stands in its place where there is no number."""
    value = figure.value
    if value is None:
        return figure.figure.absent
    if figure.figure.shown in _STEPS and isinstance(figure.working, Difference):
        value = _as_reckoned(figure, _STEPS[figure.figure.shown])
    text = FORMATS[figure.figure.shown](value, figure.unit)
    return f"{text} ({figure.partly})" if figure.partly else text


_STEPS = {Shown.TIME: SECOND, Shown.TENTHS: TENTH}


def _as_reckoned(figure: NamedFigure, step: Decimal) -> float:
    """A figure's number in steps; a difference is that of the two numbers as they are shown."""
    working = figure.working
    if isinstance(working, Difference):
        return float(difference(working.whole.value, working.less.value, step))
    return float(half_up(figure.value or 0.0, step))


# The shares that pages and terminals put into sentences.
SHARES_IN_WORDS = (
    "kick share",
    "supine share",
    "prone share",
    "board share",
    "resisted share",
    "fast share",
    "kick into stroke",
)


def with_working(figure: NamedFigure) -> str:
    """A figure on a line of its own, with the working that it comes from."""
    text = f"{figure.figure.title} {shown(figure)}"
    return text if figure.working is None else f"{text} = {formula(figure.working)}"


def others(figures: Iterable[NamedFigure], told: Collection[str]) -> list[NamedFigure]:
    """The figures that a report does not tell under a place of their own."""
    return [figure for figure in figures if figure.figure.name not in told]


def other_figures_json(
    figures: Iterable[NamedFigure], told: Collection[str]
) -> dict[str, dict[str, float | None]]:
    """What the contract adds for figures that have no key of their own: ``figures``, by name;
    nothing where there are none.
    """
    found = {
        figure.figure.name: rounded(figure)
        for figure in others(figures, told)
        if not figure.figure.converts
    }
    return {"figures": found} if found else {}


def shown_rest(timed: TimedRep) -> Decimal | None:
    """The rest of one swimmer after a rep, as a reader reckons it from the clock and the target
    that are shown; None where it is not known, or the rep does not fit its send-off.
    """
    if timed.rest is None or timed.clock is None or timed.touch_s is None:
        return None
    return difference(timed.clock.value, timed.touch_s)


def rounded(figure: NamedFigure, digits: int | None = None) -> float | None:
    """A figure's number for JSON."""
    value = figure.value
    if value is None:
        return None
    places = DECIMALS[figure.figure.shown] if digits is None else digits
    return _as_reckoned(figure, Decimal(1).scaleb(-places))


@lru_cache(maxsize=2**10)  # to ask for the name of a month takes long
def day_words(on: date) -> str:
    """A day as it is said: ``4 January``."""
    return f"{on.day} {on:%B}"


def date_words(on: date) -> str:
    """A day with its year: ``4 January 2027``."""
    return f"{day_words(on)} {on.year}"
