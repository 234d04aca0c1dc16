"""A pose specification: the words of an entry, resolved, with what follows from them for the
body.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from almanac.drawing.swimmer.arms import LOW_HANDS, RISING, TOGETHER
from almanac.drawing.swimmer.kicks import Lie

DECK = 0.045
"""The deck's height above the water."""
ROLL = {"side": 90.0, "rotating": 42.0}
Hold = Literal[
    "lying",
    "upright",
    "wading",
    "seated",
    "reclined",
    "posed",
    "planted",
    "hung",
    "gathered",
    "tucked",
    "flying",
    "blocked",
    "edged",
    "kneed",
    "entering",
]


@dataclass(frozen=True)
class PoseSpec:
    """Words of the vocabularies, with what follows from them.

    ``hold``: how the body is carried; ``lie``: what the kick is drawn for; ``face_up``: whether a
    lying body is on its back. ``stroke`` is `any` where it is not said; ``posture``, ``wall`` and
    ``face`` are empty where they are not said; ``hands``, ``size`` and ``marks`` say more of what
    the arms, the kick and the picture show.
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
    posture: str = ""
    wall: str = ""
    face: str = ""
    paired: bool = False
    one_leg: bool = False
    other_side: bool = False
    hands: str = ""
    size: str = ""
    marks: tuple[str, ...] = ()

    @property
    def roll(self) -> float:
        """How far the body is turned about its long axis."""
        position = "side" if self.posture == "side-lying" else self.position
        turned = ROLL.get(position, 0.0) if self.hold == "lying" else 0.0
        return -turned if self.other_side else turned

    @property
    def wet(self) -> bool:
        """Whether there is water in the picture."""
        return self.setting != "on-land"

    @property
    def together(self) -> str:
        """The stroke whose arms are drawn together, as TOGETHER has it; "" for arms that go in
        turn.

        On the front it is the stroke by name or else by kick; on the back it must be asked for.
        """
        if self.arms != "stroking" or self.grounded or self.wall == "touching":
            return ""
        if self.position == "supine":
            return "double-arm" if self.paired else ""
        if self.position != "prone":
            return ""
        by_kick = {"dolphin": "butterfly", "breaststroke": "breaststroke"}.get(self.kick, "")
        named = by_kick if self.stroke == "any" else self.stroke if self.stroke in TOGETHER else ""
        return named or ("butterfly" if self.paired else "")

    @property
    def rising(self) -> bool:
        """Whether the arms leave the water: a stroke is drawn under it where all else is."""
        under = self.setting == "under-water" and self.arms != "hands-up"
        touching = self.wall == "touching"
        return (
            self.arms in RISING
            and self.hands not in LOW_HANDS
            and (self.together in ("", "double-arm") or self.hands == "over")
            and not (under or touching)
        )

    @property
    def grounded(self) -> bool:
        """Whether the body lies on something hard."""
        return self.setting in ("on-land", "deck-edge")

    @property
    def grips(self) -> bool:
        """Whether the hands hold a wall ahead."""
        resting = self.hold == "posed" and not self.posture.startswith(("standing", "lying"))
        return (
            self.arms == "holding-wall"
            and self.setting != "deck-edge"
            and self.hold != "hung"
            and not resting
        )
