"""The policy, every limit that a check or a computation uses; and the vocabularies."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from almanac.model.entry import (
    ANY_DEPTH,
    DepthNeeded,
    Entry,
    Hazard,
    Ids,
    Reference,
    references,
)

STRICTEST = ""
"""In place of a level's name: the limits of a level that nobody has given any."""


@dataclass(frozen=True)
class Limit:
    """A limit with its unit, reason and source; ``sources`` are those that are entries."""

    value: float
    unit: str
    reason: str
    source: str
    sources: Ids = ()


@dataclass(frozen=True)
class DayCount:
    """From so many to so many days, both included, with the reason and its source."""

    least: int
    most: int
    reason: str
    source: str


@dataclass(frozen=True)
class LevelLimits:
    """What depends on a squad's level. ``limits`` holds each limit: the club's own, else the
    default that its schema gives. ``accepted_by`` are the roles that may accept an error of safety
    for it; none where nobody may.
    """

    limits: Mapping[str, Limit] = field(default_factory=dict)
    light_days: DayCount | None = None
    accepted_by: Ids = ()

    def limit(self, name: str) -> float:
        """The value of a limit. Raises KeyError for a name that the schema does not know."""
        return self.limits[name].value


@dataclass(frozen=True)
class Gap:
    """A goal that on purpose has no drills or no sets at a level."""

    goal: str
    level: str
    reason: str


@dataclass(frozen=True)
class RestRule:
    """Rest in seconds for each 50 m of a rep, or as a share of its target time: one of the two."""

    seconds_per_50: float | None = None
    share_of_work: float | None = None


@dataclass(frozen=True)
class RestByEffort:
    """The rest that an effort wants: the least, and what a suggested send-off leaves."""

    least: RestRule
    wanted: RestRule
    reason: str
    source: str


@dataclass(frozen=True)
class HouseRule:
    """A rule of conduct that is shown with every brief, once; with its reason and source."""

    title: str
    text: str
    reason: str
    source: str
    asked_as: tuple[str, ...] = ()  # what people type who look for it


@dataclass(frozen=True, kw_only=True)
class Policy(Entry):
    """Every limit that a check or a computation uses. ``limits`` holds each: the club's
    own, else the default that its schema gives. So does ``house_rules``, by name.
    """

    kind: ClassVar[str] = "policy"
    limits: Mapping[str, Limit] = field(default_factory=dict)
    rest: Mapping[str, RestByEffort]
    levels: Mapping[str, LevelLimits]
    house_rules: Mapping[str, HouseRule] = field(default_factory=dict)
    empty_words: tuple[str, ...] = ()
    gaps: tuple[Gap, ...] = ()

    def references(self) -> Iterator[Reference]:
        of_levels = (own for level in self.levels.values() for own in level.limits.values())
        for limit in (*self.limits.values(), *of_levels):
            yield from references("source", limit.sources, "limit")

    def of_level(self, level: str) -> LevelLimits:
        """The limits of a level; the strictest that are known where the policy does not name it."""
        return self.levels.get(level) or self.levels[STRICTEST]

    def slowest_afloat(self, level: str) -> float:
        """The slowest speed at which a level stays up, in m/s: its own, else that of all."""
        own = self.levels[level].limits.get("slowest_afloat") if level in self.levels else None
        return own.value if own else self.limit("slowest_afloat")

    def limit(self, name: str) -> float:
        """The value of a limit. Raises KeyError for a name that the schema does not know."""
        return self.limits[name].value


@dataclass(frozen=True)
class Rating:
    """The interval of the 0-10 effort field that a word owns."""

    least: float
    most: float


@dataclass(frozen=True)
class Beat:
    """The rate of a kick in cycles a second of each leg, on whom it was measured, the source."""

    cycles_per_s: float
    measured: str
    source: str


@dataclass(frozen=True)
class Word:
    """A word of a vocabulary; ``also`` is what else people look for it by. ``rating``,
    ``share_of_best``, ``reference_m``, ``by_level`` and ``counts_as`` are of efforts only,
    ``medley`` of strokes; ``takes_turns`` of partners, ``swimmers`` of teams, ``ready_s``,
    ``enters`` and ``off`` of starts, ``depth_m`` of starts and partners, ``safety`` of these
    three; ``done`` of modes, ``gravity``, ``control`` and ``alarm``, what is typed where it
    happens, of hazards, ``accepts_nothing`` of levels, ``beat`` of kicks; ``forms``, as they stand
    in texts, and the drill that it is ``shown_by``, of terms; ``trained_by`` of goals.
    ``quiet`` words are no tags and no choices.
    """

    title: str
    means: str
    rating: Rating | None = None
    share_of_best: float | None = None
    reference_m: float | None = None
    by_level: Mapping[str, float] = field(default_factory=dict)
    also: tuple[str, ...] = ()
    counts_as: str = ""
    medley: int | None = None
    takes_turns: bool = False
    swimmers: int | None = None
    ready_s: int | None = None
    enters: str = ""
    off: str = ""
    done: str = ""
    depth_m: DepthNeeded = ANY_DEPTH
    safety: tuple[Hazard, ...] = ()
    gravity: str = ""
    control: str = ""
    alarm: tuple[str, ...] = ()
    accepts_nothing: bool = False
    beat: Beat | None = None
    quiet: bool = False
    forms: tuple[str, ...] = ()
    shown_by: str = ""
    trained_by: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Vocabulary(Entry):
    """A closed list of words, in the order that people read them."""

    kind: ClassVar[str] = "vocabulary"
    about: str
    words: Mapping[str, Word]

    def references(self) -> Iterator[Reference]:
        shown = (word.shown_by for word in self.words.values() if word.shown_by)
        yield from references("drill", shown, "shown_by")
