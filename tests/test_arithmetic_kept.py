"""What was kept of a day beside what was planned of it, worked by hand: minutes, metres, rating,
load.

The practice is one 100 each: `quick` is done 80 + 15 s after its start, `slow` after 100 + 10 s,
all out (9.5). Load is minutes times rating (Foster et al. 2001, J Strength Cond Res 15:109-15).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from arithmetic_plans import QUICK, block_of, club, part, practice_of, run, summarised, swim
from arithmetic_world import made
from test_arithmetic_land import CIRCUIT, CLOCK_S, MAT, RATING

from almanac.arithmetic.block import BlockSummary, summarise_block
from almanac.arithmetic.kept import (
    KeptSession,
    kept_load,
    kept_metres,
    kept_minutes,
    kept_rating,
    kept_sessions,
    planned_metres,
    planned_minutes,
    planned_rating,
    planned_session_load,
    week_kept_load,
    week_kept_metres,
)
from almanac.arithmetic.session_load import planned_load, session_minutes, session_rating
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Known, Labelled, Product, Sum
from almanac.model.block import Day, Session
from almanac.model.log import Log

MONDAY, TUESDAY = date(2026, 9, 7), date(2026, 9, 8)
HUNDRED = run(part(swim()))
LAND = Session(other="Land work", minutes=30, rating=4)


def log(on: date = MONDAY, minutes: int = 25, **more: Any) -> Log:
    """What was kept of a session: of the practice `p`, where nothing else is said."""
    more = {"metres": 450, "heads": 8, **({} if {"other", "land"} & more.keys() else P), **more}
    return made(Log, id="kept", on=on, minutes=minutes, **more)


P = {"practice": "p"}
WEEK = {"mon": Day("p"), "tue": Day(sessions=(LAND,)), "thu": Day(land="a-set")}


def kept(*logs: Log, group: str = "quick", practice: Any = HUNDRED, **days: Day) -> BlockSummary:
    """A week of the practice, work on land and a circuit, with what was kept of it."""
    circuit = summarise(Timing(club(CIRCUIT, MAT)), CIRCUIT)
    return summarise_block(
        block_of({**WEEK, **days}),
        lambda id, on: practice,
        group,
        circuit=lambda id: circuit,
        logs=logs,
    )


def only(*logs: Log, **more: Any) -> KeptSession:
    """The one session that was kept."""
    (own,) = kept_sessions(kept(*logs, **more))
    return own


def test_what_was_done_of_a_practice_beside_its_plan() -> None:
    own = only(log(rating=6))
    assert (own.group, own.day.on, own.plan.session) == ("quick", MONDAY, Session("p"))
    assert own.log == own.plan.kept
    assert (planned_minutes(own), kept_minutes(own)) == (
        session_minutes(HUNDRED, "quick"),
        Known(25, "", "min"),
    )
    assert planned_minutes(own).value == 95 / 60
    assert (planned_metres(own), kept_metres(own)) == (Known(100, "", "m"), Known(450, "", "m"))
    assert (planned_rating(own), kept_rating(own)) == (session_rating(HUNDRED, "quick"), Known(6))
    assert planned_rating(own).value == 9.5
    assert planned_session_load(own) == planned_load(HUNDRED, "quick")
    assert kept_load(own) == Product((Known(25, "min"), Known(6, "rating")))
    assert own.plan.load == 25 * 6


def test_without_a_reported_rating_the_planned_one_weighs_the_minutes_done() -> None:
    own = only(log())
    assert kept_rating(own) is None
    assert kept_load(own) == Product((Known(25, "min"), Known(9.5, "planned rating")))
    assert own.plan.load == pytest.approx(25 * 9.5)


def test_a_rating_that_the_coach_states_takes_the_place_of_that_of_the_reps() -> None:
    day = Day(sessions=(Session("p", rating=3),))
    own = only(log(), mon=day)
    assert planned_rating(own) == Known(3, "stated")
    assert planned_session_load(own) == planned_load(HUNDRED, "quick", 3)
    assert kept_load(own) == Product((Known(25, "min"), Known(3, "planned rating")))


def test_a_session_that_was_rated_nought_weighs_nothing() -> None:
    own = only(log(rating=0))
    assert kept_load(own) == Product((Known(25, "min"), Known(0, "rating")))
    assert planned_rating(only(log(), mon=Day(sessions=(Session("p", rating=0),)))).value == 0


def test_other_work_beside_its_plan() -> None:
    own = only(log(TUESDAY, 45, other="Land work", metres=0, rating=5))
    assert (planned_minutes(own), kept_minutes(own)) == (
        Known(30, "planned", "min"),
        Known(45, "", "min"),
    )
    assert planned_metres(own) is None
    assert planned_rating(own) == Known(4, "stated")
    assert planned_session_load(own) == Product(
        (Labelled(Known(30, "planned", "min"), "min"), Labelled(Known(4, "stated"), "rating"))
    )
    assert kept_load(own).value == 45 * 5


def test_a_circuit_on_land_beside_its_plan() -> None:
    own = only(log(date(2026, 9, 10), 12, land="a-set", metres=0))
    assert planned_minutes(own) == Known(CLOCK_S / 60, "planned", "min")
    assert planned_rating(own) == Known(RATING, "rating")
    assert planned_session_load(own).value == pytest.approx(CLOCK_S / 60 * RATING)
    assert kept_load(own).value == 12 * RATING


def test_where_the_plan_is_not_known_only_what_was_rated_weighs() -> None:
    untimed = practice_of(part(swim()))
    groups = {"quick": replace(QUICK, tests=())}
    unknown = summarised(untimed, club(untimed, groups=groups))
    own = only(log(), practice=unknown)
    assert planned_minutes(own) is planned_rating(own) is planned_session_load(own) is None
    assert kept_load(own) is own.plan.load is None
    assert kept_load(only(log(rating=2), practice=unknown)).value == 50
    whole = kept(log(), log(TUESDAY, other="Land work"), practice=unknown)
    assert week_kept_load("quick", whole.weeks[0]) is None
    assert week_kept_metres("quick", whole.weeks[0]) == Product((Known(2), Known(450, "", "m")))


def test_a_session_without_minutes_or_a_rating_has_no_planned_load() -> None:
    """Work that a block names without a rating, and a circuit that cannot be timed."""
    plain = replace(LAND, rating=None)
    own = only(log(TUESDAY, other="Land work"), tue=Day(sessions=(plain,)))
    assert planned_minutes(own) == Known(30, "planned", "min")
    assert planned_rating(own) is planned_session_load(own) is kept_load(own) is None
    untimed = replace(own, plan=replace(own.plan, session=LAND, minutes=None))
    assert planned_minutes(untimed) is planned_session_load(untimed) is None
    assert planned_rating(untimed) == Known(4, "stated")


def test_a_week_adds_up_what_was_kept_of_it() -> None:
    summary = kept(log(rating=6), log(TUESDAY, 45, other="Land work", metres=50, rating=5))
    (week,) = summary.weeks
    assert [own.log.metres for own in kept_sessions(summary)] == [450, 50]
    assert week_kept_metres("quick", week) == Sum((Known(450, "", "m"), Known(50, "", "m")))
    assert week_kept_load("quick", week).value == 25 * 6 + 45 * 5
    (nothing,) = kept().weeks
    assert week_kept_metres("quick", nothing) is week_kept_load("quick", nothing) is None


@pytest.mark.parametrize(
    ("more", "is_taken"),
    [
        ({}, True),
        ({"start": "18:00"}, True),  # the practice's own
        ({"start": "06:00"}, False),
        ({"on": TUESDAY}, False),
        ({"practice": "q"}, False),
        ({"groups": ("quick",)}, True),
        ({"groups": ("slow",)}, False),
        ({"squad": "osprey"}, True),
        ({"squad": "heron"}, False),
    ],
)
def test_what_was_kept_of_another_session_is_not_taken(more: Any, is_taken: bool) -> None:
    assert (len(list(kept_sessions(kept(log(**more))))) == 1) is is_taken


def test_the_first_of_what_was_kept_of_a_session_is_taken() -> None:
    assert only(log(rating=6), log(rating=7)).log.rating == 6


def test_each_of_two_sessions_of_a_day_has_its_own() -> None:
    day = Day(sessions=(Session("p", start="06:00"), Session("p"), LAND))
    logs = log(start="18:00", minutes=20), log(start="06:00", minutes=10)
    found = list(kept_sessions(kept(*logs, mon=day)))
    assert [(own.plan.start, own.log.minutes) for own in found] == [("06:00", 10), ("18:00", 20)]
