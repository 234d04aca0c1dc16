"""Gear: what it does to the swimmer, its dangers and drag, and how it is looked after."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from almanac.model import vocabularies as words
from almanac.model.drag import Drag
from almanac.model.entry import (
    Entry,
    Evidence,
    Hazard,
    Helper,
    Ids,
    Reference,
    leans_on,
    references,
)
from almanac.model.need import Adapt, adapts
from almanac.model.not_for import NotFor
from almanac.model.vocabularies import ASSISTS, RESISTS


@dataclass(frozen=True, kw_only=True)
class Gear(Entry):
    """A piece of equipment: what it does to the swimmer, its dangers, its drag."""

    kind: ClassVar[str] = "gear"
    acts_on: Ids
    effect: str
    what_it_changes: str
    hazards: tuple[Hazard, ...]
    not_for: NotFor
    change_s: int
    pace_factor: float
    care: str
    excludes: Ids = ()
    drag: Drag | None = None
    evidence: tuple[Evidence, ...] = ()
    helpers: tuple[Helper, ...] = ()
    tied_to: str = ""
    said: str = ""
    adapt: tuple[Adapt, ...] = ()

    @property
    def use(self) -> str:
        """How a whiteboard says that it is used: ``in the chute``, ``with fins``."""
        return self.said or f"with {self.title.lower()}"

    @property
    def ties(self) -> bool:
        """Whether it ties the swimmer to somebody or something. Where it does not say, whether it
        needs a holder or hangs a weight.
        """
        if self.tied_to:
            return self.tied_to != "nothing"
        held = any(helper.has_line for helper in self.helpers)
        return held or (self.drag is not None and self.drag.hanging_kg is not None)

    def references(self) -> Iterator[Reference]:
        yield from references("gear", self.excludes, "excludes")
        yield from adapts(self.adapt)
        yield from leans_on(self.evidence)

    @property
    def may_tie(self) -> bool:
        """Whether it acts on the whole body with a force from outside: a cord, a chute, a rope."""
        return words.BODY in self.acts_on and (self.resists or self.assists)

    @property
    def resists(self) -> bool:
        """Whether distance with it counts as resisted."""
        return self.effect == RESISTS

    @property
    def assists(self) -> bool:
        """Whether it makes a swimmer faster."""
        return self.effect == ASSISTS
