"""Pool time each week as an argument is given it: mon=17:30+75@home."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from almanac.commands.named import day_named, entries
from almanac.commands.outcome import UsageError
from almanac.model.pool import Pool
from almanac.report.planning.slots import Weekly
from almanac.rounding import seconds_of_day

_DAY = 24 * 3600  # seconds
_LONGEST = 240  # minutes of a slot
_SLOT = re.compile(
    r"(?P<day>[^=]*)=(?P<begins>([01]\d|2[0-3]):[0-5]\d)\+(?P<long>\d{1,3})(@(?P<pool>.*))?",
    re.ASCII,
)


def weekly(pools: Mapping[str, Pool], given: Sequence[str]) -> list[Weekly]:
    """The slots as they are given. Raises UsageError for what is none, and two that overlap."""
    slots = [_one(pools, text) for text in given]
    ordered = sorted(slots, key=lambda own: (own.day, own.begins))
    for one, other in pairwise(ordered):
        ends = seconds_of_day(one.begins) + 60 * one.minutes
        if one.day == other.day and seconds_of_day(other.begins) < ends:
            raise UsageError(
                f"--slot: two overlap on {one.day}, from {one.begins} and from {other.begins}: a "
                "squad is in one place at a time"
            )
    return slots


def _one(pools: Mapping[str, Pool], text: str) -> Weekly:
    """A slot as it is given: mon=17:30+75, with @POOL where the club has several."""
    found = _SLOT.fullmatch(text)
    if not found or not 0 < int(found["long"]) <= _LONGEST:
        raise UsageError(
            f"--slot {text}: write DAY=HH:MM+MINUTES@POOL, of 1 to {_LONGEST} minutes, say "
            "mon=17:30+75@home"
        )
    begins, minutes = found["begins"], int(found["long"])
    pool = entries("pool", pools).id_of(found["pool"]) if found["pool"] else next(iter(pools))
    if seconds_of_day(begins) + 60 * minutes > _DAY:
        raise UsageError(f"--slot {text}: it ends after midnight, and a slot lies in one day")
    return Weekly(day_named(found["day"]), pool, begins, minutes)
