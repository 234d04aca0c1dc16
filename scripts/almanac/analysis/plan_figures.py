"""The figures of practices and blocks by name, each with the working behind it, for ``explain``."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.set_figures import NamedFigure
from almanac.arithmetic.block import Balance, BlockSummary, WeekPlan
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.facets import facet_working
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.working import (
    Difference,
    Known,
    Labelled,
    Product,
    Quotient,
    Working,
    gathered,
    total,
)


def practice_figures(
    summary: PracticeSummary, scale: EffortScale, group: str
) -> dict[str, NamedFigure]:
    """Every figure of a practice that has a number, by name; load and clocks for one lane group."""
    unit = summary.pool.course.unit
    figures = [NamedFigure("distance", summary.distance, unit.value)]
    for facet, split in summary.by.items():
        for word in split:
            figures.append(
                NamedFigure(
                    f"{facet} {word}", facet_working(summary.pieces, facet, word, scale), unit.value
                )
            )
    load = summary.load(group)
    if load:
        figures.append(NamedFigure("load", load, ""))
    for number, run in enumerate(summary.runs, 1):
        clock = run.clocks[group].clock
        figures += [NamedFigure(f"part {number} distance", run.distance, unit.value)]
        figures += [NamedFigure(f"part {number} clock", clock, "s")] if clock else []
    if summary.ends_s is not None:
        ends = _ends(summary)
        slot = Known(60 * summary.practice.slot.minutes, "slot", "s")
        figures += [
            NamedFigure("time", ends, "s"),
            NamedFigure("slack", Difference(slot, Labelled(ends, "practice", "s")), "s"),
        ]
    return {figure.name: figure for figure in figures}


def _ends(summary: PracticeSummary) -> Working:
    """Talk, gear changes and the slowest lane group of each part, one after the other."""
    terms: list[Working] = []
    for number, row in enumerate(summary.sheet, 1):
        terms += [Known(row.talk_s, "talk", "s"), Known(row.gear_s, "gear", "s")]
        clocks = [
            clock for group in summary.groups if (clock := row.run.clocks[group].clock) is not None
        ]
        terms.append(Labelled(max(clocks, key=lambda clock: clock.value), f"part {number}", "s"))
    return total(terms)


def block_figures(summary: BlockSummary, scale: EffortScale) -> dict[str, NamedFigure]:
    """Every figure of a block that has a number, by name, for the lane group that it was added up
    for.
    """
    figures = [
        NamedFigure("distance", gathered(_practices(list(summary.weeks))), "m"),
        *_shares("", summary.balance, scale),
    ]
    for week in summary.weeks:
        figures += _week(week, scale)
    if summary.taper:
        before = Known(summary.taper.before_m, "mean of the weeks before", "m")
        during = Known(summary.taper.before_m * (1 - summary.taper.cut), "mean of the taper", "m")
        figures.append(NamedFigure("taper", Quotient(Difference(before, during), before), ""))
    return {figure.name: figure for figure in figures}


def _practices(weeks: list[WeekPlan]) -> Iterator[Working]:
    for week in weeks:
        for day in week.days:
            if day.practice:
                yield Known(day.metres, day.practice.practice.id, "m")


def _shares(prefix: str, balance: Balance, scale: EffortScale) -> Iterator[NamedFigure]:
    wholes = {
        "kick share": (balance.kick_m, "kick", balance.metres, "in all"),
        "supine share": (
            balance.supine_flutter_m,
            "flutter on the back",
            balance.flutter_kick_m,
            "flutter kick",
        ),
        "resisted share": (balance.resisted_m, "resisted", balance.metres, "in all"),
        "fast share": (balance.fast_m, scale.fast_words("and"), balance.metres, "in all"),
    }
    for name, (part, what, whole, of) in wholes.items():
        if whole:
            yield NamedFigure(
                f"{prefix}{name}", Quotient(Known(part, what, "m"), Known(whole, of, "m")), ""
            )


def _week(week: WeekPlan, scale: EffortScale) -> Iterator[NamedFigure]:
    prefix = f"week {week.number} "
    yield NamedFigure(f"{prefix}distance", gathered(_practices([week])), "m")
    yield from _shares(prefix, week.balance, scale)
    if week.load is None:
        return
    loads = [
        Known(day.load, _day_name(day.name, day.load)) for day in week.days if day.load is not None
    ]
    load = total(loads)
    yield NamedFigure(f"{prefix}load", load, "")
    if week.load.deviation and week.load.monotony:
        mean = Labelled(Quotient(load, Known(len(loads), "days")), "daily mean")
        deviation = Known(
            week.load.deviation, f"standard deviation of the {week.load.convention.value}"
        )
        monotony = Quotient(mean, deviation)
        yield NamedFigure(f"{prefix}monotony", monotony, "")
        yield NamedFigure(
            f"{prefix}strain", Product((Labelled(load, "load"), Labelled(monotony, "monotony"))), ""
        )


def _day_name(name: str, load: float) -> str:
    return f"{name} (rest)" if load == 0 else name
