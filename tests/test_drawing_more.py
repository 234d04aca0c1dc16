"""Postures on land, bodies at a wall, the figures of the real catalogue, and the figures that are
made of boxes.
"""

from __future__ import annotations

import json
import re
from itertools import product
from pathlib import Path
from xml.etree import ElementTree

import pytest
from drawing_checks import SVG, checked
from hypothesis import given
from hypothesis import strategies as st
from shared import share

from almanac.analysis.analysis import Analysis
from almanac.drawing.charts.ladder import Rung, progression_ladder
from almanac.drawing.charts.neighbours import neighbours
from almanac.drawing.lettering import lines_of, short, short_lines, width_of
from almanac.drawing.swimmer.body import body_drawing
from almanac.drawing.swimmer.geometry import Point, axes
from almanac.drawing.swimmer.inverse_kinematics import arm_to, leg_to
from almanac.drawing.swimmer.kick_cycle import SIDES, moment_drawing, moment_words
from almanac.drawing.swimmer.kicks import MOMENTS
from almanac.drawing.swimmer.marks import BEHIND, OVER
from almanac.drawing.swimmer.phrases import (
    FACE_WORDS,
    HANDS_WORDS,
    LEG_WORDS,
    MARK_WORDS,
    POSTURE_WORDS,
    SIZE_WORDS,
    WALL_WORDS,
)
from almanac.drawing.swimmer.poses import Pose, pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.segments import arm_joints, leg_joints
from almanac.model.catalogue import Catalogue
from almanac.model.drawing import (
    ARMS,
    FACES,
    HANDS,
    KICKS,
    MARKS,
    POSITIONS,
    POSTURES,
    SETTINGS,
    SIZES,
    STROKES,
    WALLS,
)
from almanac.site.drawing_html import figure, ladder_chart, neighbours_chart
from almanac.site.kick_cycle import kick_cycle_page
from almanac.site.templates import Templates

ROOT = Path(__file__).parents[1]
SCHEMAS = ROOT / "scripts" / "almanac" / "schemas"
OFFERED = {
    "position": POSITIONS,
    "arms": ARMS,
    "kick": KICKS,
    "stroke": STROKES,
    "setting": SETTINGS,
    "posture": POSTURES,
    "wall": WALLS,
    "face": FACES,
    "hands": HANDS,
    "size": SIZES,
    "marks": MARKS,
}
DRAWN_BY_LAND = set(POSTURES) - {"lying-on-front", "side-lying"}


def described(svg: str) -> str:
    return checked(svg).findtext(f"{SVG}desc", "")


def held_on_land(posture: str, arms: str, kick: str = "none") -> Pose:
    return pose(resolve_pose(position="on-land", arms=arms, kick=kick, posture=posture))


# --- the small catalogue


@pytest.fixture
def catalogue(analysis: Analysis) -> Catalogue:
    return analysis.catalogue


def test_every_drill_is_drawn(catalogue: Catalogue) -> None:
    assert len(catalogue.drills) > 20
    for drill in catalogue.drills.values():
        root = checked(str(figure(catalogue, drill)))
        assert drill.id in root.get("aria-labelledby", "")
        around = str(neighbours_chart(catalogue, drill))
        alone = not (drill.easier or drill.harder or drill.needs_first)
        assert alone == (around == "")
        if around:
            titles = [
                catalogue.drills[id].title
                for id in (*drill.easier, *drill.harder, *drill.needs_first)
            ]
            assert all(title in described(around) for title in titles)


def test_every_progression_is_a_ladder(catalogue: Catalogue) -> None:
    for progression in catalogue.progressions.values():
        ladder = str(ladder_chart(progression))
        told = described(ladder)
        assert re.findall(r'<a href="#stage-(\d+)">', ladder) == [
            str(number) for number in range(1, len(progression.stages) + 1)
        ]
        assert all(
            f"{number}. {stage.title}: " in told
            for number, stage in enumerate(progression.stages, 1)
        )


