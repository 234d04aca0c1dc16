"""The day of a practice that is composed, and what was done before it."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.table import ComposeTable
from almanac.commands.outcome import UsageError
from almanac.model.log import Log

_LATELY = 28  # days of a block that are told
_A_YEAR = 366  # days


def within_sight(analysis: Analysis, until: date, day: date) -> None:
    """Raises UsageError for the day of a practice that no season holds and that is not within a
    year: a slip of the hand.
    """
    seasons = analysis.catalogue.seasons.values()
    if any(own.first <= until <= own.last for own in seasons):
        return
    if abs((until - day).days) > _A_YEAR:
        held = ", ".join(f"{own.id} from {own.first} to {own.last}" for own in seasons)
        raise UsageError(
            f"--until {until}: that is more than a year from {day}"
            + (f", and in no season: there is {held}" if held else "")
            + "; write the day of the practice"
        )


def of_block(table: ComposeTable, id: str, day: date) -> list[tuple[str, int]]:
    """The practices that a block had in the four weeks before a day, with the days since."""
    block = next(own for own in table.blocks if own.id == id)
    starts = date.fromisoformat(block.starts)
    last = starts + timedelta(max((after for after, _ in block.days), default=0))
    if not starts <= day <= last + timedelta(_LATELY):
        raise UsageError(
            f"{day} is no day by which '{id}' has had anything done lately: it runs from {starts} "
            f"to {last}; --until says the day of the practice, up to {last + timedelta(_LATELY)}"
        )
    since = [((day - starts - timedelta(after)).days, place) for after, place in block.days]
    return [(table.practices[place].id, days) for days, place in since if 0 < days <= _LATELY]


def kept_days(table: ComposeTable, logs: Iterable[Log], day: date) -> list[tuple[str, int]]:
    """The squad's practices that were kept as done in the four weeks before a day, with the days
    since.
    """
    own = {practice.id for practice in table.practices}
    since = [((day - log.on).days, log.practice) for log in logs]
    return [(id, days) for days, id in since if id in own and 0 < days <= _LATELY]
