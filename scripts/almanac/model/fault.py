"""Faults: what a coach sees go wrong, its causes, and what mends it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from almanac.model.drill import Sight
from almanac.model.entry import Entry, Evidence, Ids, Reference, leans_on, references
from almanac.model.fault_drawing import FaultDrawing


@dataclass(frozen=True)
class Cause:
    """A cause of a fault, the quick test that tells it apart, and the drills that mend it."""

    cause: str
    tell_apart: str
    mended_by: Ids
    gear: Ids = ()
    needs: Ids = ()


@dataclass(frozen=True)
class LookAlike:
    """A fault that looks alike, and how to tell."""

    fault: str
    difference: str


@dataclass(frozen=True, kw_only=True)
class Fault(Entry):
    """What a coach sees go wrong, and its causes."""

    kind: ClassVar[str] = "fault"
    stroke: str
    see: tuple[Sight, ...]
    why_it_matters: str
    causes: tuple[Cause, ...]
    refer_on: str
    first_words: tuple[str, ...] = ()
    not_to_confuse_with: tuple[LookAlike, ...] = ()
    drawing: FaultDrawing | None = None
    evidence: tuple[Evidence, ...] = ()

    def references(self) -> Iterator[Reference]:
        for cause in self.causes:
            yield from references("drill", cause.mended_by, "mended_by")
            yield from references("gear", cause.gear, "tested_with")
        if self.drawing:
            for body in (self.drawing, self.drawing.wrong):
                yield from references("gear", body.gear or (), "drawn")
        yield from references(
            "fault", (other.fault for other in self.not_to_confuse_with), "not_to_confuse_with"
        )
        yield from leans_on(self.evidence)
