"""Rules on the conditions of a practice: how many adults are there, how warm the water is."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.analysis.pool_starts import dry_starts_of
from almanac.arithmetic.cords import ties
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.under_water import counts
from almanac.arithmetic.watching import watch
from almanac.checks.each_practice import practices_at_levels
from almanac.checks.rule import Problem, refuses
from almanac.units import show_time


@refuses("coach-alone")
def coach_alone(analysis: Analysis) -> Iterator[Problem]:
    """A practice has as many adults as the policy asks for (``adults_least``), the lifeguard not
    counted. One with work under water, starts, cords or parts that run apart says how many it has;
    of any other that does not, the house rule stands in the brief.
    """
    least = int(analysis.catalogue.policy.limit("adults_least"))
    for practice, summary, level in practices_at_levels(analysis):
        if practice.adults is not None and practice.adults < least:
            text = f"{_adults(practice.adults)}, and {least} are the fewest"
            mend = "find another adult, or do not swim; local codes may ask for more"
            yield Problem(practice, ("adults",), text, mend, level=level)
        elif practice.adults is None and (what := _asks_for_eyes(analysis, summary)):
            text = f"it has {what}, and does not say how many adults are there"
            mend = f"write adults: {least}, or as many as there are"
            yield Problem(practice, ("squad",), text, mend, of_key=True, level=level)


def _adults(count: int) -> str:
    return "one adult is there" if count == 1 else f"{count} adults are there"


def _asks_for_eyes(analysis: Analysis, summary: PracticeSummary) -> str:
    """What in a practice makes the number of adults matter beyond the house rule."""
    catalogue = analysis.catalogue
    tying, push_off = ties(catalogue.gear), catalogue.policy.limit("push_off_most")
    for run in summary.runs:
        for swum in run.each:
            if any(counts(piece.drill, push_off) for piece in swum.pieces):
                return "work under water"
            if not tying.isdisjoint(swum.gear):
                return "cords"
    if any(True for _ in dry_starts_of(catalogue, summary)):
        return "starts"
    apart = any(part.apart or part.stations for part in summary.practice.parts)
    return "parts that run apart" if apart else ""


@refuses("water-temperature")
def water_temperature(analysis: Analysis) -> Iterator[Problem]:
    """The water of a practice is neither colder nor warmer than the limits of the squad's level
    (``water_c_least``, ``water_c_most``), nor than ``under_water_c_most`` where somebody works
    under water. There how warm it is has to be known (``water_c`` of the pool).
    """
    policy = analysis.catalogue.policy
    for practice, summary, level in practices_at_levels(analysis):
        water_c, own = summary.pool.water_c, policy.of_level(level)
        if water_c is None:
            if _goes_under(summary, policy.limit("push_off_most")):
                text = "somebody works under water, and how warm that is is not known"
                mend = "ask the pool's operator, and write water_c for the pool in the club's file"
                yield Problem(practice, ("pool",), text, mend, level=level)
            continue
        least, most = own.limit("water_c_least"), own.limit("water_c_most")
        under = policy.limit("under_water_c_most")
        has = f"the water has {water_c:g} °C"
        if water_c < least:
            text = f"{has}, and {level} swims in {least:g} or more"
        elif water_c > most:
            text = f"{has}, and {level} swims in {most:g} at most"
        elif water_c > under and _goes_under(summary, policy.limit("push_off_most")):
            text = f"{has}, and nobody works under water in more than {under:g}"
        else:
            continue
        mend = "choose another pool, or have the operator mend the water first"
        yield Problem(practice, ("pool",), text, mend, level=level)


def _goes_under(summary: PracticeSummary, push_off: float) -> bool:
    return any(
        counts(piece.drill, push_off)
        for run in summary.runs
        for swum in run.each
        for piece in swum.pieces
    )


@refuses("deep-unwatched")
def deep_unwatched(analysis: Analysis) -> Iterator[Problem]:
    """In a pool where not everybody can stand everywhere (deeper than ``standing_depth_most``) one
    adult has no more swimmers than the level of the squad allows (``deep_heads_each_adult_most``),
    and fewer where nobody can stand anywhere (``all_deep_heads_each_adult_most``).
    Where a practice does not say how many adults it has, they are the fewest that it may have.
    """
    for practice, summary, level in practices_at_levels(analysis):
        own = watch(analysis.catalogue.policy, level, summary.pool)
        most, fewest = own.each, own.fewest
        adults = fewest if practice.adults is None else practice.adults
        heads = sum(group.heads for group in summary.groups.values())
        if most and not summary.pool.is_land and heads > most * adults:
            has = (
                _adults(int(adults))
                if practice.adults is not None
                else f"{adults:g} adults are the fewest"
            )
            text = f"{heads} swim where they cannot stand, and {has}: {level} has {most:g} to each"
            mend = "find another adult, swim in two groups, or in a pool where all can stand"
            where = ("squad",) if practice.adults is None else ("adults",)
            yield Problem(practice, where, text, mend, level=level)


@refuses("talk-long")
def talk_long(analysis: Analysis) -> Iterator[Problem]:
    """Nobody stands wet and listens for longer than the level of the squad bears
    (``talk_minutes_most``) before one part of a practice, but before the first.
    """
    policy = analysis.catalogue.policy
    for practice, summary, level in practices_at_levels(analysis):
        most_s = 60 * policy.of_level(level).limit("talk_minutes_most")
        for path, doing in practice.doings:
            is_first = path == ("parts", 0)
            if not is_first and (doing.talk or 0) > most_s and summary.groups:
                text = f"a talk of {show_time(doing.talk or 0)}, and {level} is wet for it"
                mend = f"{show_time(most_s)} at most: the rest of it before anyone is in"
                yield Problem(practice, (*path, "talk"), text, mend, level=level)
