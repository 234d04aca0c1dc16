"""Composed practices in words: why a piece stands there, what is not met, which wish hinders."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.arithmetic.composing_order import Stood
from almanac.arithmetic.composing_pieces import (
    COOL_DOWN,
    EASY,
    MAIN,
    ROLES,
    SKILL,
    UNKNOWN,
    WARM_UP,
)
from almanac.arithmetic.composing_table import Table
from almanac.arithmetic.composing_why import (
    EFFORT,
    GOAL,
    KEEP,
    MINUTES,
    NO_RELIEF,
    NO_SKILL,
    PIECE,
    TAUGHT,
    Hinders,
    Unmet,
    Why,
)
from almanac.arithmetic.composing_wishes import (
    ADULTS,
    GEAR,
    LATELY,
    LEFT_OUT,
    NOT_FOR,
    ROOM,
    SECOND,
)
from almanac.findings import counted

ROLE_WORDS = {
    WARM_UP: "Warm-up",
    SKILL: "Skill",
    MAIN: "Main set",
    SECOND: "Main set",
    EASY: "Relief",
    COOL_DOWN: "Cool-down",
}
_SERVES = {
    WARM_UP: "eases in",
    SKILL: "a skill before the main set",
    MAIN: "serves none of the goals, and fits",
    SECOND: "serves none of the goals, and fits",
    EASY: "easy, for what was trained",
    COOL_DOWN: "ends easy",
}
_IN_THE_WAY = {
    GEAR: "the gear for it is not at hand",
    ROOM: "the lanes are too full for it",
    ADULTS: "it needs more adults",
    LATELY: "what serves it was a main set in the last seven days",
    LEFT_OUT: "it is left out",
    NOT_FOR: "nothing of it is written for these lane groups",
    MINUTES: "it does not fit in beside the others: leave out another goal, or take more minutes",
    TAUGHT: "what its drills need first has not been taught",
}


def why_words(table: Table, one: Stood, own: Why) -> Iterator[str]:
    """Why a piece stands there, in short phrases."""
    goals = [table.goals[goal].title.lower() for goal in own.goals]
    if goals:
        yield f"serves {' and '.join(goals)}"
    elif one.role in _SERVES:
        yield _SERVES[one.role]
    if own.days != UNKNOWN:
        yield "done today" if not own.days else f"not done for {counted(own.days, 'day')}"
    for gear, used, here in own.gear:
        yield f"needs {used} × {table.gear[gear].title.lower()}, {here} are here"


def unmet_words(table: Table, own: Unmet) -> str:
    """What is not met, as a sentence."""
    if own.wish == GOAL:
        goal = table.goals[own.which].title
        return f"{goal} is not in it: {_IN_THE_WAY[own.because]}."
    if own.wish == EFFORT:
        effort = table.efforts[own.which].title.lower()
        return f"No main set is {effort}: what serves the goals is not; drop the effort, or a goal."
    return {
        NO_SKILL: "There is no skill in it: leave out a goal, or take more minutes.",
        NO_RELIEF: "Nothing easy carries tired legs into the stroke: take more minutes.",
    }[own.wish]


def hinders_words(table: Table, own: Hinders) -> str:
    """A wish that hinders, as a sentence."""
    if own.wish == GOAL:
        return f"Without {table.goals[own.which].title.lower()} there would be one."
    if own.wish == PIECE:
        role = ROLE_WORDS[ROLES[own.which]].lower()
        return f"There is no {role} for them in this pool: write a set, or a practice with one."
    if own.wish == MINUTES:
        return f"In {own.which} minutes there would be one."
    return {
        LATELY: "What was done lately is in the way: with repeats there would be one.",
        GEAR: "With all the gear that the club owns there would be one.",
        ADULTS: "With more adults there would be one.",
        EFFORT: "At another effort there would be one.",
        TAUGHT: "With more taught there would be one.",
        KEEP: "Without what is kept there would be one.",
        LEFT_OUT: "With what is left out there would be one.",
        ROOM: "With the usual lanes and heads there would be one.",
    }[own.wish]
