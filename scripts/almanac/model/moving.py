"""What is done in the water or on land: what drills and benchmarks have in common."""

from __future__ import annotations

from dataclasses import dataclass

from almanac.model.entry import Entry, Evidence, Hazard


@dataclass(frozen=True)
class Activity:
    """What is done, apart from how far and how hard: two timed things compare when these agree."""

    mode: str
    stroke: str
    kick: str
    position: str
    arms: str


@dataclass(frozen=True, kw_only=True)
class Moving(Entry):
    """A thing done in the water or on land: what drills and benchmarks have in common."""

    mode: str
    stroke: str
    kick: str
    position: str
    arms: str
    hazards: tuple[Hazard, ...]
    evidence: tuple[Evidence, ...] = ()

    @property
    def activity(self) -> Activity:
        """What is done."""
        return Activity(self.mode, self.stroke, self.kick, self.position, self.arms)
