"""From the words of an entry to a posed body: position, arms, kick, setting and moment to joints.

Heights are in standing heights with the water line at 0; on dry land the ground is at 0.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from almanac.figures.arms import ARMS, LEADING
from almanac.figures.flutter import Lie, moment_of
from almanac.figures.plans import Hold, Plan
from almanac.figures.postures import posture
from almanac.figures.segments import Posture, Skeleton, skeleton

POSITIONS = ("supine", "prone", "side", "rotating", "vertical", "on-land")
KICKS = ("flutter", "dolphin", "breaststroke", "none")
SETTINGS = ("surface", "under-water", "at-wall", "deck-edge", "on-land")
STROKES = ("backstroke", "freestyle", "butterfly", "breaststroke", "any")
Wall = tuple[float, Literal["ahead", "behind"]]


@dataclass(frozen=True)
class Pose:
    """A posed body and where it is.

    ``wall``: the x of a wall and whether it is ahead (to the right) or behind; ``edge``: the x of a deck
    edge, the deck to its right.
    """

    plan: Plan
    posture: Posture
    skeleton: Skeleton
    wall: Wall | None
    edge: float | None

    @property
    def turned(self) -> bool:
        """Whether the body is rolled so far that it is seen from the front rather than from the side."""
        return self.plan.roll > 60


def one_of(kind: str, word: str, known: tuple[str, ...]) -> str:
    """The word as given; raises ValueError where it is not a known one."""
    if word not in known:
        raise ValueError(f"unknown {kind} {word!r}: one of {', '.join(known)}")
    return word


def setting_of(position: str, arms: str, setting: str | None) -> str:
    """Where the body is drawn; what is not said follows from position and arms.

    A position on land stays on land whatever is said: on the ground, or on the deck's edge if the hands hold.
    """
    if setting is not None:
        one_of("setting", setting, SETTINGS)
    if position == "on-land":
        edge = setting == "deck-edge" or (setting is None and arms == "holding-wall")
        return "deck-edge" if edge else "on-land"
    return setting or ("at-wall" if arms == "holding-wall" else "surface")


def hold_of(position: str, kick: str, setting: str) -> Hold:
    """How the body is carried."""
    if setting == "deck-edge":
        leaning = position == "supine" or (position == "on-land" and kick != "none")
        return "reclined" if leaning else "seated" if position in ("vertical", "on-land") else "lying"
    if position == "vertical":
        return "standing" if setting == "on-land" else "upright"
    return "standing" if position == "on-land" and kick == "none" else "lying"


def faces_up(position: str, arms: str, gear: tuple[str, ...], stroke: str) -> bool:
    """Whether a lying body is on its back; in a roll it follows from the stroke, then from arms and gear."""
    if position not in ("side", "rotating"):
        return position != "prone"
    if stroke != "any":
        return stroke == "backstroke"
    return arms != "board" and "snorkel" not in gear


def plan_of(
    *,
    position: str,
    arms: str,
    kick: str,
    setting: str | None = None,
    moment: int = 2,
    gear: tuple[str, ...] = (),
    stroke: str = "any",
) -> Plan:
    """The words settled; raises ValueError for one that is not known.

    `any` is drawn as the stroke has it, else as a flutter on the front. A board held by a swimmer on the back
    lies on the thighs.
    """
    for kind, word, known in (
        ("position", position, (*POSITIONS, "any")),
        ("arms", arms, ARMS),
        ("kick", kick, (*KICKS, "any")),
        ("stroke", stroke, STROKES),
    ):
        one_of(kind, word, known)
    if position == "any":
        position = "supine" if stroke == "backstroke" else "prone"
    if kick == "any":
        kick = {"butterfly": "dolphin", "breaststroke": "breaststroke"}.get(stroke, "flutter")
    if position == "supine" and arms == "holding-gear" and "kickboard" in gear:
        arms = "board"
    where = setting_of(position, arms, setting)
    hold, face_up = hold_of(position, kick, where), faces_up(position, arms, gear, stroke)
    lie: Lie = "supine" if face_up else "prone"
    if position == "side" or hold not in ("lying", "reclined"):
        lie = "centred"
    return Plan(position, arms, kick, where, moment_of(moment), stroke, hold, lie, face_up)


def pose(plan: Plan) -> Pose:
    """The posed body, with the wall or the deck's edge that belongs to it."""
    angles = posture(plan)
    bones = skeleton(angles)
    edge = None if plan.setting != "deck-edge" else -0.2 if plan.hold == "seated" else -0.05
    return Pose(plan, angles, bones, _wall(plan, bones), edge)


def _wall(plan: Plan, bones: Skeleton) -> Wall | None:
    """Where the hands hold it; else a little beyond leading hands, or just behind the feet."""
    if plan.arms == "holding-wall" and plan.setting != "deck-edge":
        near, far = bones.near_arm, bones.far_arm
        if plan.wet and plan.setting != "under-water":
            return max(near.wrist.x, far.wrist.x) + 0.012, "ahead"
        return max(near.fingertip.x, far.fingertip.x) + 0.008, "ahead"
    if plan.setting != "at-wall":
        return None
    tip = max(bones.near_arm.fingertip.x, bones.far_arm.fingertip.x)
    if plan.hold == "upright" or (plan.arms in LEADING and tip > bones.vertex.x):
        return max(tip, bones.vertex.x, 0.15 if plan.hold == "upright" else 0.0) + (
            0.22 if plan.arms == "board" else 0.09
        ), "ahead"
    return -0.63, "behind"
