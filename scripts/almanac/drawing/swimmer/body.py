"""The picture of an entry: one body, or several in turn or side by side, and its speed, as SVG
text.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from almanac.drawing.document import checked_identifier, document
from almanac.drawing.swimmer.description import described
from almanac.drawing.swimmer.framing import WIDTH, frame_of, view_of
from almanac.drawing.swimmer.one_wall import with_one_wall
from almanac.drawing.swimmer.panels import panels
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.poses import pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.scene import Scene, scene_parts
from almanac.drawing.swimmer.slips import from_above
from almanac.drawing.swimmer.speed_trace import ROOM, STILL, Speed, speed_trace
from almanac.drawing.swimmer.undrawn import undrawn_drawing
from almanac.model.drawing import OPEN, DrawingChoice, DrawnBody, undrawn_words


class Words(NamedTuple):
    """What an entry says of the body: words of the vocabularies, and ids of gear."""

    position: str
    arms: str
    kick: str
    stroke: str = OPEN
    gear: tuple[str, ...] = ()


def body_drawing(
    *,
    position: str,
    arms: str,
    kick: str,
    gear: Sequence[str] = (),
    stroke: str = OPEN,
    identifier: str = "body",
    titles: Mapping[str, str] | None = None,
    **chosen: object,
) -> str:
    """The picture of a body in these words, ``chosen`` being the fields of a `DrawingChoice`."""
    choice = DrawingChoice(**chosen)  # type: ignore[arg-type]
    words = Words(position, arms, kick, stroke, tuple(gear))
    return picture_drawing(words, choice, identifier=identifier, titles=titles)


def picture_drawing(
    words: Words,
    choice: DrawingChoice,
    *,
    identifier: str = "body",
    titles: Mapping[str, str] | None = None,
    efforts: Mapping[str, str] | None = None,
) -> str:
    """The picture of an entry as an SVG element that scales to its container. ``efforts`` has the
    title of each effort, the easiest first; a picture of speeds needs those that it shows.

    Gear that cannot be drawn is still named in the description. ``identifier`` begins the ids of
    title and description and must be unique on the page.

    Where one of the words cannot be drawn, a neutral picture says so: with the title of the word
    where ``titles`` has it by field, else with the word itself. Raises ValueError for an identifier
    that cannot begin an id.
    """
    checked_identifier(identifier)
    undrawn = dict(undrawn_words(*words[:4], choice))
    if undrawn:
        return undrawn_drawing({**undrawn, **(titles or {})}, identifier)
    scenes = with_one_wall([scene_of(words, body) for body in (choice, *choice.then)])
    several = choice.then or choice.speed
    parts, height = panels(scenes) if several else _alone(scenes[0])
    speeds = _speeds(choice, efforts or {})
    if speeds:
        parts += speed_trace(speeds, choice.speed_over, height)
        height += ROOM
    about = described(scenes, [speed.name for speed in speeds], choice.speed_over)
    return document("body", WIDTH, height, identifier, about, parts)


def _speeds(choice: DrawingChoice, efforts: Mapping[str, str]) -> list[Speed]:
    """The speed of each part, in the club's own words as they stand within a sentence."""
    named = {
        word: Speed(level, f"{title[:1].lower()}{title[1:]}")
        for level, (word, title) in enumerate(efforts.items(), 1)
    }
    begins = [STILL] if choice.from_still else []
    return [*begins, *(named[word] for word in choice.speed)]


def _alone(scene: Scene) -> tuple[list[str], float]:
    view = view_of(scene.held, scene.worn)
    return scene_parts(scene, view), frame_of(scene.held).height


def scene_of(words: Words, body: DrawnBody) -> Scene:
    """One body of a picture."""
    above = body.view == "above"
    held = pose(spec_of(words, body), from_above if above else None, above=above)
    return Scene(held, _worn(words, body), body.says)


def _worn(words: Words, body: DrawnBody) -> tuple[str, ...]:
    return words.gear if body.gear is None else body.gear


def spec_of(words: Words, body: DrawnBody) -> PoseSpec:
    """A body's words settled, the entry's where it has none of its own; raises ValueError for a
    word that cannot be drawn.
    """
    return resolve_pose(
        position=body.position or words.position,
        arms=body.arms or words.arms,
        kick=body.kick or words.kick,
        stroke=body.stroke or words.stroke,
        gear=_worn(words, body),
        setting=body.setting,
        moment=2 if body.moment is None else body.moment,
        posture=body.posture,
        wall=body.wall,
        face=body.face,
        together=body.together,
        one_leg=body.one_leg,
        other_side=body.other_side,
        hands=body.hands,
        size=body.size,
        marks=body.marks,
    )
