"""Why a part of a practice makes no sense in another: what binds it to its evening."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.model.drill import Drill
from almanac.model.practice import PracticePart
from almanac.model.swim_set import changes_of, reps_of
from almanac.model.vocabularies import TESTS


def bound_by(analysis: Analysis, part: PracticePart) -> str:
    """What binds a part, as it is said of it: "goes round stations"; "" where nothing does, and it
    is a set or items for all, in the group's own lanes, with nobody beside them, nothing timed, no
    start, partner, team or cord.
    """
    return next(_binding(analysis, part), "")


def _binding(analysis: Analysis, part: PracticePart) -> Iterator[str]:
    if part.apart:
        yield "is done apart"
    if part.stations:
        yield "goes round stations"
    if part.lanes:
        yield "has lanes of its own"
    if part.variants:
        yield "gives lane groups variants of their own"
    if part.set:
        return
    if part.part == TESTS:
        yield "is timed and belongs to its day"
    if part.helpers or part.place or part.led_by or part.coach_is:
        yield "needs a helper or a place of its own"
    if part.end != "start":
        yield "begins at the far end"
    yield from _binding_reps(analysis, part)


def _binding_reps(analysis: Analysis, part: PracticePart) -> Iterator[str]:
    """What binds items in place."""
    drills = analysis.catalogue.drills
    for reps in reps_of(part.items):
        if reps.start:
            yield "has starts"
        if reps.partner or reps.team:
            yield "is swum with partners or in teams"
        if reps.cord:
            yield "has cords"
        if reps.aim or reps.note_result:
            yield "is timed"
        if reps.by_variant:
            yield "gives lane groups variants of their own"
        for id in dict.fromkeys(id for own in reps.parts for id in own.drills):
            yield from _binding_drill(drills[id])
    for change in changes_of(part.items):
        if change.start or change.manner or change.aim:
            yield "has starts, partners or times of one lane group"


def _binding_drill(drill: Drill) -> Iterator[str]:
    if drill.is_on_land:
        yield "is partly on land"
    if drill.start:
        yield "has starts"
    if drill.helpers:
        yield "has a drill that needs a helper"
    if drill.is_under_water:
        yield "has work under water"


def is_plain(drill: Drill) -> bool:
    """Whether a drill may be called by itself: in the water, with no start and nobody beside it."""
    return not any(_binding_drill(drill))
