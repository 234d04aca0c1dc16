"""What gear a practice carries to the pool, beside what the club owns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.at_once import gear_at_once
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.run_sheet import SheetRow


@dataclass(frozen=True)
class GearNeed:
    """A piece of gear to carry: the most that are in use at the same moment, the part in which they
    are, and what the club owns (None where it does not say).
    """

    gear: str
    needed: int
    owned: int | None
    run: PartRun

    @property
    def short(self) -> int:
        """How many are missing."""
        return max(0, self.needed - (self.owned or 0))


def gear_needs(sheet: Sequence[SheetRow], owned: Mapping[str, int]) -> Iterator[GearNeed]:
    """What to carry: for each piece of gear the most heads that use it at the same moment, and what
    the club owns.

    Lane groups that are in a part together use it at once, those that have no use for the gear in
    it left out; parts that run apart are laid on the clock, and only those that overlap are added.
    A set's ``most_in_lane`` lowers the heads in each lane.
    """
    for gear, count, run in gear_at_once(sheet):
        yield GearNeed(gear, count, owned.get(gear), run)
