"""The rule on lanes that two practices have at one hour, by the days of the blocks."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from itertools import combinations

from almanac.analysis.analysis import Analysis
from almanac.analysis.pool_starts import crews_in_water
from almanac.arithmetic.block_days import DayPlan
from almanac.arithmetic.practice import PracticeSummary
from almanac.checks.pool_words import lane_words
from almanac.checks.rule import Problem, forbids
from almanac.checks.squad_days import groups_of, path_of_day
from almanac.model.block import Block, Session


@dataclass(frozen=True)
class _Booking:
    """The lanes of a practice on a day of a block, by number with who has them; from one second of
    the day to another.
    """

    block: Block
    day: DayPlan
    title: str
    squad: str
    starts_s: int
    ends_s: int
    lanes: Mapping[int, str]


@forbids("lanes-double-booked")
def lanes_double_booked(analysis: Analysis) -> Iterator[Problem]:
    """No two practices of a day have the same lane of a pool at one hour, whichever squads and
    blocks they are of: as their slots and ``lanes`` say. A practice that names no lanes has the
    first ones of its pool.
    """
    for bookings in _by_pool_and_day(analysis).values():
        told = set[tuple[str, str]]()
        for one, other in combinations(bookings, 2):
            both = sorted(one.lanes.keys() & other.lanes.keys())
            key = one.title, other.title
            is_at_once = one.starts_s < other.ends_s and other.starts_s < one.ends_s
            if both and is_at_once and key not in told and not _is_clash(one, other, both):
                told.add(key)
                message = f"'{one.title}' and '{other.title}' both have {lane_words(tuple(both))}"
                hint = "give one of them another start, or write the lanes of each under `lanes`"
                path = path_of_day(other.block, other.day)
                yield Problem(other.block, path, f"{message} at one hour", hint, of_key=True)


def _is_clash(one: _Booking, other: _Booking, both: list[int]) -> bool:
    """Whether it is a lane group in two places at once, which ``sessions-clash`` tells."""
    return one.squad == other.squad and all(one.lanes[lane] == other.lanes[lane] for lane in both)


def _by_pool_and_day(analysis: Analysis) -> dict[tuple[str, date], list[_Booking]]:
    found = defaultdict[tuple[str, date], dict[object, _Booking]](dict)
    lanes = dict[tuple[str, tuple[str, ...]], Mapping[int, str]]()
    for block, groups in groups_of(analysis):
        for own in groups:
            for day in own.days:
                for session in day.sessions:
                    if session.practice is None or session.booked_s is None:
                        continue
                    practice = session.practice.practice
                    key = practice.id, session.session.groups
                    if key not in lanes:
                        lanes[key] = lanes_of(session.practice, session.session)
                    booking = _Booking(
                        block, day, practice.title, block.squad,
                        *session.booked_s, lanes[key],
                    )  # fmt: skip
                    # a session that two blocks name is one session
                    found[practice.pool, day.on].setdefault((*key, session.start), booking)
    return {key: [*own.values()] for key, own in found.items() if len(own) > 1}


def lanes_of(summary: PracticeSummary, session: Session) -> Mapping[int, str]:
    """By number each lane that a practice has, with the lane group that has it first."""
    return {
        lane: crew.group
        for _, crew in reversed([*crews_in_water(summary)])
        for lane in crew.lanes
        if session.is_for(crew.group)
    }
