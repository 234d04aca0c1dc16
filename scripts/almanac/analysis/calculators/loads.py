"""Load of a session, and of a week."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    Line,
    NoAnswer,
    fields,
    number,
)
from almanac.arithmetic.block_days import DAY_NAMES
from almanac.arithmetic.training_load import DAYS_A_WEEK, session_load, week_load


def _session(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    return Answer(
        {"load": session_load(number(values, "rating"), number(values, "minutes"))}, ("read",)
    )


def _week(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    days = [_day(values, at) for at in range(1, DAYS_A_WEEK + 1)]
    if all(load is None for load in days):
        raise NoAnswer("nothing")
    found = week_load(days)
    numbers = {"total": found.total, "mean": found.mean, "known": float(found.known)}
    if found.deviation is not None:
        numbers["deviation"] = found.deviation
    if found.monotony is not None and found.strain is not None:
        return Answer(
            numbers | {"monotony": found.monotony, "strain": found.strain}, ("read", "monotony")
        )
    if not found.is_whole:
        return Answer(numbers, ("part",))
    return Answer(numbers, ("read", "alike" if found.deviation is not None else "few"))


def _day(values: Mapping[str, Given], at: int) -> float | None:
    """A day's load; 0 with no minutes, None where nothing is said of it."""
    minutes, rating = values.get(f"minutes-{at}"), values.get(f"rating-{at}")
    if minutes == 0:
        return 0.0
    if (minutes is None) != (rating is None):
        raise NoAnswer("half-a-day")
    if not isinstance(minutes, (int, float)) or not isinstance(rating, (int, float)):
        return None
    return session_load(rating, minutes)


SESSION_LOAD = Calculator(
    name="session-load",
    on_land=True,
    title="Load of a session",
    asks="Minutes and how hard it was: what load?",
    fields=fields(
        Field("minutes", "Minutes, first start to last finish", least=1, most=600, default=60),
        Field("rating", "Rating of the whole, 0 to 10", most=10, default=5),
    ),
    lines=(Line("load", "Load", unit="AU", places=0),),
    sentences={"read": "{minutes} minutes at {rating}: {load}."},
    limits="For swims, land and meets alike. The swimmer rates the whole session, some time after "
    "it. It compares one swimmer's weeks, never two swimmers.",
    work=_session,
    by=(session_load,),
    refusals={},
    example={"minutes": 60, "rating": 7},
    asked_as=(
        "rpe times minutes",
        "training load",
        "how hard was it",
        "effort times minutes",
        "rate the session",
        "session score",
    ),
)
WEEK_LOAD = Calculator(
    name="week-load",
    on_land=True,
    title="Load of a week",
    asks="Seven days of minutes and ratings: total, monotony, strain.",
    fields=fields(
        *(
            field
            for at, day in enumerate(DAY_NAMES, 1)
            for field in (
                Field(f"minutes-{at}", f"{day}, minutes", most=600, optional=True),
                Field(f"rating-{at}", f"{day}, rating", most=10, optional=True),
            )
        )
    ),
    lines=(
        Line("total", "Total", unit="AU", places=0),
        Line("mean", "A day, of those known", unit="AU", places=0),
        Line("deviation", "Standard deviation of the days", unit="AU", places=0),
        Line("monotony", "Monotony", places=2),
        Line("strain", "Strain", unit="AU", places=0),
        Line("known", "Days known", places=0),
    ),
    sentences={
        "read": "{total} in the week, {mean} a day.",
        "monotony": "Monotony {monotony}: the higher, the more each day was like the others.",
        "part": "{known} of 7 days: {total} so far. Monotony and strain need all seven; write 0 "
        "minutes for a day of rest.",
        "alike": "All days are alike: monotony has no number.",
        "few": "Fewer than four days of training, or all alike: monotony would tell nothing.",
    },
    limits="With the standard deviation of a sample; its author does not say which. No number of "
    "monotony or strain is known to be too high.",
    work=_week,
    by=(week_load, session_load),
    refusals={
        "nothing": "Nothing is said of any day.",
        "half-a-day": "A day needs both: its minutes and its rating; or 0 minutes, for rest.",
    },
    example={
        "minutes-1": 80, "rating-1": 6, "minutes-2": 60, "rating-2": 5, "minutes-3": 0,
        "minutes-4": 90, "rating-4": 6, "minutes-5": 60, "rating-5": 4, "minutes-6": 100,
        "rating-6": 6, "minutes-7": 0,
    },
    asked_as=(
        "monotony", "strain", "weekly load", "week too hard",
    ),
)  # fmt: skip
