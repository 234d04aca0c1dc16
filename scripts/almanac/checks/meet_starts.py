"""The rule on starts at a meet: what the water there allows each squad that goes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.lap_ends import in_order, legs_begin
from almanac.arithmetic.pool_fit import Misplaced
from almanac.arithmetic.start_limits import (
    BACKWARDS,
    DIVE,
    Lack,
    Shortfall,
    start_limits,
    start_shortfall,
)
from almanac.checks.pool_words import hint, message
from almanac.checks.rule import Problem, refuses
from almanac.model.meet import STARTS, Event, Meet
from almanac.model.policy import Word
from almanac.model.pool import ENDS, START_END, Pool
from almanac.model.vocabularies import BACKSTROKE
from almanac.source.reader import DataPath

_BACK_START = Word("", "", enters=BACKWARDS)


@refuses("meet-starts")
def meet_starts(analysis: Analysis) -> Iterator[Problem]:
    """Nobody dives at a meet, in a race or to warm up, where the water is too shallow or the
    platform too high for the level of the squad, and backstroke is not raced without flags. Of a
    relay each leg leaves where the one before touches. A race that is started in the water is
    written ``from_water``. Where a depth is not known, the pool's shallowest water counts.
    """
    for meet in analysis.catalogue.meets.values():
        pool = analysis.catalogue.club.pools[meet.pool]
        lanes = tuple(range(1, pool.lanes + 1))
        for path, _, session in meet.sessions:
            for number, slot in enumerate(session.warm_up):
                if slot.use == STARTS:
                    where = (*path, "warm_up", number)
                    squads = meet.squads_of(slot)
                    yield from _unfit(
                        analysis, meet, where, "starts", DIVE, START_END, slot.lanes, squads, any
                    )
            for number, event in enumerate(session.events):
                where, squads = (*path, "events", number), meet.squads_of(event)
                if not event.from_water:
                    word, name = _start_of(event), f"event {event.number}"
                    for end in in_order(legs_begin(event.legs, event.distance, pool.course)):
                        yield from _unfit(
                            analysis, meet, where, name, word, end, lanes, squads, all
                        )
                for end in ENDS if _on_back(event) else ():
                    if not pool.has_flags(end):
                        lack = Misplaced(
                            where, "backstroke", False, end, lanes, Shortfall(Lack.NO_FLAGS)
                        )
                        yield _problem(analysis, meet, pool, lack, squads[0])


def _on_back(event: Event) -> bool:
    return event.medley or event.stroke == BACKSTROKE


def _start_of(event: Event) -> Word:
    """The start of a race: backwards on the back; of a team of all strokes most dive."""
    return _BACK_START if event.stroke == BACKSTROKE else DIVE


def _unfit(
    analysis: Analysis,
    meet: Meet,
    path: DataPath,
    what: str,
    word: Word,
    end: str,
    lanes: Sequence[int],
    squads: Sequence[str],
    is_lacking: Callable[[list[bool]], bool],
) -> Iterator[Problem]:
    """What a start lacks for a squad, the strictest of them first told: in ``any`` of the lanes
    that are named, or in ``all`` of the pool's.
    """
    catalogue = analysis.catalogue
    pool = catalogue.club.pools[meet.pool]
    for squad in squads:
        level = catalogue.club.squads[squad].level
        limits = start_limits(catalogue.policy, level, word, taught=False)
        known = [lane for lane in lanes if lane <= pool.lanes]
        found = {lane: start_shortfall(pool, end, lane, word, limits) for lane in known}
        lacking = tuple(lane for lane, own in found.items() if own)
        first = next((own for own in found.values() if own), None)
        if first and is_lacking([own is not None for own in found.values()]):
            lack = Misplaced(path, what, True, end, lacking, first)
            yield _problem(analysis, meet, pool, lack, squad)


def _problem(analysis: Analysis, meet: Meet, pool: Pool, found: Misplaced, squad: str) -> Problem:
    level = analysis.catalogue.club.squads[squad].level
    title = analysis.catalogue.club.squads[squad].title
    said = f"{message(analysis.catalogue, pool, found)}, for {title}"
    mend = hint(pool, found)
    return Problem(meet, found.path, said, mend, of_key=True, level=level)
