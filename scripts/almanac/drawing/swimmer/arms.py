"""What the arms do: joint angles of both arms for each word of the arms vocabulary, by how the body
is held.

The angles are ours, set by eye from what the words of the vocabulary say. Above the head both arms
lean inward, so that the hands meet. On deck and on land an arm that would go through the ground
stays on it.
"""

from __future__ import annotations

from typing import Literal

from almanac.drawing.swimmer.segments import Arm

Stance = Literal["supine", "prone", "upright"]
Pair = tuple[Arm, Arm]

LEADING = ("one-extended", "streamline", "board", "holding-wall")
"""Words whose hands are ahead of the head, so that they meet a wall first."""
RISING = ("hands-up", "one-arm-strokes", "stroking")
"""Words whose hands or elbows leave the water."""
LOW_HANDS = (
    "catch",
    "throw",
    "at-hips",
    "waiting",
    "fists",
    "high-elbow",
    "hands-under",
    "sculling-ahead",
)
"""Words of the hands at which no arm is over the water."""

_STREAMLINE = (Arm(177, 2, spread=-13.4), Arm(176, 2, spread=-13.2))

# The near arm, then the far arm.
_ON_THE_BACK: dict[str, Pair] = {
    "at-sides": (Arm(0, 6), Arm(-6, 6)),
    "one-extended": (Arm(0, 6), Arm(175, 2, spread=-3)),
    "streamline": _STREAMLINE,
    "board": (Arm(11, 4), Arm(10, 3)),
    "holding-wall": (Arm(162, 4, wrist=15), Arm(161, 4, wrist=15)),
    "crossed": (Arm(17, 128, twist=76), Arm(17, 132, twist=80)),
    "hands-up": (Arm(8, 84), Arm(12, 74)),
    "sculling": (Arm(-24, 20, spread=14), Arm(-20, 18, spread=14)),
    "holding-gear": (Arm(9, 116, twist=70), Arm(9, 118, twist=70)),
    "one-arm-strokes": (Arm(97, 2), Arm(-5, 6)),
    "stroking": (Arm(97, 2), Arm(-140, 78, spread=45)),
    "free": (Arm(-14, 22), Arm(-10, 22)),
}
_ON_THE_FRONT: dict[str, Pair] = {
    "at-sides": (Arm(-4, 8), Arm(5, 6)),
    "one-extended": (Arm(-4, 8), Arm(178, 2, spread=-3)),
    "streamline": _STREAMLINE,
    "board": (Arm(184, 3, spread=-2), Arm(183, 3, spread=-2)),
    "holding-wall": (Arm(188, 8, wrist=-18), Arm(157, 5, wrist=-66)),
    "crossed": (Arm(20, 126, twist=76), Arm(20, 130, twist=80)),
    "hands-up": (Arm(176, 72), Arm(172, 68)),
    "sculling": (Arm(14, 14, spread=14), Arm(8, 14, spread=14)),
    "holding-gear": (Arm(174, 4), Arm(173, 4)),
    "one-arm-strokes": (Arm(-104, 128, twist=180, wrist=-10), Arm(177, 2, spread=-3)),
    "stroking": (Arm(-104, 128, twist=180, wrist=-10), Arm(134, 88, twist=180)),
    "free": (Arm(168, 14), Arm(164, 12)),
}
_UPRIGHT: dict[str, Pair] = {
    "at-sides": (Arm(0, 8), Arm(8, 8)),
    "one-extended": (Arm(0, 8), Arm(177, 2, spread=-3)),
    "streamline": _STREAMLINE,
    "board": (Arm(92, 6), Arm(91, 6)),
    "holding-wall": (Arm(103, 16, wrist=-28), Arm(101, 18, wrist=-28)),
    "crossed": (Arm(20, 126, twist=76), Arm(20, 130, twist=80)),
    "hands-up": (Arm(84, 92), Arm(94, 88)),
    "sculling": (Arm(24, 58, twist=12, spread=18), Arm(34, 44, twist=12, spread=18)),
    "holding-gear": (Arm(44, 92, wrist=-10), Arm(47, 90, wrist=-10)),
    "one-arm-strokes": (Arm(150, 8), Arm(8, 8)),
    "stroking": (Arm(150, 8), Arm(48, 42)),
    "free": (Arm(16, 26), Arm(24, 22)),
}
# On the side: the lower arm, then the upper one.
_ON_THE_SIDE: dict[str, Pair] = {
    "at-sides": (Arm(6, 8), Arm(14, 12, spread=-6)),
    "one-extended": (Arm(177, 2, spread=-4), Arm(14, 12, spread=-6)),
    "streamline": _STREAMLINE,
    "board": (Arm(178, 2, spread=-21), Arm(178, 2, spread=-1)),
    "holding-wall": (Arm(178, 2, spread=-25), Arm(178, 2, spread=4)),
    "crossed": (Arm(20, 108, twist=62), Arm(22, 112, twist=66)),
    "hands-up": (Arm(177, 2, spread=-4), Arm(122, 8, spread=60)),
    "sculling": (Arm(34, 24), Arm(38, 30)),
    "holding-gear": (Arm(178, 2, spread=-18), Arm(178, 2, spread=-3)),
    "one-arm-strokes": (Arm(177, 2, spread=-4), Arm(64, 84, twist=28, spread=64)),
    "stroking": (Arm(-140, 84, spread=40), Arm(64, 84, twist=28, spread=64)),
    "free": (Arm(172, 10, spread=-4), Arm(14, 16, spread=-6)),
}
# Strokes whose arms go together: on the front butterfly under the body and breaststroke in under
# the chin, on the
# back both arms over.
TOGETHER: dict[str, Pair] = {
    "double-arm": (Arm(107, 2), Arm(101, 2)),
    "butterfly": (Arm(134, 88, twist=180), Arm(138, 84, twist=180)),
    "breaststroke": (Arm(64, 102), Arm(68, 100)),
}
# A stroke that is drawn under water, where no arm can come over: the first pull of a break-out.
_BREAKING_OUT: dict[Stance, Pair] = {
    "supine": (Arm(-140, 78, spread=45), Arm(176, 2, spread=-3)),
    "prone": (Arm(134, 88, twist=180), Arm(177, 2, spread=-3)),
}
# One arm of a butterfly comes over straight and low to the side, the other waits ahead.
BUTTERFLY_OVER: Pair = (Arm(-128, 8, spread=52), Arm(177, 2, spread=-3))
_SAME_IN_A_ROLL = ("board", "holding-wall", "holding-gear")
_BY_STANCE: dict[Stance, dict[str, Pair]] = {
    "supine": _ON_THE_BACK,
    "prone": _ON_THE_FRONT,
    "upright": _UPRIGHT,
}
# On the ground no hand goes below the trunk.
_ON_THE_GROUND: dict[Stance, dict[str, Pair]] = {
    "supine": {
        "at-sides": (Arm(0, 3), Arm(-1, 2)),
        "one-extended": (Arm(0, 3), Arm(176, 2, spread=-3)),
        "board": (Arm(34, 3), Arm(33, 3)),
        "sculling": (Arm(2, 14), Arm(0, 12)),
        "one-arm-strokes": (Arm(97, 2), Arm(-1, 2)),
        "stroking": (Arm(97, 2), Arm(-1, 2)),
        "free": (Arm(2, 14), Arm(0, 12)),
    },
    "prone": {
        "at-sides": (Arm(-4, 3), Arm(-2, 3)),
        "holding-gear": (Arm(182, 3), Arm(181, 3)),
        "holding-wall": (Arm(184, 6, wrist=-8), Arm(183, 6, wrist=-8)),
        "sculling": (Arm(-6, 4), Arm(-2, 3)),
        "crossed": (Arm(176, 100, twist=90), Arm(176, 104, twist=90)),
        "stroking": (Arm(-104, 128, twist=180, wrist=-10), Arm(181, 2, spread=-3)),
        "free": (Arm(178, 12), Arm(176, 12)),
    },
    "upright": {},
}
RESTING = ("at-sides", "holding-wall", "sculling", "free")
"""Words for which a swimmer who sits on the deck edge leans on the hands."""


