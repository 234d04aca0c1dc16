"""Judge it: what is drawn between right and wrong, how far it is off, and who is asked what."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.judged import DECK_ANGLE, between, from_deck, is_judged, judged
from almanac.drawing.swimmer.poses import pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.model.fault_drawing import FaultDrawing, WrongBody

SINKS = FaultDrawing(
    says="belly high", position="supine", arms="at-sides", kick="flutter", place="hip",
    wrong=WrongBody(says="seat low", slips=("hips-low",)),
)  # fmt: skip
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def spots(part: str) -> list[tuple[float, float]]:
    """The ends of a path's lines and curves."""
    return [
        (float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)(?=[MLCAZ\"])", part)
    ]


def test_half_way_is_half_way():
    drawn = judged(SINKS)
    assert drawn is not None
    assert between(drawn, 0) == list(drawn.right) and between(drawn, 1) == list(drawn.wrong)
    for right, wrong, half in zip(drawn.right, drawn.wrong, between(drawn, 0.5), strict=True):
        for own, other, mid in zip(
            *(map(float, _NUMBER.findall(part)) for part in (right, wrong, half)), strict=True
        ):
            assert mid == pytest.approx((own + other) / 2, abs=0.051)


def test_a_picture_is_as_far_off_as_is_told():
    """The path's own points move by no more than the joint that moves most, but for a limb's
    width.
    """
    drawn = judged(SINKS)
    assert drawn is not None
    moved = [
        ((x - u) ** 2 + (y - v) ** 2) ** 0.5
        for right, wrong in zip(drawn.right, drawn.wrong, strict=True)
        for (x, y), (u, v) in zip(spots(right), spots(wrong), strict=True)
    ]
    assert max(moved) == pytest.approx(drawn.shift_px, abs=8)


@pytest.mark.parametrize(
    "wrong",
    [
        WrongBody(says="idle legs", kick="none"),
        WrongBody(says="idle, low", kick="none", slips=("hips-low",)),
        WrongBody(says="one leg", one_leg=True),
        WrongBody(says="other arms", arms="streamline", slips=("hips-low",)),
        WrongBody(says="seen from above", view="above", slips=("snaking",)),
    ],
)
def test_what_is_not_more_or_less_of_something_is_not_asked(wrong):
    assert not is_judged(replace(SINKS, wrong=wrong))


def test_the_deck_looks_down_on_the_lane():
    spec = resolve_pose(position="supine", arms="at-sides", kick="flutter")
    plain, tilted = pose(spec).skeleton, from_deck(pose(spec)).skeleton
    near, far = tilted.near_arm.shoulder, tilted.far_arm.shoulder
    assert DECK_ANGLE == 30 and near.y < far.y  # what is near stands lower in the picture
    for own, other in (
        *zip(plain.near_leg, tilted.near_leg, strict=True),
        (plain.head, tilted.head),
    ):
        assert own.x == other.x
        assert own.distance(Point(0, 0)) == pytest.approx(other.distance(Point(0, 0)))  # a turn
