"""Rules on a block and the meet that it leads to."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.checks.rule import Problem, forbids, warns
from almanac.checks.squad_days import groups_of, path_of_day
from almanac.model.block import Block
from almanac.model.meet import Meet
from almanac.units import show_number


@forbids("meet-of-block")
def meet_of_block(analysis: Analysis) -> Iterator[Problem]:
    """The meet that a block leads to is one that its squad goes to; its ``race_day`` is a day of
    that meet; and no day of the meet is planned as rest or as a practice and nothing else.
    """
    for block, meet in _leading(analysis):
        days = {day.on for day in meet.days}
        if block.squad not in meet.squads:
            said = f"{block.squad} does not go to '{meet.id}'"
            mend = "name another meet, or add the squad to those of the meet"
            yield Problem(block, ("meet",), said, mend)
        if block.race_day is None:
            said = f"it leads to '{meet.id}', and no race_day says on which day"
            mend = f"write race_day: {meet.last}, or another day of the meet"
            yield Problem(block, ("meet",), said, mend)
        elif block.race_day not in days:
            said = f"'{meet.id}' is swum on {', '.join(map(str, sorted(days)))}"
            yield Problem(block, ("race_day",), said, "write one of its days")
    for block, groups in groups_of(analysis):
        named = analysis.catalogue.meets[block.meet] if block.meet else None
        for day in groups[0].days if named else ():
            if named and day.day and any(own.on == day.on for own in named.days):
                races = any(own.session.other for own in day.sessions)
                if not races:
                    said = f"'{named.id}' is swum on {day.on}, and the day does not hold it"
                    mend = "write other: the meet, with the minutes in the water and a rating"
                    yield Problem(block, path_of_day(block, day), said, mend, of_key=True)


def _leading(analysis: Analysis) -> Iterator[tuple[Block, Meet]]:
    for block in analysis.catalogue.blocks.values():
        if block.meet:
            yield block, analysis.catalogue.meets[block.meet]


@warns("course-before-meet")
def course_before_meet(analysis: Analysis) -> Iterator[Problem]:
    """Before a meet in another course than the squad trains in, a block has at least one practice
    in that course, in the last ``meet_course_days`` days: walls come at other times, and the count
    from the flags is another.
    """
    pools = analysis.catalogue.club.pools
    within = analysis.catalogue.policy.limit("meet_course_days")
    for block, meet in _leading(analysis):
        course, race = pools[meet.pool].course, block.race_day or meet.first
        swum = [
            pools[analysis.catalogue.practices[id].pool].course
            for on, id in _practices(block)
            if 0 < (race - on).days <= within
        ]
        if swum and course not in swum:
            said = f"'{meet.id}' is swum in {course}, and no practice in the"
            mend = f"put one in a {course} pool before it, or give the squad a long warm-up there"
            message = f"{said} {show_number(within)} days before it is"
            yield Problem(block, ("meet",), message, mend)


def _practices(block: Block) -> Iterator[tuple[date, str]]:
    """Each practice of a block with its day."""
    for number, week in enumerate(block.weeks):
        for name, day in week.days.items():
            on = block.starts + timedelta(days=DAYS_A_WEEK * number + DAYS.index(name))
            yield from ((on, id) for id in day.practices)
