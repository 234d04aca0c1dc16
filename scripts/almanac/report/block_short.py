"""What is told of the slots of a planned block: practices that leave much of theirs, and days of
the week that were wished and have none.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.block_days import DAY_NAMES, DAYS
from almanac.arithmetic.planning_choices import Choice, DaySlot
from almanac.report.block_judged import JudgedBlock
from almanac.report.planning_request import BlockRequest, last_of

_MUCH = 15  # minutes of a slot that are left and asked about
_LIGHT = 85  # hundredths of a full week, as weeks with a test weigh: with more, no practice is cut


def short_words(judged: JudgedBlock, placed: Sequence[tuple[DaySlot, Choice]]) -> Iterator[str]:
    """Of each week the practices that are much shorter than their slots, and why."""
    for week in judged.weeks:
        own = [
            (slot, choice)
            for slot, choice in placed
            if slot.week == week.number - 1 and slot.minutes - choice.minutes >= _MUCH
        ]
        if not own:
            continue
        each = "; ".join(
            f"{DAYS[slot.on.weekday()]} {choice.minutes} of {slot.minutes} minutes"
            for slot, choice in own
        )
        why = "nothing longer suits what is wished as well"
        if week.wished is not None and week.wished <= _LIGHT:
            kind = "" if week.kind == "loading" else f", a {week.kind} week,"
            why = f"the week{kind} is to weigh {week.wished} % of a full one"
        yield f"shorter than the slot in week {week.number}: {each}, as {why}"


def no_slot_words(asked: BlockRequest, slots: Sequence[DaySlot]) -> Iterator[str]:
    """The days of the week that were wished and have no slot in any week of the block."""
    last = last_of(asked)
    has = {DAYS[slot.on.weekday()] for slot in slots if asked.first <= slot.on <= last}
    for day in dict.fromkeys(asked.days):
        if day not in has:
            name = DAY_NAMES[DAYS.index(day)]
            yield (
                f"no slot on a {name} from {asked.first} to {last}: name one with "
                f"--slot {day}=17:30+60, or leave {day} out of --days"
            )
