"""Who goes together in a run of a practice from the first part to the last: a lane group, or a half
of one whose halves are apart in some part.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from almanac.arithmetic.crews import HALVES, Crew, crew_of
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetCell, SheetRow


@dataclass(frozen=True)
class RunCrew:
    """A lane group, or a half of it, in its ``usual`` lanes; and what it does: the number of each
    row of the run sheet, the row, and its cell.
    """

    usual: Crew
    rows: tuple[tuple[int, SheetRow, SheetCell], ...]

    @property
    def key(self) -> str:
        """What it is called in a run."""
        return key_of(self.usual)


def key_of(crew: Crew) -> str:
    """A crew by its lane group and half: ``osprey-1``, ``osprey-1/first``."""
    return f"{crew.group}/{crew.half}" if crew.half else crew.group


def run_crews(summary: PracticeSummary) -> tuple[RunCrew, ...]:
    """Those who go together in a practice, in the club's order."""
    cells = [(number, row, cell) for number, row in enumerate(summary.sheet) for cell in row.cells]
    halved = {cell.group for _, _, cell in cells if cell.crew.half}
    found = []
    for group in summary.groups:
        for half in HALVES if group in halved else ("",):
            usual = crew_of(group, half, summary.groups, summary.practice.lanes, {})
            if summary.pool.is_land:
                usual = replace(usual, lanes=())
            own = {(group, half)} if half else {(group, one) for one in HALVES}
            rows = tuple(one for one in cells if own & {*one[2].crew.halves})
            found.append(RunCrew(usual, rows))
    return tuple(found)
