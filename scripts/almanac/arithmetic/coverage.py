"""What the catalogue covers: drills and sets by goal and level."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from almanac.model.drill import Drill
from almanac.model.swim_set import SwimSet


@dataclass(frozen=True)
class Cell:
    """A goal at a level: drills of that level, drills of that level or a lower one, and sets of
    that level.

    A swimmer uses the drills of the levels below too, so a hole is a goal without any drill up to
    its level, or without a set of its level.
    """

    goal: str
    level: str
    drills: int
    drills_up_to: int
    sets: int

    @property
    def is_hole(self) -> bool:
        """Whether a coach of that level would find nothing to do, or nothing to write on the
        board.
        """
        return self.drills_up_to == 0 or self.sets == 0


def coverage(
    goals: Iterable[str], levels: Sequence[str], drills: Iterable[Drill], sets: Iterable[SwimSet]
) -> list[list[Cell]]:
    """A row for each goal, in it a cell for each level, lowest first."""
    every_drill, every_set = tuple(drills), tuple(sets)
    return [
        [_cell(goal, number, levels, every_drill, every_set) for number in range(len(levels))]
        for goal in goals
    ]


def _cell(
    goal: str, number: int, levels: Sequence[str], drills: Iterable[Drill], sets: Iterable[SwimSet]
) -> Cell:
    serving = [levels.index(drill.level) for drill in drills if goal in drill.goals]
    return Cell(
        goal=goal,
        level=levels[number],
        drills=serving.count(number),
        drills_up_to=sum(level <= number for level in serving),
        sets=sum(goal in item.goals and item.level == levels[number] for item in sets),
    )
