"""A plan tried as entries beside the catalogue, and what is then said of it."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from itertools import groupby

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.planning.solver import can_solve
from almanac.commands.compose_block_asked import effort_of
from almanac.commands.compose_block_plan import BlockPlan, planned
from almanac.commands.drafts import Unwritten, tried
from almanac.commands.outcome import UsageError
from almanac.commands.shared import CheckedCatalogue
from almanac.findings import Finding, counted
from almanac.report.block.answer import BlockAnswer
from almanac.report.block.entry import block_text
from almanac.report.block.judged import JudgedBlock, judged
from almanac.report.block.short import few_words, no_slot_words, short_words
from almanac.report.findings_shown import as_text
from almanac.report.planning.block import as_wished
from almanac.report.planning.request import BlockRequest
from almanac.report.planning.slots import Left

_TRIES = 3
_NO_GOAL, _NO_BALANCE = "goal-unserved", "balance-missed"
_UNLISTED = "block-unlisted"  # nobody can list what is not written
UNSAVED = "unsaved-block"
GET_SOLVER = "a solver comes nearer: pip install ortools (the extra 'solver', some 270 MB)"


def sound_plan(
    everything: CheckedCatalogue,
    analysis: Analysis,
    asked: BlockRequest,
    arguments: argparse.Namespace,
    day: date,
) -> tuple[list[Unwritten], BlockAnswer]:
    """A plan whose composed practices no check has anything to say of, even beside each other."""
    but = frozenset[str]()
    for _ in range(_TRIES):
        plan = planned(everything, analysis, asked, day, effort_of(arguments), but=but)
        entries, answer = _written(everything, plan, arguments.save or UNSAVED, day)
        told = {finding.place.file for finding in answer.findings}
        bad = {own.id for own in entries[:-1] if own.file in told}
        if not bad:
            break
        but |= bad
    return entries, answer


def _written(
    everything: CheckedCatalogue, plan: BlockPlan, id: str, day: date
) -> tuple[list[Unwritten], BlockAnswer]:
    """The entries of a plan, and what is then said of the block: it states the shares that all lane
    groups keep to, and the goals that something serves.
    """
    wishes = plan.planning.wishes
    met, unserved = tuple(wishes.shares), frozenset[str]()
    while True:
        text = block_text(plan.planning, plan.asked, plan.plan, met, unserved)
        entries = [*composed_in(plan), Unwritten("block", id, text)]
        answer = tried_block(everything, plan, entries, day)
        missed = {name for name in met if name.replace("_", " ") in _said(answer, _NO_BALANCE)}
        never = {goal for goal in wishes.goals if f"'{goal}'" in _said(answer, _NO_GOAL)}
        if not missed and not never - unserved:
            return entries, answer
        met = tuple(name for name in met if name not in missed)
        unserved |= never


def _said(answer: BlockAnswer, code: str) -> str:
    return " ".join(own.message for own in answer.findings if own.code == code)


def composed_in(plan: BlockPlan) -> list[Unwritten]:
    """The composed practices of a plan as entries."""
    return [Unwritten("practice", draft.id, draft.text) for draft in plan.drafts]


def tried_block(
    everything: CheckedCatalogue, plan: BlockPlan, entries: list[Unwritten], day: date
) -> BlockAnswer:
    """The block beside its wishes, as it is once it stands in the catalogue. Raises UsageError."""
    there, findings = tried(everything, entries, day)
    id = entries[-1].id
    groups = there.analysis.blocks.get(id) if there.analysis else None
    if there.analysis is None or not groups:
        raise UsageError(f"what was planned cannot be worked out: {as_text(findings, 1)}")
    own = plan.planning
    asked = replace(plan.asked, loads=own.aims.loads(plan.asked.loads))
    summary = as_wished(next(iter(groups.values())), asked, own.wishes, own.aims.full)
    found = judged(there.analysis, summary)
    said = [own for own in findings if not (id == UNSAVED and own.code == _UNLISTED)]
    return _answer(there.analysis, id, plan, found, said)


def _answer(
    analysis: Analysis, id: str, plan: BlockPlan, found: JudgedBlock, findings: Iterable[Finding]
) -> BlockAnswer:
    slots = enumerate(zip(plan.planning.slots, plan.plan, strict=True))
    empty = [
        f"nothing fits {_when(slot.on)} at {slot.begins}, and it is written as rest; of the "
        f"practices there are {plan.planning.why_empty(number)}"
        for number, (slot, place) in slots
        if not place
    ]
    every = (*plan.planning.slots, *(own.slot for own in plan.left))
    left = [*no_slot_words(plan.asked, every), *_left_out(plan.left)]
    left += [*few_words(plan.planning, plan.plan), *short_words(found, plan.planning, plan.plan)]
    left += [f"left out: week {number + 1}, {why}" for number, why in plan.bare]
    names = tuple(draft.id for draft in plan.drafts)
    return BlockAnswer(
        analysis,
        id,
        found,
        plan.planning.wishes,
        plan.planning.limits,
        tuple(findings),
        how(plan),
        tuple(empty),
        tuple(left),
        names,
    )


def _left_out(left: Sequence[Left]) -> Iterator[str]:
    """The slots that are left out: one after the other for the same reason as one stretch."""
    for why, each in groupby(left, key=lambda own: own.why):
        days = [own.slot.on for own in each]
        slots = f", {counted(len(days), 'slot')}" if len(days) > 1 else ""
        last = f" to {_when(days[-1])}" if days[-1] != days[0] else ""
        yield f"left out: {_when(days[0])}{last}{slots}, {why}"


def _when(on: date) -> str:
    return f"{on:%a} {on}"


def how(plan: BlockPlan) -> str:
    """How it was chosen, and how far from the best it may be."""
    way = "By the solver" if plan.is_solved else "Greedy, then exchanges"
    begun = f"{way}: {plan.cost} points, of which fewer are better (greedy alone {plan.greedy})"
    gap = plan.cost - plan.bound
    if gap <= 0:
        return f"{begun}, and no plan has fewer"
    most = -(-100 * gap // plan.cost)
    told = f"none has fewer than {plan.bound}, at most {most} in a hundred could be gained"
    if plan.bound <= 0:
        told = "how far from the best is not known: no bound was found above nothing"
    told = f"{begun}; {told}"
    return told if plan.is_solved or can_solve() else f"{told}; {GET_SOLVER}"
