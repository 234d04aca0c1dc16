"""A block as it is asked for, made into wishes and slots; and what of it cannot be."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAY_NAMES, DAYS
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.planning.choices import DaySlot
from almanac.arithmetic.planning.wishes import Permille
from almanac.arithmetic.season_days import last_day
from almanac.model.catalogue import Catalogue
from almanac.model.meet import Meet
from almanac.report.planning.slots import (
    Left,
    Weekly,
    named_days,
    of_block,
    of_timetables,
    of_weeks,
    open_slots,
)
from almanac.source.suggest import absent
from almanac.units import show_number

_STROKES_MOST = 25  # four strokes share a hundred
WEEKS_MOST = 26


@dataclass(frozen=True)
class BlockRequest:
    """What is asked for, by ids. ``tests`` are by benchmark the weeks from 1, none for the usual;
    ``shares`` thousandths, ``loads`` hundredths of a full week, ``strokes`` hundredths. Goals that
    are not ``weighed`` are those of a block that says no more of them.
    """

    squad: str
    first: date
    weeks: int
    goals: Mapping[str, int]
    days: Sequence[str] = ()
    weekly: Sequence[Weekly] = ()
    like: str = ""
    loads: Sequence[int] = ()
    tests: Mapping[str, Sequence[int]] = field(default_factory=dict)
    meet: str = ""
    race: date | None = None
    taper: int | None = None
    shares: Mapping[str, Permille] = field(default_factory=dict)
    strokes: int = 0
    weighed: bool = True


def checked_request(analysis: Analysis, asked: BlockRequest) -> None:
    """Raises BadWish for the first thing that cannot be."""
    catalogue = analysis.catalogue
    if not 1 <= asked.weeks <= WEEKS_MOST:
        raise BadWish(f"{asked.weeks} weeks: from 1 to {WEEKS_MOST} can be planned")
    known(catalogue.club.squads, "squad", [asked.squad])
    known(catalogue.words("goals"), "goal", asked.goals)
    known(catalogue.benchmarks, "benchmark", asked.tests)
    known(catalogue.meets, "meet", [asked.meet] if asked.meet else [])
    known(catalogue.blocks, "block", [asked.like] if asked.like else [])
    known(dict.fromkeys(DAYS), "day", [*asked.days, *(own.day for own in asked.weekly)])
    known(catalogue.club.pools, "pool", [own.pool for own in asked.weekly])
    if asked.first.weekday():
        monday = asked.first - timedelta(days=asked.first.weekday())
        name = DAY_NAMES[asked.first.weekday()]
        raise BadWish(f"{asked.first} is a {name}; a block begins on a Monday, say {monday}")
    if not asked.goals or min(asked.goals.values()) < 1:
        raise BadWish("name one goal or more, each with a weight of 1 or more")
    _checked_numbers(asked)
    if asked.meet and asked.squad not in catalogue.meets[asked.meet].squads:
        raise BadWish(f"{asked.squad} does not go to '{asked.meet}'")
    race = race_of(catalogue, asked)
    if race and not asked.first <= race <= last_of(asked):
        raise BadWish(f"the race is on {race}, the block from {asked.first} to {last_of(asked)}")


def _checked_numbers(asked: BlockRequest) -> None:
    for benchmark, weeks in asked.tests.items():
        for week in weeks:
            if not 1 <= week <= asked.weeks:
                raise BadWish(
                    f"{benchmark} in week {week}: tests are run in weeks 1 to {asked.weeks}"
                )
        if len(set(weeks)) < len(weeks):
            raise BadWish("a test is run once in a week: name each week once")
    if asked.loads and len(asked.loads) != asked.weeks:
        loads = "1 load is" if len(asked.loads) == 1 else f"{len(asked.loads)} loads are"
        raise BadWish(f"{loads} named for {asked.weeks} weeks")
    if not 0 <= asked.strokes <= _STROKES_MOST:
        raise BadWish(
            f"{asked.strokes} hundredths of each of four strokes: 0 to {_STROKES_MOST} can be"
        )
    if asked.taper is not None and not 0 <= asked.taper < asked.weeks:
        taper = "1 week" if asked.taper == 1 else f"{asked.taper} weeks"
        raise BadWish(f"{taper} of taper: from 0 to {asked.weeks - 1} can be before a race")


def not_over(catalogue: Catalogue, asked: BlockRequest) -> None:
    """Raises BadWish where the squad has a block then."""
    for block in catalogue.blocks.values():
        ends = last_day(block)
        if block.squad == asked.squad and block.starts <= last_of(asked) and asked.first <= ends:
            raise BadWish(
                f"'{block.id}' is a block of {asked.squad} from {block.starts} to {ends}: begin on "
                f"{ends + timedelta(days=1)} or later, or fill its empty days with --fill"
            )


def known(
    there: Mapping[str, object], what: str, ids: Sequence[str] | Mapping[str, object]
) -> None:
    """Raises BadWish for an id that is not there."""
    for id in ids:
        if id not in there:
            raise BadWish(absent(what, id, there))


def last_of(asked: BlockRequest) -> date:
    """The last day of the block that is asked for."""
    return asked.first + timedelta(days=7 * asked.weeks - 1)


def meet_of(catalogue: Catalogue, asked: BlockRequest) -> Meet | None:
    """The meet that it leads to."""
    return catalogue.meets[asked.meet] if asked.meet else None


def race_of(catalogue: Catalogue, asked: BlockRequest) -> date | None:
    """The day of the race: the one that is named, else the meet's first."""
    meet = meet_of(catalogue, asked)
    return asked.race or (meet.first if meet else None)


