"""What the hands do beyond the word of the arms: joint angles of both arms for the moments that
make a drill that drill.

The angles are ours, set by eye. A word that a body's position does not know leaves the arms as
their own word has them.
"""

from __future__ import annotations

from almanac.drawing.swimmer.arms import Pair, Stance
from almanac.drawing.swimmer.segments import Arm

_AHEAD = Arm(177, 2, spread=-3)
_UNDER_HEAD = Arm(172, 10, spread=-4)
# The near arm, then the far arm.
_BY_STANCE: dict[Stance, dict[str, Pair]] = {
    "supine": {
        "catch": (Arm(-136, 82, spread=38), Arm(-6, 6)),
        "waiting": (Arm(177, 2, spread=-3), Arm(0, 6)),
        "throw": (Arm(-16, 24), Arm(172, 4, spread=-3)),
        "at-hips": (Arm(14, 8), Arm(-4, 6)),
        "fists": (Arm(-136, 82, spread=38), Arm(-6, 6)),
        "sculling-ahead": (Arm(164, 14, spread=14), Arm(158, 18, spread=14)),
        "fingers-up": (Arm(-24, 20, wrist=62), Arm(-20, 18, wrist=62)),
        "fingers-down": (Arm(-6, 8, wrist=-70), Arm(-2, 8, wrist=-70)),
        "across": (Arm(0, 6), Arm(177, 2, spread=-36)),
        "wide": (Arm(177, 2, spread=34), Arm(177, 2, spread=34)),
        "sitting": (Arm(97, 2), Arm(-140, 78, spread=45)),
        "forearm-in": (_UNDER_HEAD, Arm(8, 90, twist=58, spread=3)),
        "forearm-level": (_UNDER_HEAD, Arm(8, 90, twist=-18, spread=3)),
    },
    "prone": {
        "catch-up": (Arm(-152, 70, twist=180, wrist=-8), _AHEAD),
        "fingertips-along": (Arm(-88, 122, wrist=24), _AHEAD),
        "fists": (Arm(134, 88, twist=180), _AHEAD),
        "high-elbow": (Arm(134, 88, twist=180), _AHEAD),
        "hands-under": (Arm(150, 62), _AHEAD),
        "at-hips": (Arm(-2, 10), Arm(-8, 10)),
        "over": (Arm(-128, 8, spread=52), Arm(-124, 8, spread=52)),
        "wide": (Arm(183, 2, spread=34), Arm(182, 2, spread=34)),
        "sculling-ahead": (Arm(157, 16, wrist=18, spread=10), Arm(150, 20, wrist=18, spread=10)),
        "short-grip": (Arm(148, 34), Arm(146, 34)),
        "middle-grip": (Arm(166, 18), Arm(164, 18)),
        "long-grip": (Arm(184, 3, spread=-2), Arm(183, 3, spread=-2)),
    },
    "upright": {},
}


def known(word: str, *, face_up: bool) -> bool:
    """Whether a body that lies so knows the word."""
    return word in _BY_STANCE["supine" if face_up else "prone"]


def with_hands(word: str, stance: Stance, both: Pair) -> Pair:
    """The near and the far arm at the moment that ``word`` names; ``both`` where it has none."""
    return _BY_STANCE[stance].get(word, both)
