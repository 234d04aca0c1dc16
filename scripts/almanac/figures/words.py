"""The body figure in words, for who does not see it."""

from __future__ import annotations

from almanac.figures.arms import RESTING
from almanac.figures.flutter import Phase, phases
from almanac.figures.land import IDLE, dead_bug
from almanac.figures.plans import Plan
from almanac.figures.poses import Pose
from almanac.figures.terms import (
    ARMS_WORDS,
    DEAD_BUG,
    FACE_WORDS,
    GEAR_WORDS,
    HOLD_WORDS,
    KICK_WORDS,
    LEG_WORDS,
    PART_WORDS,
    POSITION_WORDS,
    POSTURE_WORDS,
    RESTING_WORDS,
    SETTING_WORDS,
    WALL_WORDS,
)


def title_words(plan: Plan) -> str:
    """The figure's title."""
    if plan.hold == "hung":
        return "Body figure: in the backstroke start at the wall"
    if plan.hold == "planted":
        return f"Body figure: {_lying_words(plan)}, feet on the wall, ready to push"
    told = [POSITION_WORDS[plan.position]]
    if plan.posture and plan.posture != "standing":
        told = ["on land", POSTURE_WORDS[plan.posture]]
    legs = [] if plan.hold == "posed" else [kick_words(plan).lower()]
    return f"Body figure: {', '.join([*told, arms_words(plan), *legs])}"


def kick_words(plan: Plan) -> str:
    """The kick, and that one leg makes it where that is so."""
    return f"{KICK_WORDS[plan.kick].split(',')[0]} with one leg" if plan.one_leg else KICK_WORDS[plan.kick]


def arms_words(plan: Plan) -> str:
    """What the arms do, as drawn: a swimmer who sits leans on hands that have nothing to do."""
    if plan.hold == "hung":
        return "hands on the edge"
    if plan.hold == "planted":
        return ARMS_WORDS["streamline"]
    if plan.hold == "posed":
        return _posed_arms(plan)
    leaning = plan.hold in ("seated", "reclined") and plan.arms in RESTING
    if leaning or (plan.arms == "holding-wall" and plan.setting == "deck-edge"):
        return "hands on the deck"
    if plan.wall == "touching":
        both = plan.stroke in ("butterfly", "breaststroke") and not plan.roll
        return "both hands on the wall" if both else "the leading hand on the wall, the other arm along the body"
    if plan.together:
        return "both arms coming over together" if plan.together == "double-arm" else "both arms pulling together"
    if plan.arms == "board" and plan.position == "supine" and plan.hold == "lying":
        return "hands on a kickboard over the thighs"
    if plan.arms in ("stroking", "one-arm-strokes") and plan.setting == "under-water" and plan.hold == "lying":
        return ARMS_WORDS["one-extended"] if plan.roll else "one arm pulling, the other stretched beyond the head"
    return ARMS_WORDS[plan.arms]


def _posed_arms(plan: Plan) -> str:
    if plan.posture == "lying-on-back" and plan.arms == "free":
        return RESTING_WORDS["lying-over-roll"]
    if plan.arms == "holding-wall" and plan.posture.startswith("standing"):
        return "hands on a wall ahead"
    if plan.posture == "plank":
        reaches = plan.arms in ("one-extended", "one-arm-strokes")
        return "one forearm on the ground, the other arm reaching ahead" if reaches else RESTING_WORDS["plank"]
    if plan.arms in IDLE:
        return RESTING_WORDS.get(plan.posture, ARMS_WORDS[plan.arms])
    return ARMS_WORDS[plan.arms]


def gear_words(plan: Plan, gear: tuple[str, ...]) -> str:
    """The gear by name; what has no words of its own by its id."""
    held = {"pull-buoy": "a pull buoy in the hands"} if plan.arms == "holding-gear" else {}
    return ", ".join(held.get(word, GEAR_WORDS.get(word, word)) for word in gear)


