"""The body figure in words, for who does not see it."""

from __future__ import annotations

from collections.abc import Sequence

from almanac.drawing.swimmer.arms import RESTING
from almanac.drawing.swimmer.grounded import IDLE
from almanac.drawing.swimmer.legs_in_words import kick_words, legs_in_words
from almanac.drawing.swimmer.phrases import (
    ARMS_WORDS,
    FACE_WORDS,
    GEAR_WORDS,
    HANDS_WORDS,
    HOLD_WORDS,
    MARK_WORDS,
    OWN_ARMS,
    POSITION_WORDS,
    POSTURE_WORDS,
    RESTING_WORDS,
    SETTING_WORDS,
    WALL_WORDS,
)
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.scene import Scene

_UPRIGHT = ("upright", "wading", "gathered", "blocked", "edged", "kneed")
"""Holds with the trunk over the hips or bent down from them: a face looks one way."""


def title_words(spec: PoseSpec) -> str:
    """The figure's title."""
    if spec.hold == "hung":
        return "Body figure: in the backstroke start at the wall"
    if spec.hold in OWN_ARMS:
        return f"Body figure: {HOLD_WORDS[spec.hold]}"
    if spec.hold == "planted":
        return f"Body figure: {_lying_words(spec)}, feet on the wall, ready to push"
    phrases = [POSITION_WORDS[spec.position]]
    if spec.posture and spec.posture != "standing":
        phrases = ["on land", POSTURE_WORDS[spec.posture]]
    legs = [] if spec.hold == "posed" else [kick_words(spec).lower()]
    return f"Body figure: {', '.join([*phrases, arms_words(spec), *legs])}"


def arms_words(spec: PoseSpec) -> str:
    """What the arms do, as drawn: a swimmer who sits leans on hands that have nothing to do."""
    if spec.hold == "hung":
        return "hands on the edge"
    if spec.hold == "planted":
        return ARMS_WORDS["streamline"]
    if spec.hold in OWN_ARMS:
        return OWN_ARMS[spec.hold]
    if spec.hold == "posed":
        return _posed_arms(spec)
    if spec.hands:
        return HANDS_WORDS[spec.hands]
    leaning = spec.hold in ("seated", "reclined") and spec.arms in RESTING
    if leaning or (spec.arms == "holding-wall" and spec.setting == "deck-edge"):
        return "hands on the deck"
    if spec.wall == "touching":
        both = spec.stroke in ("butterfly", "breaststroke") and not spec.roll
        return (
            "both hands on the wall"
            if both
            else "the leading hand on the wall, the other arm along the body"
        )
    if spec.together:
        return (
            "both arms coming over together"
            if spec.together == "double-arm"
            else "both arms pulling together"
        )
    if spec.arms == "board" and spec.position == "supine" and spec.hold == "lying":
        return "hands on a kickboard over the thighs"
    if (
        spec.arms in ("stroking", "one-arm-strokes")
        and spec.setting == "under-water"
        and spec.hold == "lying"
    ):
        return (
            ARMS_WORDS["one-extended"]
            if spec.roll
            else "one arm pulling, the other stretched beyond the head"
        )
    return ARMS_WORDS[spec.arms]


def _posed_arms(spec: PoseSpec) -> str:
    if spec.posture == "lying-on-back" and spec.arms == "free":
        return RESTING_WORDS["lying-over-roll"]
    if spec.arms == "holding-wall" and spec.posture.startswith("standing"):
        return "hands on a wall ahead"
    if spec.posture == "plank":
        reaches = spec.arms in ("one-extended", "one-arm-strokes")
        return (
            "one forearm on the ground, the other arm reaching ahead"
            if reaches
            else RESTING_WORDS["plank"]
        )
    if spec.arms in IDLE:
        return RESTING_WORDS.get(spec.posture, ARMS_WORDS[spec.arms])
    return ARMS_WORDS[spec.arms]


