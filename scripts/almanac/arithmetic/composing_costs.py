"""What a coach would rather not have in a practice, in points: fewer are better. House preference
throughout; whole numbers, and halves rounded down.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from almanac.arithmetic.composing_asked import Asked, Sized
from almanac.arithmetic.composing_pieces import COOL_DOWN, DRILL, MAIN, PART, SET, SKILL, UNKNOWN
from almanac.arithmetic.composing_wishes import SECOND

_WHOLE = 1000
# A goal: missed (the first weighs more), and how it is served.
MISSED, MISSED_FIRST = 2000, 3000
BY_SECOND_GOAL, BY_SECOND, BY_SKILL, BY_RELIEF = 40, 60, 120, 260
# Permille of a piece that do not serve a goal that it is there for: so many cost a point.
LITTLE = 10
# A piece that serves no goal that is wished for.
IDLE_MAIN, IDLE_SECOND, IDLE_SKILL = 640, 440, 220
# A skill that the main set does not use, and work that is the same work again.
UNUSED_SKILL, NO_SKILL, SKILL_FROM, SAME_WORK = 40, 200, 24000, 300
# An effort that is not the one wished for, a word away.
EFFORT_BELOW, EFFORT_ABOVE, SKILL_ABOVE = 90, 160, 80
# Rounds or reps more or fewer than written, of a set and of others; where it comes from.
STEP_OF_SET, STEP_OF_WORK, STEP_OF_EASY = 25, 8, 4
# Less than half of what is written, or more than twice: no longer what its writer meant.
STUMP = 120
FROM: Mapping[str, Mapping[str, int]] = {
    SET: {}, PART: {MAIN: 120, SECOND: 40, SKILL: 30}, DRILL: {SKILL: 50, MAIN: 150},
}  # fmt: skip
GEAR_PIECE = 15
# Days: mains fade out of mind in four weeks; others are wanted fresh.
FORGOTTEN, A_DAY, AGAIN, AGAIN_DAYS = 28, 4, 25, 2
# A goal that no work serves, and this easy swimming does not either.
ASIDE = 60
# Fast after fast, under water after under water, and twice for the same.
BOTH_FAST, BOTH_UNDER, SAME_GOAL = 150, 150, 30


def own_cost(asked: Asked, own: Sized, role: str) -> int:
    """What a piece costs in a role by itself."""
    piece, days = own.piece, asked.wishes.days.get(own.place, UNKNOWN)
    cost = GEAR_PIECE * len(piece.gear) + FROM[piece.of].get(role, 0)
    each = STEP_OF_SET if piece.of == SET else STEP_OF_WORK
    is_work = role in (MAIN, SECOND, SKILL)
    cost += own.steps * (each if is_work or piece.of == SET else STEP_OF_EASY)
    if is_work and piece.what and own.number > 2 * piece.written:
        cost += STUMP
    if is_work and piece.of != DRILL and 2 * own.number < piece.written:
        cost += STUMP
    if role in (MAIN, SECOND):
        if days != UNKNOWN and days < FORGOTTEN:
            cost += A_DAY * (FORGOTTEN - days)
        cost += effort_cost(asked, piece.effort)
        return cost
    if role == SKILL and asked.effort != UNKNOWN:
        cost += SKILL_ABOVE * max(0, piece.effort - asked.effort)
    if days != UNKNOWN and days <= AGAIN_DAYS:
        cost += AGAIN
    if not is_work:
        cost += ASIDE * len(asked.aside - set(piece.goals))
    return cost


def effort_cost(asked: Asked, effort: int) -> int:
    """What it costs that a main set is not as hard as was wished."""
    wished = asked.effort
    if wished == UNKNOWN:
        return 0
    return EFFORT_BELOW * max(0, wished - effort) + EFFORT_ABOVE * max(0, effort - wished)


def served(asked: Asked, own: Sized, role: str) -> tuple[int, ...]:
    """By wished goal what it costs that a piece serves it in a role, or misses it."""
    by_role = {MAIN: 0, SECOND: BY_SECOND, SKILL: BY_SKILL}.get(role, BY_RELIEF)
    found = []
    for number, goal in enumerate(asked.wishes.goals):
        if goal not in own.piece.goals:
            found.append(MISSED if number else MISSED_FIRST)
        else:
            place = own.piece.goals.index(goal)
            little = (_WHOLE - own.piece.shares[place]) // LITTLE
            found.append(by_role + little + (BY_SECOND_GOAL if place else 0))
    return tuple(found)


def idle_cost(asked: Asked, own: Sized, role: str) -> int:
    """What it costs that a piece serves nothing that is wished for."""
    if not set(own.piece.goals).isdisjoint(asked.wishes.goals):
        return 0
    return {MAIN: IDLE_MAIN, SECOND: IDLE_SECOND, SKILL: IDLE_SKILL}[role]


def skill_cost(asked: Asked, skill: Sized, mains: Sequence[Sized]) -> int:
    """What it costs that the first main set that is chosen has no use for the skill, or that one of
    them only does it again.
    """
    again = any(is_again(asked, skill, main) for main in mains)
    return SAME_WORK * again + (0 if uses(asked, skill, mains[0]) else UNUSED_SKILL)


def is_again(asked: Asked, one: Sized, other: Sized) -> bool:
    """Whether a piece has the drills of another and brings them into no stroke more: swimming at
    choice between them makes no other work of it. Where both only swim, pace tells them apart.
    """
    swum, any_stroke = asked.table.strokes_swum, asked.table.any_stroke
    drills = set(one.piece.drills) - swum
    same = bool(drills) and drills == set(other.piece.drills) - swum
    return same and set(other.piece.strokes) <= {*one.piece.strokes, any_stroke}


def uses(asked: Asked, skill: Sized, main: Sized) -> bool:
    """Whether a main set does a drill of the skill, or needs one first; a whole stroke is swum in
    most of them, and is no skill.
    """
    used = set(main.piece.drills) | set(main.piece.asks)
    return not used.isdisjoint(set(skill.piece.drills) - asked.table.strokes_swum)


def pair_cost(asked: Asked, one: Sized, other: Sized) -> int:
    """What two main sets in one evening cost."""
    fast = min(one.piece.hardest, other.piece.hardest) >= asked.table.fast
    same = one.piece.goals[:1] == other.piece.goals[:1]
    under = min(one.size.under, other.size.under) > 0
    again = is_again(asked, one, other) and is_again(asked, other, one)
    return BOTH_FAST * fast + BOTH_UNDER * under + SAME_GOAL * same + SAME_WORK * again


# The shape of an evening, in permille of the slot: below and above which it costs, and how much.
WARM_LEAST, WARM_MOST = 140, 250
COOL_LEAST, COOL_MOST = 60, 110
# And in tenths: nobody is warm sooner or needs longer, however long the slot is.
WARM_SOONEST, WARM_LONGEST, COOL_SOONEST, COOL_LONGEST = 2700, 12000, 1200, 6000
MAIN_LEAST, EASY_MOST, EASY_LONGEST = 280, 120, 7200
# A skill before other work, and one that is what is wished for most; in permille and in tenths.
SKILL_MOST, SKILL_LONGEST = 200, 7200
CHIEF_SKILL_MOST, CHIEF_SKILL_LONGEST = 250, 9000
SKILL_SOON = 4800  # nobody learns in less, however short the slot is
STROKE_COLD, COLD, HOT, LEGS, CALM_LEGS, LEGS_COLD = 40, 30, 60, 500, 300, 60
TIRED, NO_NEED, OTHER_STROKE = 150, 30, 40
SCRAP, SCRAP_UNDER, MORE_KICK, ENDS_TWICE = 90, 1800, 60, 200


def outside(share: int, least: int, most: int) -> int:
    """Two points for each permille below the least or above the most."""
    return 2 * max(0, least - share, share - most)


def warm_up_cost(asked: Asked, warm_up: Sized, heart: Sequence[Sized]) -> int:
    """What a warm-up costs before the work of the evening: strokes or legs that come cold, a speed
    that comes suddenly, or one beyond what follows.
    """
    strokes = {stroke for own in heart for stroke in own.piece.strokes}
    hardest = max(own.piece.hardest for own in heart)
    cost = STROKE_COLD * len(strokes - set(warm_up.piece.strokes))
    cost += COLD * max(0, hardest - 1 - warm_up.piece.hardest)
    cost += HOT * max(0, warm_up.piece.hardest - hardest)
    cost += LEGS_COLD * (not warm_up.piece.kick and are_legs_first(asked, heart))
    least = max(WARM_LEAST, _WHOLE * WARM_SOONEST // asked.slot)
    most = max(least, min(WARM_MOST, _WHOLE * WARM_LONGEST // asked.slot))
    return cost + outside(_WHOLE * warm_up.takes // asked.slot, least, most)


def are_legs_first(asked: Asked, heart: Sequence[Sized]) -> bool:
    """Whether legs work hard, from a word below fast on, before any other kick of the work."""
    for own in heart:
        if own.piece.kick:
            return own.piece.kick > LEGS and own.piece.hardest >= asked.table.fast - 1
    return False


def are_legs_tired(heart: Sequence[Sized]) -> bool:
    """Whether more than half of the metres of the work are kick."""
    distance = sum(own.size.distance for own in heart)
    return sum(own.size.distance * own.piece.kick for own in heart) > LEGS * distance


def relief_cost(asked: Asked, relief: Sized | None, heart: Sequence[Sized]) -> int:
    """What relief costs after the work, or that there is none: tired legs are carried into the
    stroke that was trained; where they are not tired it is only time. It is no harder than the
    work, and what is long is no relief but another main set.
    """
    tired = are_legs_tired(heart)
    if relief is None:
        return TIRED if tired else 0
    strokes = {stroke for own in heart for stroke in own.piece.strokes}
    cost = TIRED if tired and relief.piece.kick > CALM_LEGS else 0
    cost += 0 if tired else NO_NEED
    cost += SCRAP if relief.takes < SCRAP_UNDER else 0
    cost += ENDS_TWICE if COOL_DOWN in relief.piece.roles else 0
    cost += OTHER_STROKE if strokes and strokes.isdisjoint(relief.piece.strokes) else 0
    cost += HOT * max(0, relief.piece.hardest - max(own.piece.hardest for own in heart))
    most = min(EASY_MOST, _WHOLE * EASY_LONGEST // asked.slot)
    return cost + 2 * outside(_WHOLE * relief.takes // asked.slot, 0, most)


def cool_down_cost(asked: Asked, cool_down: Sized) -> int:
    """What a cool-down costs: its length, twice where it is too long, and kicking home."""
    cost = MORE_KICK if cool_down.piece.kick > LEGS else 0
    least = max(COOL_LEAST, _WHOLE * COOL_SOONEST // asked.slot)
    most = max(least, min(COOL_MOST, _WHOLE * COOL_LONGEST // asked.slot))
    share = _WHOLE * cool_down.takes // asked.slot
    return cost + outside(share, least, most) + outside(share, 0, most)


def shape_cost(asked: Asked, skill: Sized | None, mains: Sequence[Sized]) -> int:
    """What the lengths of skill and main sets cost: a skill is short before other work, and what
    is longer is rather a main set; it is never longer than the work that it is for.
    """
    main = _WHOLE * sum(own.takes for own in mains) // asked.slot
    cost = outside(main, MAIN_LEAST, _WHOLE)
    if skill is None:
        return cost + (NO_SKILL if wants_skill(asked) else 0)
    share = _WHOLE * skill.takes // asked.slot
    return cost + 2 * outside(share, 0, skill_most(asked, skill)) + outside(share, 0, main)


def wants_skill(asked: Asked) -> bool:
    """Whether a practice ought to have a skill: there is time for one, and it is for no rest."""
    return asked.slot >= SKILL_FROM and not asked.is_rest


def skill_most(asked: Asked, skill: Sized) -> int:
    """The permille of the slot up to which the length of a skill costs nothing."""
    is_chief = not set(asked.wishes.goals[:1]).isdisjoint(skill.piece.goals)
    most, longest = (
        (CHIEF_SKILL_MOST, CHIEF_SKILL_LONGEST) if is_chief else (SKILL_MOST, SKILL_LONGEST)
    )
    return max(_WHOLE * SKILL_SOON // asked.slot, min(most, _WHOLE * longest // asked.slot))
