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
)
WALLS = ("coming-in", "touching", "feet-on", "leaving", "start-hold", "at-back")
FACES = ("in", "out")
GEAR = (
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
class DrawingChoice:
    """What the body figure shows beyond position, arms, kick and gear."""

    setting: str | None = None
    posture: str | None = None
    wall: str | None = None
    face: str | None = None
    together: bool = False
    one_leg: bool = False
    moment: int | None = None


def undrawn_words(
    position: str, arms: str, kick: str, stroke: str, choice: DrawingChoice
) -> Iterator[tuple[str, str]]:
    """The words that cannot be drawn, each with its field: ``position``, ``arms``, ... , ``face``.

    A stroke is among them only where the picture would follow from it.
    """
    fields: Iterable[tuple[str, str | None, tuple[str, ...]]] = (
        ("position", position, (*POSITIONS, OPEN)),
        ("arms", arms, ARMS),
        ("kick", kick, (*KICKS, OPEN)),
        ("setting", choice.setting, SETTINGS),
        ("posture", choice.posture, POSTURES),
        ("wall", choice.wall, WALLS),
        ("face", choice.face, FACES),
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
