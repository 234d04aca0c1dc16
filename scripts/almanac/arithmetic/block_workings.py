"""The workings behind the figures of a block and of its weeks."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.arithmetic.block import BlockSummary, WeekPlan
from almanac.arithmetic.week_change import WeekOfBlock
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


def block_distance(summary: BlockSummary) -> Working:
    """The distance of every practice, added up in metres."""
    return gathered(term for week in summary.weeks for term in _practices(week))


def week_distance(of: WeekOfBlock) -> Working:
    """The distance of the week's practices, added up in metres."""
    return gathered(_practices(of.week))


def _practices(week: WeekPlan) -> Iterator[Working]:
    for day in week.days:
        for own in day.sessions:
            if own.practice and own.swum:
                yield Known(own.swum.metres, own.practice.practice.id, "m")


def kick_part(of: BlockSummary | WeekOfBlock) -> Working | None:
    """Kick as a share of all metres."""
    return _share(of.balance.kick_m, "kick", of.balance.metres, "in all")


def supine_part(of: BlockSummary | WeekOfBlock) -> Working | None:
    """Flutter on the back as a share of all flutter done legs only."""
    balance = of.balance
    return _share(
        balance.supine_flutter_m, "flutter on the back", balance.flutter_kick_m, "flutter kick"
    )


def resisted_part(of: BlockSummary | WeekOfBlock) -> Working | None:
    """Metres with gear that resists as a share of all."""
    return _share(of.balance.resisted_m, "resisted", of.balance.metres, "in all")


def fast_part(of: BlockSummary | WeekOfBlock) -> Working | None:
    """Metres at efforts that count as fast as a share of all."""
    weeks = of.weeks if isinstance(of, BlockSummary) else (of.week,)
    practices = (own for week in weeks for day in week.days for own in day.practices)
    fast = next((practice.timing.scale.fast_words("and") for practice in practices), "")
    return _share(of.balance.fast_m, fast, of.balance.metres, "in all")


def dolphin_part(of: BlockSummary | WeekOfBlock) -> Working | None:
    """Metres with a dolphin kick, with arms or without, as a share of all."""
    return _share(of.balance.dolphin_m, "dolphin kick", of.balance.metres, "in all")


def _share(part: float, what: str, whole: float, of: str) -> Working | None:
    return Quotient(Known(part, what, "m"), Known(whole, of, "m")) if whole else None


def resisted_metres(of: BlockSummary | WeekOfBlock) -> Working:
    """Metres with gear that resists."""
    return Known(of.balance.resisted_m, "", "m")


def fast_metres(of: BlockSummary | WeekOfBlock) -> Working:
    """Metres at efforts that count as fast."""
    return Known(of.balance.fast_m, "", "m")


def metres_into_stroke(of: BlockSummary | WeekOfBlock) -> Working:
    """Metres of full stroke swum straight after kick within one rep."""
    return Known(of.balance.kick_into_stroke_m, "", "m")


def week_load_total(of: WeekOfBlock) -> Working | None:
    """The loads of the week's days, added up; of a week with days that are not known, how many are
    is shown beside it.
    """
    loads = _loads(of.week)
    return total(loads) if of.week.load else None


def _loads(week: WeekPlan) -> list[Known]:
    return [Known(day.load, day.name) for day in week.days if day.load is not None]


def monotony(of: WeekOfBlock) -> Working | None:
    """The daily mean of the week's load over its standard deviation."""
    load, sum_of_days = of.week.load, week_load_total(of)
    if load is None or sum_of_days is None or not load.deviation or load.monotony is None:
        return None
    mean = Labelled(Quotient(sum_of_days, Known(len(_loads(of.week)), "days")), "daily mean")
    deviation = Known(load.deviation, f"standard deviation of the {load.convention.value}")
    return Quotient(mean, deviation)


def strain(of: WeekOfBlock) -> Working | None:
    """The load of the week times its monotony."""
    load, monotonous = week_load_total(of), monotony(of)
    if load is None or monotonous is None:
        return None
    return Product((Labelled(load, "load"), Labelled(monotonous, "monotony")))


def taper_cut(summary: BlockSummary) -> Working | None:
    """How far the taper cuts the distance of the loading weeks before it, as a share of it."""
    found = summary.taper
    if found is None or summary.rules.light_days or not found.before_m or found.during_m is None:
        return None
    weeks = " and ".join(map(str, found.against))
    before = Known(found.before_m, f"mean of weeks {weeks}", "m")
    return Quotient(Difference(before, Known(found.during_m, "a week of the taper", "m")), before)


def taper_light_days(summary: BlockSummary) -> Working | None:
    """Days of the taper that are lighter than the mean day in the water of the loading weeks before
    it.
    """
    found = summary.taper
    return None if found is None or found.light_days is None else Known(found.light_days, "days")
