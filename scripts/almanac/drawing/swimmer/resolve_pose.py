"""From the words of an entry to a pose specification; what is not said follows from the rest."""

from __future__ import annotations

from almanac.drawing.swimmer.hands import known
from almanac.drawing.swimmer.kicks import Lie, moment_of
from almanac.drawing.swimmer.pose_spec import ROLL, Hold, PoseSpec
from almanac.model.drawing import OPEN, STROKES, DrawnBody, undrawn_words

_AT_WALL: dict[str, Hold] = {
    "start-hold": "hung",
    "knees-in": "gathered",
    "somersault": "tucked",
    "flight": "flying",
    "on-block": "blocked",
    "on-edge": "edged",
    "on-knee": "kneed",
    "entry": "entering",
}


def setting_of(
    position: str, arms: str, setting: str | None, posture: str = "", wall: str = ""
) -> str:
    """Where the body is drawn; what is not said follows from the rest.

    A position on land stays on land whatever is said: on the ground, or on the deck's edge if the
    hands hold and no posture is given. A body that is rolled is never drawn on the deck's edge: it
    is drawn in the water. Who leaves the wall is under water.
    """
    if posture and (position != "vertical" or posture != "standing"):
        return "on-land"
    if position == "on-land":
        edge = setting == "deck-edge" or (setting is None and arms == "holding-wall")
        return "deck-edge" if edge else "on-land"
    if setting == "deck-edge" and position in ROLL:
        return "surface"
    if wall == "leaving":
        return "under-water"
    if wall == "somersault" and setting is None:
        return "surface"
    return setting or ("at-wall" if wall or arms == "holding-wall" else "surface")


def posture_of(position: str, kick: str, setting: str, posture: str) -> str:
    """How a body on the ground is held: where it is not said, it stands if it does not kick, else
    it lies.
    """
    if posture or setting != "on-land":
        return posture
    lying = {
        "supine": "lying-on-back",
        "prone": "lying-on-front",
        "side": "side-lying",
        "rotating": "",
    }
    return lying.get(
        position, "standing" if position == "vertical" or kick == "none" else "lying-on-back"
    )


def hold_of(position: str, kick: str, setting: str, posture: str, wall: str) -> Hold:
    """How the body is carried."""
    if setting == "deck-edge":
        leaning = position == "supine" or (position == "on-land" and kick in ("flutter", "dolphin"))
        return (
            "reclined" if leaning else "seated" if position in ("vertical", "on-land") else "lying"
        )
    if setting == "on-land":
        return "lying" if posture in ("", "lying-on-front", "side-lying") else "posed"
    if wall in _AT_WALL:
        return _AT_WALL[wall]
    if position == "vertical":
        return "wading" if posture else "upright"
    return "planted" if wall == "feet-on" else "lying"


def faces_up(
    position: str, arms: str, gear: tuple[str, ...], stroke: str, posture: str, wall: str
) -> bool:
    """Whether a lying body is on its back; in a roll it follows from the stroke, then from arms and
    gear.

    Feet on a wall that the hands do not lead away from have come there by a somersault: the body is
    on its back.
    """
    if posture:
        return posture != "lying-on-front"
    if position not in ROLL:
        return position != "prone" or (wall == "feet-on" and arms != "streamline")
    if stroke != OPEN:
        return stroke == "backstroke"
    return arms != "board" and "snorkel" not in gear


def resolve_pose(
    *,
    position: str,
    arms: str,
    kick: str,
    setting: str | None = None,
    moment: int = 2,
    gear: tuple[str, ...] = (),
    stroke: str = OPEN,
    posture: str | None = None,
    wall: str | None = None,
    face: str | None = None,
    together: bool = False,
    one_leg: bool = False,
    other_side: bool = False,
    hands: str | None = None,
    size: str | None = None,
    marks: tuple[str, ...] = (),
) -> PoseSpec:
    """The words settled; raises ValueError for one that cannot be drawn.

    `any` is drawn as the stroke has it, else as a flutter on the front. A board held by a swimmer
    on the back lies on the thighs.
    """
    choice = DrawnBody(
        setting=setting, posture=posture, wall=wall, face=face, hands=hands, size=size
    )
    for field, word in undrawn_words(position, arms, kick, stroke, choice):
        raise ValueError(f"unknown {field} {word!r}")
    if stroke not in STROKES:
        stroke = OPEN
    if position == OPEN:
        position = "supine" if stroke == "backstroke" else "prone"
    if kick == OPEN:
        kick = {"butterfly": "dolphin", "breaststroke": "breaststroke"}.get(stroke, "flutter")
    if position == "supine" and arms == "holding-gear" and "kickboard" in gear:
        arms = "board"
    said = wall or ""
    where = setting_of(position, arms, setting, posture or "", said)
    held = posture_of(position, kick, where, posture or "")
    hold = hold_of(position, kick, where, held, said)
    face_up = faces_up(position, arms, gear, stroke, held, said)
    lie: Lie = "supine" if face_up else "prone"
    if "side" in (position, held.removesuffix("-lying")) or hold not in (
        "lying",
        "reclined",
        "planted",
    ):
        lie = "centred"
    words = position, arms, kick, where, moment_of(moment), stroke, hold, lie, face_up
    lying_hands = hands if hands and hold == "lying" and known(hands, face_up=face_up) else ""
    more = lying_hands, size or "", marks
    return PoseSpec(*words, held, said, face or "", together, one_leg, other_side, *more)
