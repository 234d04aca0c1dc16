"""What a fault does to a body: a change of its joint angles for each word. The angles are ours, set
by eye from what coaches say that they see.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import reduce
from math import radians, sin

from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.segments import TRUNK, Arm, Leg, Posture

Slip = Callable[[Posture], Posture]


def slipped(posture: Posture, slips: tuple[str, ...]) -> Posture:
    """The posture with each of the slips made to it in turn."""
    return reduce(lambda held, word: SLIPS[word](held), slips, posture)


def from_above(posture: Posture) -> Posture:
    """The same body seen from over the water, level: its near side is the lower one."""
    turned = 90.0 * posture.belly
    near, far = (
        replace(arm, shoulder=_ahead(arm.shoulder)) for arm in (posture.near_arm, posture.far_arm)
    )
    return replace(
        posture,
        trunk=0,
        roll=turned + posture.roll,
        head_roll=turned + posture.head_roll,
        chin=0,
        hip=Point(0.0, 0.0),
        near_arm=near,
        far_arm=far,
    )


def _ahead(shoulder: float) -> float:
    """An arm that reaches ahead lies flat in the water."""
    return 180.0 if shoulder > 165 else shoulder


def _legs(posture: Posture, near: Leg, far: Leg) -> Posture:
    return replace(posture, near_leg=near, far_leg=far)


def _each_leg(posture: Posture, **angles: float) -> Posture:
    return _legs(posture, replace(posture.near_leg, **angles), replace(posture.far_leg, **angles))


def _steeper(posture: Posture, degrees: float) -> Posture:
    """The trunk steeper, the shoulders where they were, so that the hips are low; arms ahead keep
    their line.
    """
    drop = TRUNK * (sin(radians(posture.trunk + degrees)) - sin(radians(posture.trunk)))
    arms = [
        replace(arm, shoulder=arm.shoulder + degrees * posture.belly) if arm.shoulder > 150 else arm
        for arm in (posture.near_arm, posture.far_arm)
    ]
    hip = Point(posture.hip.x, posture.hip.y - drop)
    return replace(
        posture, trunk=posture.trunk + degrees, hip=hip, near_arm=arms[0], far_arm=arms[1]
    )


def _knees_up(posture: Posture) -> Posture:
    return _legs(_steeper(posture, 5), Leg(36, 82, 62), Leg(12, 60, 62))


def _legs_low(posture: Posture) -> Posture:
    lower = 7.0 * -posture.belly
    near, far = (replace(leg, hip=leg.hip + lower) for leg in (posture.near_leg, posture.far_leg))
    return _legs(_steeper(posture, 10), near, far)


def _chest_up(posture: Posture) -> Posture:
    raised = _steeper(posture, 9)
    return replace(raised, chin=14, hip=raised.hip.plus(Point(0.0, 0.04)))


def _head_up(posture: Posture) -> Posture:
    return replace(posture, chin=44 if posture.belly == 1 else -46)


def _arched(posture: Posture) -> Posture:
    near, far = (replace(leg, hip=leg.hip - 13) for leg in (posture.near_leg, posture.far_leg))
    back = replace(posture, trunk=posture.trunk - 7, arch=0.045)
    return _legs(back, near, far)


def _early_lift(posture: Posture) -> Posture:
    lifted = _steeper(posture, 17)
    arm = Arm(150, 6)
    return replace(
        lifted,
        chin=-40,
        near_arm=arm,
        far_arm=arm,
        hip=lifted.hip.plus(Point(0.0, 0.06)),
    )


def _feet_wide(posture: Posture) -> Posture:
    return _legs(posture, Leg(16 * posture.belly, 8, 58), Leg(-19 * posture.belly, 10, 58))


def _shins_only(posture: Posture) -> Posture:
    near = Leg(9, 66, 62) if posture.belly == -1 else Leg(10, 70, 62)
    return replace(_legs(posture, near, replace(near, hip=near.hip - 1.5)), trunk=0.5)


def _thighs_forward(posture: Posture) -> Posture:
    near = replace(posture.near_leg, hip=96, knee=128)
    return _legs(posture, near, replace(near, hip=94))


def _spread(posture: Posture, near: float, far: float, shins: bool = True) -> Posture:
    """Both legs moved sideways: outward where above 0."""
    return _legs(
        posture,
        replace(posture.near_leg, spread=near, turn_out=near if shins else 0.0),
        replace(posture.far_leg, spread=far, turn_out=far if shins else 0.0),
    )


def _snaking(posture: Posture) -> Posture:
    return _spread(replace(posture, trunk=-7), 17, -17)


def _hand_crosses(posture: Posture) -> Posture:
    return replace(posture, near_arm=replace(posture.near_arm, spread=-32))


def _knees_wide(posture: Posture) -> Posture:
    near, far = (replace(leg, spread=46, turn_out=4) for leg in (posture.near_leg, posture.far_leg))
    return _legs(posture, near, far)


def _one_foot_out(posture: Posture) -> Posture:
    return replace(posture, far_leg=replace(posture.far_leg, ankle=80, turn_out=0, spread=4))


def _runs_deep(posture: Posture) -> Posture:
    arms = (replace(arm, shoulder=arm.shoulder + 5) for arm in (posture.near_arm, posture.far_arm))
    near, far = arms
    return replace(
        posture, trunk=posture.trunk - 17, arch=0.03, chin=-12, near_arm=near, far_arm=far
    )


def _falls_flat(posture: Posture) -> Posture:
    """On the back the seat is lowest, legs and chin up; on the front the body lies level, head
    up.
    """
    low = posture.hip.plus(Point(0.0, -0.12))
    if posture.belly == 1:
        legs = _legs(posture, Leg(34, 6, 74), Leg(30, 8, 72))
        return replace(legs, trunk=posture.trunk + 24, chin=40, hip=low)
    arms = Arm(150, 4, spread=-4), Arm(146, 4, spread=-4)
    return replace(posture, trunk=-2, chin=-46, near_arm=arms[0], far_arm=arms[1], hip=low)


def _climbs(posture: Posture) -> Posture:
    up = posture.hip.plus(Point(0.0, 0.2))
    return replace(_legs(posture, Leg(24, 40, 60), Leg(18, 34, 60)), chin=-24, hip=up)


SLIPS: dict[str, Slip] = {
    "knees-up": _knees_up,
    "hips-low": lambda held: _steeper(held, 15),
    "legs-low": _legs_low,
    "chest-up": _chest_up,
    "head-up": _head_up,
    "hooked-feet": lambda held: _each_leg(held, ankle=8),
    "arched": _arched,
    "bicycle": lambda held: _legs(held, Leg(64, 92, 40), Leg(20, 48, 50)),
    "shins-only": _shins_only,
    "thighs-forward": _thighs_forward,
    "elbow-dropped": lambda held: replace(held, near_arm=Arm(84, 74)),
    "elbow-leads": lambda held: replace(held, near_arm=Arm(-58, 96, twist=180)),
    "elbow-bent": lambda held: replace(held, near_arm=Arm(214, 76, twist=180)),
    "early-lift": _early_lift,
    "feet-wide": _feet_wide,
    "aslant": lambda held: replace(held, trunk=12),
    "snaking": _snaking,
    "hand-crosses": _hand_crosses,
    "feet-crossed": lambda held: _spread(held, -14, -14),
    "legs-split": lambda held: _spread(held, 17, 19),
    "knees-wide": _knees_wide,
    "one-foot-out": _one_foot_out,
    "feet-slide": lambda held: replace(held, near_leg=Leg(70, 60, 30)),
    "runs-deep": _runs_deep,
    "falls-flat": _falls_flat,
    "tips-forward": lambda held: replace(_steeper(held, 12), near_arm=Arm(128, 30)),
    "climbs": _climbs,
}