def slots_for(
    analysis: Analysis,
    asked: BlockRequest,
    taken: Sequence[DaySlot] = (),
    named: Collection[date] = (),
) -> tuple[list[DaySlot], list[Left]]:
    """The slots of the block, and those that are left out; none on a day that is ``named``, of
    which ``taken`` are those that hold a practice. Raises BadWish where there are none, or more
    than the squad may have.
    """
    catalogue = analysis.catalogue
    weekly = list(asked.weekly)
    if asked.like and not weekly:
        weekly = of_block(catalogue, catalogue.blocks[asked.like])
    if weekly:
        slots = of_weeks(catalogue, weekly, asked.first, asked.weeks)
    else:
        slots = of_timetables(catalogue, asked.squad, asked.first, asked.weeks)
    if asked.days:
        slots = named_days(slots, asked.days)
    slots, left = open_slots(catalogue, asked.squad, slots)
    if not slots:
        why = f": {left[0].why}" if left else ""
        days = f" on {', '.join(asked.days)}" if asked.days else ""
        raise BadWish(
            f"{asked.squad} has no slot{days} from {asked.first} to {last_of(asked)}{why}; name it "
            "with --slot, or a block that has them with --like, or write a timetable"
        )
    slots = [slot for slot in slots if slot.on not in named]
    left = [own for own in left if own.slot.on not in named]
    _not_too_many(analysis, asked, [*slots, *taken])
    return slots, left


def race_days(catalogue: Catalogue, asked: BlockRequest) -> list[date]:
    """The days of the meet that it leads to, else that of the race."""
    meet, race = meet_of(catalogue, asked), race_of(catalogue, asked)
    return [day.on for day in meet.days] if meet else [race] if race else []


def _not_too_many(analysis: Analysis, asked: BlockRequest, slots: Sequence[DaySlot]) -> None:
    catalogue, squad = analysis.catalogue, asked.squad
    busy = {*race_days(catalogue, asked), *(slot.on for slot in slots)}
    most = catalogue.club.squads[squad].sessions_a_week + 1
    off = catalogue.policy.limit("days_off")
    for slot in slots:
        ends = slot.on + timedelta(days=7)
        inside = [own.on for own in slots if slot.on <= own.on < ends]
        if len(inside) > most:
            raise BadWish(
                f"{len(inside)} slots in the seven days from {slot.on}, and {squad} has {most - 1} "
                "practices a week (plans/club.yml): name fewer days with --days"
            )
        if 7 - sum(slot.on <= on < ends for on in busy) < off:
            raise BadWish(
                f"no day off in the seven days from {slot.on}, and the policy asks for "
                f"{show_number(off)}: name fewer days with --days"
            )
