"""A set's reps gathered by item: one row an item, as the lane table shows them."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.pace import Target
from almanac.arithmetic.timed_reps import TimedRep
from almanac.arithmetic.working import Working
from almanac.frozen import kept, quick
from almanac.source.reader import DataPath


@quick
@dataclass(frozen=True)
class ItemRow:
    """One item's reps on the clock for one lane group, all rounds together, in order of their first
    rep.
    """

    path: DataPath
    timed: tuple[TimedRep, ...]

    @kept
    def slowest(self) -> TimedRep:
        """The rep with the longest target; the first where no target is known."""
        return max(self.timed, key=lambda rep: rep.target_s or 0.0)

    @kept
    def fastest(self) -> TimedRep:
        """The rep with the shortest target; the first where no target is known."""
        return min(self.timed, key=lambda rep: rep.target_s or 0.0)

    @property
    def target(self) -> Working | None:
        """The target of its slowest rep, None where it is not known."""
        target = self.slowest.target
        return target.working if isinstance(target, Target) else None

    @property
    def aim(self) -> Working | None:
        """The time that the coach asks for, as the entry has it; None where none is asked for. The
        computed target stands beside it, and nothing is computed from it.
        """
        return self.slowest.aim


def item_rows(run: GroupClock) -> tuple[ItemRow, ...]:
    """The rows of a lane group's table."""
    rows: dict[DataPath, list[TimedRep]] = {}
    for path, timed in groupby(run.reps, key=lambda timed: timed.rep.path):
        rows.setdefault(path, []).extend(timed)
    return tuple(ItemRow(path, tuple(timed)) for path, timed in rows.items())
