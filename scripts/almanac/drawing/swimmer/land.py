"""Bodies on dry ground: joint angles for each posture of a drill's `figure`, found from what
touches the ground.

Upright postures face right, lying ones have the head to the right. A kick lifts one leg.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from almanac.drawing.swimmer.arms import Pair, arms
from almanac.drawing.swimmer.geometry import Axes, Point, axes
from almanac.drawing.swimmer.inverse_kinematics import arm_to, flexion_of, leg_to
from almanac.drawing.swimmer.kicks import legs
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.propped import on_heels, press_up, side_bridge, track_stance
from almanac.drawing.swimmer.segments import FOOT_HEIGHT, THIGH, TRUNK, Arm, Leg, Posture

SEAT = 0.232
"""The height of a bench."""
ROLL_RADIUS = 0.026
"""Half the thickness of a rolled towel."""
_AHEAD, _BACK, _UP, _DOWN = Point(1.0, 0.0), Point(-1.0, 0.0), Point(0.0, 1.0), Point(0.0, -1.0)
IDLE = ("at-sides", "free", "sculling", "holding-wall")
"""Words for which the hands rest on the ground, the bench or the body."""


def land_posture(spec: PoseSpec) -> Posture:
    """The joint angles of a body held on the ground."""
    return _POSTURES[spec.posture](spec)


def dead_bug(spec: PoseSpec) -> bool:
    """Whether one leg works while the other's shin is held level: under arms that are raised from
    the ground.
    """
    working = spec.arms in ("streamline", "hands-up", "stroking", "one-arm-strokes", "one-extended")
    return spec.posture == "lying-on-back" and spec.kick != "none" and working


def _body(
    trunk: float,
    belly: Literal[1, -1],
    hip: Point,
    both_legs: tuple[Leg, Leg],
    both_arms: Pair,
    chin: float = 0.0,
) -> Posture:
    return Posture(trunk, belly, *both_legs, *both_arms, chin=chin, hip=hip)


def _shoulder(hip: Point, body: Axes) -> Point:
    return hip.plus(body.up, TRUNK)


def _standing(spec: PoseSpec) -> Posture:
    """Upright; in a flutter the near leg swings past the one that stands."""
    hip, planted = Point(0.0, 0.53), Leg(0, 0, 0)
    swung = planted
    if spec.kick == "flutter":
        near = legs(spec.kick, spec.moment, spec.lie)[0]
        swung = Leg(near.hip + 16, max(near.knee, 32.0), -15)
    return _body(90, -1, hip, (swung, planted), _upright_arms(spec, hip))


def _upright_arms(spec: PoseSpec, hip: Point) -> Pair:
    """Hands that hold a wall lie on it at the height of the shoulders."""
    body = axes(90, -1, 0.0)
    shoulder = _shoulder(hip, body)
    if spec.arms != "holding-wall":
        return arms(spec.arms, "upright")
    wrist = shoulder.plus(Point(0.305, -0.02))
    return arm_to(wrist, Point(0.3, 1.0), shoulder, body), arm_to(
        wrist.plus(_DOWN, 0.03), Point(0.3, 1.0), shoulder, body
    )


def _on_toes(spec: PoseSpec) -> Posture:
    """Upright with the heels off the ground."""
    hip, raised = Point(0.0, 0.592), Leg(-2, 0, 27)
    return _body(90, -1, hip, (raised, replace(raised, hip=-3.5)), _upright_arms(spec, hip))


def _lying_arms(spec: PoseSpec, hip: Point, body: Axes) -> Pair:
    """Idle hands lie beside the body; free ones carry the head."""
    if spec.arms == "free":
        shoulder, half_down = _shoulder(hip, body), Point(-0.62, -0.78)
        behind = shoulder.plus(body.up, 0.176)
        both = [
            arm_to(behind.plus(_UP, lift), half_down, shoulder, body) for lift in (0.042, 0.048)
        ]
        return replace(both[0], wrist=min(both[0].wrist, 68.0)), replace(
            both[1], wrist=min(both[1].wrist, 68.0)
        )
    return arms(spec.arms, "supine", grounded=True)


def _on_back(spec: PoseSpec) -> Posture:
    """Knees bent, feet flat; in a kick one leg is long and low, the other bent: its shin level
    under raised arms.
    """
    hip, body = Point(0.0, 0.056), axes(0, 1, 0.0)
    bent = leg_to(Point(-0.335, FOOT_HEIGHT), _BACK, hip, body)
    near, far = bent, leg_to(Point(-0.36, FOOT_HEIGHT), _BACK, hip, body)
    if spec.kick != "none":
        raised = dead_bug(spec)
        near = Leg(9, 3, 62) if raised else Leg(26, 0, 66)
        far = Leg(91, 92, 25) if raised else bent
    return _body(0, 1, hip, (near, far), _lying_arms(spec, hip, body), 2.0)


def _over_roll(spec: PoseSpec) -> Posture:
    """On the back with a roll under the shoulder blades: the chest is a little higher than the
    hips.
    """
    hip, body = Point(0.0, 0.056), axes(8, 1, 0.0)
    near = leg_to(Point(-0.3, FOOT_HEIGHT), _BACK, hip, body)
    far = leg_to(Point(-0.33, FOOT_HEIGHT), _BACK, hip, body)
    return _body(8, 1, hip, (near, far), _lying_arms(spec, hip, body), -13.0)


def _seated_arms(spec: PoseSpec, hip: Point, body: Axes, wrist: Point, hand: Point) -> Pair:
    shoulder = _shoulder(hip, body)
    rest = (
        arm_to(wrist, hand, shoulder, body),
        arm_to(wrist.plus(_BACK, 0.025), hand, shoulder, body),
    )
    if spec.arms in IDLE:
        return rest
    near, far = arms(spec.arms, "upright")
    if spec.arms in ("one-extended", "one-arm-strokes"):
        return (near, rest[1]) if near.shoulder > far.shoulder else (rest[0], far)
    return near, far


def _sitting(spec: PoseSpec) -> Posture:
    """Legs long, the feet pointed; the hands behind."""
    hip, body = Point(0.0, 0.07), axes(106, -1, 0.0)
    near = leg_to(Point(0.487, 0.052), Point(1.0, 0.5), hip, body)
    far = leg_to(Point(0.48, 0.054), Point(1.0, 0.62), hip, body)
    return _body(
        106,
        -1,
        hip,
        (near, far),
        _seated_arms(spec, hip, body, Point(-0.2, 0.032), Point(-1.0, -0.12)),
        8.0,
    )


def _sitting_bent(spec: PoseSpec) -> Posture:
    """Knees at about a right angle, feet flat; the hands behind."""
    hip, body = Point(0.0, 0.07), axes(104, -1, 0.0)
    near = leg_to(Point(0.32, FOOT_HEIGHT), _AHEAD, hip, body)
    far = leg_to(Point(0.36, FOOT_HEIGHT), _AHEAD, hip, body)
    return _body(
        104,
        -1,
        hip,
        (near, far),
        _seated_arms(spec, hip, body, Point(-0.19, 0.032), Point(-1.0, -0.12)),
        6.0,
    )


def _on_bench(spec: PoseSpec) -> Posture:
    """Thighs level on a bench, feet flat on the ground; the hands on the thighs."""
    hip, body = Point(0.0, SEAT + 0.068), axes(91, -1, 0.0)
    near = leg_to(Point(0.25, FOOT_HEIGHT), _AHEAD, hip, body)
    far = leg_to(Point(0.29, FOOT_HEIGHT), _AHEAD, hip, body)
    return _body(
        91,
        -1,
        hip,
        (near, far),
        _seated_arms(spec, hip, body, hip.plus(Point(0.15, 0.066)), Point(1.0, -0.25)),
    )


def _kneeling(spec: PoseSpec) -> Posture:
    """One knee down, its thigh just past upright; the other foot ahead, a hand on that knee."""
    hip, body = Point(0.0, 0.034 + THIGH * 0.995), axes(91, -1, 0.0)
    near = Leg(-5, 91, 70)
    far = leg_to(Point(0.258, FOOT_HEIGHT), _AHEAD, hip, body)
    near_arm, far_arm = arms(spec.arms, "upright")
    if spec.arms in IDLE:
        near_arm = Arm(-4, 12)
        far_arm = arm_to(hip.plus(Point(0.225, 0.06)), Point(1.0, -0.5), _shoulder(hip, body), body)
    return _body(91, -1, hip, (near, far), (near_arm, far_arm))


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
    shoulder = _shoulder(hip, body)
    propped = Arm(flexion_of(_DOWN, body), 90, wrist=2)
    ahead = arm_to(shoulder.plus(Point(0.33, -0.15)), Point(1.0, -0.12), shoulder, body)
    reaches = spec.arms in ("one-extended", "one-arm-strokes")
    far_arm = ahead if reaches else replace(propped, shoulder=propped.shoulder + 4)
    return _body(slope, -1, hip, (near, far), (propped, far_arm), -4.0)


def _bridge(spec: PoseSpec) -> Posture:
    """On the shoulders and flat feet, hips lifted to one line with the knees; a kick lifts one
    foot.
    """
    slope = -25.5
    body = axes(slope, 1, 0.0)
    hip = Point(0.0, 0.056).plus(body.up, -TRUNK)
    near = leg_to(Point(hip.x - 0.221, FOOT_HEIGHT), _BACK, hip, body)
    far = leg_to(Point(hip.x - 0.24, FOOT_HEIGHT), _BACK, hip, body)
    if spec.kick != "none":
        near = replace(near, hip=near.hip + 24)
    flat = flexion_of(_BACK, body)
    down = Arm(flat + 2, 3), Arm(flat, 3)
    both = down if spec.arms in IDLE else _turned(arms(spec.arms, "supine", grounded=True), flat)
    return _body(slope, 1, hip, (near, far), both, -slope)


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
    "sitting": _sitting,
    "sitting-knees-bent": _sitting_bent,
    "sitting-on-bench": _on_bench,
    "kneeling": _kneeling,
    "plank": _plank,
    "bridge": _bridge,
    "press-up": press_up,
    "side-bridge": side_bridge,
    "sitting-on-heels": on_heels,
    "track-stance": track_stance,
}
