"""What a list shows of an entry at a glance: how long it takes a lane group, and what a set is
mostly made of.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

from almanac.arithmetic.clock import Clock
from almanac.arithmetic.events import Piece, reps
from almanac.arithmetic.expand import expand
from almanac.model.drill import Drill
from almanac.model.effort_plans import Hold
from almanac.model.reps import Distance, Part, Reps


def drill_seconds(drill: Drill, clock: Clock) -> float | None:
    """Seconds of the clock that a drill's smallest dose takes: its fewest reps at its easiest
    effort, each with its rest.

    The dose's distance is in the unit of the clock's course. None where the lane group has no test
    that the drill is timed by.
    """
    dose = drill.dose
    part = Part(
        dose.distance or 0, drill.id, Hold(drill.effort.easiest), drill.gear.needs, dose.time
    )
    item = Reps(reps=1, parts=(part,), rest=dose.rest)
    rep = next(reps(expand((item,), {drill.id: drill}, clock.pacer.scale)))
    each = clock.rep(rep).clock
    return None if each is None else dose.reps.least * each.value


def chief_drill(pieces: Iterable[Piece]) -> Drill | None:
    """The drill with the greatest distance; the first of two alike. None where there are no
    pieces.
    """
    far: dict[str, Distance] = defaultdict(int)
    drills: dict[str, Drill] = {}
    for piece in pieces:
        far[piece.drill.id] += piece.distance
        drills.setdefault(piece.drill.id, piece.drill)
    return max(drills.values(), key=lambda drill: far[drill.id], default=None)
