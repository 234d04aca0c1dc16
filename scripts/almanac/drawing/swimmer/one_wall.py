"""A wall that several bodies of a picture share: it stays on its side of the picture, and who
leaves it goes the other way.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from almanac.drawing.shapes import number
from almanac.drawing.swimmer.framing import Box
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.scene import Scene

Side = Literal["left", "right"]


def side_of(held: Pose) -> Side | None:
    """On which side of a body its wall or its deck is; None where it has none. Who turns over comes
    to a wall, drawn or not.
    """
    if held.edge is not None or held.spec.hold == "tucked":
        return "right"
    return None if held.wall is None else "right" if held.wall[1] == "ahead" else "left"


def with_one_wall(scenes: Sequence[Scene]) -> list[Scene]:
    """The scenes, each that has the wall on the other side than the first one drawn the other way
    round. One without a wall goes on the way that the one before it went.
    """
    first = next((side for scene in scenes if (side := side_of(scene.held))), None)
    turned, found = False, []
    for scene in scenes:
        side = side_of(scene.held)
        turned = side != first if side else turned
        found.append(replace(scene, mirrored=turned))
    return found


def reach_from_wall(held: Pose, box: Box) -> float:
    """How far from the face of its wall a body and what is round it reaches into the pool, in
    standing heights; 0 where there is no wall.
    """
    if held.edge is not None:
        return held.edge - box.left
    if held.wall is None:
        return 0.0
    return held.wall[0] - box.left if held.wall[1] == "ahead" else box.right - held.wall[0]


def turned_round(elements: str, wide: float) -> str:
    """The elements of a window ``wide`` units wide, drawn the other way round; what is written
    among them stays legible.
    """
    legible = re.sub(
        r'<text (class="[^"]*" x="([-\d.]+)")',
        lambda found: (
            f'<text transform="translate({number(2 * float(found[2]))} 0) scale(-1 1)" {found[1]}'
        ),
        elements,
    )
    return f'<g transform="translate({number(wide)} 0) scale(-1 1)">{legible}</g>'
