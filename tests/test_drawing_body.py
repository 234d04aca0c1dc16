"""The drawn figures: segment lengths, how joints bend, where the body lies, and the SVG that comes
of it.
"""

from __future__ import annotations

import re
from functools import cache
from itertools import product
from pathlib import Path

import pytest
from drawing_checks import SVG, checked
from hypothesis import given
from hypothesis import strategies as st
from shared import share

from almanac.drawing.paints import COLOURS
from almanac.drawing.swimmer import segments
from almanac.drawing.swimmer.arms import RISING
from almanac.drawing.swimmer.body import body_drawing
from almanac.drawing.swimmer.gear import DRAWN
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.kicks import MOMENTS, flutter_leg, flutter_phase, legs, phases
from almanac.drawing.swimmer.phrases import (
    ARMS_WORDS,
    GEAR_WORDS,
    KICK_WORDS,
    POSITION_WORDS,
    SETTING_WORDS,
)
from almanac.drawing.swimmer.pose_spec import DECK
from almanac.drawing.swimmer.poses import Pose, pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.segments import Arm, Leg, Posture, skeleton
from almanac.model.drawing import (
    ARMS,
    KICKS,
    POSITIONS,
    SETTINGS,
    STROKES,
    DrawnBody,
    undrawn_words,
)
from almanac.model.drawing import GEAR as KNOWN_GEAR

ROOT = Path(__file__).parents[1]
GEAR = (*DRAWN, "kickboard")


@cache
def all_poses(**fixed: str) -> list[Pose]:
    """Combinations of words and moments, some of them fixed: a share of them, or all."""
    choices = {"position": POSITIONS, "arms": ARMS, "kick": KICKS, "setting": (None, *SETTINGS)}
    words = [(fixed[name],) if name in fixed else known for name, known in choices.items()]
    return [
        pose(resolve_pose(position=position, arms=arms, kick=kick, setting=setting, moment=moment))  # type: ignore[arg-type]
        for position, arms, kick, setting, moment in share(product(*words, range(MOMENTS)), 700)
    ]


def afloat() -> list[Pose]:
    """Poses of who lies in the water."""
    return [
        held
        for held in all_poses()
        if held.spec.hold == "lying" and held.spec.setting in ("surface", "at-wall")
    ]


# --- segments


def test_the_lengths_are_those_of_the_published_figure() -> None:
    # Drillis and Contini 1966, as reproduced in Winter, figure 4.1: the joints' heights above the
    # ground.
    ankle, knee, hip, shoulder = 0.039, 0.285, 0.530, 0.818
    assert pytest.approx(ankle) == segments.FOOT_HEIGHT
    assert pytest.approx(knee) == segments.FOOT_HEIGHT + segments.SHANK
    assert pytest.approx(hip) == segments.FOOT_HEIGHT + segments.SHANK + segments.THIGH
    assert pytest.approx(shoulder) == hip + segments.TRUNK
    assert pytest.approx(1.0) == shoulder + segments.NECK_AND_HEAD


degrees = st.floats(-180, 180)
leg_angles = st.builds(Leg, degrees, degrees, degrees, degrees, degrees)
arm_angles = st.builds(Arm, degrees, degrees, degrees, degrees, degrees)


