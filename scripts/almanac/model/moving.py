"""What is done in the water or on land: what drills and benchmarks have in common."""

from __future__ import annotations

from dataclasses import dataclass, field

from almanac.frozen import quick
from almanac.model import vocabularies as words
from almanac.model.entry import RESOLVED, Entry, Evidence, Hazard


@quick
@dataclass(frozen=True, slots=True)
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
    done: str = field(default="", metadata=RESOLVED)
    """Where work of a mode of the club's own is done; "" for a mode that the program knows."""

    @property
    def activity(self) -> Activity:
        """What is done."""
        return Activity(self.mode, self.stroke, self.kick, self.position, self.arms)

    @property
    def is_kick(self) -> bool:
        """Whether it is done with the legs alone."""
        return self.mode == words.KICK

    @property
    def is_flutter_kick(self) -> bool:
        """Whether it is flutter, done with the legs alone."""
        return self.is_kick and self.kick == words.FLUTTER

    @property
    def is_full_stroke(self) -> bool:
        """Whether the whole stroke is swum."""
        return self.mode == words.SWIM

    @property
    def is_on_back(self) -> bool:
        """Whether the body lies face up."""
        return self.position == words.SUPINE

    @property
    def is_on_front(self) -> bool:
        """Whether the body lies face down."""
        return self.position == words.PRONE

    @property
    def is_on_land(self) -> bool:
        """Whether it is done out of the water."""
        if self.position == words.ON_LAND:
            return not self.is_under_water
        return self.is_land_mode

    @property
    def is_land_mode(self) -> bool:
        """Whether its mode by itself is work out of the water."""
        return words.OUT in (self.done, words.DONE.get(self.mode))

    @property
    def is_under_water(self) -> bool:
        """Whether some of it is done below the surface on purpose."""
        return words.BELOW in (self.done, words.DONE.get(self.mode))

    @property
    def is_upright(self) -> bool:
        """Whether the body is upright, feet down."""
        return self.position == words.VERTICAL

    @property
    def is_wall_work(self) -> bool:
        """Whether it is starts, turns, break-outs or finishes."""
        return self.mode == words.WALL

    @property
    def is_on_board(self) -> bool:
        """Whether the hands are on a board."""
        return self.arms == words.BOARD

    @property
    def is_backstroke(self) -> bool:
        """Whether it serves backstroke, in which nobody sees ahead."""
        return self.stroke == words.BACKSTROKE
