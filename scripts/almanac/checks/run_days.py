"""What runs of practices and sets offer, lane group by lane group and part by part."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.events import Event
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_crews import RunCrew, run_crews
from almanac.arithmetic.run_sheet import SheetRow
from almanac.arithmetic.scaling import ROUNDS, scalable_of
from almanac.arithmetic.summary import SetSummary
from almanac.checks.run_offers import CrewOffer, PartOffers, rounds_of
from almanac.checks.run_room import Place, Tally
from almanac.checks.run_rules import DayOfCrew, PartOfDay
from almanac.checks.ways import group_level
from almanac.model.swim_set import Item
from almanac.model.variants import given_items


@dataclass(frozen=True)
class RunOffers:
    """What each crew may change, by the number of the part and its key; and the numbers of the
    parts that may be skipped for all.
    """

    crews: Mapping[tuple[int, str], CrewOffer]
    skips: frozenset[int] = frozenset()


def practice_offers(analysis: Analysis, summary: PracticeSummary) -> RunOffers:
    """What a run of a practice offers. A part is skipped only where all are in it together, and
    never the last; the others are met only where they do something after it.
    """
    crews = run_crews(summary)
    level = analysis.catalogue.club.squads[summary.practice.squad].level
    days = [_day(analysis, level, crew) for crew in crews]
    last = max((id(row.stage) for row in summary.sheet[-1:]), default=0)
    found: dict[tuple[int, str], CrewOffer] = {}
    most = analysis.catalogue.policy.limit("most_reps")
    items = map(_items, summary.sheet)
    written = [(own, scalable_of(own, ROUNDS, most)) for own in items]
    barred = {
        number
        for number, row in enumerate(summary.sheet)
        if not row.is_for_all or id(row.stage) == last
    }
    for crew, day in zip(crews, days, strict=True):
        stages = [id(row.stage) for _, row, _ in crew.rows]
        granted, own_offers = dict[int, Tally](), dict[int, CrewOffer]()
        for place, (number, *_) in enumerate(crew.rows):
            rest = tuple(n for n in range(place, len(stages)) if stages[n] == stages[place])
            own = PartOffers(day, place, *written[number], rest, granted)
            offer = own.offer()
            if more := _more(day, place, offer):
                granted = {**granted, place: day.room.counted(place, more)}
            own_offers[place] = replace(offer, meet=offer.meet and stages[place] != last)
            if number not in barred and not own.may_skip():
                barred.add(number)
        for place, offer in _with_again(own_offers, day.room.agains(granted)).items():
            found[crew.rows[place][0], crew.key] = offer
    return RunOffers(found, frozenset(range(len(summary.sheet))) - barred)


def set_offers(analysis: Analysis, summary: SetSummary, groups: Iterable[str]) -> RunOffers:
    """What a run of a set alone offers each lane group, in the level of its squad."""
    found: dict[tuple[int, str], CrewOffer] = {}
    known: dict[tuple[int, str], CrewOffer] = {}
    items = summary.swim_set.items
    scale = scalable_of(items, ROUNDS, analysis.catalogue.policy.limit("most_reps"))
    for group in groups:
        swum, level = summary.of(group), group_level(analysis.catalogue, group)
        day = DayOfCrew(analysis, level, (PartOfDay(swum, summary.clocks[group]),))
        like = id(swum), level
        if like not in known or day.has_dives:
            offer = PartOffers(day, 0, items, scale, (0,)).offer()
            granted = {0: day.room.counted(0, _more(day, 0, offer))}
            offers = {0: replace(offer, meet=False)}
            known[like] = _with_again(offers, day.room.agains(granted))[0]
        found[0, group] = known[like]
    return RunOffers(found)


def _with_again(
    offers: Mapping[int, CrewOffer], often: Mapping[Place, int]
) -> dict[int, CrewOffer]:
    """The offers of a day's parts with how often a rep of an item may be swum again."""
    found = dict(offers)
    for (number, path), times in often.items():
        own = found[number]
        reps = {**own.reps, path: replace(own.reps[path], again=times)}
        found[number] = replace(own, reps=reps)
    return found


def _more(day: DayOfCrew, place: int, offer: CrewOffer) -> tuple[Event, ...]:
    """What a part may be asked for beyond what is planned."""
    swum = day.parts[place].swum
    return tuple(
        event
        for path, own in offer.rounds.items()
        if own.copies
        for rounds in (rounds_of(swum.events, path),)
        for event in rounds[own.copies] * (own.most - len(rounds))
    )


def _day(analysis: Analysis, level: str, crew: RunCrew) -> DayOfCrew:
    parts = [
        PartOfDay(
            row.run.of(cell.group),
            row.run.clocks[cell.group],
            row.talk_s + row.change_s + row.gear_s,
        )
        for _, row, cell in crew.rows
    ]
    return DayOfCrew(analysis, level, tuple(parts))


def _items(row: SheetRow) -> tuple[Item, ...]:
    run = row.run
    return run.swim_set.items if run.swim_set else given_items(run.doing.items, run.doing.variants)