@given(
    st.builds(
        Posture,
        trunk=degrees,
        belly=st.sampled_from([1, -1]),
        near_leg=leg_angles,
        far_leg=leg_angles,
        near_arm=arm_angles,
        far_arm=arm_angles,
        roll=degrees,
        head_roll=degrees,
        chin=degrees,
        hip=st.builds(Point, st.floats(-2, 2), st.floats(-2, 2), st.floats(-2, 2)),
    )
)
def test_segments_keep_their_lengths_under_all_angles(posture: Posture) -> None:
    bones = skeleton(posture)
    assert bones.hip.distance(bones.shoulder) == pytest.approx(segments.TRUNK)
    assert bones.shoulder.distance(bones.vertex) == pytest.approx(segments.NECK_AND_HEAD)
    assert bones.head.distance(bones.vertex) == pytest.approx(segments.HEAD_RADIUS)
    for leg in (bones.near_leg, bones.far_leg):
        assert leg.hip.distance(leg.knee) == pytest.approx(segments.THIGH)
        assert leg.knee.distance(leg.ankle) == pytest.approx(segments.SHANK)
        assert leg.heel.distance(leg.toe) == pytest.approx(segments.FOOT_LENGTH)
        assert leg.ankle.distance(leg.heel) == pytest.approx(
            (segments.HEEL**2 + segments.FOOT_HEIGHT**2) ** 0.5
        )
    for arm in (bones.near_arm, bones.far_arm):
        assert arm.shoulder.distance(arm.elbow) == pytest.approx(segments.UPPER_ARM)
        assert arm.elbow.distance(arm.wrist) == pytest.approx(segments.FOREARM)
        assert arm.wrist.distance(arm.fingertip) == pytest.approx(segments.HAND)


def test_a_standing_swimmer_stands_on_the_ground() -> None:
    bones = pose(resolve_pose(position="on-land", arms="at-sides", kick="none")).skeleton
    assert bones.vertex.y == pytest.approx(1.0)
    assert bones.near_leg.heel.y == pytest.approx(0.0)
    assert bones.near_leg.toe.y == pytest.approx(0.0)
    assert bones.near_leg.toe.x > bones.near_leg.heel.x


@pytest.mark.parametrize(("belly", "face"), [(1, 1), (-1, -1)])
def test_the_face_and_a_bent_hip_go_to_the_belly_and_a_bent_knee_away(
    belly: int, face: int
) -> None:
    leg = Leg(hip=30, knee=60)
    bones = skeleton(Posture(0, belly, leg, leg, Arm(90), Arm(90)))  # type: ignore[arg-type]
    assert bones.head_axes.front.y * face > 0
    assert bones.near_leg.knee.y * face > 0
    assert (bones.near_leg.ankle.y - bones.near_leg.knee.y) * face < 0
    assert bones.near_arm.fingertip.y * face > 0


# --- the kick


@pytest.mark.parametrize("kick", KICKS)
@pytest.mark.parametrize("lie", ["supine", "prone", "centred"])
@pytest.mark.parametrize("moment", range(MOMENTS))
def test_knees_bend_one_way_and_ankles_stay_in_range(kick: str, lie: str, moment: int) -> None:
    for leg in legs(kick, moment, lie):  # type: ignore[arg-type]
        assert 0 <= leg.knee <= 130
        assert -20 <= leg.ankle <= 85
        assert -25 <= leg.hip <= 100


def test_no_pose_bends_a_joint_the_wrong_way() -> None:
    for held in all_poses():
        for leg in (held.posture.near_leg, held.posture.far_leg):
            assert 0 <= leg.knee <= 130, held.spec
            assert -20 <= leg.ankle <= 85, held.spec
            assert -25 <= leg.hip <= 100, held.spec
        for arm in (held.posture.near_arm, held.posture.far_arm):
            assert 0 <= arm.elbow <= 150, held.spec
            assert -70 <= arm.wrist <= 70, held.spec


def test_on_the_back_the_up_beat_drives_and_on_the_front_the_down_beat() -> None:
    told = {
        (lie, moment < 4): flutter_phase(moment, lie)
        for lie in ("supine", "prone")
        for moment in range(8)
    }
    assert {key: (phase.beat, phase.part) for key, phase in told.items()} == {
        ("supine", True): ("up-beat", "propulsive"),
        ("supine", False): ("down-beat", "recovery"),
        ("prone", True): ("down-beat", "propulsive"),
        ("prone", False): ("up-beat", "recovery"),
    }


@pytest.mark.parametrize("position", ["supine", "prone"])
def test_the_toes_go_the_way_that_the_beat_says(position: str) -> None:
    toes = [
        pose(
            resolve_pose(position=position, arms="streamline", kick="flutter", moment=m)
        ).skeleton.near_leg.toe.y
        for m in range(MOMENTS)
    ]
    ends = {"up-beat": toes[4] - toes[0], "down-beat": toes[0] - toes[4]}
    assert ends[flutter_phase(0, position).beat] > 0.1  # type: ignore[arg-type]
    for moment in range(4, MOMENTS):  # the recovery goes back without a turn
        step = toes[(moment + 1) % MOMENTS] - toes[moment]
        assert step < 0 if position == "supine" else step > 0


