"""Rules on what goes under water by its words alone: a drill told as another mode, and notes."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.under_water import counts
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import entry_level
from almanac.model.drill import Drill
from almanac.model.swim_set import Item
from almanac.model.vocabularies import BLACKOUT
from almanac.model.walk import drills_named, told_with_paths, written_notes
from almanac.units import show_number
from almanac.wording.goes_under import Under, goes_under


@refuses("under-water-hidden")
def under_water_hidden(analysis: Analysis) -> Iterator[Problem]:
    """A drill at the surface or at the wall whose name, summary or steps go under water, or that
    travels and names the danger of a blackout, says how far that is (``under_water``), or has the
    mode of work under water: else no limit sees it. So does a note of a set or a practice: it has
    nobody go farther under water than ``wall_most`` of the level, nor a whole length, unless a
    drill of its reps is work under water.
    """
    for drill in analysis.catalogue.drills.values():
        if not (drill.is_under_water or drill.is_on_land):
            yield from _of_drill(drill)
    for entry, items, path, note in written_notes(analysis.catalogue):
        under = goes_under(note)
        level = entry_level(analysis.catalogue, entry)
        most = analysis.catalogue.policy.of_level(level).limit("wall_most")
        if under and _is_far(under, most) and not _has_such_drills(analysis, items):
            message = "the note goes under water, and no drill of these reps is such work"
            hint = f"choose a drill under water, or stay at the surface: {show_number(most)} m"
            yield Problem(entry, path, message, f"{hint} off a wall at most", level=level)


def _of_drill(drill: Drill) -> Iterator[Problem]:
    for path, text in told_with_paths(drill):
        under = goes_under(text)
        if under and (drill.under_water is None or (under.metres or 0) > drill.under_water):
            said = "says not how far" if drill.under_water is None else "says less"
            message = f"it goes under water, and `under_water` {said}"
            yield Problem(drill, path, message, _SAY, level=drill.level)
            return
    blackout = next((n for n, own in enumerate(drill.hazards) if own.hazard == BLACKOUT), None)
    if blackout is not None and drill.travels and drill.under_water is None:
        message = "it tells of a blackout under water, and not how far it goes there"
        yield Problem(drill, ("safety", blackout), message, _SAY, level=drill.level)


_SAY = "write under_water: metres until the head is up, or the mode of work under water"


def _is_far(under: Under, most: float) -> bool:
    return under.is_whole or (under.metres or 0) > most


def _has_such_drills(analysis: Analysis, items: tuple[Item, ...]) -> bool:
    drills, push_off = analysis.catalogue.drills, analysis.catalogue.policy.limit("push_off_most")
    return any(counts(drills[id], push_off) for id in drills_named(items))
