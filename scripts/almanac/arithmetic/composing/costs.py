"""What a coach would rather not have in a practice, in points: fewer are better. House preference
throughout; whole numbers, and halves rounded down.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from almanac.arithmetic.composing.asked import REPEATED_AFTER, Asked, Sized
from almanac.arithmetic.composing.pieces import DRILL, MAIN, PART, SET, SKILL, UNKNOWN
from almanac.arithmetic.composing.wishes import MAINS, SECOND, THIRD, is_held

_WHOLE = 1000
# A goal: missed (the first weighs more), and how it is served.
MISSED, MISSED_FIRST = 2000, 3000
BY_SECOND_GOAL, BY_SECOND, BY_SKILL, BY_RELIEF = 40, 60, 120, 260
CHIEF_BY_SKILL = 40  # more: what is wished for most is what the main set is for
# Permille of a piece that do not serve a goal that it is there for: so many cost a point.
LITTLE = 10
# A piece that serves no goal that is wished for.
IDLE_MAIN, IDLE_SECOND, IDLE_SKILL = 640, 260, 220
# A skill that the main set does not use, and work that is the same work again.
UNUSED_SKILL, NO_SKILL, SKILL_FROM, SAME_WORK = 40, 200, 24000, 900
# Learning is not hard: for each word of effort beyond gentle; nor is a set that serves no goal.
HARD_SKILL, FAST_BEFORE_FAST, HARD_IDLE = 40, 100, 30
# What may stand as relief is no main set where neither rest nor a gentle effort is wished for.
NO_MAIN = 200
# An effort that is not the one wished for, a word away.
EFFORT_BELOW, EFFORT_ABOVE, SKILL_ABOVE = 90, 160, 80
# Rounds or reps more or fewer than written, of a set and of others; where it comes from.
STEP_OF_SET, STEP_OF_WORK, STEP_OF_EASY = 25, 8, 4
# Less than half of what is written, or more than twice: no longer what its writer meant.
STUMP = 120
FROM: Mapping[str, Mapping[str, int]] = {
    SET: {}, PART: {MAIN: 120, SECOND: 40, THIRD: 40, SKILL: 30}, DRILL: {SKILL: 50, MAIN: 150},
}  # fmt: skip
GEAR_PIECE = 15
# Days: mains fade out of mind in four weeks; others are wanted fresh, a whole set as a skill too.
FORGOTTEN, A_DAY, AGAIN, AGAIN_DAYS, SET_AGAIN = 28, 4, 25, 2, 80
# A goal that no work serves, and this easy swimming does not either.
ASIDE = 60
# Fast after fast, under water after under water, and twice for the same.
BOTH_FAST, BOTH_UNDER, SAME_GOAL = 150, 150, 30
FAST_WORK = 100  # metres from which a part that is held is fast, as a test is


def own_cost(asked: Asked, own: Sized, role: str) -> int:
    """What a piece costs in a role by itself."""
    piece, days = own.piece, asked.wishes.days.get(own.place, UNKNOWN)
    cost = GEAR_PIECE * len(piece.gear) + FROM[piece.of].get(role, 0)
    each = STEP_OF_SET if piece.of == SET else STEP_OF_WORK
    is_work = role in (*MAINS, SKILL)
    cost += own.steps * (each if is_work or piece.of == SET else STEP_OF_EASY)
    if is_work and piece.what and own.number > 2 * piece.written:
        cost += STUMP
    if is_work and piece.of != DRILL and 2 * own.number < piece.written:
        cost += STUMP
    if role in MAINS:
        if days != UNKNOWN and days < FORGOTTEN:
            cost += A_DAY * (FORGOTTEN - days)
        cost += NO_MAIN * (asked.asks_work and asked.only_eases(piece))
        return cost + effort_cost(asked, piece.effort)
    if role == SKILL:
        cost += HARD_SKILL * max(0, piece.effort - asked.table.gentle)
        if asked.effort != UNKNOWN:
            cost += SKILL_ABOVE * max(0, piece.effort - asked.effort)
    if role == SKILL and piece.of == SET and 0 <= days < REPEATED_AFTER:
        cost += SET_AGAIN
    elif days != UNKNOWN and days <= AGAIN_DAYS:
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
    """By wanted goal what it costs that a piece serves it in a role, or misses it."""
    by_role = {MAIN: 0, SECOND: BY_SECOND, THIRD: BY_SECOND, SKILL: BY_SKILL}.get(role, BY_RELIEF)
    found = []
    for number, goal in enumerate(asked.wanted):
        if goal not in own.piece.goals:
            found.append(MISSED if number else MISSED_FIRST)
        else:
            place = own.piece.goals.index(goal)
            little = (_WHOLE - own.piece.shares[place]) // LITTLE
            chief = CHIEF_BY_SKILL if role == SKILL and not number else 0
            found.append(by_role + chief + little + (BY_SECOND_GOAL if place else 0))
    return tuple(found)


def idle_cost(asked: Asked, own: Sized, role: str) -> int:
    """What it costs that a piece serves nothing that is wished for."""
    if not set(own.piece.goals).isdisjoint(asked.wanted):
        return 0
    hard = HARD_IDLE * max(0, own.piece.effort - asked.table.gentle)
    return (IDLE_MAIN if role == MAIN else IDLE_SKILL if role == SKILL else IDLE_SECOND) + hard


def skill_cost(asked: Asked, skill: Sized, mains: Sequence[Sized]) -> int:
    """What it costs that the first main set that is chosen has no use for the skill, that one of
    them only does it again, or that both are fast.
    """
    again = any(is_again(asked, skill, main) for main in mains)
    fast = min(skill.piece.hardest, max(own.piece.hardest for own in mains)) >= asked.table.fast
    cost = SAME_WORK * again + FAST_BEFORE_FAST * fast
    return cost + (0 if uses(asked, skill, mains[0]) else UNUSED_SKILL)


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


def held_cost(asked: Asked, order: Sequence[tuple[str, Sized]]) -> int:
    """What it costs that main sets are fast where a part that is held is: a test, or stations."""
    if not any(is_held(role) and own.size.fast >= FAST_WORK for role, own in order):
        return 0
    mains = [own for role, own in order if role in MAINS]
    return BOTH_FAST * sum(own.piece.hardest >= asked.table.fast for own in mains)


def pair_cost(asked: Asked, one: Sized, other: Sized) -> int:
    """What two main sets in one evening cost."""
    fast = min(one.piece.hardest, other.piece.hardest) >= asked.table.fast
    same = one.piece.goals[:1] == other.piece.goals[:1]
    under = min(one.size.under, other.size.under) > 0
    again = is_again(asked, one, other) and is_again(asked, other, one)
    return BOTH_FAST * fast + BOTH_UNDER * under + SAME_GOAL * same + SAME_WORK * again
