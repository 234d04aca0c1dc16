"""From a pose specification to the joint angles of a whole body."""

from __future__ import annotations

from dataclasses import replace

from almanac.drawing.swimmer.arms import (
    arms,
    seated_arms,
)
from almanac.drawing.swimmer.geometry import Point, axes
from almanac.drawing.swimmer.inverse_kinematics import arm_to
from almanac.drawing.swimmer.kicks import legs
from almanac.drawing.swimmer.land import land_posture
from almanac.drawing.swimmer.lying import lying
from almanac.drawing.swimmer.pose_spec import DECK, PoseSpec
from almanac.drawing.swimmer.segments import TRUNK, Leg, Posture
from almanac.drawing.swimmer.tumbling import (
    blocked,
    edged,
    entering,
    flying,
    gathered,
    kneed,
    tucked,
)
from almanac.drawing.swimmer.walls import hung, planted, wading_legs


def posture(spec: PoseSpec) -> Posture:
    """The joint angles that a specification asks, the hips at their height over water or ground."""
    return {
        "lying": lying,
        "upright": _upright,
        "wading": _wading,
        "posed": land_posture,
        "planted": planted,
        "hung": hung,
        "gathered": gathered,
        "tucked": tucked,
        "flying": flying,
        "blocked": blocked,
        "edged": edged,
        "kneed": kneed,
        "entering": entering,
        "seated": _seated,
        "reclined": _reclined,
    }[spec.hold](spec)


def _upright(spec: PoseSpec) -> Posture:
    hip = Point(0.0, -0.76 if spec.setting == "under-water" else -0.345)
    return Posture(
        89, -1, *legs(spec.kick, spec.moment, spec.lie), *arms(spec.arms, "upright"), hip=hip
    )


def _wading(spec: PoseSpec) -> Posture:
    """Standing on the pool's floor, chest deep."""
    hip, body = Point(0.0, -0.18), axes(86, -1, 0.0)
    both = arms(spec.arms, "upright")
    if spec.arms == "holding-wall":
        shoulder = hip.plus(body.up, TRUNK)
        wrist, hand = Point(0.328, DECK + 0.012), Point(1.0, 0.0)
        both = (
            arm_to(wrist, hand, shoulder, body),
            arm_to(wrist.plus(Point(0.0, 0.01)), hand, shoulder, body),
        )
    return Posture(86, -1, *wading_legs(spec, hip), *both, hip=hip)


def _seated(spec: PoseSpec) -> Posture:
    """On the deck's edge, facing out over the water, thighs on the deck, shins hanging in the
    water.
    """
    near_leg, far_leg = legs(spec.kick, spec.moment, spec.lie)
    hip = Point(0, DECK + 0.054)
    return Posture(
        93,
        1,
        _hanging(near_leg, spec.kick),
        _hanging(far_leg, spec.kick),
        *seated_arms(spec.arms, 93),
        hip=hip,
    )


def _hanging(leg: Leg, kick: str) -> Leg:
    if kick == "breaststroke":
        return replace(leg, hip=89, knee=max(20.0, leg.knee * 0.9))
    return Leg(
        hip=89,
        knee=max(20.0, 58 - 2.2 * leg.hip),
        ankle=max(leg.ankle - 20, 0),
        turn_out=leg.turn_out,
    )


def _reclined(spec: PoseSpec) -> Posture:
    """On the deck's edge, leaning back, the legs out over the water."""
    near_leg, far_leg = (
        replace(leg, hip=leg.hip + 48) for leg in legs(spec.kick, spec.moment, spec.lie)
    )
    return Posture(
        60, 1, near_leg, far_leg, *seated_arms(spec.arms, 60), hip=Point(0, DECK + 0.052)
    )