@pytest.mark.parametrize("lie", ["supine", "prone"])
def test_the_recovery_is_straight_and_the_knee_gives_late_in_the_drive(lie: str) -> None:
    knees = [flutter_leg(moment, lie).knee for moment in range(MOMENTS)]  # type: ignore[arg-type]
    assert max(knees[4:]) <= 5
    assert knees[0] <= 5
    assert max(knees) == knees[2] > 25


def test_the_legs_of_a_flutter_are_half_a_cycle_apart() -> None:
    for moment in range(MOMENTS):
        near, far = legs("flutter", moment, "supine")
        assert (near, far) == (
            flutter_leg(moment, "supine"),
            flutter_leg((moment + 4) % 8, "supine"),
        )
        told = phases("flutter", moment, "supine")
        assert told is not None and {phase.part for phase in told} == {"propulsive", "recovery"}


def test_on_the_back_the_knee_stays_under_water_at_every_moment() -> None:
    for held in all_poses(position="supine", kick="flutter", setting="surface"):
        for leg in (held.skeleton.near_leg, held.skeleton.far_leg):
            assert leg.knee.y + 0.0325 < 0, "the kneecap, not just the joint"


def test_on_the_back_the_foot_reaches_the_surface_and_does_not_leave_it() -> None:
    tops = [
        max(held.skeleton.near_leg.toe.y, held.skeleton.far_leg.toe.y)
        for held in all_poses(
            position="supine", kick="flutter", setting="surface", arms="streamline"
        )
    ]
    assert -0.06 < max(tops) <= 0.01


# --- where the body lies


def test_no_joint_of_a_floating_swimmer_is_far_above_the_water_unless_the_arms_call_for_it() -> (
    None
):
    for held in afloat():
        bones = held.skeleton
        body = [bones.hip, bones.shoulder, *bones.near_leg, *bones.far_leg]
        assert max(point.y for point in body) < 0.11, held.spec
        if held.spec.arms not in RISING:
            arms = max(point.y for point in (*bones.near_arm, *bones.far_arm))
            assert arms < (0.16 if held.spec.arms == "holding-gear" else 0.11), held.spec


def test_a_floating_swimmer_lies_flat_with_hips_at_the_surface_and_head_in_line() -> None:
    for held in afloat():
        bones = held.skeleton
        assert -0.17 < bones.hip.y < 0, held.spec
        assert abs(bones.shoulder.y - bones.hip.y) < 0.09, held.spec
        assert abs(bones.head.y - bones.shoulder.y) < 0.09, held.spec
        assert bones.vertex.x > bones.shoulder.x > bones.hip.x, "the head is to the right"


@pytest.mark.parametrize("position", ["supine", "prone", "side", "rotating"])
def test_the_hands_lie_on_each_other_in_streamline(position: str) -> None:
    bones = pose(resolve_pose(position=position, arms="streamline", kick="flutter")).skeleton
    assert bones.near_arm.fingertip.distance(bones.far_arm.fingertip) < 0.03
    assert bones.near_arm.fingertip.x > bones.vertex.x + 0.2


def test_an_upright_swimmer_has_the_head_out_and_the_shoulders_under() -> None:
    for held in all_poses(position="vertical", setting="surface"):
        assert held.skeleton.shoulder.y < 0 < held.skeleton.head.y


def test_under_water_the_body_is_under_water() -> None:
    for held in all_poses(setting="under-water"):
        if held.spec.hold in ("lying", "upright") and held.spec.wet:
            assert held.skeleton.vertex.y < 0 and held.skeleton.hip.y < 0, held.spec


