"""What is wished of a block, and the limits that it keeps to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

LIGHT_LOAD = 80
"""A week of no more than this, in hundredths of a full one, is to be light: the fourth of four."""
LOADING, RECOVERY, TESTING, TAPER = "loading", "recovery", "test", "taper"
SHARES = ("kick_share", "supine_share", "resisted_share", "fast_share", "dolphin_share")
Permille = tuple[int, int]  # the least and the most of a share

_CYCLE = (85, 95, 100, 80)
_TAPERED = {1: (55,), 2: (65, 45), 3: (80, 60, 45)}


@dataclass(frozen=True)
class WeekWish:
    """A week: what it is for, its ``load`` in hundredths of a full week, what is tested, and what
    work that is no practice and no race weighs in it already.
    """

    kind: str
    load: int
    benchmarks: tuple[str, ...] = ()
    beside: int = 0


@dataclass(frozen=True)
class TaperWish:
    """From which to which day it is tapered."""

    first: date
    last: date

    @property
    def days(self) -> int:
        """How many days it has."""
        return (self.last - self.first).days + 1


@dataclass(frozen=True)
class BlockWishes:
    """What is wished. ``goals`` have weights; ``shares`` are of the words of ``SHARES``;
    ``strokes`` is the least that each stroke has of any two weeks, ``four`` which strokes these
    are; ``races`` are by day the load of a race day.
    """

    first: date
    goals: Mapping[str, int]
    weeks: tuple[WeekWish, ...]
    shares: Mapping[str, Permille] = field(default_factory=dict)
    strokes: int = 0
    four: tuple[str, ...] = ()
    taper: TaperWish | None = None
    race: date | None = None
    races: Mapping[date, int] = field(default_factory=dict)

    def week_of(self, on: date) -> int:
        """Which week a day lies in, from 0."""
        return (on - self.first).days // 7

    def is_tapered(self, on: date) -> bool:
        """Whether a day lies in a taper."""
        return self.taper is not None and self.taper.first <= on <= self.taper.last

    def is_light(self, on: date) -> bool:
        """Whether a day lies in a taper, or in a week that is to be light."""
        week = self.week_of(on)
        light = 0 <= week < len(self.weeks) and self.weeks[week].load <= LIGHT_LOAD
        return light or self.is_tapered(on)

    def is_loading(self, week: int) -> bool:
        """Whether a week is one that a taper is held against."""
        last = self.first + timedelta(days=7 * week + 6)
        before = self.taper is None or last < self.taper.first
        return self.weeks[week].kind == LOADING and before


@dataclass(frozen=True)
class BlockLimits:
    """What the policy says at the squad's level: metres of a day and of seven days, sets of seven
    days, days. ``cut`` is how far a taper cuts distance, in thousandths, or None where it is
    ``light_days``. ``first_load`` is what the first week may weigh after the block before it.
    """

    worn_day: int
    worn_seven: int
    plates_day: int
    under_day: int
    under_sets_seven: int
    hard_in_a_row: int
    resisted_before_race: int
    return_days: int
    supine: int
    cut: Permille | None = None
    light_days: tuple[int, int] | None = None
    first_load: int | None = None


def usual_loads(weeks: int, tapered: int) -> Sequence[int]:
    """Loads of the weeks of a block in hundredths of a full one: three that rise and a lighter one,
    over and over, and a taper of one to three weeks at its end. Common practice; the figures are
    house preference.
    """
    tail = _TAPERED.get(min(tapered, weeks, max(_TAPERED)), ())
    loads = [_CYCLE[number % len(_CYCLE)] for number in range(weeks - len(tail))]
    full = 2 if len(loads) >= len(_CYCLE) else 1  # a taper comes after work
    for number in range(len(loads))[-full:] if tail else ():
        loads[number] = 100
    return (*loads, *tail)
