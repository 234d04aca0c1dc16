"""From a plan to the joint angles of a whole body."""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians, sin

from almanac.figures.arms import TOGETHER, Pair, Stance, arms, rolled_arms, seated_arms
from almanac.figures.flutter import MOMENTS, legs
from almanac.figures.plans import DECK, Plan
from almanac.figures.segments import TRUNK, Arm, Leg, Posture
from almanac.figures.space import Point

LEAN = 1.8
"""How steep the trunk of a lying swimmer is, in degrees, shoulders above hips."""
_HALF_WIDTH = {"side": 0.126, "rotating": 0.1}


def posture(plan: Plan) -> Posture:
    """The joint angles of a plan, the hips at their height over water or ground."""
    return {
        "lying": _lying,
        "upright": _upright,
        "standing": _standing,
        "seated": _seated,
        "reclined": _reclined,
    }[plan.hold](plan)


def _lying(plan: Plan) -> Posture:
    near_leg, far_leg = legs(plan.kick, plan.moment, plan.lie)
    if plan.setting == "deck-edge":  # the hips are on the deck, the legs slope down into the water
        near_leg, far_leg = replace(near_leg, hip=near_leg.hip + 14), replace(far_leg, hip=far_leg.hip + 14)
    elif plan.grounded:
        near_leg, far_leg = _above_ground(near_leg, plan), _above_ground(far_leg, plan)
    if plan.roll:
        near_leg, far_leg = _together(near_leg), _together(far_leg)
    tilt = _tilt(plan, near_leg)
    near_arm, far_arm = (_level(arm, tilt - LEAN, plan) for arm in _lying_arms(plan))
    drop = 0.0 if plan.grounded else TRUNK * sin(radians(tilt - LEAN))
    return Posture(
        trunk=tilt,
        belly=1 if plan.face_up else -1,
        near_leg=near_leg,
        far_leg=far_leg,
        near_arm=near_arm,
        far_arm=far_arm,
        roll=plan.roll,
        head_roll=plan.roll if plan.position == "side" and plan.stroke == "any" else 0.0,
        chin=_chin(plan),
        hip=Point(0.0, _hip_height(plan) - drop),
    )


def _lying_arms(plan: Plan) -> Pair:
    if plan.together:
        return TOGETHER[plan.together]
    stance: Stance = "supine" if plan.face_up else "prone"
    word = plan.arms
    if word == "holding-wall" and plan.setting == "deck-edge":  # no wall there: hands on the deck
        word = "one-extended" if plan.roll else "at-sides" if plan.face_up else "free"
    if plan.roll:
        return rolled_arms(word, stance, on_side=plan.position == "side", grounded=plan.grounded)
    return arms(word, stance, grounded=plan.grounded)


def _tilt(plan: Plan, leg: Leg) -> float:
    """How steep a lying trunk is.

    In water a dolphin kick sways it, and a breaststroke kick on the front lifts the shoulders over the hips
    as the heels are drawn up.
    """
    if plan.grounded:
        return 0.0
    if plan.kick == "dolphin":
        return LEAN + 2.2 * sin(pi * plan.moment / (MOMENTS / 2)) * (1 if plan.face_up else -1)
    if plan.kick == "breaststroke":
        return LEAN + (3.0 if plan.face_up else max(leg.hip, 0.0) * 0.24)
    return LEAN + (2.5 if plan.arms == "board" and not plan.face_up else 0.0)


def _level(arm: Arm, steeper: float, plan: Plan) -> Arm:
    """An arm that reaches ahead keeps its line in the water where the trunk lies steeper."""
    if arm.shoulder < 150 or plan.grounded:
        return arm
    return replace(arm, shoulder=arm.shoulder + (steeper if plan.face_up else -steeper))


def _chin(plan: Plan) -> float:
    if not plan.face_up:
        if plan.together == "breaststroke":
            return -22.0
        return -34.0 if plan.arms == "board" and plan.position == "prone" else -2.0
    return 2.0 if plan.grounded else 4.0


def _hip_height(plan: Plan) -> float:
    if plan.grounded:
        return (DECK if plan.wet else 0.0) + _HALF_WIDTH.get(plan.position, 0.06)
    if plan.setting == "under-water":
        return -0.46 if plan.rising else -0.27
    return {"side": -0.075, "rotating": -0.06}.get(plan.position, -0.052)


def _above_ground(leg: Leg, plan: Plan) -> Leg:
    """The same leg where there is ground in place of water: raised to kick, never bent through the floor."""
    if plan.lie == "centred":
        return replace(leg, hip=leg.hip * 0.6)
    if plan.kick == "none":
        return replace(leg, hip=0.0)
    if plan.lie == "supine":
        return replace(leg, hip=leg.hip + 24, knee=leg.knee * 0.4)
    if plan.kick == "breaststroke":
        return replace(leg, hip=-2.0)
    return replace(leg, hip=min(leg.hip - 23, -1.0), knee=leg.knee * 0.5)


def _together(leg: Leg) -> Leg:
    """Legs closer than the hips are, as a roll shows them."""
    return replace(leg, spread=min(leg.spread, 6.0) - 4.0, turn_out=min(leg.turn_out, 6.0) - 4.0)


def _upright(plan: Plan) -> Posture:
    hip = Point(0.0, -0.76 if plan.setting == "under-water" else -0.345)
    return Posture(89, -1, *legs(plan.kick, plan.moment, plan.lie), *arms(plan.arms, "upright"), hip=hip)


def _standing(plan: Plan) -> Posture:
    """Upright on the ground; in a flutter the near leg swings past the one that stands."""
    near_leg, planted = legs(plan.kick, plan.moment, plan.lie)[0], Leg(0, 0, 0)
    swung = Leg(near_leg.hip + 16, max(near_leg.knee, 32.0), -15) if plan.kick == "flutter" else planted
    return Posture(90, -1, swung, planted, *arms(plan.arms, "upright"), hip=Point(0, 0.53))


def _seated(plan: Plan) -> Posture:
    """On the deck's edge, facing out over the water, thighs on the deck, shins hanging in the water."""
    near_leg, far_leg = legs(plan.kick, plan.moment, plan.lie)
    hip = Point(0, DECK + 0.05)
    return Posture(93, 1, _hanging(near_leg), _hanging(far_leg), *seated_arms(plan.arms, 93), hip=hip)


def _hanging(leg: Leg) -> Leg:
    return Leg(
        hip=89, knee=max(20.0, 58 - 2.2 * leg.hip), ankle=max(leg.ankle - 20, 0), turn_out=leg.turn_out
    )


def _reclined(plan: Plan) -> Posture:
    """On the deck's edge, leaning back, the legs out over the water."""
    near_leg, far_leg = (replace(leg, hip=leg.hip + 48) for leg in legs(plan.kick, plan.moment, plan.lie))
    return Posture(60, 1, near_leg, far_leg, *seated_arms(plan.arms, 60), hip=Point(0, DECK + 0.052))
