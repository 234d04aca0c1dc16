"""How reps are gone about, beside what is swum: a time to hold, turns within a lane, and with whom
one swims.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from almanac.model.entry import Hazard


@dataclass(frozen=True)
class Aim:
    """A time that the coach asks for, in seconds: one for all, or one a lane group."""

    every: float | None = None
    by_group: Mapping[str, float] = field(default_factory=dict)

    def of(self, group: str) -> float | None:
        """The group's time, or None where none is asked of it."""
        return self.by_group.get(group, self.every)


@dataclass(frozen=True)
class Waves:
    """Turns within a lane: one wave swims while the others rest. One of the two is given: how many
    ``swimmers`` go at once, or the ``number`` of waves.
    """

    swimmers: int | None = None
    number: int | None = None


ADULT, SWIMMER, ANCHOR = "adult", "swimmer", "anchor"


@dataclass(frozen=True)
class Cord:
    """Who holds the other end of what ties a swimmer: an adult, a swimmer or an anchor; and where
    they stand, or what it is anchored to.
    """

    held_by: str
    at: str


@dataclass(frozen=True)
class Manner:
    """What the words of a rep's start, partner and team come to.

    ``swimmers`` share the distance of a rep; ``turns`` is how many go one after the other before
    the first goes again; ``ready_s`` is what it takes to be back where the rep starts. ``hazards``
    are the dangers of those words, each with the id of the vocabulary that it stands in.
    """

    swimmers: int = 1
    turns: int = 1
    ready_s: float = 0.0
    hazards: tuple[tuple[Hazard, str], ...] = ()


ALONE = Manner()
STARTS, PARTNERS, TEAMS = "starts", "partners", "teams"
