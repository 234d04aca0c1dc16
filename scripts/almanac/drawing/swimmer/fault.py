"""The picture of a fault: what is wrong over what is right, in one scale, the difference ringed."""

from __future__ import annotations

from functools import partial

from almanac.drawing.document import checked_identifier, document
from almanac.drawing.swimmer.body import Words, spec_of
from almanac.drawing.swimmer.description import described
from almanac.drawing.swimmer.framing import WIDTH
from almanac.drawing.swimmer.panels import panels
from almanac.drawing.swimmer.poses import pose
from almanac.drawing.swimmer.scene import Scene, Sign
from almanac.drawing.swimmer.segments import Posture
from almanac.drawing.swimmer.slips import from_above, slipped
from almanac.model.drawing import OPEN, DrawnBody
from almanac.model.fault_drawing import FaultDrawing


def fault_drawing(choice: FaultDrawing, *, identifier: str = "fault") -> str:
    """The picture as an SVG element that scales to its container.

    ``identifier`` begins the ids of title and description and must be unique on the page; raises
    ValueError where it cannot begin an id.
    """
    checked_identifier(identifier)
    scenes = [
        _scene(choice.wrong_body, choice, "wrong", choice.wrong.slips),
        _scene(choice, choice, "right", ()),
    ]
    parts, height = panels(scenes)
    title, told = described(scenes, (), "")
    return document("body", WIDTH, height, identifier, (title, told), parts)


def _scene(body: DrawnBody, choice: FaultDrawing, sign: Sign, slips: tuple[str, ...]) -> Scene:
    above = body.view == "above"
    words = Words(body.position or "prone", body.arms or "at-sides", body.kick or "none", OPEN)
    held = pose(spec_of(words, body), partial(_changed, slips=slips, above=above), above=above)
    return Scene(held, body.gear or (), body.says, sign, choice.place)


def _changed(posture: Posture, slips: tuple[str, ...], above: bool) -> Posture:
    return slipped(from_above(posture) if above else posture, slips)
