"""Rules on what a rep is made of: its parts come to its distance, and rests are at walls."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.course import Misfit, Unfit
from almanac.arithmetic.marks import beyond_the_end, placed
from almanac.checks.rule import Problem, forbids
from almanac.model.entry import Entry
from almanac.model.reps import Reps, in_all
from almanac.model.swim_set import SwimSet
from almanac.model.walk import reps_with_paths, versions_with_paths, written_items
from almanac.source.reader import DataPath
from almanac.units import Course, show_distance


@forbids("parts-miss-distance")
def parts_miss_distance(analysis: Analysis) -> Iterator[Problem]:
    """The parts of a rep come to the distance that stands beside them, each has something left to
    swim, and a mark at which one ends lies within the rep, in the course that the reps are written
    for.

    Reps with a part that ends at a mark state their distance, because a mark lies elsewhere in
    another pool.
    """
    unstated = set()
    for entry, path, item in _written(analysis):
        if item.stated is None and any(part.to for part in item.parts):
            unstated.add((entry.file, path))
            message = "a part ends at a mark, and the distance of the rep is not stated"
            hint = "add 'distance' beside 'parts': what they come to together"
            yield Problem(entry, (*path, "parts"), message, hint, of_key=True)
        elif (number := _beyond(analysis, entry, item)) is not None:
            unstated.add((entry.file, path))
            message = f"the next such mark lies beyond the {item.distance} of the rep"
            hint = "choose a mark ahead, end the part at the end (to: end), or mend 'distance'"
            yield Problem(entry, (*path, "parts", number, "to"), message, hint)
    for entry, course, path, misfit in _misfits(analysis):
        if misfit.why is Unfit.PARTS and (entry.file, path) not in unstated:
            added = show_distance(float(misfit.distance), course.unit)
            whole = show_distance(float(misfit.whole), course.unit)
            message = f"the parts come to {added}, and the rep is {whole}"
            hint = "mend 'distance' beside 'parts', or end the last part at the end (to: end)"
            if misfit.empty is not None and misfit.distance == misfit.whole:
                message = f"part {misfit.empty + 1} has nothing left to swim"
                hint = "take it out, or end the part before it sooner"
            where = _parts_path(analysis, entry, path, misfit)
            yield Problem(entry, (*where, "parts"), message, hint, of_key=True)


def _parts_path(analysis: Analysis, entry: Entry, path: DataPath, misfit: Misfit) -> DataPath:
    """Where the parts stand that do not fit: beside the reps, or in what is different for some."""
    for other, where, item in _written(analysis):
        is_here = other is entry and where[: len(path)] == path and item.is_parted
        own = in_all(part.distance for part in item.parts) if is_here else None
        if is_here and (own, item.distance) == (misfit.distance, misfit.whole):
            return where
    return path


@forbids("rest-mid-pool")
def rest_mid_pool(analysis: Analysis) -> Iterator[Problem]:
    """A broken swim rests at a wall of the course that it is written for."""
    for entry, course, path, misfit in _misfits(analysis):
        if misfit.why is Unfit.RESTS:
            number = misfit.part or 0
            message = (
                f"part {number + 1} ends between the walls of a {course} pool, and rests there"
            )
            hint = f"the nearest that ends at a wall: {show_distance(misfit.nearest, course.unit)}"
            yield Problem(entry, (*path, "parts", number, "rest"), message, hint, of_key=True)


@forbids("rest-after-last-part")
def rest_after_last_part(analysis: Analysis) -> Iterator[Problem]:
    """Rest inside a rep stands between two of its parts; what comes after the rep is the rep's own
    send-off or rest.
    """
    for entry, path, item in _written(analysis):
        if item.is_parted and item.parts[-1].rest:
            where = (*path, "parts", len(item.parts) - 1, "rest")
            hint = "take it out, and write 'rest' or 'sendoff' beside 'parts'"
            yield Problem(entry, where, "no part comes after this rest", hint, of_key=True)


@forbids("medley-order")
def medley_order(analysis: Analysis) -> Iterator[Problem]:
    """Drills in medley order have strokes of an individual medley, in its order (``medley`` in the
    vocabulary of strokes), or in reverse where that is asked for.
    """
    drills, strokes = analysis.catalogue.drills, analysis.catalogue.words("strokes")
    for entry, path, item in _written(analysis):
        for number, part in enumerate(item.parts):
            if part.order not in ("medley", "reverse_medley"):
                continue
            places = [strokes[drills[id].stroke].medley for id in part.drills]
            where = (*path, *(("parts", number) if item.is_parted else ()), "do", part.order)
            known = [place for place in places if place is not None]
            if len(known) < len(places):
                id = part.drills[places.index(None)]
                message = f"'{id}' serves no stroke of an individual medley"
                yield Problem(entry, where, message, "choose another drill, or write rotate")
            elif known != sorted(known, reverse=part.order == "reverse_medley"):
                right = sorted(
                    part.drills,
                    key=lambda id: strokes[drills[id].stroke].medley or 0,
                    reverse=part.order == "reverse_medley",
                )
                message = "the strokes do not come in the order of an individual medley"
                yield Problem(entry, where, message, f"write [{', '.join(right)}], or rotate")


def _beyond(analysis: Analysis, entry: Entry, item: Reps) -> int | None:
    """The part whose mark lies beyond the end, in the course that the reps are written for."""
    if isinstance(entry, SwimSet):
        course: Course | None = None if entry.is_on_land else entry.course
    else:
        summary = analysis.practices.get(entry.id)
        course = summary.course if summary else None
    return beyond_the_end(placed(item, course), course) if course else None


def _written(analysis: Analysis) -> Iterator[tuple[Entry, DataPath, Reps]]:
    """All reps as they are written, and as they are where a lane group, a variant or a round has
    parts of its own.
    """
    for entry, items, start in written_items(analysis.catalogue):
        for item, path in reps_with_paths(items, start):
            yield entry, path, item
        for item, change, path in versions_with_paths(items, start):
            if change.parts is not None:
                yield entry, path, item


def _misfits(analysis: Analysis) -> Iterator[tuple[Entry, Course, DataPath, Misfit]]:
    """What does not fit its own course: of sets, and of items that practices hold in place."""
    for id, swim_set in analysis.computable.items():
        for misfit in analysis.summary(id).misfits:
            yield swim_set, swim_set.course, misfit.path, misfit
    for id, summary in analysis.practices.items():
        seen: set[tuple[DataPath, Misfit]] = set()  # a station comes once a turn
        for run in summary.runs:
            for misfit in run.misfits if run.swim_set is None else ():
                path = (*run.path, *misfit.path)
                if (path, misfit) not in seen:
                    seen.add((path, misfit))
                    yield analysis.catalogue.practices[id], summary.course, path, misfit
