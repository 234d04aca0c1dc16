"""Bodies on dry ground: joint angles for each posture of a drill's `figure`, found from what
touches the ground.

Upright postures face right, lying ones have the head to the right. A kick lifts one leg.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from almanac.drawing.swimmer.arms import Pair, arms
from almanac.drawing.swimmer.geometry import Axes, Point, axes
from almanac.drawing.swimmer.grounded import BACK, DOWN, IDLE, UP, placed, shoulder_over
from almanac.drawing.swimmer.inverse_kinematics import arm_to, flexion_of, leg_to
from almanac.drawing.swimmer.kicks import legs
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.propped import on_heels, press_up, side_bridge, track_stance
from almanac.drawing.swimmer.seated_on_land import kneeling, on_bench, sitting, sitting_bent
from almanac.drawing.swimmer.segments import FOOT_HEIGHT, TRUNK, Arm, Leg, Posture

ROLL_RADIUS = 0.026
"""Half the thickness of a rolled towel."""


def land_posture(spec: PoseSpec) -> Posture:
    """The joint angles of a body held on the ground."""
    return _POSTURES[spec.posture](spec)


def dead_bug(spec: PoseSpec) -> bool:
    """Whether one leg works while the other's shin is held level: under arms that are raised from
    the ground.
    """
    working = spec.arms in ("streamline", "hands-up", "stroking", "one-arm-strokes", "one-extended")
    return spec.posture == "lying-on-back" and spec.kick != "none" and working


def _standing(spec: PoseSpec) -> Posture:
    """Upright; in a flutter the near leg swings past the one that stands."""
    hip, planted = Point(0.0, 0.53), Leg(0, 0, 0)
    swung = planted
    if spec.kick == "flutter":
        near = legs(spec.kick, spec.moment, spec.lie)[0]
        swung = Leg(near.hip + 16, max(near.knee, 32.0), -15)
    return placed(90, -1, hip, (swung, planted), _upright_arms(spec, hip))


def _upright_arms(spec: PoseSpec, hip: Point) -> Pair:
    """Hands that hold a wall lie on it at the height of the shoulders."""
    body = axes(90, -1, 0.0)
    shoulder = shoulder_over(hip, body)
    if spec.arms != "holding-wall":
        return arms(spec.arms, "upright")
    wrist = shoulder.plus(Point(0.305, -0.02))
    return arm_to(wrist, Point(0.3, 1.0), shoulder, body), arm_to(
        wrist.plus(DOWN, 0.03), Point(0.3, 1.0), shoulder, body
    )


def _on_toes(spec: PoseSpec) -> Posture:
    """Upright with the heels off the ground."""
    hip, raised = Point(0.0, 0.592), Leg(-2, 0, 27)
    return placed(90, -1, hip, (raised, replace(raised, hip=-3.5)), _upright_arms(spec, hip))


def _lying_arms(spec: PoseSpec, hip: Point, body: Axes) -> Pair:
    """Idle hands lie beside the body; free ones carry the head."""
    if spec.arms == "free":
        shoulder, half_down = shoulder_over(hip, body), Point(-0.62, -0.78)
        behind = shoulder.plus(body.up, 0.176)
        both = [arm_to(behind.plus(UP, lift), half_down, shoulder, body) for lift in (0.042, 0.048)]
        return replace(both[0], wrist=min(both[0].wrist, 68.0)), replace(
            both[1], wrist=min(both[1].wrist, 68.0)
        )
    return arms(spec.arms, "supine", grounded=True)


def _on_back(spec: PoseSpec) -> Posture:
    """Knees bent, feet flat; in a kick one leg is long and low, the other bent: its shin level
    under raised arms.
    """
    hip, body = Point(0.0, 0.056), axes(0, 1, 0.0)
    bent = leg_to(Point(-0.335, FOOT_HEIGHT), BACK, hip, body)
    near, far = bent, leg_to(Point(-0.36, FOOT_HEIGHT), BACK, hip, body)
    if spec.kick != "none":
        raised = dead_bug(spec)
        near = Leg(9, 3, 62) if raised else Leg(26, 0, 66)
        far = Leg(91, 92, 25) if raised else bent
    return placed(0, 1, hip, (near, far), _lying_arms(spec, hip, body), 2.0)


def _over_roll(spec: PoseSpec) -> Posture:
    """On the back with a roll under the shoulder blades: the chest is a little higher than the
    hips.
    """
    hip, body = Point(0.0, 0.056), axes(8, 1, 0.0)
    near = leg_to(Point(-0.3, FOOT_HEIGHT), BACK, hip, body)
    far = leg_to(Point(-0.33, FOOT_HEIGHT), BACK, hip, body)
    return placed(8, 1, hip, (near, far), _lying_arms(spec, hip, body), -13.0)


def _plank(spec: PoseSpec) -> Posture:
    """On forearms and toes, one line from ankle to ear; an arm that reaches slides ahead along the
    ground.
    """
    slope, toe = 6.5, Point(-0.482, 0.0)
    body = axes(slope, -1, 0.0)
    hip = Point(toe.x, 0.119).plus(body.up, 0.491)
    near, far = Leg(0, 0, 2), Leg(0, 0, 2)
    if spec.kick != "none":
        near = Leg(-14, 0, 40)
    shoulder = shoulder_over(hip, body)
    propped = Arm(flexion_of(DOWN, body), 90, wrist=2)
    ahead = arm_to(shoulder.plus(Point(0.33, -0.15)), Point(1.0, -0.12), shoulder, body)
    reaches = spec.arms in ("one-extended", "one-arm-strokes")
    far_arm = ahead if reaches else replace(propped, shoulder=propped.shoulder + 4)
    return placed(slope, -1, hip, (near, far), (propped, far_arm), -4.0)


def _bridge(spec: PoseSpec) -> Posture:
    """On the shoulders and flat feet, hips lifted to one line with the knees; a kick lifts one
    foot.
    """
    slope = -25.5
    body = axes(slope, 1, 0.0)
    hip = Point(0.0, 0.056).plus(body.up, -TRUNK)
    near = leg_to(Point(hip.x - 0.221, FOOT_HEIGHT), BACK, hip, body)
    far = leg_to(Point(hip.x - 0.24, FOOT_HEIGHT), BACK, hip, body)
    if spec.kick != "none":
        near = replace(near, hip=near.hip + 24)
    flat = flexion_of(BACK, body)
    down = Arm(flat + 2, 3), Arm(flat, 3)
    both = down if spec.arms in IDLE else _turned(arms(spec.arms, "supine", grounded=True), flat)
    return placed(slope, 1, hip, (near, far), both, -slope)


def _turned(pair: Pair, angle: float) -> Pair:
    near, far = pair
    return replace(near, shoulder=near.shoulder + angle), replace(
        far, shoulder=far.shoulder + angle
    )


_POSTURES: dict[str, Callable[[PoseSpec], Posture]] = {
    "standing": _standing,
    "standing-on-toes": _on_toes,
    "lying-on-back": _on_back,
    "lying-over-roll": _over_roll,
    "sitting": sitting,
    "sitting-knees-bent": sitting_bent,
    "sitting-on-bench": on_bench,
    "kneeling": kneeling,
    "plank": _plank,
    "bridge": _bridge,
    "press-up": press_up,
    "side-bridge": side_bridge,
    "sitting-on-heels": on_heels,
    "track-stance": track_stance,
}
