"""What an entry says of its body figure, and the words that the figure knows how to draw.

The words stand here, and not with the drawing, because a check warns of those that are not among
them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

OPEN = "any"
"""The word of positions, kicks and strokes that leaves the choice to the rest."""
POSITIONS = ("supine", "prone", "side", "rotating", "vertical", "on-land")
ARMS = (
    "at-sides",
    "one-extended",
    "streamline",
    "board",
    "holding-wall",
    "crossed",
    "hands-up",
    "sculling",
    "holding-gear",
    "one-arm-strokes",
    "stroking",
    "free",
)
KICKS = ("flutter", "dolphin", "breaststroke", "none")
STROKES = ("backstroke", "freestyle", "butterfly", "breaststroke", OPEN)
SETTINGS = ("surface", "under-water", "at-wall", "deck-edge", "on-land")
POSTURES = (
    "standing",
    "standing-on-toes",
    "lying-on-back",
    "lying-over-roll",
    "lying-on-front",
    "side-lying",
    "sitting",
    "sitting-knees-bent",
    "sitting-on-bench",
    "kneeling",
    "plank",
    "bridge",
    "press-up",
    "side-bridge",
    "sitting-on-heels",
    "track-stance",
)
WALLS = (
    "coming-in",
    "touching",
    "knees-in",
    "somersault",
    "feet-on",
    "leaving",
    "start-hold",
    "flight",
    "on-block",
    "at-back",
    "on-edge",
    "on-knee",
    "entry",
)
FACES = ("in", "out", "to-you", "away")
HANDS = (
    "catch",
    "throw",
    "waiting",
    "at-hips",
    "sitting",
    "over",
    "catch-up",
    "fingertips-along",
    "fists",
    "high-elbow",
    "hands-under",
    "sculling-ahead",
    "short-grip",
    "middle-grip",
    "long-grip",
    "fingers-up",
    "fingers-down",
    "across",
    "wide",
    "forearm-in",
    "forearm-level",
)
VIEWS = ("side", "above")
"""From where a body is seen; from the side where it is not said."""
SIZES = ("small", "large")
MARKS = (
    "rope",
    "flags",
    "stopwatch",
    "signal",
    "foot-count",
    "hand-count",
    "six-beats",
    "spin",
    "quarter-turns",
    "rolls",
    "eyes-shut",
    "one-foot",
    "block",
    "ledge",
    "towel",
    "elbow-roll",
    "knees-turn",
    "head-first",
    "feet-first",
)
GEAR = (
    "ankle-band",
    "drag-socks",
    "fins",
    "hand-paddles",
    "kickboard",
    "parachute",
    "pull-buoy",
    "pulley-tower",
    "snorkel",
    "stretch-cord",
    "tempo-beeper",
    "water-cup",
)


@dataclass(frozen=True)
class DrawnBody:
    """One body of a picture: what it shows beyond the entry's words, and its own words where they
    are not the entry's. ``says`` stands by it where there are several.
    """

    says: str = ""
    position: str | None = None
    arms: str | None = None
    kick: str | None = None
    stroke: str | None = None
    gear: tuple[str, ...] | None = None
    setting: str | None = None
    posture: str | None = None
    wall: str | None = None
    face: str | None = None
    hands: str | None = None
    size: str | None = None
    moment: int | None = None
    together: bool = False
    one_leg: bool = False
    other_side: bool = False
    marks: tuple[str, ...] = ()
    view: str = ""


@dataclass(frozen=True)
class DrawingChoice(DrawnBody):
    """What the picture of a drill shows: its body, those that come after it or stand beside it, and
    its speed: efforts, one for each equal part of what ``speed_over`` names, after one in which it
    lies still where ``from_still`` says so.
    """

    then: tuple[DrawnBody, ...] = ()
    speed: tuple[str, ...] = ()
    from_still: bool = False
    speed_over: str = ""


def undrawn_words(
    position: str, arms: str, kick: str, stroke: str, choice: DrawnBody
) -> Iterator[tuple[str, str]]:
    """The words that cannot be drawn, each with its field: ``position``, ``arms``, ... , ``face``.

    A stroke is among them only where the picture would follow from it.
    """
    fields: Iterable[tuple[str, str | None, tuple[str, ...]]] = (
        ("position", choice.position or position, (*POSITIONS, OPEN)),
        ("arms", choice.arms or arms, ARMS),
        ("kick", choice.kick or kick, (*KICKS, OPEN)),
        ("setting", choice.setting, SETTINGS),
        ("posture", choice.posture, POSTURES),
        ("wall", choice.wall, WALLS),
        ("face", choice.face, FACES),
        ("hands", choice.hands, HANDS),
        ("size", choice.size, SIZES),
    )
    for field, word, known in fields:
        if word is not None and word not in known:
            yield field, word
    if stroke not in STROKES and _follows_stroke(position, arms, kick, choice.wall):
        yield "stroke", stroke


def _follows_stroke(position: str, arms: str, kick: str, wall: str | None) -> bool:
    """Whether a body in these words is drawn otherwise in another stroke."""
    return (
        position in ("side", "rotating", OPEN)
        or arms in ("one-arm-strokes", "stroking")
        or kick == OPEN
        or wall == "touching"
    )
