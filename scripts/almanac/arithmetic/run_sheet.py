"""The run sheet of a practice: who is where when, and who waits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.arithmetic.part_run import PartRun
from almanac.model.catalogue import Catalogue


@dataclass(frozen=True)
class SheetCell:
    """A lane group in one part: when it ends (seconds from the start), and how long it then waits
    for the others.

    Both are None where its clock is not known.
    """

    group: str
    ends_s: float | None
    waits_s: float | None


@dataclass(frozen=True)
class SheetRow:
    """One part on the run sheet: everybody starts together, after the talk. Seconds from the start
    of the slot.

    ``gear_s`` is what changing gear from the part before costs beyond the talk. ``ends_s`` is when
    the last group is done, None where a clock is not known.
    """

    run: PartRun
    talk_s: float
    gear_s: float
    starts_s: float
    ends_s: float | None
    cells: tuple[SheetCell, ...]


def run_sheet(
    runs: tuple[PartRun, ...], groups: tuple[str, ...], catalogue: Catalogue
) -> Iterator[SheetRow]:
    """The run sheet: each part starts for everybody when the slowest lane group has done the one
    before it.

    Then comes the talk; changing gear between parts costs what the talk does not cover. Where a
    clock is not known, the parts after it are laid from the groups that are known, and the end is
    None.
    """
    now, worn, known = 0.0, frozenset[str](), True
    for run in runs:
        talk = float(run.part.talk or 0)
        first, last = (run.reps[0].gear, run.reps[-1].gear) if run.reps else (worn, worn)
        changed = (first ^ worn) if now else frozenset[str]()
        gear_s = max(0.0, max((catalogue.gear[id].change_s for id in changed), default=0) - talk)
        starts = now + talk + gear_s
        clocks = {
            group: clock.value if (clock := run.clocks[group].clock) else None for group in groups
        }
        finished = [starts + clock for clock in clocks.values() if clock is not None]
        known = known and len(finished) == len(groups)
        now = max(finished, default=starts)
        cells = (
            SheetCell(group, starts + c, now - starts - c)
            if c is not None
            else SheetCell(group, None, None)
            for group, c in clocks.items()
        )
        yield SheetRow(run, talk, gear_s, starts, now if known else None, tuple(cells))
        worn = last