def test_a_drill_on_land_says_its_posture_and_is_never_in_water(catalogue: Catalogue) -> None:
    for drill in catalogue.drills.values():
        if drill.family == "land":
            assert drill.drawing.posture in DRAWN_BY_LAND, drill.id
            assert "figure-water" not in str(figure(catalogue, drill)), drill.id


def test_under_water_work_is_drawn_under_water(catalogue: Catalogue) -> None:
    for drill in catalogue.drills.values():
        if drill.mode == "underwater":
            assert drill.drawing.setting == "under-water", drill.id


def test_the_schema_offers_exactly_the_words_that_are_drawn() -> None:
    common = json.loads((SCHEMAS / "common.json").read_text("utf-8"))["$defs"]
    drawn = {name: common[f"drawn_{name}"].get("enum") for name in OFFERED if name != "marks"}
    drawn["marks"] = common["drawn_marks"]["items"]["enum"]
    assert {name: tuple(words) for name, words in drawn.items()} == OFFERED
    figure = json.loads((SCHEMAS / "drill.json").read_text("utf-8"))["properties"]["figure"]
    assert figure["properties"]["speed"]["items"]["vocabulary"] == "efforts"
    bodies = figure["properties"]["then"]["items"]["properties"]
    assert set(bodies) | {"then", "speed", "speed_over", "from_still"} == set(figure["properties"])


def test_every_word_that_is_drawn_is_told_in_words() -> None:
    told = {"posture": POSTURE_WORDS, "wall": WALL_WORDS, "face": FACE_WORDS}
    told |= {"hands": HANDS_WORDS, "size": SIZE_WORDS, "marks": MARK_WORDS}
    assert {name: set(words) for name, words in told.items()} == {
        name: set(OFFERED[name]) for name in told
    }
    assert set(LEG_WORDS) == DRAWN_BY_LAND
    assert set(MARK_WORDS) == {*BEHIND, *OVER}


# --- postures


@pytest.mark.parametrize("posture", POSTURES)
def test_a_posture_bends_no_joint_too_far_and_goes_through_no_ground(posture: str) -> None:
    for arms, kick in product(ARMS, KICKS):
        held = held_on_land(posture, arms, kick)
        bones = held.skeleton
        for leg in (held.posture.near_leg, held.posture.far_leg):
            assert -25 <= leg.hip <= 125 and 0 <= leg.knee <= 130 and -25 <= leg.ankle <= 85, (
                held.spec,
                leg,
            )
        for arm in (held.posture.near_arm, held.posture.far_arm):
            assert (
                -175 <= arm.shoulder <= 200 and 0 <= arm.elbow <= 150 and -92 <= arm.wrist <= 75
            ), (held.spec, arm)
        points = (*bones.near_leg, *bones.far_leg, *bones.near_arm, *bones.far_arm, bones.head)
        assert min(point.y for point in points) > -0.02, held.spec
        assert bones.head.y > 0.05, held.spec


@pytest.mark.parametrize("posture", POSTURES)
def test_a_posture_is_drawn_inside_its_frame_and_named(posture: str) -> None:
    for arms, kick in product(ARMS, ("none", "flutter")):
        for wall in (None, "at-back") if posture.startswith("standing") else (None,):
            svg = body_drawing(position="on-land", arms=arms, kick=kick, posture=posture, wall=wall)
            assert POSTURE_WORDS[posture] in described(svg), (arms, kick)


FLAT_FEET = {
    "standing": 2,
    "lying-on-back": 2,
    "lying-over-roll": 2,
    "sitting-knees-bent": 2,
    "sitting-on-bench": 2,
    "kneeling": 1,
    "bridge": 2,
}


@pytest.mark.parametrize(("posture", "count"), FLAT_FEET.items())
def test_feet_that_stand_are_flat_on_the_ground(posture: str, count: int) -> None:
    bones = held_on_land(posture, "at-sides").skeleton
    flat = [max(abs(leg.heel.y), abs(leg.toe.y)) < 0.01 for leg in (bones.near_leg, bones.far_leg)]
    assert flat.count(True) == count


