"""What is wished of a block, with what is usual in place of what is not said."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_wishes import races_in
from almanac.arithmetic.known_tests import repeat_weeks
from almanac.arithmetic.planning.choices import DaySlot
from almanac.arithmetic.planning.wishes import (
    LOADING,
    RECOVERY,
    TAPER,
    TESTING,
    BlockWishes,
    TaperWish,
    WeekWish,
    usual_loads,
)
from almanac.arithmetic.training_load import session_load
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.report.planning.request import BlockRequest, race_days, race_of

RACE_MINUTES, RACE_RATING = 45, 6
"""What a day of a meet weighs: a guess beforehand, house preference."""
_OF_KIND = {LOADING: 95, RECOVERY: 75, TESTING: 85, TAPER: 50}  # hundredths of a full week
_LIGHT, _AFTER = 60, 60  # hundredths of a full week: a week of light days, a week after the race
_LOADING_FROM = 85  # hundredths of a full week from which on a week is a loading one
_LONG, _TAPER_LONG, _TAPER_SHORT = 6, 2, 1  # from so many weeks on a taper has two


def wishes_for(analysis: Analysis, asked: BlockRequest) -> BlockWishes:
    """What is wished, with what is usual in place of what is not said."""
    catalogue = analysis.catalogue
    race, light = race_of(catalogue, asked), _light_days(analysis, asked.squad)
    taper = _taper(asked, race, light)
    tests = _tests(catalogue, asked, race)
    loads = asked.loads or _loads(asked, race, taper, by_weeks=light is None)
    weeks = tuple(
        WeekWish(
            _kind(asked, number, load, taper if light is None else None, bool(tests.get(number))),
            load,
            tuple(tests.get(number, ())),
        )
        for number, load in enumerate(loads)
    )
    weighs = int(session_load(RACE_RATING, RACE_MINUTES))
    return BlockWishes(
        asked.first,
        asked.goals,
        weeks,
        asked.shares,
        10 * asked.strokes,
        tuple(id for id, word in catalogue.words("strokes").items() if word.medley is not None),
        taper,
        race,
        dict.fromkeys(race_days(catalogue, asked), weighs),
    )


def with_holidays(wishes: BlockWishes, slots: Sequence[DaySlot]) -> BlockWishes:
    """The wishes, where no week counts as loading that has less than half the slots of others: a
    taper is held against work, and not against a holiday.
    """
    count = [sum(slot.week == number for slot in slots) for number in range(len(wishes.weeks))]
    most = max(count, default=0)
    return replace(
        wishes,
        weeks=tuple(
            replace(week, kind=RECOVERY) if week.kind == LOADING and 2 * own < most else week
            for week, own in zip(wishes.weeks, count, strict=True)
        ),
    )


def wishes_of_begun(analysis: Analysis, asked: BlockRequest, block: Block) -> BlockWishes:
    """What is wished of a block that is there: its weeks are of the kinds that it says, and its
    taper runs as it says.
    """
    wishes, beside = wishes_for(analysis, asked), _beside(analysis, block)
    kinds = [TAPER if week.is_taper else week.kind for week in block.weeks]
    weeks = tuple(
        replace(
            wish,
            kind=kind,
            load=wish.load if asked.loads else _OF_KIND.get(kind, wish.load),
            beside=other,
        )
        for wish, kind, other in zip(wishes.weeks, kinds, beside, strict=True)
    )
    tapered = [number for number, week in enumerate(block.weeks) if week.is_taper]
    taper = None
    if block.taper:
        taper = TaperWish(block.taper.first, block.taper.last)
    elif tapered:
        first, last = tapered[0], tapered[-1]
        taper = TaperWish(
            block.starts + timedelta(weeks=first), block.starts + timedelta(days=7 * last + 6)
        )
    return replace(wishes, weeks=weeks, taper=taper)


def _beside(analysis: Analysis, block: Block) -> list[int]:
    """By week of a block what its sessions weigh that are no practices, but for its races."""
    groups = analysis.blocks.get(block.id)
    if not groups:
        return [0] * len(block.weeks)
    summary = next(iter(groups.values()))
    found = []
    for week in summary.weeks:
        races = {day.on for day in races_in(summary, week)}
        sessions = [own for day in week.days if day.on not in races for own in day.sessions]
        found.append(round(sum(own.planned or 0 for own in sessions if own.practice is None)))
    return found


def _light_days(analysis: Analysis, squad: str) -> int | None:
    policy = analysis.catalogue.policy
    light = policy.of_level(analysis.catalogue.club.squads[squad].level).light_days
    return light.most if light else None


def _taper(asked: BlockRequest, race: date | None, light: int | None) -> TaperWish | None:
    """Before a race: weeks that end with the race's own, or so many light days before it."""
    if race is None or asked.taper == 0:
        return None
    if light is not None:
        last = race - timedelta(days=1)
        first = max(asked.first, race - timedelta(days=light))
        return TaperWish(first, last) if first <= last else None
    weeks = asked.taper or (_TAPER_LONG if asked.weeks >= _LONG else _TAPER_SHORT)
    monday = race - timedelta(days=race.weekday())
    first = max(asked.first, monday - timedelta(weeks=weeks - 1))
    return TaperWish(first, monday + timedelta(days=6))


def _loads(
    asked: BlockRequest, race: date | None, taper: TaperWish | None, by_weeks: bool
) -> Sequence[int]:
    if race is None:
        return usual_loads(asked.weeks, 0)
    until = (race - asked.first).days // 7 + 1
    tapered = taper.days // 7 if taper and by_weeks else 0
    loads = [*usual_loads(until, tapered)]
    if taper and not by_weeks:
        loads[-1] = _LIGHT
    return (*loads, *[_AFTER] * (asked.weeks - until))


def _kind(
    asked: BlockRequest, number: int, load: int, taper: TaperWish | None, tested: bool
) -> str:
    monday = asked.first + timedelta(weeks=number)
    if taper and taper.first <= monday <= taper.last:
        return TAPER
    if tested:
        return TESTING
    return LOADING if load >= _LOADING_FROM else RECOVERY


def _tests(
    catalogue: Catalogue, asked: BlockRequest, race: date | None
) -> Mapping[int, Sequence[str]]:
    """By week from 0 what is tested: in the weeks that are named, else evenly from the first to the
    last, or to the one before the race, as often as the benchmark asks.
    """
    last = (race - asked.first).days // 7 if race else asked.weeks
    found: dict[int, list[str]] = {}
    for benchmark, weeks in asked.tests.items():
        every = repeat_weeks(catalogue.benchmarks[benchmark])
        count = max(1, -(-(last - 1) // every))
        evenly = sorted({1 + step * (max(1, last) - 1) // count for step in range(count + 1)})
        for week in weeks or evenly:
            found.setdefault(week - 1, []).append(benchmark)
    return found
