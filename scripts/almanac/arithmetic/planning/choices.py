"""What a block is planned from: the slots of its days, and the practices that may stand in them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

METRES, LOAD = "metres", "load"
KICK, FLUTTER, SUPINE, DOLPHIN = "kick", "flutter", "supine", "dolphin"
RESISTED, FAST = "resisted", "fast"
"""Sums of a practice: metres of the squad's first lane group, and its planned session load."""
WORN, PLATES, UNDER, UNDER_SETS, STARTS = "worn", "plates", "under", "under sets", "starts"
HARD, ALL_OUT, HEAVY, TEST = "hard", "all-out", "heavy", "test"
"""The most of it that any lane group has, rounded up; the last four are 1 where the practice is a
hard day, holds work at the hardest effort, is more than a light day, is a test.
"""


@dataclass(frozen=True)
class DaySlot:
    """Pool time of a day of the block: ``week`` from 0, minutes from ``begins`` (HH:MM).

    ``lanes`` and ``adults`` are None where nothing says which there are. ``only`` are the practices
    that stand there already.
    """

    on: date
    week: int
    pool: str
    begins: str
    minutes: int
    lanes: frozenset[int] | None = None
    adults: int | None = None
    only: tuple[str, ...] = ()


@dataclass(frozen=True)
class Choice:
    """A practice as a block sees it. ``sums`` and ``most`` are whole numbers by the words above,
    ``strokes`` metres by stroke.

    ``mains`` are what its main parts are, ``opens`` its warm-up. ``teaches`` are the drills in it,
    ``needs`` those that have to be taught before it. ``tests`` are the benchmarks that it runs.
    One that is ``elsewhere`` stands in a block beside, and in no other slot.
    """

    id: str
    title: str
    pool: str
    minutes: int
    begins: str
    lanes: frozenset[int]
    adults: int
    sums: Mapping[str, int]
    most: Mapping[str, int]
    gear: Mapping[str, int] = field(default_factory=dict)
    strokes: Mapping[str, int] = field(default_factory=dict)
    goals: tuple[str, ...] = ()
    mains: tuple[str, ...] = ()
    opens: str = ""
    teaches: frozenset[str] = frozenset()
    needs: frozenset[str] = frozenset()
    tests: tuple[str, ...] = ()
    composed: bool = False
    elsewhere: bool = False

    @property
    def is_test(self) -> bool:
        """Whether something in it is tested."""
        return bool(self.most.get(TEST))


NOTHING = Choice("", "", "", 0, "", frozenset(), 0, {}, {})
"""A slot that stays empty."""
