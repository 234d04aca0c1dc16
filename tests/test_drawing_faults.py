"""Pictures of faults: what is wrong beside what is right."""

from __future__ import annotations

import json
from dataclasses import fields, replace
from pathlib import Path
from xml.etree import ElementTree

import pytest
from drawing_checks import SVG, checked

from almanac.analysis.analysis import Analysis
from almanac.drawing.swimmer.fault import fault_drawing
from almanac.drawing.swimmer.poses import place_of, pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.slips import SLIPS as DRAWN
from almanac.drawing.swimmer.slips import from_above, slipped
from almanac.model.drawing import VIEWS, DrawnBody
from almanac.model.fault_drawing import PLACES, SLIPS, FaultDrawing, WrongBody
from almanac.site.drawing_html import fault_figure

SCHEMAS = Path(__file__).parents[1] / "scripts" / "almanac" / "schemas"
ON_BACK = FaultDrawing(
    says="knees under",
    position="supine",
    arms="at-sides",
    kick="flutter",
    place="knee",
    wrong=WrongBody(says="knees out", slips=("knees-up",)),
)


def windows(root: ElementTree.Element) -> list[ElementTree.Element]:
    return [node for node in root.iter(f"{SVG}svg") if node is not root]


def test_the_schema_offers_exactly_what_is_drawn() -> None:
    figure = json.loads((SCHEMAS / "fault.json").read_text("utf-8"))["properties"]["figure"]
    own = figure["properties"]
    common = json.loads((SCHEMAS / "common.json").read_text("utf-8"))["$defs"]
    assert tuple(common["drawn_view"]["enum"]) == VIEWS
    assert tuple(own["place"]["enum"]) == PLACES
    wrong = own["wrong"]["properties"]
    assert tuple(wrong["slips"]["items"]["enum"]) == SLIPS and set(SLIPS) == set(DRAWN)
    body = {part.name for part in fields(DrawnBody)}
    assert set(own) == {*body, "view", "place", "tolerance_cm", "matter_of_time", "wrong"} and set(
        wrong
    ) == {
        *body,
        "slips",
    }


def test_wrong_stands_over_right_each_with_its_sign_words_and_ring() -> None:
    root = checked(fault_drawing(ON_BACK))
    lines = " ".join(node.text or "" for node in root.iter(f"{SVG}text"))
    assert lines == "knees out knees under"
    signs = [node for node in root.iter(f"{SVG}path") if node.get("class") == "figure-sign"]
    assert len(signs) == 2 and signs[0].get("d") != signs[1].get("d")
    rings = [node for node in root.iter(f"{SVG}path") if node.get("class") == "figure-ring"]
    assert len(rings) == len(windows(root)) == 2
    told = root.findtext(f"{SVG}desc", "")
    assert "1. wrong knees out: " in told and "2. right knees under: " in told


def test_both_are_drawn_in_one_scale() -> None:
    for slip in SLIPS:
        root = checked(fault_drawing(replace(ON_BACK, wrong=WrongBody(says="so", slips=(slip,)))))
        sizes = {
            ring.get("d", "").split("A")[1].split()[0]
            for ring in root.iter(f"{SVG}path")
            if ring.get("class") == "figure-ring"
        }
        assert len(sizes) == 1, slip


@pytest.mark.parametrize("position", ["supine", "prone"])
@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_changes_the_body_and_no_joint_bends_the_wrong_way(slip: str, position: str) -> None:
    spec = resolve_pose(position=position, arms="streamline", kick="flutter")
    right = pose(spec)
    held = pose(spec, lambda posture: slipped(posture, (slip,)))
    assert held.skeleton != right.skeleton
    for leg in (held.posture.near_leg, held.posture.far_leg):
        assert 0 <= leg.knee <= 140 and -30 <= leg.hip <= 110 and -15 <= leg.ankle <= 90
    for arm in (held.posture.near_arm, held.posture.far_arm):
        assert 0 <= arm.elbow <= 150


def height(slip: str, place: str, position: str = "supine") -> tuple[float, float]:
    """The height of a place as it should be and with a slip."""
    spec = resolve_pose(position=position, arms="streamline", kick="flutter")
    wrong = pose(spec, lambda posture: slipped(posture, (slip,)))
    return place_of(pose(spec), place).y, place_of(wrong, place).y


def test_slips_show_what_their_names_say() -> None:
    right, wrong = height("knees-up", "knee")
    assert right < 0 < wrong  # out of the water
    for slip, place, position in (
        ("hips-low", "hip", "supine"),
        ("legs-low", "foot", "prone"),
        ("bicycle", "knee", "prone"),
        ("thighs-forward", "knee", "prone"),
    ):
        right, wrong = height(slip, place, position)
        assert wrong < right - 0.04, slip
    for slip, position in (("head-up", "supine"), ("early-lift", "prone"), ("chest-up", "supine")):
        right, wrong = height(slip, "head", position)
        assert wrong > right, slip
    right, wrong = height("feet-wide", "foot", "prone")
    assert wrong > 0.05


def test_from_above_sideways_slips_show_and_the_back_of_who_lies_on_the_front() -> None:
    def seen(position: str, slip: str | None, place: str) -> float:
        spec = resolve_pose(position=position, arms="one-extended", kick="flutter", other_side=True)
        slips = (slip,) if slip else ()
        held = pose(spec, lambda posture: slipped(from_above(posture), slips), above=True)
        assert (held.skeleton.head_axes.front.z > 0.9) == (position == "supine")
        return place_of(held, place).y

    for position in ("supine", "prone"):
        assert seen(position, None, "hand") < 0 < seen(position, "hand-crosses", "hand")
        assert seen(position, "legs-split", "foot") < seen(position, None, "foot") - 0.1
        assert seen(position, "feet-crossed", "foot") > 0 > seen(position, None, "foot")
        assert seen(position, "feet-crossed", "far-foot") < 0


def test_an_arch_stands_out_to_the_belly() -> None:
    def trunk(slips: tuple[str, ...]) -> str:
        return fault_drawing(
            replace(ON_BACK, place="waist", wrong=WrongBody(says="so", slips=slips))
        )

    assert trunk(("arched",)) != trunk(("hips-low",))
    held = pose(
        resolve_pose(position="supine", arms="streamline", kick="none"),
        lambda posture: slipped(posture, ("arched",)),
    )
    assert held.skeleton.arch > 0


@pytest.mark.parametrize("place", PLACES)
def test_every_place_is_on_the_body(place: str) -> None:
    held = pose(resolve_pose(position="prone", arms="streamline", kick="flutter"))
    where = place_of(held, place)
    assert held.span[0] - 0.01 <= where.x <= held.span[1] + 0.01 and abs(where.y) < 0.4


def test_what_is_wrong_takes_its_other_words_from_what_is_right() -> None:
    wrong = replace(ON_BACK, wrong=WrongBody(says="too deep", size="large")).wrong_body
    assert (wrong.position, wrong.arms, wrong.size, wrong.says) == (
        "supine", "at-sides", "large", "too deep",
    )  # fmt: skip


def test_an_identifier_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="identifier"):
        fault_drawing(ON_BACK, identifier="1 2")


def test_a_fault_of_a_club_may_have_no_picture(analysis: Analysis) -> None:
    bare = [fault for fault in analysis.catalogue.faults.values() if fault.drawing is None]
    assert bare and all(fault_figure(fault) == "" for fault in bare)
