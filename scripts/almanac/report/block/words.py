"""What is said in words of a block's weeks: its taper, its steps, the days that are missing."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.figures import by_name
from almanac.analysis.figures.blocks import weeks_of
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.week_change import WEEKS_BEFORE
from almanac.model.policy import Policy
from almanac.report.shown import shown
from almanac.units import show_share

MONOTONY = (
    "Monotony is the daily mean over the standard deviation of the sample; strain is total "
    "× monotony (Foster 1998). Both want seven known days, four of them with training."
)
LOAD = (
    "Load is minutes of the session × its rating (Foster 2001), from first start to last finish; a "
    "planned rating is the mean of its reps by the clock. Compare a lane group with itself alone."
)


def taper_words(policy: Policy, summary: BlockSummary) -> Iterator[str]:
    """What a taper does, beside what the policy asks for and why; nothing where there is none."""
    taper, rules = summary.taper, summary.rules
    if taper is None:
        return
    figures = by_name("block", "block", summary)
    if taper.light_days is None:
        yield (
            f"How far the taper, {taper.first} to {taper.last}, eases is not known: no loading "
            "week stands before it, or a day is missing."
        )
        return
    if rules.light_days:
        asked = rules.light_days
        yield (
            f"The taper, {taper.first} to {taper.last}, has {taper.light_days} lighter days; at "
            f"this level it is {asked.least} to {asked.most}, and no percentage. {asked.reason} "
            f"({asked.source})"
        )
        return
    least, most = policy.limits["taper_cut_least"], policy.limits["taper_cut_most"]
    reasons = dict.fromkeys(f"{limit.reason} ({limit.source})" for limit in (least, most))
    weeks = " and ".join(map(str, taper.against))
    yield (
        f"The taper, {taper.first} to {taper.last}, cuts distance by {shown(figures['taper'])} "
        f"against the loading weeks {weeks}; the policy asks for {show_share(least.value)} to "
        f"{show_share(most.value)}. {' '.join(reasons)}"
    )


def change_words(policy: Policy, summary: BlockSummary) -> Iterator[str]:
    """The weeks whose load lies further above the last four than the club looks at once."""
    limit = policy.limits["week_rise_look"]
    for of in weeks_of(summary):
        change = by_name("block", "week", of)["load change"].value
        if change is not None and change > limit.value:
            before = min(len(of.earlier), WEEKS_BEFORE)
            count = {1: "the week before", 4: "the last four weeks"}.get(
                before, f"the {before} weeks before"
            )
            of_median = count if before == 1 else f"the median of {count}"
            yield (
                f"Week {of.week.number}: load {show_share(change)} above {of_median}. We look "
                f"twice above {show_share(limit.value)}. {limit.reason}"
            )


def missing_words(summary: BlockSummary) -> Iterator[str]:
    """The days of which nothing is planned, and those whose load is not known, by week; and the
    practices of which figures are those of half of the lane group.
    """
    for week in summary.weeks:
        absent = [day.name for day in week.days if day.day is None]
        if absent:
            yield f"Week {week.number}: {_names(absent)} not planned, so missing and not rest."
        unknown = [day.name for day in week.days if day.day and day.load is None]
        if unknown:
            yield f"Week {week.number}: the load of {_names(unknown)} is not known."
    practices = {own.practice.id: own for day in summary.days for own in day.practices}
    halved = [own.practice.title for own in practices.values() if summary.group in own.halved]
    if halved:
        titles = "; ".join(halved)
        yield f"Figures of its first half alone, where halves do different things: {titles}."


def _names(days: list[str]) -> str:
    return ", ".join(day.capitalize() for day in sorted(days, key=DAYS.index))
