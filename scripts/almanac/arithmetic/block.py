"""A block added up: distance and load by day and week, for one lane group, and how they move."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction
from statistics import fmean

from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.training_load import Deviation, WeekLoad, session_load, week_load
from almanac.model.plans import Block, Day, Week

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


@dataclass(frozen=True)
class Balance:
    """Distance in metres: the whole, by facet, and what coaches ask for of it."""

    metres: float
    by: Mapping[str, Mapping[str, float]]
    kick_m: float
    flutter_kick_m: float
    supine_flutter_m: float
    resisted_m: float
    fast_m: float
    kick_into_stroke_m: float

    @property
    def kick_share(self) -> float | None:
        """Kick as a share of the whole, None where nothing is swum."""
        return _share(self.kick_m, self.metres)

    @property
    def supine_share(self) -> float | None:
        """Flutter on the back as a share of all flutter done legs only."""
        return _share(self.supine_flutter_m, self.flutter_kick_m)

    @property
    def resisted_share(self) -> float | None:
        """Resisted distance as a share of the whole."""
        return _share(self.resisted_m, self.metres)

    @property
    def fast_share(self) -> float | None:
        """Distance at efforts that count as fast as a share of the whole."""
        return _share(self.fast_m, self.metres)


def _share(part: float, whole: float) -> float | None:
    return part / whole if whole else None


@dataclass(frozen=True)
class DayPlan:
    """One day of a block: what it holds, and its load; None for a day that is missing, or whose
    load is not known.

    ``metres`` is the distance swum.
    """

    name: str
    on: date
    day: Day | None
    practice: PracticeSummary | None
    load: float | None
    metres: float
    balance: Balance

    @property
    def is_off(self) -> bool:
        """Whether the day is named as rest."""
        return self.day is not None and self.day.rest


@dataclass(frozen=True)
class WeekPlan:
    """One week of a block for one lane group. ``load`` is None where no day of it is known."""

    number: int
    week: Week
    days: tuple[DayPlan, ...]
    balance: Balance
    load: WeekLoad | None

    @property
    def days_off(self) -> int:
        """Days named as rest."""
        return sum(day.is_off for day in self.days)


@dataclass(frozen=True)
class Taper:
    """How far the taper's weeks cut the distance of the weeks before them: a share, 0.5 is half."""

    weeks: tuple[int, ...]
    before_m: float
    cut: float


@dataclass(frozen=True)
class BlockSummary:
    """A block added up for one lane group."""

    block: Block
    group: str
    weeks: tuple[WeekPlan, ...]
    balance: Balance
    taper: Taper | None


def summarise_block(
    block: Block,
    practices: Mapping[str, PracticeSummary],
    group: str,
    convention: Deviation = Deviation.SAMPLE,
) -> BlockSummary:
    """Add a block up from the summaries of its practices. Raises KeyError for a practice without
    one.
    """
    weeks: list[WeekPlan] = []
    for number, week in enumerate(block.weeks):
        monday = block.starts + timedelta(weeks=number)
        days = tuple(_days(week, monday, practices, group))
        balance = _balance([day.practice for day in days if day.practice])
        loads = [day.load for day in days]
        load = week_load(loads, convention) if any(load is not None for load in loads) else None
        weeks.append(WeekPlan(number + 1, week, days, balance, load))
    everything = [day.practice for week in weeks for day in week.days if day.practice]
    return BlockSummary(block, group, tuple(weeks), _balance(everything), taper(weeks))


def _days(
    week: Week, monday: date, practices: Mapping[str, PracticeSummary], group: str
) -> Iterator[DayPlan]:
    for number, name in enumerate(DAYS):
        day = week.days.get(name)
        practice = practices[day.practice] if day and day.practice else None
        metres = practice.metres if practice else 0.0
        on, load = monday + timedelta(days=number), _day_load(day, practice, group)
        yield DayPlan(
            name, on, day, practice, load, metres, _balance([practice] if practice else [])
        )


def _day_load(day: Day | None, practice: PracticeSummary | None, group: str) -> float | None:
    """Planned load of the practice plus minutes times rating of other work; rest is zero, a missing
    day is None.
    """
    if day is None:
        return None
    planned = practice.load(group) if practice else None
    if practice is not None and planned is None:
        return None
    return (planned.value if planned else 0.0) + session_load(day.rating, day.minutes)


def _balance(practices: Sequence[PracticeSummary]) -> Balance:
    by: dict[str, dict[str, float]] = {}
    sums = dict.fromkeys(("kick", "flutter", "supine", "resisted", "fast", "into_stroke"), 0.0)
    for practice in practices:
        unit, metres = practice.pool.course.unit.metres, practice.metres
        for facet, split in practice.by.items():
            for word, distance in split.items():
                words = by.setdefault(facet, {})
                words[word] = words.get(word, 0.0) + float(distance) * unit
        flutter = sum(
            piece.distance * unit for piece in practice.pieces if piece.drill.is_flutter_kick
        )
        sums["kick"] += metres * _float(practice.shares.kick)
        sums["flutter"] += flutter
        sums["supine"] += flutter * _float(practice.shares.supine_flutter)
        sums["resisted"] += metres * _float(practice.shares.resisted)
        sums["fast"] += metres * _float(practice.shares.fast)
        sums["into_stroke"] += practice.shares.kick_into_stroke * unit
    whole = sum(practice.metres for practice in practices)
    return Balance(whole, by, *sums.values())


def _float(share: Fraction | None) -> float:
    return float(share or 0)


def taper(weeks: Sequence[WeekPlan]) -> Taper | None:
    """The cut of the weeks marked as taper against the mean of up to three weeks before them.

    The policy's ``taper_cut_least`` and ``taper_cut_most`` say how large a cut it asks for, and
    from which source. None where no week is marked, or none stands before.
    """
    marked = [week for week in weeks if week.week.taper]
    if not marked:
        return None
    before = [week.balance.metres for week in weeks if week.number < marked[0].number][-3:]
    if not before or not fmean(before):
        return None
    return Taper(
        tuple(week.number for week in marked),
        fmean(before),
        1 - fmean(week.balance.metres for week in marked) / fmean(before),
    )
