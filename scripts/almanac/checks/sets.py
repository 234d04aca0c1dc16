"""Rules on sets: what must add up, get faster and end at a wall."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.course import Misfit, Unfit
from almanac.arithmetic.expand import count_reps
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.effort_plans import Build, Descend, Effort
from almanac.model.swim_set import Item, SwimSet
from almanac.model.walk import (
    efforts_with_paths,
    reps_with_paths,
    versions_with_paths,
    written_items,
)
from almanac.source.reader import DataPath
from almanac.units import Unit, show_distance, show_number


@forbids("too-many-reps")
def too_many_reps(analysis: Analysis) -> Iterator[Problem]:
    """A set holds no more reps than the policy's ``most_reps``: nested rounds multiply faster than
    one thinks.
    """
    for swim_set in analysis.catalogue.sets.values():
        if analysis.is_runaway(swim_set):
            message = f"the rounds multiply to {count_reps(swim_set.items):,} reps"
            most = show_number(analysis.catalogue.policy.limit("most_reps"))
            hint = f"write fewer rounds: at most {most} reps (plans/policy.yml)"
            yield Problem(swim_set, ("items",), message, hint, of_key=True)


@forbids("descend-one-rep")
def descend_one_rep(analysis: Analysis) -> Iterator[Problem]:
    """A descend needs two reps or more: over one rep there is nothing to get faster than."""
    for entry, items, start in written_items(analysis.catalogue):
        for reps, effort, where in _efforts(items, start):
            if isinstance(effort, Descend) and reps == 1:
                hint = f"write one word, or build: [{effort.first}, {effort.last}] within the rep"
                message = "a descend needs two reps or more, and here is one"
                yield Problem(entry, where, message, hint)


def _efforts(items: tuple[Item, ...], start: DataPath) -> Iterator[tuple[int, Effort, DataPath]]:
    """Every effort, with how often its reps go and its path; those of changes too."""
    for item, path in reps_with_paths(items, start):
        yield from ((item.reps, effort, at) for effort, at in efforts_with_paths(item, path))
    for item, change, path in versions_with_paths(items, start):
        if change.effort:
            yield item.reps, change.effort, (*path, "effort")
        for number, part in enumerate(change.parts or ()):
            yield item.reps, part.effort, (*path, "parts", number, "effort")
        if change.reps and not (change.effort or change.parts):
            yield from ((item.reps, part.effort, (*path, "reps")) for part in item.parts)


@forbids("effort-falls")
def effort_falls(analysis: Analysis) -> Iterator[Problem]:
    """A descend and a build go from the easier word to the harder one."""
    order = list(analysis.catalogue.efforts)
    for entry, items, start in written_items(analysis.catalogue):
        told = set[DataPath]()
        for _, effort, where in _efforts(items, start):
            for rise in _rises(effort) if where[-1] != "reps" and where not in told else ():
                if order.index(rise.first) >= order.index(rise.last):
                    told.add(where)
                    form = type(rise).__name__.lower()
                    message = f"a {form} from {rise.first} to {rise.last} does not get faster"
                    hint = "write the easier word first, or use rotate"
                    yield Problem(entry, where, message, hint)


def _rises(effort: Effort) -> Iterator[Descend | Build]:
    """What of an effort goes from one word to another."""
    if isinstance(effort, (Descend, Build)):
        yield effort
    if isinstance(effort, Descend) and effort.build:
        yield effort.build


def rep_words(misfit: Misfit, unit: Unit) -> str:
    """A rep by its length; one that a team shares by what each of them swims."""
    length = show_distance(misfit.distance, unit)
    if misfit.swimmers == 1:
        return f"a rep of {length}"
    return f"each one's {length} of a relay of {misfit.swimmers}"


@forbids("rep-ends-mid-pool")
def rep_ends_mid_pool(analysis: Analysis) -> Iterator[Problem]:
    """Every rep of a set ends at a wall of the course that the set is written for; but for drills
    whose own dose is less than a length, after which one gets back to the wall.
    """
    for swim_set, misfit in _misfits(analysis):
        if misfit.ends:
            unit = swim_set.course.unit
            message = (
                f"{rep_words(misfit, unit)} ends between the walls of a {swim_set.course} pool"
            )
            hint = f"the nearest that ends at a wall: {show_distance(misfit.nearest, unit)}"
            yield Problem(
                swim_set, (*misfit.path, *_distance_step(swim_set, misfit)), message, hint
            )


@warns("change-mid-pool")
def change_mid_pool(analysis: Analysis) -> Iterator[Problem]:
    """Changes inside a rep fall at a wall of the course that the set is written for, at a mark that
    the part names (``to``), in the middle of the pool where it is written as half a length, or
    after a drill whose own dose is less than a length.
    """
    for swim_set, misfit in _misfits(analysis):
        if misfit.why is Unfit.CHANGES:
            unit = swim_set.course.unit
            message = (
                f"part {(misfit.part or 0) + 1} ends between the walls of a {swim_set.course} pool"
            )
            hint = (
                f"the nearest that ends at a wall: {show_distance(misfit.nearest, unit)}; where "
                "the change is meant, name its mark (to: middle)"
            )
            yield Problem(
                swim_set, (*misfit.path, "parts", misfit.part or 0, "distance"), message, hint
            )


def _misfits(analysis: Analysis) -> Iterator[tuple[SwimSet, Misfit]]:
    for id, swim_set in analysis.computable.items():
        for misfit in analysis.summary(id).misfits:
            yield swim_set, misfit


def _distance_step(swim_set: SwimSet, misfit: Misfit) -> tuple[str, ...]:
    parted = next(
        item.is_parted for item, path in reps_with_paths(swim_set.items) if path == misfit.path
    )
    return ("parts",) if parted else ("distance",)


@forbids("land-set-swims")
def land_set_swims(analysis: Analysis) -> Iterator[Problem]:
    """A set whose course is land holds drills on land alone, each held for a time; and such drills
    travel no distance anywhere.
    """
    for id, swim_set in analysis.computable.items():
        if not swim_set.is_on_land:
            continue
        for rep in {rep.path: rep for rep in analysis.summary(id).every_rep}.values():
            wet = [piece.drill for piece in rep.pieces if not piece.drill.is_on_land]
            if wet:
                message = f"'{wet[0].id}' is not done on land"
                hint = "take a drill of the mode land, or give the set the course of a pool"
                yield Problem(swim_set, rep.path, message, hint)
            elif rep.distance:
                message, hint = "on land nothing is swum", "give the reps a time, not a distance"
                yield Problem(swim_set, (*rep.path, "distance"), message, hint)


@forbids("circuit-not-on-land")
def circuit_not_on_land(analysis: Analysis) -> Iterator[Problem]:
    """What a block calls work on ``land`` is a set whose course is land."""
    sets = analysis.catalogue.sets
    for block in analysis.catalogue.blocks.values():
        for number, week in enumerate(block.weeks):
            for name, day in week.days.items():
                for id in day.circuits:
                    if not sets[id].is_on_land:
                        path = ("weeks", number, "days", name)
                        hint = "name a set whose course is land, or the practice that holds it"
                        yield Problem(block, path, f"'{id}' is not on land", hint)