def test_nothing_goes_through_the_ground() -> None:
    for held in all_poses():
        if held.spec.setting == "on-land":
            bones = held.skeleton
            points = (*bones.near_leg, *bones.far_leg, *bones.near_arm, *bones.far_arm, bones.head)
            assert min(point.y for point in points) > -0.01, held.spec
        if held.spec.hold in ("seated", "reclined"):
            hands = (held.skeleton.near_arm.wrist, held.skeleton.far_arm.wrist)
            assert min(hand.y for hand in hands) > DECK, held.spec


def test_nothing_is_in_the_wall_that_a_swimmer_comes_to() -> None:
    for held in all_poses(setting="at-wall"):
        if held.wall is None or held.spec.arms == "holding-wall":
            continue
        x, side = held.wall
        bones = held.skeleton
        points = (*bones.near_leg, *bones.far_leg, *bones.near_arm, *bones.far_arm, bones.vertex)
        if side == "ahead":
            assert max(point.x for point in points) < x, held.spec
        else:
            assert min(point.x for point in points) > x, held.spec


@pytest.mark.parametrize(
    ("stroke", "kick", "together"),
    [
        ("butterfly", "dolphin", True),
        ("breaststroke", "breaststroke", True),
        ("any", "dolphin", True),
        ("freestyle", "dolphin", False),
        ("freestyle", "flutter", False),
    ],
)
def test_arms_pull_together_in_butterfly_and_breaststroke(
    stroke: str, kick: str, together: bool
) -> None:
    held = pose(resolve_pose(position="prone", arms="stroking", kick=kick, stroke=stroke))
    apart = held.skeleton.near_arm.fingertip.y - held.skeleton.far_arm.fingertip.y
    assert (abs(apart) < 0.05) is together


def test_hands_that_hold_the_wall_touch_it() -> None:
    for held in all_poses(arms="holding-wall"):
        if held.spec.setting == "deck-edge":
            continue
        assert held.wall is not None and held.wall[1] == "ahead", held.spec
        x = held.wall[0]
        for arm in (held.skeleton.near_arm, held.skeleton.far_arm):
            assert abs(arm.fingertip.x - x) < 0.12, held.spec


# --- the picture


@pytest.mark.parametrize("position", POSITIONS)
@pytest.mark.parametrize("setting", SETTINGS)
def test_every_combination_of_words_is_drawn_inside_its_frame(position: str, setting: str) -> None:
    if position == "on-land" and setting in ("surface", "under-water", "at-wall"):
        return  # drawn as on dry land
    words = product(ARMS, KICKS, range(MOMENTS))
    for arms, kick, moment in share(words, 50, (position, setting)):
        if kick == "none" and moment:
            continue
        try:
            checked(
                body_drawing(
                    position=position, arms=arms, kick=kick, setting=setting, moment=moment
                )
            )
        except AssertionError as wrong:
            raise AssertionError(f"{position} {arms} {kick} {setting} {moment}: {wrong}") from wrong


@pytest.mark.parametrize("gear", GEAR)
def test_every_gear_is_drawn_inside_the_frame_and_named(gear: str) -> None:
    some_arms = ("at-sides", "streamline", "board", "hands-up", "holding-wall", "holding-gear")
    settings = ("surface", "under-water", "deck-edge", "on-land")
    words = product(POSITIONS, some_arms, ("flutter", "breaststroke"), settings)
    for position, arms, kick, setting in share(words, 50, gear):
        svg = body_drawing(position=position, arms=arms, kick=kick, setting=setting, gear=(gear,))
        try:
            checked(svg)
        except AssertionError as wrong:
            raise AssertionError(f"{position} {arms} {kick} {setting}: {wrong}") from wrong
        assert "Gear: " in svg


@pytest.mark.parametrize("gear", GEAR)
def test_gear_adds_something_to_the_picture(gear: str) -> None:
    words = {"position": "supine", "arms": "streamline", "kick": "flutter"}
    assert body_drawing(**words, gear=(gear,)).count("figure-gear") > body_drawing(**words).count(
        "figure-gear"
    )  # type: ignore[arg-type]


def test_all_gear_at_once_is_drawn() -> None:
    for position in POSITIONS:
        checked(body_drawing(position=position, arms="stroking", kick="flutter", gear=GEAR))


