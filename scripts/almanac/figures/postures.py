"""From a plan to the joint angles of a whole body."""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians, sin

from almanac.figures.arms import BUTTERFLY_OVER, TOGETHER, Pair, Stance, arms, rolled_arms, seated_arms
from almanac.figures.flutter import MOMENTS, legs, still
from almanac.figures.land import land_posture
from almanac.figures.plans import DECK, Plan
from almanac.figures.segments import TRUNK, Arm, Leg, Posture
from almanac.figures.solve import arm_to
from almanac.figures.space import Point, axes
from almanac.figures.walls import hung, planted, touching_arms, wading_legs

LEAN = 1.8
"""How steep the trunk of a lying swimmer is, in degrees, shoulders above hips."""
_HALF_WIDTH = {90.0: 0.126, 42.0: 0.1}


def posture(plan: Plan) -> Posture:
    """The joint angles of a plan, the hips at their height over water or ground."""
    return {
        "lying": _lying,
        "upright": _upright,
        "wading": _wading,
        "posed": land_posture,
        "planted": planted,
        "hung": hung,
        "seated": _seated,
        "reclined": _reclined,
    }[plan.hold](plan)


def _lying(plan: Plan) -> Posture:
    near_leg, far_leg = _lying_legs(plan)
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
        head_roll=plan.roll if plan.roll > 60 and plan.stroke == "any" else 0.0,
        chin=_chin(plan),
        hip=Point(0.0, _hip_height(plan) - drop),
    )


def _lying_legs(plan: Plan) -> tuple[Leg, Leg]:
    near, far = still(plan.lie) if plan.wall == "leaving" else legs(plan.kick, plan.moment, plan.lie)
    if plan.one_leg:
        far = Leg(4, 1, 72) if plan.lie == "supine" else Leg(-4, 2, 70)
    if plan.setting == "deck-edge":  # the hips are on the deck, the legs slope down into the water
        near, far = replace(near, hip=near.hip + 14), replace(far, hip=far.hip + 14)
    elif plan.grounded:
        near, far = _above_ground(near, plan), _above_ground(far, plan)
    return (_together(near), _together(far)) if plan.roll else (near, far)


def _lying_arms(plan: Plan) -> Pair:
    if plan.together:
        return TOGETHER[plan.together]
    stance: Stance = "supine" if plan.face_up else "prone"
    word = plan.arms
    if word == "holding-wall" and plan.setting == "deck-edge":  # no wall there: hands on the deck
        word = "at-sides" if plan.face_up else "free"
    if plan.wall == "touching":
        if not plan.roll:
            return touching_arms(plan)
        word = "one-extended"
    if plan.roll:
        if plan.setting == "under-water" and word in ("stroking", "one-arm-strokes"):  # no arm comes over there
            word = "one-extended"
        return rolled_arms(word, stance, on_side=plan.roll > 60, grounded=plan.grounded)
    if (word, plan.stroke, plan.rising) == ("one-arm-strokes", "butterfly", True):
        return BUTTERFLY_OVER
    return arms(word, stance, grounded=plan.grounded, under=plan.setting == "under-water")


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
    raised = plan.arms == "board" and not plan.face_up and plan.face != "in"
    return LEAN + (2.5 if raised else 0.0)


def _level(arm: Arm, steeper: float, plan: Plan) -> Arm:
    """An arm that reaches ahead keeps its line in the water where the trunk lies steeper."""
    if arm.shoulder < 150 or plan.grounded:
        return arm
    return replace(arm, shoulder=arm.shoulder + (steeper if plan.face_up else -steeper))


def _chin(plan: Plan) -> float:
    if not plan.face_up:
        if plan.together == "breaststroke":
            return -22.0
        raised = plan.face or ("out" if plan.arms == "board" else "in")
        return -34.0 if raised == "out" and not plan.roll else -2.0
    return 2.0 if plan.grounded else 4.0


def _hip_height(plan: Plan) -> float:
    if plan.grounded:
        return (DECK if plan.wet else 0.0) + _HALF_WIDTH.get(plan.roll, 0.06)
    if plan.setting == "under-water":
        return -0.46 if plan.rising else -0.27
    return {90.0: -0.075, 42.0: -0.06}.get(plan.roll, -0.052)


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


def _wading(plan: Plan) -> Posture:
    """Standing on the pool's floor, chest deep."""
    hip, body = Point(0.0, -0.18), axes(86, -1, 0.0)
    both = arms(plan.arms, "upright")
    if plan.arms == "holding-wall":
        shoulder = hip.plus(body.up, TRUNK)
        wrist, hand = Point(0.328, DECK + 0.012), Point(1.0, 0.0)
        both = arm_to(wrist, hand, shoulder, body), arm_to(wrist.plus(Point(0.0, 0.01)), hand, shoulder, body)
    return Posture(86, -1, *wading_legs(plan, hip), *both, hip=hip)


def _seated(plan: Plan) -> Posture:
    """On the deck's edge, facing out over the water, thighs on the deck, shins hanging in the water."""
    near_leg, far_leg = legs(plan.kick, plan.moment, plan.lie)
    hip = Point(0, DECK + 0.054)
    return Posture(
        93, 1, _hanging(near_leg, plan.kick), _hanging(far_leg, plan.kick), *seated_arms(plan.arms, 93), hip=hip
    )


def _hanging(leg: Leg, kick: str) -> Leg:
    if kick == "breaststroke":
        return replace(leg, hip=89, knee=max(20.0, leg.knee * 0.9))
    return Leg(hip=89, knee=max(20.0, 58 - 2.2 * leg.hip), ankle=max(leg.ankle - 20, 0), turn_out=leg.turn_out)


def _reclined(plan: Plan) -> Posture:
    """On the deck's edge, leaning back, the legs out over the water."""
    near_leg, far_leg = (replace(leg, hip=leg.hip + 48) for leg in legs(plan.kick, plan.moment, plan.lie))
    return Posture(60, 1, near_leg, far_leg, *seated_arms(plan.arms, 60), hip=Point(0, DECK + 0.052))
