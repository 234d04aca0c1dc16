"""The body figure in words, for who does not see it."""

from __future__ import annotations

from almanac.figures.arms import RESTING
from almanac.figures.flutter import Phase, phases
from almanac.figures.plans import Plan
from almanac.figures.poses import Pose

POSITION_WORDS = {
    "supine": "on the back",
    "prone": "on the front",
    "side": "on the side",
    "rotating": "rotating from side to side",
    "vertical": "upright",
    "on-land": "on land",
}
ARMS_WORDS = {
    "at-sides": "both arms along the body",
    "one-extended": "one arm stretched beyond the head, the other along the body",
    "streamline": "both arms stretched beyond the head in streamline, one hand on the other",
    "board": "hands on a kickboard in front",
    "holding-wall": "hands holding the wall",
    "crossed": "arms folded on the chest",
    "hands-up": "forearms held up",
    "sculling": "hands sculling by the hips",
    "holding-gear": "both hands holding a piece of gear",
    "one-arm-strokes": "one arm taking a stroke, the other waiting",
    "stroking": "both arms stroking in turn",
    "free": "arms as they come",
}
KICK_WORDS = {
    "flutter": "Flutter kick",
    "dolphin": "Dolphin kick, legs together",
    "breaststroke": "Breaststroke kick, legs together",
    "none": "No kick, legs still",
}
SETTING_WORDS = {
    "surface": "at the surface",
    "under-water": "under water",
    "at-wall": "at the wall",
    "deck-edge": "at the edge of the deck",
    "on-land": "on dry ground",
}
GEAR_WORDS = {
    "drag-socks": "drag socks on the feet",
    "parachute": "a parachute behind on a line from a belt",
    "stretch-cord": "a stretch cord from a belt to the wall behind",
    "pulley-tower": "a pulley tower behind, its rope at a belt",
    "fins": "fins",
    "kickboard": "a kickboard",
    "tempo-beeper": "a tempo beeper at the cap",
    "pull-buoy": "a pull buoy between the thighs",
    "water-cup": "a cup of water on the forehead",
    "snorkel": "a snorkel",
    "hand-paddles": "hand paddles",
}
_HOLD_WORDS = {
    "seated": "sitting, shins in the water",
    "reclined": "leaning back, legs over the water",
    "standing": "standing",
}
_PART_WORDS = {"propulsive": "the propulsive one", "recovery": "the recovery", "glide": "between kicks"}


def title_words(plan: Plan) -> str:
    """The figure's title."""
    told = POSITION_WORDS[plan.position], arms_words(plan), KICK_WORDS[plan.kick].lower()
    return f"Body figure: {', '.join(told)}"


def arms_words(plan: Plan) -> str:
    """What the arms do, as drawn: a swimmer who sits leans on hands that have nothing to do."""
    leaning = plan.hold in ("seated", "reclined") and plan.arms in RESTING
    if leaning or (plan.arms == "holding-wall" and plan.setting == "deck-edge"):
        return "hands on the deck"
    if plan.together:
        return "both arms pulling together"
    if plan.arms == "board" and plan.position == "supine" and plan.hold == "lying":
        return "hands on a kickboard over the thighs"
    return ARMS_WORDS[plan.arms]


def gear_words(plan: Plan, gear: tuple[str, ...]) -> str:
    """The gear by name; what has no words of its own by its id."""
    held = {"pull-buoy": "a pull buoy in the hands"} if plan.arms == "holding-gear" else {}
    return ", ".join(held.get(word, GEAR_WORDS.get(word, word)) for word in gear)


def leg_words(side: str, phase: Phase) -> str:
    """What a leg does, as `near leg on the up-beat, the propulsive one (knee bent, shin behind)`."""
    return f"{side} on the {phase.beat}, {_PART_WORDS[phase.part]} ({phase.stage})"


def description(held: Pose, gear: tuple[str, ...]) -> str:
    """The figure in words: body, arms, each leg, gear."""
    plan = held.plan
    posture = [POSITION_WORDS[plan.position], _HOLD_WORDS.get(plan.hold, "")]
    if plan.hold == "lying" and plan.position in ("side", "rotating", "on-land"):
        posture.append(f"face {_face(held)}")
    where = "" if plan.position == "on-land" and not plan.wet else f" {SETTING_WORDS[plan.setting]}"
    towards = "facing left" if plan.hold == "seated" else "facing right"
    heading = towards if plan.hold in ("upright", "standing", "seated") else "head to the right"
    sentences = [
        f"Swimmer {', '.join(filter(None, posture))}{where}, {heading}; {arms_words(plan)}.",
        _legs(held),
    ]
    if held.wall and plan.arms != "holding-wall":
        sentences.append(f"The wall is {'ahead' if held.wall[1] == 'ahead' else 'behind the feet'}.")
    if gear:
        sentences.append(f"Gear: {gear_words(plan, gear)}.")
    return " ".join(sentences)


def _face(held: Pose) -> str:
    axis = held.skeleton.head_axes.front
    return "towards you" if axis.z > 0.9 else "up" if axis.y > 0 else "down"


def _legs(held: Pose) -> str:
    plan = held.plan
    both = phases(plan.kick, plan.moment, plan.lie)
    if both is None or plan.hold == "standing":
        return f"{KICK_WORDS[plan.kick]}."
    near, far = both
    if near == far:
        text = leg_words("both legs", near)
    elif plan.roll:
        upper, lower = (far, near) if plan.face_up else (near, far)
        text = f"{leg_words('leg of the upper side', upper)}; {leg_words('leg of the lower side', lower)}"
    else:
        text = f"{leg_words('near leg', near)}; {leg_words('far leg', far)}"
    return f"{KICK_WORDS[plan.kick]}: {text}{', knees under water' if _knees_under(held) else ''}."


def _knees_under(held: Pose) -> bool:
    """Whether both knees are below the surface of a swimmer who lies in it."""
    lying = held.plan.wet and held.plan.hold == "lying"
    return lying and max(held.skeleton.near_leg.knee.y, held.skeleton.far_leg.knee.y) < 0
