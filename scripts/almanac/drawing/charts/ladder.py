"""The stages of a progression as a ladder: the first rung at the foot, one arrow up and one down
between two rungs.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from almanac.drawing.document import checked_identifier, document
from almanac.drawing.lettering import LEADING, lettered, lines_of, short_lines
from almanac.drawing.shapes import at, number

WIDTH = 340.0
TITLE, AIM, SIGN = 15.0, 13.5, 13.0
"""Sizes of type; the style sheet sets the same."""
_SIDE, _TEXT_LEFT, _TEXT_RIGHT = 8.0, 54.0, 326.0
_PAD, _GAP = 10.0, 44.0
_AIM_LINES = 2


@dataclass(frozen=True)
class Rung:
    """A stage: its title and its aim."""

    title: str
    aim: str


@dataclass(frozen=True)
class _Placed:
    number: int
    title: list[str]
    aim: list[str]
    top: float
    height: float


def place_of_stage(number: int) -> str:
    """The anchor of a stage on the page of its progression."""
    return f"stage-{number}"


def progression_ladder(
    rungs: Sequence[Rung], *, identifier: str = "ladder", name: str = "the progression"
) -> str:
    """The ladder as an SVG element that scales to its container and reads at a phone's width.

    ``rungs`` are the stages, the first first; ``name`` is the progression's title. ``identifier``
    begins the ids of title and description. Raises ValueError where there is no rung, or the
    identifier cannot begin an id.
    """
    checked_identifier(identifier)
    if not rungs:
        raise ValueError("a ladder needs a rung")
    placed, height = _placed(rungs)
    parts = [f'<path class="figure-rail" d="{_rails(height)}"/>']
    for rung in placed:
        parts += _rung(rung)
    for rung in placed[:-1]:
        parts += _between(rung.top)
    told = _title_and_description(rungs, name)
    return document("ladder", WIDTH, height, identifier, told, parts, role="group")


def _placed(rungs: Sequence[Rung]) -> tuple[list[_Placed], float]:
    """Every rung with its place, in their order, and the height of all."""
    room = _TEXT_RIGHT - _TEXT_LEFT
    texts = [
        (lines_of(rung.title, room, TITLE * 1.06), short_lines(rung.aim, room, AIM, _AIM_LINES))
        for rung in rungs
    ]
    heights = [2 * _PAD + (len(title) * TITLE + len(aim) * AIM) * LEADING for title, aim in texts]
    top, placed = _SIDE, list[_Placed]()
    for number_, (title, aim), height in reversed(
        list(zip(range(1, len(rungs) + 1), texts, heights, strict=True))
    ):
        placed.append(_Placed(number_, title, aim, top, height))
        top += height + _GAP
    return placed[::-1], top - _GAP + _SIDE


def _rails(height: float) -> str:
    left, right = _SIDE + 10, WIDTH - _SIDE - 10
    return f"M{at(left, 1)}V{number(height - 1)}M{at(right, 1)}V{number(height - 1)}"


def _rung(rung: _Placed) -> list[str]:
    """A box with its number in a disc, its title and its aim, which leads to the stage."""
    middle = rung.top + rung.height / 2
    first = rung.top + _PAD + TITLE * 0.92
    below = rung.top + _PAD + len(rung.title) * TITLE * LEADING + AIM * 0.95
    return [
        f'<a href="#{place_of_stage(rung.number)}">',
        (
            f'<rect class="figure-rung" x="{number(_SIDE)}" y="{number(rung.top)}" '
            f'width="{number(WIDTH - 2 * _SIDE)}" '
            f'height="{number(rung.height)}" rx="6"/>'
        ),
        f'<circle class="figure-count" cx="31" cy="{number(middle)}" r="14"/>',
        lettered("count-text", 31, middle + 5.5, [str(rung.number)], 16.0, "middle"),
        lettered("rung-title", _TEXT_LEFT, first, rung.title, TITLE),
        lettered("rung-aim", _TEXT_LEFT, below, rung.aim, AIM),
        "</a>",
    ]


def _between(top: float) -> list[str]:
    """The arrows between a rung with its upper edge at ``top`` and the rung above it."""
    low, high = top - 5, top - _GAP + 5
    middle = (low + high) / 2 + 4.5
    up = f"M{at(70, low)}V{number(high)}M{at(64, high + 8)}L{at(70, high)}L{at(76, high + 8)}"
    down, head = (
        f"M{at(196, high)}V{number(low - 3)}",
        f"M{at(190, low - 8)}L{at(196, low)}L{at(202, low - 8)}",
    )
    return [
        f'<path class="figure-step-on" d="{up}"/>',
        lettered("sign", 84, middle, ["move on"], SIGN),
        (
            f'<path class="figure-step-back" d="{down}"/><path class="figure-step-back-head" '
            f'd="{head}"/>'
        ),
        lettered("sign", 210, middle, ["step back"], SIGN),
    ]


def _title_and_description(rungs: Sequence[Rung], name: str) -> tuple[str, str]:
    stages = " ".join(
        f"{count}. {rung.title}: {rung.aim.rstrip('.')}." for count, rung in enumerate(rungs, 1)
    )
    text = f"A ladder of {len(rungs)} stages, the first at the foot. {stages}"
    if len(rungs) > 1:
        text += (
            " Between two stages one arrow leads up, to move on, and a dashed one down, to "
            "step back."
        )
    return f"The stages of {name}", text