def leg_words(side: str, phase: Phase) -> str:
    """What a leg does, as `near leg on the up-beat, the propulsive one (knee bent, shin behind)`."""
    return f"{side} on the {phase.beat}, {PART_WORDS[phase.part]} ({phase.stage})"


def description(held: Pose, gear: tuple[str, ...]) -> str:
    """The figure in words: body, arms, each leg, gear."""
    plan = held.plan
    sentences = [f"Swimmer {_body(held)}, {_heading(plan)}; {arms_words(plan)}.", _legs(held)]
    if plan.wall:
        sentences += filter(None, [WALL_WORDS[plan.wall]])
    elif held.wall and plan.arms != "holding-wall":
        sentences.append(f"The wall is {'ahead' if held.wall[1] == 'ahead' else 'behind the feet'}.")
    if gear:
        sentences.append(f"Gear: {gear_words(plan, gear)}.")
    return " ".join(sentences)


def _lying_words(plan: Plan) -> str:
    return POSITION_WORDS["supine" if plan.face_up else "prone"]


def _body(held: Pose) -> str:
    """How the body is held and where."""
    plan = held.plan
    if plan.hold == "hung":
        return f"at the wall, {HOLD_WORDS['hung']}"
    if plan.hold == "planted":
        return f"{_lying_words(plan)} under water, {HOLD_WORDS['planted']}"
    if plan.posture and plan.hold != "wading":
        told = ["on land", POSTURE_WORDS[plan.posture]]
    else:
        told = [f"{POSITION_WORDS[plan.position]} {SETTING_WORDS[plan.setting]}", HOLD_WORDS.get(plan.hold, "")]
    if plan.hold == "lying" and (plan.roll or plan.position == "on-land"):
        told.append(f"face {_face(held)}")
    if plan.face and plan.hold == "lying" and not plan.roll:
        told.append(FACE_WORDS[plan.face])
    return ", ".join(filter(None, told))


def _heading(plan: Plan) -> str:
    if plan.hold in ("seated", "hung"):
        return "facing left"
    lying = plan.posture.startswith("lying") or plan.posture in ("plank", "bridge")
    upright = plan.hold in ("upright", "wading") or (plan.hold == "posed" and not lying)
    return "facing right" if upright else "head to the right"


def _face(held: Pose) -> str:
    axis = held.skeleton.head_axes.front
    return "towards you" if axis.z > 0.9 else "up" if axis.y > 0 else "down"


def _legs(held: Pose) -> str:
    plan = held.plan
    if plan.hold == "posed":
        return f"{DEAD_BUG if dead_bug(plan) else LEG_WORDS[plan.posture][plan.kick != 'none']}."
    if plan.hold in ("planted", "hung"):
        return "Feet on the wall under water, knees at about a right angle."
    if plan.wall == "leaving":
        return "Legs long and still."
    both = phases(plan.kick, plan.moment, plan.lie)
    if both is None:
        return f"{kick_words(plan)}."
    return f"{kick_words(plan)}: {_phases(plan, *both)}{', knees under water' if _knees_under(held) else ''}."


def _phases(plan: Plan, near: Phase, far: Phase) -> str:
    if plan.one_leg:
        return f"{leg_words('near leg', near)}; far leg long and still"
    if near == far:
        return leg_words("both legs", near)
    if plan.roll:
        upper, lower = (far, near) if plan.face_up else (near, far)
        return f"{leg_words('leg of the upper side', upper)}; {leg_words('leg of the lower side', lower)}"
    return f"{leg_words('near leg', near)}; {leg_words('far leg', far)}"


def _knees_under(held: Pose) -> bool:
    """Whether both knees are below the surface of a swimmer who lies in it."""
    lying = held.plan.wet and held.plan.hold == "lying"
    return lying and max(held.skeleton.near_leg.knee.y, held.skeleton.far_leg.knee.y) < 0
