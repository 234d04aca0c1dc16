"""What the shape of a practice costs, in points: how long each of its parts is, what warms up for
the work, what eases and closes after it. House preference throughout, of what is common practice.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import NO_SKILL, SKILL_FROM
from almanac.arithmetic.composing.pieces import COOL_DOWN

_WHOLE = 1000
# How much of a slot each part may take at no cost, in permille, and however long the slot is in
# tenths: nobody is warm sooner or needs longer. A coach's usual shares, common practice.
WARM_LEAST, WARM_MOST, WARM_SOONEST, WARM_LONGEST = 140, 250, 2700, 12000
COOL_LEAST, COOL_MOST, COOL_SOONEST, COOL_LONGEST = 60, 110, 1200, 6000
EASY_MOST, EASY_LONGEST = 120, 7200
# Relief and cool-down together; beside what is short they may be so long.
CLOSING_MOST, CLOSING_LONGEST, CLOSING_SOON = 160, 9600, 3000
MAIN_LEAST = 280
# Main sets under so much of a slot are none, whatever goals they are for: one goal fewer is better.
MAIN_AT_ALL, NO_REAL_MAIN = 200, 2000
# A skill before other work, one that is what is wished for most, and one that serves nothing.
SKILL_MOST, SKILL_LONGEST = 200, 7200
CHIEF_SKILL_MOST, CHIEF_SKILL_LONGEST = 250, 9000
IDLE_SKILL_LONGEST = 3600
SKILL_SOON = 4800  # nobody learns in less, however short the slot is
# Before work: strokes and legs that come cold, a speed that comes suddenly or is beyond what
# follows, one beyond gentle where nothing is that hard, and a drill that all of it does.
STROKE_COLD, COLD, HOT, LEGS, CALM_LEGS, LEGS_COLD = 40, 30, 60, 500, 300, 60
NO_REST, ALL_EVENING = 150, 60
TIRED, NO_NEED, OTHER_STROKE = 150, 30, 40
SCRAP, SCRAP_UNDER, MORE_KICK, ENDS_TWICE = 90, 1800, 60, 200
# The same swimming again, as relief, cool-down or both.
SAME_SWIM = 120


def outside(share: int, least: int, most: int) -> int:
    """Two points for each permille below the least or above the most."""
    return 2 * max(0, least - share, share - most)


def warm_up_cost(asked: Asked, warm_up: Sized, heart: Sequence[Sized]) -> int:
    """What a warm-up costs before the work of the evening: its length, twice where it is too long,
    strokes or legs that come cold, a speed that comes suddenly, or one beyond what follows.
    """
    gentle, own = asked.table.gentle, warm_up.piece
    strokes = {stroke for each in heart for stroke in each.piece.strokes}
    hardest = max(each.piece.hardest for each in heart)
    cost = COLD * max(0, hardest - 1 - own.hardest) + HOT * max(0, own.hardest - hardest)
    if hardest > gentle:
        cost += STROKE_COLD * len(strokes - set(own.strokes))
    elif own.hardest > gentle:
        cost += NO_REST
    cost += ALL_EVENING * (not again_and_again(asked, heart).isdisjoint(own.drills))
    cost += LEGS_COLD * (not warm_up.piece.kick and are_legs_first(asked, heart))
    least = max(WARM_LEAST, _WHOLE * WARM_SOONEST // asked.slot)
    most = max(least, min(WARM_MOST, _WHOLE * WARM_LONGEST // asked.slot))
    share = _WHOLE * warm_up.takes // asked.slot
    return cost + outside(share, least, most) + outside(share, 0, most)


def again_and_again(asked: Asked, heart: Sequence[Sized]) -> set[int]:
    """The drills that more than one piece of the work does, whole strokes aside."""
    found, known = set[int](), set(asked.table.strokes_swum)
    for own in heart:
        drills = set(own.piece.drills) - asked.table.strokes_swum
        found |= drills & known
        known |= drills
    return found


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


def ends_cost(
    asked: Asked, warm_up: Sized | None, relief: Sized | None, cool_down: Sized | None
) -> int:
    """What warm-up, relief and cool-down cost beside each other: the same swimming again, and that
    it is long until all are out after the work.
    """
    ends = [own for own in (warm_up, relief, cool_down) if own]
    cost = SAME_SWIM * sum(is_same_swim(*pair) for pair in combinations(ends, 2))
    if relief and cool_down:
        share = _WHOLE * (relief.takes + cool_down.takes) // asked.slot
        most = min(CLOSING_MOST, _WHOLE * CLOSING_LONGEST // asked.slot)
        cost += 2 * outside(share, 0, max(most, _WHOLE * CLOSING_SOON // asked.slot))
    return cost


def is_same_swim(one: Sized, other: Sized) -> bool:
    """Whether two pieces are the same swimming, however often: drills, strokes, and effort."""
    same = set(one.piece.drills) == set(other.piece.drills)
    return same and one.piece.hardest == other.piece.hardest


def shape_cost(asked: Asked, skill: Sized | None, mains: Sequence[Sized]) -> int:
    """What the lengths of skill and main sets cost: a skill is short before other work, and what
    is longer is rather a main set; it is never longer than the work that it is for, and work of
    a few minutes at the end of an evening of skill is no main set.
    """
    main = _WHOLE * sum(own.takes for own in mains) // asked.slot
    cost = outside(main, MAIN_LEAST, _WHOLE) + NO_REAL_MAIN * (main < MAIN_AT_ALL)
    if skill is None:
        return cost + (NO_SKILL if wants_skill(asked) else 0)
    share = _WHOLE * skill.takes // asked.slot
    return cost + 2 * outside(share, 0, skill_most(asked, skill)) + outside(share, 0, main)


def wants_skill(asked: Asked) -> bool:
    """Whether a practice ought to have a skill: there is time for one, and it is for no rest."""
    return asked.slot >= SKILL_FROM and not asked.is_rest


def skill_most(asked: Asked, skill: Sized) -> int:
    """The permille of the slot up to which the length of a skill costs nothing."""
    goals = set(skill.piece.goals)
    if goals.isdisjoint(asked.wanted):
        return min(SKILL_MOST, _WHOLE * IDLE_SKILL_LONGEST // asked.slot)
    is_chief = asked.wanted[0] in goals
    most, longest = (
        (CHIEF_SKILL_MOST, CHIEF_SKILL_LONGEST) if is_chief else (SKILL_MOST, SKILL_LONGEST)
    )
    return max(_WHOLE * SKILL_SOON // asked.slot, min(most, _WHOLE * longest // asked.slot))