@pytest.mark.parametrize("posture", ["sitting", "sitting-knees-bent"])
def test_hands_behind_a_seat_are_on_the_ground_behind_it(posture: str) -> None:
    bones = held_on_land(posture, "free").skeleton
    for arm in (bones.near_arm, bones.far_arm):
        assert 0 <= arm.wrist.y < 0.05 and arm.wrist.x < bones.hip.x - 0.1


def test_a_plank_is_one_line_on_forearms_and_toes() -> None:
    bones = held_on_land("plank", "at-sides").skeleton
    parts = ((bones.near_leg.ankle, bones.hip), (bones.hip, bones.shoulder))
    slopes = [(end.y - start.y) / (end.x - start.x) for start, end in parts]
    assert slopes[0] == pytest.approx(slopes[1], abs=0.01)
    assert abs(bones.near_arm.elbow.x - bones.shoulder.x) < 0.01 and bones.near_arm.elbow.y < 0.05
    assert abs(bones.near_leg.toe.y) < 0.01 and bones.head_axes.front.y < 0


def test_a_bridge_is_one_line_from_shoulder_to_knee() -> None:
    bones = held_on_land("bridge", "at-sides").skeleton
    assert bones.shoulder.y < 0.07 < bones.hip.y < bones.near_leg.knee.y
    middle = bones.shoulder.distance(bones.hip) + bones.hip.distance(bones.near_leg.knee)
    assert bones.shoulder.distance(bones.near_leg.knee) == pytest.approx(middle, abs=0.01)
    lifted = held_on_land("bridge", "at-sides", "flutter").skeleton
    assert lifted.near_leg.heel.y > 0.05 > lifted.far_leg.heel.y


def test_arms_raised_on_the_back_keep_one_thigh_upright() -> None:
    bones = held_on_land("lying-on-back", "streamline", "flutter").skeleton
    assert abs(bones.far_leg.knee.x - bones.far_leg.hip.x) < 0.02
    assert abs(bones.far_leg.ankle.y - bones.far_leg.knee.y) < 0.05
    assert 0 < bones.near_leg.heel.y < 0.15


def test_a_posture_that_is_not_said_follows_as_before() -> None:
    plans = [
        resolve_pose(position="on-land", arms="at-sides", kick=kick) for kick in ("none", "flutter")
    ]
    assert [spec.posture for spec in plans] == ["standing", "lying-on-back"]


def test_standing_in_water_is_chest_deep_on_the_floor() -> None:
    words = {
        "position": "vertical",
        "arms": "holding-wall",
        "kick": "dolphin",
        "posture": "standing",
        "setting": "at-wall",
    }
    held = pose(resolve_pose(**words))  # type: ignore[arg-type]
    assert held.skeleton.hip.y < 0 < held.skeleton.shoulder.y
    assert held.wall is not None and abs(held.skeleton.near_arm.fingertip.x - held.wall[0]) < 0.12
    assert "standing on the floor, chest deep" in described(body_drawing(**words))  # type: ignore[arg-type]


# --- walls


@pytest.mark.parametrize("wall", WALLS)
def test_a_body_at_a_wall_is_drawn_inside_its_frame(wall: str) -> None:
    words = product(POSITIONS, ARMS, ("flutter", "dolphin"), ("any", "butterfly"))
    for position, arms, kick, stroke in share(words, 50, wall):
        for setting in ("at-wall", "under-water"):
            checked(
                body_drawing(
                    position=position,
                    arms=arms,
                    kick=kick,
                    stroke=stroke,
                    setting=setting,
                    wall=wall,
                )
            )


