"""What was really done on a day: kept beside the plan. No person is named."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from almanac.model.block import Session
from almanac.model.entry import Entry, Ids, Reference, references


@dataclass(frozen=True, kw_only=True)
class Log(Entry):
    """One session as it was done: a practice, a circuit on ``land`` or ``other`` work of a squad,
    by the lane groups in ``groups``, all of the squad where none is named. ``minutes`` run from
    first start to last finish, ``metres`` are what one swimmer swam, ``rating`` is the mean of what
    the swimmers gave the whole session, 0 to 10.
    """

    kind: ClassVar[str] = "log"
    practice: str | None = None
    land: str | None = None
    other: str = ""
    squad: str | None = None
    on: date
    start: str = ""
    groups: Ids = ()
    minutes: int
    metres: int
    heads: int
    rating: float | None = None
    changed: tuple[str, ...] = ()
    note: str = ""

    @property
    def what(self) -> str:
        """What was done: a practice or a circuit by id, or other work as the block writes it."""
        return self.practice or self.land or self.other

    def keeps(self, session: Session) -> bool:
        """Whether it tells of a session of a block; day, start, squad and lane groups left out."""
        planned = (session.practice, session.land, session.other)
        return planned == (self.practice, self.land, self.other)

    def is_of(self, group: str) -> bool:
        """Whether it tells of a lane group of the squad."""
        return not self.groups or group in self.groups

    def references(self) -> Iterator[Reference]:
        if self.practice:
            yield Reference("practice", self.practice, "keeps")
        if self.land:
            yield Reference("set", self.land, "keeps")
        if self.squad:
            yield Reference("squad", self.squad, "of")
        yield from references("lane_group", self.groups, "of")
