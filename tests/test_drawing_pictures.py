"""Pictures of several bodies, of speed, and of what stands beside a body."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import product
from xml.etree import ElementTree

import pytest
from drawing_checks import SVG, checked

from almanac.drawing.swimmer.body import Words, body_drawing, picture_drawing, scene_of
from almanac.drawing.swimmer.framing import view_of
from almanac.drawing.swimmer.kicks import MOMENTS
from almanac.drawing.swimmer.marks import stopwatch
from almanac.drawing.swimmer.phrases import MARK_WORDS
from almanac.drawing.swimmer.pose_spec import DECK
from almanac.drawing.swimmer.poses import pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.model.drawing import HANDS, MARKS, SIZES, DrawingChoice, DrawnBody

ON_BACK = Words("supine", "streamline", "flutter", "backstroke")

EFFORTS = {"slow": "Easy", "even": "Steady", "quick": "Fast", "flat-out": "All-out"}


def drawn(choice: DrawingChoice, words: Words = ON_BACK) -> ElementTree.Element:
    return checked(picture_drawing(words, choice, efforts=EFFORTS))


def texts(root: ElementTree.Element) -> list[str]:
    return [node.text or "" for node in root.iter(f"{SVG}text")]


def test_bodies_stand_beside_each_other_in_one_scale_each_with_its_words() -> None:
    then = (DrawnBody(says="too deep", size="large"), DrawnBody(says="your own"))
    root = drawn(DrawingChoice(says="too small", size="small", then=then))
    windows = [node for node in root.iter(f"{SVG}svg") if node is not root]
    assert len(windows) == 3
    assert " ".join(texts(root)) == "too small too deep your own"
    heads = [
        re.search(
            r'figure-near" [^>]*A([\d.]+) ', ElementTree.tostring(one).decode().replace("ns0:", "")
        )
        for one in windows
    ]
    assert all(heads) and len({found[1] for found in heads if found}) == 1  # one scale
    told = root.findtext(f"{SVG}desc", "")
    assert all(words in told for words in ("1. too small: ", "2. too deep: ", "3. your own: "))


def test_who_waits_on_the_block_faces_the_one_who_comes_in() -> None:
    """One wall, seen once from each side; a block that nobody comes to stands as it always does."""
    waiting = DrawnBody(says="the next", wall="on-block", marks=("block",))
    crawl = Words("prone", "stroking", "flutter", "freestyle")
    met = ElementTree.tostring(
        drawn(DrawingChoice(wall="touching", then=(waiting,)), crawl)
    ).decode()
    alone = drawn(
        DrawingChoice(wall="on-block", marks=("block",), then=(DrawnBody(wall="entry"),)), crawl
    )
    assert met.count("scale(-1 1)") == 1
    assert "scale(-1 1)" not in ElementTree.tostring(alone).decode()


def surface_of(window: ElementTree.Element) -> tuple[float, float]:
    """Where the line of the water begins and ends."""
    line = next(node for node in window.iter(f"{SVG}path") if "surface" in node.get("class", ""))
    numbers = [float(one) for one in re.findall(r"-?[\d.]+", line.get("d", ""))]
    return numbers[0], numbers[-2]


@pytest.mark.parametrize(("way", "leaves"), [("coming-in", "leaving"), ("somersault", "feet-on")])
def test_who_leaves_a_wall_goes_back_and_the_wall_stays_where_it_is(way: str, leaves: str) -> None:
    """Its face at one place in all parts of the picture, the swimmer's head now to the left; what
    follows goes on that way, and no letter is turned round.
    """
    after = DrawnBody(says="on", marks=("hand-count",))
    choice = DrawingChoice(
        says="in", wall=way, setting="at-wall", then=(DrawnBody(says="out", wall=leaves), after)
    )
    root = drawn(choice, Words("prone", "stroking", "flutter", "freestyle"))
    windows = [node for node in root.iter(f"{SVG}svg") if node is not root]
    wide = float(windows[0].get("width", "0"))
    other_way = f"translate({wide:g} 0) scale(-1 1)"
    flips = [one.find(f"{SVG}g[@transform='{other_way}']") is not None for one in windows]
    assert flips == [False, True, True]
    if way == "coming-in":  # a somersault alone is drawn without the wall that it is for
        faces = [
            surface_of(one)[not flip] for one, flip in zip(windows[:2], flips[:2], strict=True)
        ]
        assert faces[0] == pytest.approx(wide - faces[1], abs=0.11)
    counts = list(windows[2].iter(f"{SVG}text"))
    assert len(counts) == 3 and all("scale(-1 1)" in node.get("transform", "") for node in counts)
    told = root.findtext(f"{SVG}desc", "")
    assert told.count("head to the left") == 2, told


def test_on_a_ledge_the_balls_of_the_feet_are_at_the_water_line_and_without_one_below() -> None:
    """The rules for facilities let a ledge be set up to 4 cm over or under it (from memory): of who
    stands 1.7 m, 0.024 of the height.
    """
    set_down = resolve_pose(position="supine", arms="streamline", kick="dolphin", wall="start-hold")
    toes = pose(replace(set_down, marks=("ledge",))).skeleton.near_leg
    ball = (toes.ankle.y + toes.toe.y) / 2
    assert abs(ball) < 0.024
    assert pose(set_down).skeleton.near_leg.toe.y < -0.03


def test_who_dives_from_one_knee_has_knee_and_foot_on_the_deck_and_the_hands_aimed_down() -> None:
    body = pose(
        resolve_pose(position="prone", arms="streamline", kick="none", wall="on-knee")
    ).skeleton
    assert body.near_leg.knee.y == pytest.approx(DECK + 0.034, abs=0.02)
    assert body.far_leg.heel.y == pytest.approx(DECK, abs=0.01)
    assert body.near_arm.fingertip.y < body.near_arm.wrist.y < body.near_arm.shoulder.y
    assert body.near_arm.fingertip.x > body.far_leg.toe.x + 0.1  # over the water


def test_a_forearm_turns_up_at_an_elbow_that_stays() -> None:
    sides = [
        pose(
            resolve_pose(
                position="on-land", arms="free", kick="none", posture="side-lying", hands=hands
            )
        ).skeleton.far_arm
        for hands in ("forearm-in", "forearm-level")
    ]
    assert sides[0].elbow == sides[1].elbow
    assert sides[0].wrist.y < sides[0].elbow.y - 0.08
    assert 0.0 < sides[1].wrist.y - sides[1].elbow.y < 0.08


@pytest.mark.parametrize(
    ("wall", "heading"),
    [
        ("knees-in", "facing right"),
        ("on-block", "facing right"),
        ("on-knee", "facing right"),
        ("somersault", "on the way to the right"),
        ("flight", "head to the right"),
        ("start-hold", "facing left"),
    ],
)
def test_the_words_say_which_way_a_body_at_a_wall_is_turned(wall: str, heading: str) -> None:
    told = drawn(DrawingChoice(wall=wall)).findtext(f"{SVG}desc", "")
    assert f", {heading};" in told


def test_a_press_up_is_drawn_with_straight_arms() -> None:
    held = scene_of(
        Words("on-land", "holding-wall", "none", "any"), DrawnBody(posture="press-up")
    ).held
    assert held.posture.near_arm.elbow < 12  # degrees


def test_a_small_kick_goes_less_deep_than_the_right_one_and_a_large_one_deeper() -> None:
    def deepest(size: str | None, position: str) -> float:
        return min(
            leg.ankle.y
            for moment in range(MOMENTS)
            for held in [
                scene_of(ON_BACK, DrawnBody(position=position, size=size, moment=moment)).held
            ]
            for leg in (held.skeleton.near_leg, held.skeleton.far_leg)
        )

    for position in ("supine", "prone"):
        assert deepest("large", position) < deepest(None, position) - 0.1
        assert deepest(None, position) < deepest("small", position) - 0.03


def test_a_change_of_speed_is_a_line_that_steps_with_its_words() -> None:
    root = drawn(DrawingChoice(speed=("slow", "quick", "slow"), speed_over="one length"))
    assert texts(root) == ["easy", "fast", "easy", "one length"]
    line = next(
        node.get("d", "") for node in root.iter(f"{SVG}path") if node.get("stroke-width") == "3"
    )
    heights = [float(y) for y in re.findall(r"[ML][\d.]+ ([\d.]+)", line)]
    assert len(heights) == 3 and heights[0] == heights[2] > heights[1]  # y runs down
    assert "Speed over one length: easy, fast, easy." in root.findtext(f"{SVG}desc", "")


def test_each_speed_is_higher_than_the_slower_ones() -> None:
    root = drawn(DrawingChoice(from_still=True, speed=tuple(EFFORTS), speed_over="all"))
    line = next(n.get("d", "") for n in root.iter(f"{SVG}path") if n.get("stroke-width") == "3")
    heights = [float(y) for y in re.findall(r"[ML][\d.]+ ([\d.]+)", line)]
    assert heights == sorted(heights, reverse=True) and len(set(heights)) == len(EFFORTS) + 1
    assert texts(root)[0] == "still"


@pytest.mark.parametrize("mark", MARKS)
def test_a_mark_is_drawn_inside_the_frame_and_told(mark: str) -> None:
    for position, wall in product(("supine", "prone"), (None, "coming-in", "start-hold")):
        plain = body_drawing(position=position, arms="stroking", kick="flutter", wall=wall)
        marked = body_drawing(
            position=position, arms="stroking", kick="flutter", wall=wall, marks=(mark,)
        )
        assert MARK_WORDS[mark] in checked(marked).findtext(f"{SVG}desc", "")
        if mark not in ("block", "ledge") or wall == "start-hold":
            assert marked.count("<path") > plain.count("<path") or "<text" in marked


@pytest.mark.parametrize("hands", HANDS)
def test_hands_change_the_picture_where_they_are_known(hands: str) -> None:
    def of(position: str, chosen: str | None) -> str:
        return body_drawing(position=position, arms="stroking", kick="flutter", hands=chosen)

    for position in ("supine", "prone"):
        checked(of(position, hands))
    assert any(of(where, hands) != of(where, None) for where in ("supine", "prone"))


@pytest.mark.parametrize("size", SIZES)
def test_a_kick_of_another_size_is_said(size: str) -> None:
    told = checked(body_drawing(position="prone", arms="board", kick="flutter", size=size))
    assert f"{size} " in told.findtext(f"{SVG}desc", "").lower()


@pytest.mark.parametrize("wall", ["knees-in", "somersault", "flight", "on-block"])
def test_a_body_that_turns_flies_or_waits_is_drawn_inside_its_frame(wall: str) -> None:
    for position, marks in product(("supine", "prone"), ((), ("block",))):
        root = checked(
            body_drawing(position=position, arms="stroking", kick="flutter", wall=wall, marks=marks)
        )
        assert (root.findtext(f"{SVG}title") or "").startswith("Body figure: ")


def test_in_a_somersault_the_head_is_under_the_hips_and_the_chin_drawn_in() -> None:
    held = pose(resolve_pose(position="prone", arms="stroking", kick="flutter", wall="somersault"))
    bones = held.skeleton
    assert bones.head.y < bones.shoulder.y < bones.hip.y < 0
    assert bones.near_leg.knee.distance(bones.shoulder) < 0.45  # a tuck, not a dive
    assert bones.near_leg.heel.distance(bones.hip) < 0.3


def test_in_flight_the_back_is_arched_over_the_water_and_the_hands_lead() -> None:
    bones = pose(
        resolve_pose(position="supine", arms="streamline", kick="dolphin", wall="flight")
    ).skeleton
    assert bones.hip.y > max(bones.near_leg.knee.y, bones.near_leg.ankle.y)
    assert bones.near_leg.ankle.y > -0.05 and bones.near_arm.fingertip.x > bones.vertex.x


def test_arms_change_over_on_the_other_side() -> None:
    def one(other_side: bool) -> tuple[float, float]:
        body = DrawnBody(position="supine", arms="one-arm-strokes", other_side=other_side)
        bones = scene_of(ON_BACK, body).held.skeleton
        return bones.near_arm.fingertip.y, bones.far_arm.fingertip.y

    near, far = one(False)
    assert one(True) == pytest.approx((far, near), abs=0.01) and near > far


def test_a_face_turned_away_is_not_seen() -> None:
    def face(word: str) -> int:
        return body_drawing(position="prone", arms="stroking", kick="flutter", face=word).count(
            "figure-goggles"
        )

    assert face("to-you") and not face("away")


def test_a_further_body_wears_the_gear_of_the_entry_unless_it_says_its_own() -> None:
    fins = ON_BACK._replace(gear=("fins",))
    assert scene_of(fins, DrawnBody()).worn == ("fins",)
    assert scene_of(fins, DrawnBody(gear=())).worn == ()


def test_a_fist_is_no_open_hand_and_a_foot_that_turns_out_shows_so_from_above() -> None:
    def arm(hands: str) -> str:
        return body_drawing(position="prone", arms="stroking", kick="flutter", hands=hands)

    assert arm("fists") != arm("high-elbow")
    held = pose(resolve_pose(position="prone", arms="streamline", kick="breaststroke", moment=4))
    near = held.skeleton.near_leg
    assert near.toe.z - near.heel.z > 0.1  # the toes point away from the middle
    held = pose(resolve_pose(position="prone", arms="streamline", kick="flutter", moment=4))
    assert held.skeleton.near_leg.toe.z == pytest.approx(held.skeleton.near_leg.heel.z)


def test_a_small_breaststroke_kick_brings_the_thighs_less_far_forward() -> None:
    def hip(size: str | None) -> float:
        spec = resolve_pose(
            position="prone", arms="at-sides", kick="breaststroke", moment=3, size=size
        )
        return pose(spec).posture.near_leg.hip

    assert hip("small") < hip(None) < hip("large")


def test_gear_of_one_foot_is_on_the_near_foot_only() -> None:
    for kick in ("flutter", "breaststroke"):

        def worn(*marks: str, kick: str = kick) -> int:
            svg = body_drawing(
                position="prone", arms="crossed", kick=kick, gear=("fins",), marks=marks
            )
            return svg.count('class="figure-gear"')

        assert worn("one-foot") * 2 == worn(), kick


def test_a_watch_stands_ahead_of_who_stands_by_a_block_and_does_not_hide_it() -> None:
    for wall in ("on-block", "start-hold"):
        body = DrawnBody(position="supine", wall=wall, marks=("block", "stopwatch"))
        held = scene_of(ON_BACK, body).held
        view = view_of(held, ())
        face = next(part for part in stopwatch(held, view) if "figure-wall" in part)
        left = float(re.findall(r'd="M([\d.]+) ', face)[0])
        assert left > view.x + held.span[1] * view.height, wall


def test_from_above_arms_in_a_y_are_as_far_apart_on_both_sides_and_on_a_mat() -> None:
    body = DrawnBody(posture="lying-on-front", kick="none", hands="wide", view="above")
    bones = scene_of(Words("on-land", "streamline", "none"), body).held.skeleton
    near, far = bones.near_arm.fingertip, bones.far_arm.fingertip
    assert near.y < -0.25 and far.y > 0.25 and min(near.x, far.x) > bones.vertex.x
    root = drawn(
        DrawingChoice(posture="lying-on-front", kick="none", view="above"),
        Words("on-land", "streamline", "none"),
    )
    assert "Seen from above." in root.findtext(f"{SVG}desc", "")
    assert not [node for node in root.iter() if node.get("class") == "figure-water"]


def test_an_arm_that_reaches_across_touches_on_the_other_side_with_the_back_in_the_water() -> None:
    body = DrawnBody(wall="touching", kick="flutter", hands="across", view="above")
    held = scene_of(ON_BACK, body).held
    arm = held.skeleton.far_arm
    assert arm.shoulder.y > 0 > arm.fingertip.y and held.spec.face_up
    assert held.wall is not None and held.wall[0] >= arm.fingertip.x