@pytest.mark.parametrize(
    ("position", "arms"), [("supine", "stroking"), ("prone", "stroking"), ("rotating", "stroking")]
)
def test_a_hand_that_touches_is_on_the_wall(position: str, arms: str) -> None:
    held = pose(resolve_pose(position=position, arms=arms, kick="flutter", wall="touching"))
    assert held.wall is not None and held.wall[1] == "ahead"
    tips = (held.skeleton.near_arm.fingertip.x, held.skeleton.far_arm.fingertip.x)
    assert 0 < held.wall[0] - max(tips) < 0.02


@pytest.mark.parametrize("wall", ["feet-on", "start-hold"])
@pytest.mark.parametrize("position", ["supine", "prone"])
def test_feet_that_are_set_are_on_the_wall_under_water_with_bent_knees(
    wall: str, position: str
) -> None:
    held = pose(resolve_pose(position=position, arms="streamline", kick="flutter", wall=wall))
    assert held.wall is not None and held.wall[1] == "behind"
    for angles, leg in (
        (held.posture.near_leg, held.skeleton.near_leg),
        (held.posture.far_leg, held.skeleton.far_leg),
    ):
        assert 70 <= angles.knee <= 125
        assert 0 <= leg.heel.x - held.wall[0] < 0.02 and leg.toe.y < 0.02
    assert held.skeleton.hip.y < 0


def test_after_a_somersault_the_body_is_on_its_back_and_before_a_push_on_the_front_it_is_not() -> (
    None
):
    for arms, face_up in (("stroking", True), ("at-sides", True), ("streamline", False)):
        assert (
            resolve_pose(position="prone", arms=arms, kick="flutter", wall="feet-on").face_up
            is face_up
        )


def test_leaving_the_wall_the_legs_are_long_and_the_wall_is_behind_the_toes() -> None:
    held = pose(
        resolve_pose(
            position="supine",
            arms="streamline",
            kick="flutter",
            setting="under-water",
            wall="leaving",
        )
    )
    assert held.wall is not None and held.wall[1] == "behind"
    assert 0 < held.skeleton.near_leg.toe.x - held.wall[0] < 0.05
    assert held.posture.near_leg.knee < 10 and held.skeleton.vertex.y < 0


# --- the other choices


def test_both_arms_come_over_together_where_it_is_asked_for() -> None:
    words = {"position": "supine", "arms": "stroking", "kick": "flutter", "stroke": "backstroke"}
    apart, together = (
        pose(resolve_pose(**words, together=both)).skeleton for both in (False, True)
    )  # type: ignore[arg-type]
    assert apart.near_arm.fingertip.y > 0.3 > 0 > apart.far_arm.fingertip.y
    assert together.near_arm.fingertip.distance(together.far_arm.fingertip) < 0.25
    assert min(together.near_arm.fingertip.y, together.far_arm.fingertip.y) > 0.3


def test_one_leg_kicks_and_the_other_lies_long_at_the_surface() -> None:
    for position, kick in (("supine", "flutter"), ("prone", "breaststroke")):
        held = pose(resolve_pose(position=position, arms="at-sides", kick=kick, one_leg=True))
        assert held.posture.far_leg.knee < 5 < held.posture.near_leg.knee
        assert -0.15 < held.skeleton.far_leg.ankle.y < 0.02
        svg = body_drawing(position=position, arms="at-sides", kick=kick, one_leg=True)
        assert "with one leg" in described(svg) and "far leg long and still" in described(svg)


def test_the_face_goes_in_and_out_of_the_water() -> None:
    looks = {
        face: pose(resolve_pose(position="prone", arms="board", kick="flutter", face=face))
        for face in (None, *FACES)
    }
    high = {face: held.skeleton.head.y for face, held in looks.items()}
    assert high["in"] < 0.03 < high["out"] and high["out"] == pytest.approx(high[None])


def test_a_rolled_body_is_not_put_on_the_deck_edge() -> None:
    for position in ("side", "rotating"):
        held = pose(
            resolve_pose(position=position, arms="at-sides", kick="flutter", setting="deck-edge")
        )
        assert held.spec.setting == "surface" and held.edge is None
        assert max(held.skeleton.near_leg.ankle.y, held.skeleton.far_leg.ankle.y) < 0.03


