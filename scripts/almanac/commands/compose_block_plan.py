"""What ``compose block`` does: slots and practices put together, composed ones where none fits, a
plan made of them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.planning.bound import least_cost
from almanac.arithmetic.planning.choices import Choice, DaySlot
from almanac.arithmetic.planning.greedy import STEPS, greedy, improved
from almanac.arithmetic.planning.model import Plan
from almanac.arithmetic.planning.solver import DETERMINISTIC_TIME, can_solve, solved
from almanac.arithmetic.planning.wishes import BlockWishes
from almanac.commands.drafts import Unwritten, tried
from almanac.commands.shared import CheckedCatalogue
from almanac.report.compose.table import can_compose
from almanac.report.planning.beside import needing, neighbours
from almanac.report.planning.composed import Draft, drafts
from almanac.report.planning.limits import limits_of
from almanac.report.planning.practices import choices_of
from almanac.report.planning.problem import Planning
from almanac.report.planning.refused import refuse_unfit
from almanac.report.planning.request import BlockRequest, slots_for
from almanac.report.planning.slots import Left, weeks_without
from almanac.report.planning.unlike import best_apart
from almanac.report.planning.usual import wishes_for, with_holidays

_ALIKE = "near-duplicate"
_TRIED = 8_000  # exchanges that tell which of the composed that are alike are wanted


@dataclass(frozen=True)
class Effort:
    """How long is searched: exchanges, and the solver's deterministic time, 0 for none."""

    steps: int = STEPS
    deterministic_time: float = DETERMINISTIC_TIME


@dataclass(frozen=True)
class Begun:
    """A block of which some days are ``named``; ``taken`` are the slots of its practices."""

    id: str
    wishes: BlockWishes
    taken: tuple[DaySlot, ...]
    named: frozenset[date]


@dataclass(frozen=True)
class BlockPlan:
    """A plan with what it costs. ``bound`` is what none costs less than, ``is_solved`` whether a
    solver has it; ``greedy`` what the first plan cost. ``drafts`` are the composed practices that
    stand in it; ``bare`` the weeks without a slot, from 0, with why.
    """

    planning: Planning
    asked: BlockRequest
    plan: Plan
    cost: int
    greedy: int
    bound: int
    is_solved: bool
    drafts: tuple[Draft, ...]
    left: tuple[Left, ...]
    bare: tuple[tuple[int, str], ...] = ()


def planned(
    everything: CheckedCatalogue,
    analysis: Analysis,
    asked: BlockRequest,
    today: date,
    effort: Effort,
    begun: Begun | None = None,
    but: frozenset[str] = frozenset(),
) -> BlockPlan:
    """The plan of a block, or of the empty days of one that has begun; without the composed
    practices in ``but``. Raises BadWish.
    """
    taken, named = (begun.taken, begun.named) if begun else ((), frozenset[date]())
    slots, left = slots_for(analysis, asked, taken, named)
    wishes = begun.wishes if begun else with_holidays(wishes_for(analysis, asked), slots)
    beside, around, load = neighbours(analysis, asked, begun.id if begun else "")
    slots = sorted([*slots, *taken, *around], key=lambda own: (own.on, own.begins))
    limits = limits_of(analysis, asked.squad, load)
    broken = frozenset(own.place.file for own in everything.findings if own.is_error)
    held = {id for slot in taken for id in slot.only}
    own = [
        choice
        for choice in needing(analysis, asked, choices_of(analysis, asked.squad, kept=held))
        if analysis.catalogue.practices[choice.id].file not in broken or choice.id in held
    ]
    planning = Planning(analysis, asked.squad, tuple(slots), (*own, *beside), wishes, limits)
    found: list[Draft] = []
    if can_compose(analysis, asked.squad):
        found = [draft for draft in drafts(planning, broken) if draft.id not in but]
    if found:
        choices, there, gone = _sound(everything, found, asked.squad, today)
        choices = [*needing(analysis, asked, choices)]
        planning = replace(planning, choices=(*own, *choices, *beside))
        planning = best_apart(planning, there, gone, min(effort.steps, _TRIED))
    refuse_unfit(planning)
    every = (*slots, *(own.slot for own in left))
    bare = weeks_without(analysis.catalogue, asked.squad, asked.first, asked.weeks, every, named)
    return replace(_chosen(planning, asked, effort, found, left), bare=tuple(bare))


def _chosen(
    planning: Planning,
    asked: BlockRequest,
    effort: Effort,
    found: Sequence[Draft],
    left: Sequence[Left],
) -> BlockPlan:
    problem = planning.problem
    plan = improved(problem, first := greedy(problem), effort.steps)
    is_solved = bool(effort.deterministic_time) and can_solve()
    if is_solved:
        best = solved(problem, plan, effort.deterministic_time)
        plan, bound = best.plan, best.bound
    else:
        bound = least_cost(problem, plan)
    used = {problem.choices[place].id for place in plan}
    there = planning.analysis.catalogue.practices.values()
    titles = {own.title for own in there}
    kept = tuple(draft.titled(titles) for draft in found if draft.id in used)
    costs = problem.cost(plan), problem.cost(first)
    # What is told of the plan calls each practice as its file does.
    called = {draft.id: draft.called for draft in kept}
    choices = (replace(own, title=called.get(own.id, own.title)) for own in planning.choices)
    planning = replace(planning, choices=tuple(choices))
    return BlockPlan(planning, asked, plan, *costs, bound, is_solved, kept, tuple(left))


def _sound(
    everything: CheckedCatalogue, found: Sequence[Draft], squad: str, today: date
) -> tuple[list[Choice], Analysis, list[str]]:
    """The composed practices of which no check has anything to say but that they are alike, with
    the catalogue in which they stand; and the ids of the others in it.
    """
    unwritten = [Unwritten("practice", draft.id, draft.text) for draft in found]
    there, findings = tried(everything, unwritten, today)
    assert there.analysis is not None  # no practice is a foundation
    # Two that are alike are a finding of one of them, whichever goes.
    bad = {finding.place.file for finding in findings if finding.code != _ALIKE}
    good = [own.id for own in unwritten if own.file not in bad]
    gone = [own.id for own in unwritten if own.file in bad]
    choices = {own.id: own for own in choices_of(there.analysis, squad, frozenset(good))}
    return [choices[id] for id in good if id in choices], there.analysis, gone
