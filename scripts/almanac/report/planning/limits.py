"""The limits that a block is planned within, of the policy at the squad's level."""

from __future__ import annotations

from statistics import median

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.planning.wishes import BlockLimits


def limits_of(analysis: Analysis, squad: str, first_load: int | None = None) -> BlockLimits:
    """The limits of the policy at a squad's level."""
    policy = analysis.catalogue.policy
    own = policy.of_level(analysis.catalogue.club.squads[squad].level)
    light = own.light_days
    cut = policy.limit("taper_cut_least"), policy.limit("taper_cut_most")
    return BlockLimits(
        worn_day=int(own.limit("resisted_most")),
        worn_seven=int(own.limit("resisted_seven_days_most")),
        plates_day=int(own.limit("plates_most")),
        under_day=int(own.limit("under_water_practice_most")),
        under_sets_seven=int(own.limit("under_water_sets_most")),
        hard_in_a_row=int(policy.limit("hard_days_in_a_row")),
        resisted_before_race=int(policy.limit("resisted_before_meet")),
        return_days=int(policy.limit("return_days")),
        supine=round(1000 * policy.limit("supine_share_aim")),
        cut=None if light else (round(1000 * cut[0]), round(1000 * cut[1])),
        light_days=(light.least, light.most) if light else None,
        first_load=first_load,
    )


def first_load(analysis: Analysis, before: BlockSummary | None) -> int | None:
    """What a first week may weigh after the block before it: as much more than the median of its
    last four weeks as the policy looks twice at. None where that ended in a taper or a holiday.
    """
    if before is None or before.weeks[-1].is_holiday or before.weeks[-1].week.is_taper:
        return None
    loads = [week.load.total for week in before.weeks if week.load and week.load.is_whole]
    if not loads:
        return None
    return int(median(loads[-4:]) * (1 + analysis.catalogue.policy.limit("week_rise_look")))
