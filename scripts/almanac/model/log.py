"""What was really done on a day: kept beside the plan. No person is named."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Ids, Reference, references


@dataclass(frozen=True, kw_only=True)
class Log(Entry):
    """One session as it was done: by the lane groups in ``groups``, all of the squad where none is
    named. ``minutes`` run from first start to last finish, ``metres`` are what one swimmer swam,
    ``rating`` is the mean of what the swimmers gave the whole session, 0 to 10.
    """

    kind: ClassVar[str] = "log"
    practice: str
    on: date
    start: str = ""
    groups: Ids = ()
    minutes: int
    metres: int
    heads: int
    rating: float | None = None
    changed: tuple[str, ...] = ()
    note: str = ""

    def is_of(self, group: str) -> bool:
        """Whether it tells of a lane group of the squad."""
        return not self.groups or group in self.groups

    def references(self) -> Iterator[Reference]:
        yield Reference("practice", self.practice, "keeps")
        yield from references("lane_group", self.groups, "of")