def test_unknown_gear_is_named_and_escaped_and_draws_nothing() -> None:
    words = {"position": "supine", "arms": "at-sides", "kick": "flutter"}
    svg = body_drawing(**words, gear=('<b>&"',))  # type: ignore[arg-type]
    desc = checked(svg).find(f"{SVG}desc")
    assert desc is not None and desc.text is not None and 'Gear: <b>&".' in desc.text
    assert svg.count("<path") == body_drawing(**words).count("<path")  # type: ignore[arg-type]


@pytest.mark.parametrize("stroke", STROKES)
def test_the_stroke_says_which_way_the_face_looks_in_a_roll(stroke: str) -> None:
    for position in ("side", "rotating"):
        desc = checked(
            body_drawing(position=position, arms="stroking", kick="flutter", stroke=stroke)
        ).findtext(f"{SVG}desc", "")
        wanted = (
            "up" if stroke == "backstroke" or (stroke, position) == ("any", "rotating") else "down"
        )
        assert f"face {'towards you' if (stroke, position) == ('any', 'side') else wanted}" in desc


def test_the_description_says_what_is_drawn() -> None:
    svg = body_drawing(
        position="supine", arms="streamline", kick="flutter", moment=2, gear=("parachute",)
    )
    assert checked(svg).findtext(f"{SVG}desc") == (
        "Swimmer on the back at the surface, head to the right; both arms stretched beyond "
        "the head in "
        "streamline, one hand on the other. Flutter kick: near leg on the up-beat, the "
        "propulsive one (knee "
        "bent, shin behind); far leg on the down-beat, the recovery (straight, from the "
        "hip), knees under "
        "water. "
        "Gear: a parachute behind on a line from a belt."
    )


def test_two_figures_on_a_page_share_no_id() -> None:
    words = {"position": "supine", "arms": "free", "kick": "none"}
    ids = [
        set(re.findall(r'\bid="([^"]+)"', body_drawing(**words, identifier=name)))  # type: ignore[arg-type]
        for name in ("one", "two")
    ]
    assert len(ids[0]) == len(ids[1]) == 2 and not ids[0] & ids[1]


UNDRAWN = [
    ({"position": "sideways"}, "position: Sideways"),
    ({"arms": "wings"}, "arms: Wings"),
    ({"kick": "scissors"}, "kick: Scissors"),
    ({"setting": "moon"}, "setting: moon"),
    ({"posture": "headstand"}, "posture: headstand"),
    ({"wall": "leaning"}, "wall: leaning"),
    ({"face": "aslant"}, "face: aslant"),
    ({"stroke": "doggy", "arms": "stroking"}, "stroke: Doggy"),
]
NEUTRAL: dict[str, str] = {"position": "supine", "arms": "free", "kick": "none"}


@pytest.mark.parametrize(("changed", "named"), UNDRAWN)
def test_a_word_that_cannot_be_drawn_gives_a_neutral_picture_that_names_it(
    changed: dict[str, str], named: str
) -> None:
    field = next(iter(changed))
    titles = {field: named.split(": ")[1]}
    root = checked(body_drawing(**NEUTRAL | changed, titles=titles))  # type: ignore[arg-type]
    shown = [node.text for node in root.iter(f"{SVG}text")]
    assert shown == ["Not drawn yet:", named]
    assert named in root.findtext(f"{SVG}title", "") and named in root.findtext(f"{SVG}desc", "")


def test_many_words_with_long_titles_stay_in_the_neutral_picture() -> None:
    words = {"position": "sideways", "arms": "wings", "kick": "scissors", "face": "aslant"}
    titles = dict.fromkeys(words, "W" * 60)
    root = checked(body_drawing(**words, titles=titles))  # type: ignore[arg-type]
    rows = [float(node.get("y", "0")) for node in root.iter(f"{SVG}text")]
    assert min(rows) > 12 and max(rows) < 136


