"""Which pieces of the catalogue a practice may be composed of: sets, parts of practices that stand
by themselves, and drills in their own dose.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import DRILL, SET
from almanac.arithmetic.scaling import REPS, ROUNDS, scalable, scalable_of
from almanac.model.drill import Drill
from almanac.model.effort_plans import Hold
from almanac.model.reps import Part, Reps
from almanac.model.swim_set import SwimSet
from almanac.report.bound_parts import is_plain
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.parts import of_part, parts_alone
from almanac.units import show_time

DRILLS_A_GOAL = 3
"""So many drills are offered for a goal in their own dose: the sets teach most of what there is."""


def candidates(analysis: Analysis, squad: str, broken: frozenset[str]) -> Iterator[Candidate]:
    """Every candidate for a squad, in the order of the table: sets, then parts, then drills, each
    by id. ``broken`` are files with an error; nothing of them is offered.
    """
    catalogue = analysis.catalogue
    for _, swim_set in sorted(analysis.computable.items()):
        squads = {catalogue.lane_groups[group].squad for group in analysis.meant(swim_set)}
        if squad in squads and swim_set.file not in broken and not swim_set.is_on_land:
            yield _of_set(analysis, swim_set)
    known: set[str] = set()
    for practice, number in parts_alone(analysis, squad, broken):
        own = of_part(analysis, practice, number)
        if own.alike not in known:
            known.add(own.alike)
            yield own
    for drill in _chosen_drills(analysis, squad):
        if drill.file not in broken:
            yield _of_drill(analysis, drill)


def _chosen_drills(analysis: Analysis, squad: str) -> list[Drill]:
    """For each goal a few drills that a squad may do: those of its own level before easier ones, in
    the order of teaching; by id.
    """
    order = list(analysis.catalogue.words("levels"))
    level = order.index(analysis.catalogue.club.squads[squad].level)
    taught = [analysis.catalogue.drills[id] for id in analysis.teaching_order]
    fit = [own for own in taught if is_plain(own) and own.dose.distance and not own.is_full_stroke]
    fit = [own for own in fit if order.index(own.level) <= level]
    found: dict[str, Drill] = {}
    for goal in analysis.catalogue.words("goals"):
        of_goal = [own for own in fit if own.goals[0] == goal]
        of_goal.sort(key=lambda own: -order.index(own.level))
        found |= {own.id: own for own in of_goal[:DRILLS_A_GOAL]}
    return [found[id] for id in sorted(found)]


def _of_set(analysis: Analysis, swim_set: SwimSet) -> Candidate:
    most = analysis.catalogue.policy.limit("most_reps")
    found = scalable(swim_set, ROUNDS, most) or scalable(swim_set, REPS, most)
    scale = found if found and len(found.offered()) > 1 else None
    numbers = tuple(scale.offered()) if scale else ()
    return Candidate(SET, swim_set.id, 0, swim_set.items, scale, numbers, swim_set=swim_set)


def _of_drill(analysis: Analysis, drill: Drill) -> Candidate:
    """A drill in its own dose, at its easiest effort."""
    dose = drill.dose
    numbers = tuple(range(dose.reps.least, min(dose.reps.most, dose.most) + 1))
    part = Part(dose.distance or 0, drill.id, Hold(drill.effort.easiest), drill.gear.needs)
    item = Reps(reps=numbers[0], parts=(part,), rest=dose.rest, gear=drill.gear.needs)
    written = {
        "reps": numbers[0],
        "distance": dose.distance,
        "do": drill.id,
        "effort": drill.effort.easiest,
        "rest": show_time(dose.rest),
    }
    scale = scalable_of((item,), REPS, analysis.catalogue.policy.limit("most_reps"))
    return Candidate(DRILL, drill.id, 0, (item,), scale, numbers, drill=drill, written=(written,))