def test_no_arm_comes_over_under_water() -> None:
    for position, arms in product(
        ("supine", "prone", "side", "rotating"), ("stroking", "one-arm-strokes")
    ):
        held = pose(
            resolve_pose(position=position, arms=arms, kick="flutter", setting="under-water")
        )
        bones = held.skeleton
        assert max(point.y for point in (*bones.near_arm, *bones.far_arm)) < 0, held.spec


# --- angles from places

places = st.builds(Point, st.floats(-0.4, 0.4), st.floats(-0.4, 0.4), st.just(0.0))


@given(places, st.floats(-180, 180), st.sampled_from([1, -1]))
def test_a_limb_that_is_sent_to_a_place_within_reach_ends_there(
    place: Point, trunk: float, belly: int
) -> None:
    body, start = axes(trunk, belly, 0.0), Point(0.02, -0.03)
    if 0.05 < start.distance(place) < 0.325:
        arm = arm_to(place, body.up, start, body)
        assert arm_joints(arm, start, body, 1).wrist.distance(place) < 0.002
        leg = leg_to(place, body.up, start, body)
        assert leg_joints(leg, start, body, 1).ankle.distance(place) < 0.002
        assert 0 <= leg.knee <= 180 and 0 <= arm.elbow <= 180


# --- text that is broken into lines