def test_a_new_stroke_changes_no_picture_that_follows_from_the_rest() -> None:
    """A stroke is missed only where the body would be drawn otherwise in another."""
    walls = (None, "coming-in", "touching", "feet-on")
    words = product((*POSITIONS, "any"), ARMS, (*KICKS, "any"), walls)
    for position, arms, kick, wall in share(words, 100):
        choice = DrawnBody(wall=wall)
        if list(undrawn_words(position, arms, kick, "doggy", choice)):
            continue
        told = {"position": position, "arms": arms, "kick": kick, "wall": wall}
        drawn = {body_drawing(**told, stroke=stroke) for stroke in (*STROKES, "doggy")}  # type: ignore[arg-type]
        assert len(drawn) == 1, told


@pytest.mark.parametrize("moment", [8, -1, True])
def test_a_moment_outside_the_cycle_is_refused(moment: int) -> None:
    with pytest.raises(ValueError, match="a whole number from 0 to 7"):
        body_drawing(**NEUTRAL, moment=moment)  # type: ignore[arg-type]


def test_an_identifier_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="identifier '1 a' must be a letter"):
        body_drawing(**NEUTRAL, identifier="1 a")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("stroke", "position", "kick"),
    [
        ("backstroke", "supine", "flutter"),
        ("freestyle", "prone", "flutter"),
        ("butterfly", "prone", "dolphin"),
        ("breaststroke", "prone", "breaststroke"),
        ("any", "prone", "flutter"),
    ],
)
def test_any_is_drawn_as_the_stroke_has_it(stroke: str, position: str, kick: str) -> None:
    spec = resolve_pose(position="any", arms="stroking", kick="any", stroke=stroke)
    assert (spec.position, spec.kick) == (position, kick)


def test_a_board_held_on_the_back_lies_on_the_thighs_with_straight_arms() -> None:
    held = pose(
        resolve_pose(position="supine", arms="holding-gear", kick="flutter", gear=("kickboard",))
    )
    assert held.posture.near_arm.elbow < 10
    assert held.skeleton.near_leg.knee.x < held.skeleton.near_arm.fingertip.x < held.skeleton.hip.x
    assert held.skeleton.near_leg.knee.y < 0 < held.skeleton.near_arm.fingertip.y


def test_hands_that_hold_on_land_lean_on_the_deck_edge() -> None:
    spec = resolve_pose(position="on-land", arms="holding-wall", kick="flutter")
    assert (spec.setting, spec.hold, spec.lie) == ("deck-edge", "reclined", "supine")


def test_every_word_has_words() -> None:
    assert set(POSITION_WORDS) == set(POSITIONS)
    assert set(ARMS_WORDS) == set(ARMS)
    assert set(KICK_WORDS) == set(KICKS)
    assert set(SETTING_WORDS) == set(SETTINGS)
    assert set(GEAR_WORDS) == set(GEAR) == set(KNOWN_GEAR)


# --- colours


def test_the_style_sheet_sets_every_colour_in_light_dark_print_and_forced_colours() -> None:
    sheet = (ROOT / "site_src" / "styles" / "figures.css").read_text(encoding="utf-8")
    blocks = [
        dict(re.findall(r"--figure-([a-z-]+): ([^;]+);", block)) for block in sheet.split("}")
    ]
    blocks = [block for block in blocks if block]
    assert len(blocks) == 4
    assert blocks[0] == COLOURS
    assert all(set(block) == set(COLOURS) for block in blocks)


def test_no_style_sheet_sizes_the_windows_inside_a_picture() -> None:
    # Their width and height stand with them; `.figure svg { width: 100% }` would stretch each.
    for sheet in (ROOT / "site_src" / "styles").glob("*.css"):
        assert not re.search(r"\.figure svg\b[^{]*\{", sheet.read_text("utf-8")), sheet.name


def test_every_colour_of_a_figure_is_a_property_with_a_fallback() -> None:
    svg = body_drawing(position="supine", arms="board", kick="flutter", gear=GEAR)
    painted = set(re.findall(r'(?:fill|stroke)="([^"]+)"', svg)) - {"none"}
    assert all(
        re.fullmatch(r"var\(--figure-[a-z-]+, #[0-9a-f]{6}\)|stroke", value) for value in painted
    )
