"""How much of each drill is done in a whole, and what of it is over the most of its dose."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.events import Piece
from almanac.arithmetic.swum import Swum
from almanac.model.drill import Drill
from almanac.source.reader import DataPath
from almanac.units import show_number, show_time


@dataclass
class DoseSum:
    """Goes, distance and time of a drill; ``first`` is where it is done first. A go of wall work is
    each wall that it begins at. ``is_plain`` where it is done at the surface, below fast and
    without gear that resists.
    """

    first: DataPath
    drill: Drill
    goes: int = 0
    distance: float = 0.0
    held_s: float = 0.0
    is_plain: bool = True

    def __add__(self, other: DoseSum) -> DoseSum:
        return DoseSum(
            self.first,
            self.drill,
            self.goes + other.goes,
            self.distance + other.distance,
            self.held_s + other.held_s,
            self.is_plain and other.is_plain,
        )

    def most(self, analysis: Analysis, level: str) -> float:
        """How many times the drill's dose swimmers of a level may do in a practice."""
        more = times_more(analysis, self.drill, level) if self.is_plain else 1
        return self.drill.dose.most * more

    def beyond(self, most: float, unit: str) -> str:
        """What of it is beyond the most of the dose, in words; "" where nothing is."""
        drill, dose = self.drill, self.drill.dose
        if dose.distance and self.distance > most * dose.distance and not drill.is_wall_work:
            return f"{show_number(self.distance)} {unit} of '{drill.title}'"
        if dose.time and self.held_s > most * dose.time:
            return f"{show_time(self.held_s)} of '{drill.title}'"
        if self.goes > dose.most and _is_counted(drill):
            return f"{self.goes} reps of '{drill.title}'"
        return ""


def dose_sums(analysis: Analysis, swum: Swum) -> dict[str, DoseSum]:
    """How much of each drill is done in a whole, by its id."""
    sums: dict[str, DoseSum] = {}
    for rep in swum.reps:
        for piece in rep.pieces:
            drill = piece.drill
            own = sums.get(drill.id)
            if own is None:
                own = sums[drill.id] = DoseSum(rep.path, drill)
            walls = math.ceil(piece.distance / swum.course.length) if drill.is_wall_work else 1
            own.goes += max(1, walls)
            own.distance += float(piece.distance)
            own.held_s += piece.hold_s or 0.0
            own.is_plain = own.is_plain and not _is_counted(drill) and is_plain(analysis, piece)
    return sums


def is_plain(analysis: Analysis, piece: Piece) -> bool:
    """Whether a piece is not fast and bears nothing that resists."""
    gear, scale = analysis.catalogue.gear, analysis.scale
    is_fast = not scale.split(piece.effort).keys().isdisjoint(scale.fast)
    return not is_fast and not any(gear[id].resists for id in piece.gear)


def times_more(analysis: Analysis, drill: Drill, level: str) -> float:
    """How many times a drill's own most swimmers of a level may do, for those above its own."""
    order = list(analysis.catalogue.words("levels"))
    above = max(0, order.index(level) - order.index(drill.level))
    return 1 + above * analysis.catalogue.policy.limit("dose_level_more")


def over_dose(
    analysis: Analysis, swum: Swum, level: str
) -> Iterator[tuple[str, DataPath, str, str]]:
    """What of a whole is beyond the most of a drill's dose: drill, first place, message, hint."""
    unit = swum.course.unit.value
    for own in dose_sums(analysis, swum).values():
        most, dose = own.most(analysis, level), own.drill.dose
        if said := own.beyond(most, unit):
            each = show_time(dose.time) if dose.time else f"{dose.distance} {unit}"
            hint = f"its dose is {show_number(most)} × {each} in a practice at most"
            yield own.drill.id, own.first, said, hint


def _is_counted(drill: Drill) -> bool:
    """Whether each go of it counts, however short: work under water, at the wall and on land."""
    return drill.is_under_water or drill.is_on_land or drill.is_wall_work