def arms(word: str, stance: Stance, *, grounded: bool = False, under: bool = False) -> Pair:
    """The near and the far arm; raises KeyError for a word of ``model.drawing.ARMS`` that has no
    angles.

    ``grounded``: of a body on something hard; ``under``: of one under water, where no arm comes
    over.
    """
    if under and word in ("stroking", "one-arm-strokes") and stance in _BREAKING_OUT:
        return _BREAKING_OUT[stance]
    if grounded and word in _ON_THE_GROUND[stance]:
        return _ON_THE_GROUND[stance][word]
    return _BY_STANCE[stance][word]


def rolled_arms(word: str, stance: Stance, *, on_side: bool, grounded: bool = False) -> Pair:
    """The near and the far arm of a body turned about its long axis.

    The arm that leads or pulls is the lower one, the one that recovers the upper one. On the back
    the near side is the lower one, on the front the upper one.
    """
    if on_side or word in _SAME_IN_A_ROLL:
        lower, upper = _ON_THE_SIDE[word]
        if grounded and word == "stroking":
            lower = _ON_THE_SIDE["one-arm-strokes"][0]
    elif word == "stroking" and stance == "supine" and not grounded:
        lower, upper = Arm(-158, 104, spread=52), arms(word, stance)[0]
    else:
        upper, lower = arms(word, stance, grounded=grounded)
    return (lower, upper) if stance == "supine" else (upper, lower)


def seated_arms(word: str, trunk: float) -> Pair:
    """The arms of a swimmer who sits, the trunk at ``trunk`` degrees: an idle hand rests on the
    deck.
    """
    lean = 118 - trunk
    near, far = Arm(-lean, 0, wrist=-62), Arm(-lean - 4, 0, wrist=-58)
    if word in RESTING:
        return near, far
    if word in ("one-extended", "one-arm-strokes"):
        busy = max(arms(word, "upright"), key=lambda arm: arm.shoulder)
        return (near, busy) if word == "one-extended" else (busy, far)
    return arms(word, "upright")