def gear_words(spec: PoseSpec, gear: tuple[str, ...]) -> str:
    """The gear by name; what has no words of its own by its id, read as words."""
    held = {"pull-buoy": "a pull buoy in the hands"} if spec.arms == "holding-gear" else {}
    return ", ".join(held.get(word, GEAR_WORDS.get(word, word.replace("-", " "))) for word in gear)


def described(scenes: Sequence[Scene], speeds: Sequence[str], over: str) -> tuple[str, str]:
    """The title and the description of a picture of one scene or several, and of its speeds."""
    title, told = title_words(scenes[0].held.spec), _told(scenes[0])
    if len(scenes) > 1:
        said = [f"{one.sign} {one.says}".strip() for one in scenes]
        title = f"Body figure in {len(scenes)} parts: {', '.join(said)}"
        told = " ".join(
            f"{number}. {words}: {_told(one)}"
            for number, (words, one) in enumerate(zip(said, scenes, strict=True), 1)
        )
    if speeds:
        told += f" Speed over {over}: {', '.join(speeds)}."
    return title, told


def _told(scene: Scene) -> str:
    return description(scene.held, scene.worn, mirrored=scene.mirrored)


def description(held: Pose, gear: tuple[str, ...], *, mirrored: bool = False) -> str:
    """The figure in words: body, arms, each leg, gear; ``mirrored``: drawn the other way round."""
    spec = held.spec
    heading = _other_way(_heading(spec)) if mirrored else _heading(spec)
    sentences = [
        f"Swimmer {_body(held)}, {heading}; {arms_words(spec)}.",
        legs_in_words(held),
    ]
    if spec.wall:
        sentences += filter(None, [WALL_WORDS[spec.wall]])
    elif held.wall and spec.arms != "holding-wall":
        sentences.append(
            f"The wall is {'ahead' if held.wall[1] == 'ahead' else 'behind the feet'}."
        )
    if held.above:
        sentences.append("Seen from above.")
    sentences += [MARK_WORDS[mark] for mark in spec.marks]
    if gear:
        sentences.append(f"Gear: {gear_words(spec, gear)}.")
    return " ".join(sentences)


def _lying_words(spec: PoseSpec) -> str:
    return POSITION_WORDS["supine" if spec.face_up else "prone"]


def _body(held: Pose) -> str:
    """How the body is held and where."""
    spec = held.spec
    if spec.hold == "hung":
        return f"at the wall, {HOLD_WORDS['hung']}"
    if spec.hold in OWN_ARMS:
        return HOLD_WORDS[spec.hold]
    if spec.hold == "planted":
        return f"{_lying_words(spec)} under water, {HOLD_WORDS['planted']}"
    if spec.posture and spec.hold != "wading":
        phrases = ["on land", POSTURE_WORDS[spec.posture]]
    else:
        phrases = [
            f"{POSITION_WORDS[spec.position]} {SETTING_WORDS[spec.setting]}",
            HOLD_WORDS.get(spec.hold, ""),
        ]
    if spec.hold == "lying" and (spec.roll or spec.position == "on-land"):
        phrases.append(f"face {_face(held)}")
    if spec.face and spec.hold == "lying" and not spec.roll:
        phrases.append(FACE_WORDS[spec.face])
    return ", ".join(filter(None, phrases))


def _heading(spec: PoseSpec) -> str:
    if spec.hold in ("seated", "hung"):
        return "facing left"
    if spec.hold == "tucked":
        return "on the way to the right"
    along = ("plank", "bridge", "press-up", "side-bridge")
    lying = spec.posture.startswith("lying") or spec.posture in along
    upright = spec.hold in _UPRIGHT or (spec.hold == "posed" and not lying)
    return "facing right" if upright else "head to the right"


def _other_way(heading: str) -> str:
    words = {"right": "left", "left": "right"}
    return " ".join(words.get(word, word) for word in heading.split(" "))


def _face(held: Pose) -> str:
    axis = held.skeleton.head_axes.front
    return "towards you" if axis.z > 0.9 else "up" if axis.y > 0 else "down"
