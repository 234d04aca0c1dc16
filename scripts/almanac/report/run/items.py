"""What the whiteboard of a run says of reps: one item of a part, for all the rounds and lane groups
that do the same.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from almanac.arithmetic.events import Rep
from almanac.model.catalogue import Catalogue
from almanac.report.reps_line import what_words
from almanac.report.run.line import run_line
from almanac.report.set_words import effort_of_reps, how_words
from almanac.rounding import tenths
from almanac.units import Course


def item_json(catalogue: Catalogue, rep: Rep, course: Course) -> dict[str, Any]:
    """An item, by one of its reps; what is empty is left out. ``metres`` are what one swimmer swims
    of each rep, None where that is not known; ``far`` where each ends at the other end of the pool.
    """
    item, parts = rep.item, rep.item.parts
    drills = dict.fromkeys(id for part in parts for id in part.drills)
    unknown = any(piece.unknown for piece in rep.pieces)
    lengths = Fraction(rep.distance) / course.length
    told: dict[str, Any] = {
        "line": run_line(catalogue, item),
        "what": what_words(catalogue, item),
        "drills": list(drills),
        "effort": "" if item.is_parted else effort_of_reps(catalogue, item, parts[0].effort),
        "gear": sorted(rep.gear),
        "how": how_words(catalogue, item),
        "cue": next(iter(catalogue.drills[parts[0].do].cues), ""),
        "note": item.note,
        "result": item.note_result,
        "far": lengths.denominator == 1 and lengths % 2 == 1,
        "estimated": any(piece.by_time for piece in rep.pieces),
        "under_water": any(piece.drill.is_under_water for piece in rep.pieces),
        "land": all(piece.drill.is_on_land for piece in rep.pieces),
    }
    metres = None if unknown else number(float(rep.distance) * course.unit.metres)
    return {**{key: value for key, value in told.items() if value}, "metres": metres}


def number(value: float) -> int | float:
    """A number of seconds or metres to the tenth, whole where it is."""
    if value.__class__ is int:
        return int(value)
    near = round(float(value), 1)
    shown = near if near == value else tenths(value)  # most are, and tenths takes its time
    return int(shown) if shown.is_integer() else shown
