"""A plan: the words of an entry, settled, with what follows from them for the body."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from almanac.figures.arms import RISING, TOGETHER
from almanac.figures.flutter import Lie

DECK = 0.045
"""The deck's height above the water."""
ROLL = {"side": 90.0, "rotating": 42.0}
Hold = Literal["lying", "upright", "standing", "seated", "reclined"]


@dataclass(frozen=True)
class Plan:
    """Words of the vocabularies, with what follows from them.

    ``hold``: how the body is carried; ``lie``: what the kick is drawn for; ``face_up``: whether a lying body
    is on its back. ``stroke`` is `any` where it is not said.
    """

    position: str
    arms: str
    kick: str
    setting: str
    moment: int
    stroke: str
    hold: Hold
    lie: Lie
    face_up: bool

    @property
    def roll(self) -> float:
        """How far the body is turned about its long axis."""
        return ROLL.get(self.position, 0.0) if self.hold == "lying" else 0.0

    @property
    def wet(self) -> bool:
        """Whether there is water in the picture."""
        return self.setting != "on-land"

    @property
    def together(self) -> str:
        """The stroke on the front whose arms pull together, by name or else by kick; "" for any other."""
        if self.arms != "stroking" or self.position != "prone" or self.grounded:
            return ""
        by_kick = {"dolphin": "butterfly", "breaststroke": "breaststroke"}.get(self.kick, "")
        return by_kick if self.stroke == "any" else self.stroke if self.stroke in TOGETHER else ""

    @property
    def rising(self) -> bool:
        """Whether the arms leave the water."""
        return self.arms in RISING and not self.together

    @property
    def grounded(self) -> bool:
        """Whether the body lies on something hard."""
        return self.setting in ("on-land", "deck-edge")