@given(st.text("abcdefgh ilmwMWÄ,.-", max_size=120), st.floats(40, 300))
def test_lines_fit_and_no_letter_is_lost(text: str, width: float) -> None:
    lines = lines_of(text, width, 14.0)
    assert all(width_of(line, 14.0) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


def test_a_short_text_ends_with_its_clause() -> None:
    assert short("Down long, up late.", 40) == "Down long, up late."
    assert (
        short("Lies on the back with ears under, face level and hips up, breathing", 50)
        == "Lies on the back with ears under…"
    )
    assert short("A line without any mark that goes on for a while", 20) == "A line without any…"
    assert len(short_lines("words and more words " * 20, 200, 14.0, 2)) == 2


# --- ladder and neighbours


def texts(svg: str) -> list[str]:
    """The texts of a figure that is all inside its frame, text too."""
    root = checked(svg)
    _, _, width, height = (float(item) for item in root.get("viewBox", "").split())
    assert width <= 340, "it reads at a phone's width"
    for node in root.iter(f"{SVG}text"):
        x, y = float(node.get("x", "0")), float(node.get("y", "0"))
        half = (
            width_of(node.text or "", 14.0)
            * {"start": 1.0, "middle": 0.5}[node.get("text-anchor", "start")]
        )
        assert x + half <= width + 1 and 8 < y < height, node.text
    return [node.text or "" for node in root.iter(f"{SVG}text")]


def test_a_ladder_climbs_from_its_first_stage() -> None:
    svg = progression_ladder(
        [Rung(f"Stage {name}", "Holds the line, easily. " * 9) for name in "ABCD"], name="a skill"
    )
    said = texts(svg)
    assert [text for text in said if text.isdigit()] == ["1", "2", "3", "4"]
    counts = list(ElementTree.fromstring(svg).iter(f"{SVG}circle"))
    heights = [float(node.get("cy", "0")) for node in counts]
    assert heights == sorted(heights, reverse=True), "the first at the foot"
    assert said.count("move on") == said.count("step back") == 3
    assert svg.count("figure-step-back-head") == svg.count("figure-step-on") == 3
    assert sum(text.endswith("…") for text in said) == 4


def test_a_ladder_of_one_rung_has_no_arrow_and_one_of_none_is_refused() -> None:
    assert "move on" not in progression_ladder([Rung("Alone", "Is there.")])
    with pytest.raises(ValueError, match="a rung"):
        progression_ladder([])


def test_neighbours_say_what_is_harder_easier_and_needed_first() -> None:
    svg = neighbours(
        "Middle", easier=["Below", "Both"], harder=["Above"], needs_first=["Both", "First"]
    )
    assert texts(svg) == [
        "Above",
        "harder",
        "Middle",
        "Both",
        "needs first, easier",
        "First",
        "needs first",
        "Below",
        "easier",
    ]
    assert svg.count('class="figure-box-first"') == 2 and svg.count('class="figure-tie-head"') == 2
    assert (
        described(svg)
        == "Middle with the drills around it. Needs first: Both, First. Easier: Below, Both. "
        "Harder: Above."
    )
    assert neighbours("Alone", easier=[], harder=[], needs_first=[]) == ""


@pytest.mark.parametrize("count", [1, 2, 3, 7])
def test_neighbours_fit_however_many_and_however_long(count: int) -> None:
    many = [
        f"Number {number} has a title which is nearly sixty letters long, so"
        for number in range(count)
    ]
    for groups in (
        {"easier": many},
        {"harder": many},
        {"needs_first": many},
        {"easier": many, "harder": many},
    ):
        others = {"easier": [], "harder": [], "needs_first": [], **groups}
        svg = neighbours("Once more a title that is nearly sixty letters long, and so", **others)
        texts(svg)
        boxes = list(ElementTree.fromstring(svg).iter(f"{SVG}rect"))
        spans = [
            tuple(float(node.get(name, "0")) for name in ("x", "y", "width", "height"))
            for node in boxes
        ]
        for (x, y, w, h), (x2, y2, w2, h2) in product(spans, spans):
            apart = x + w <= x2 or x2 + w2 <= x or y + h <= y2 or y2 + h2 <= y
            assert apart or (x, y) == (x2, y2), "boxes do not overlap"


def test_text_of_entries_is_text_in_figures() -> None:
    odd = '<script>alert("x")</script> & </svg>'
    ladder = progression_ladder([Rung(odd, odd)], name=odd)
    around = neighbours(odd, easier=[odd], harder=[odd], needs_first=[])
    for svg in (ladder, around):
        tags = {node.tag.removeprefix(SVG) for node in checked(svg).iter()}
        assert "script" not in tags and "<script" not in svg


# --- the kick cycle's page


def test_a_moment_shows_both_sides_with_every_phase_named() -> None:
    for moment in range(MOMENTS):
        told = described(moment_drawing(moment, identifier=f"m{moment}"))
        assert "On the back: near leg on the" in told and "On the front: near leg on the" in told
    parts = [
        (lie, leg.beat, leg.part)
        for lie, _ in SIDES
        for moment in range(MOMENTS)
        for leg in moment_words(moment, lie)
    ]
    wanted = {
        ("supine", "up-beat", "drives"),
        ("supine", "down-beat", "recovers"),
        ("prone", "down-beat", "drives"),
        ("prone", "up-beat", "recovers"),
    }
    assert set(parts) == wanted and all(parts.count(part) == 8 for part in wanted)


def test_a_moment_takes_an_identifier_and_refuses_a_bad_one() -> None:
    assert 'id="kicks-title"' in moment_drawing(0, identifier="kicks")
    with pytest.raises(ValueError, match="identifier"):
        moment_drawing(0, identifier="")
    with pytest.raises(ValueError, match="unknown moment 8"):
        moment_drawing(8)


def test_the_kick_cycle_page_stands_without_its_script_and_starts_stopped(
    catalogue: Catalogue,
) -> None:
    page = kick_cycle_page(catalogue)
    text = Templates(ROOT / "site_src" / "templates").page(page.template, page.context)
    assert text.count("<svg") == MOMENTS and text.count("<table") == MOMENTS
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert 'aria-pressed="false"' in text and "data-cycle-tools hidden" in text
    assert " style=" not in text and "Atkison et al. 2014" in text
    script = (ROOT / "site_src" / "scripts" / "kick-cycle.js").read_text("utf-8")
    assert (
        "prefers-reduced-motion: reduce" in script and 'still.addEventListener("change"' in script
    )
