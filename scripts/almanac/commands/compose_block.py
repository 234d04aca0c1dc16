"""Plan a block: the practices of a squad placed on the days that it has, composed ones where none
fits; planned figures beside what is wished, and which wish to drop for what is not met.

Days come from the timetables, --slot or --like; closures and days of meets are read. The same
wishes give the same block. ``--judge ID`` sets a block that is there beside wishes; ``--fill ID``
fills the days that it does not name, and touches nothing else.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterable, Mapping
from datetime import date
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_request import BadWish
from almanac.arithmetic.planning_solver import can_solve
from almanac.commands import compose_block_asked
from almanac.commands.compose_block_asked import asked_for, effort_of, squad_of
from almanac.commands.compose_block_fill import filled
from almanac.commands.compose_block_plan import BlockPlan, planned
from almanac.commands.drafts import Unwritten, tried
from almanac.commands.new_file import refuse_bad_id
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.findings import Finding, as_text
from almanac.publish.together import ChangedSince, change
from almanac.report.block_answer import BlockAnswer, answer_json, answer_text
from almanac.report.block_entry import block_text
from almanac.report.block_judged import Judged, judged
from almanac.report.planning_problem import limits_of
from almanac.report.planning_request import (
    checked_request,
    not_over,
    request_of,
)
from almanac.report.planning_usual import wishes_for

NAME = "block"
HELP = "a block of weeks for what is wished"
GET_SOLVER = "for a solver, which tells: pip install ortools (the extra 'solver', some 270 MB)"
_UNSAVED = "unsaved-block"
add_arguments = compose_block_asked.add_arguments


def run(arguments: argparse.Namespace) -> int:
    day = arguments.today or today()
    everything = load_and_check(arguments.root, day)
    analysis = everything.analysis
    if analysis is None:
        print(as_text(everything.findings, everything.loaded.count))
        return ERRORS
    try:
        if arguments.judge:
            return _tell(judge(everything, analysis, arguments), arguments)
        if arguments.fill:
            return fill(everything, analysis, arguments, day)
        return compose(everything, analysis, arguments, day)
    except BadWish as problem:
        raise UsageError(str(problem)) from None


def judge(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace
) -> BlockAnswer:
    """A block that is there beside what is asked for and what it says itself."""
    block = analysis.catalogue.blocks.get(arguments.judge)
    if block is None:
        known = ", ".join(analysis.catalogue.blocks) or "none"
        raise UsageError(f"there is no block '{arguments.judge}'; there are {known}")
    asked = request_of(block, asked_for(analysis, arguments, block.squad, block.starts))
    checked_request(analysis, asked)
    wishes = wishes_for(analysis, asked)
    sessions = sum(1 for day in block.days for _ in day.practices)
    weights = sum(wishes.goals.values())
    wanted = {goal: -(-sessions * own // weights) for goal, own in wishes.goals.items()}
    found = judged(analysis, block.id, wishes, wanted, loads=bool(asked.loads))
    if found is None:
        raise UsageError(f"'{block.id}' cannot be worked out: almanac check tells why")
    own = tuple(one for one in everything.findings if one.place.file == block.file)
    limits = limits_of(analysis, block.squad)
    return BlockAnswer(analysis, block.id, found, wishes, limits, own, has_loads=True)


def compose(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> int:
    """A new block: planned, told, and written where that is asked for."""
    for name in ("starts", "weeks", "goals"):
        if getattr(arguments, name) is None and not (name == "goals" and arguments.like):
            raise UsageError(f"say --{name}; almanac compose block --help has an example of each")
    asked = asked_for(analysis, arguments, squad_of(analysis, arguments), arguments.starts)
    checked_request(analysis, asked)
    not_over(analysis.catalogue, asked)
    id = arguments.save or _UNSAVED
    if arguments.save:
        refuse_bad_id(everything.loaded, "block", id, f"plans/blocks/{id}.yml")
    plan = planned(everything, analysis, asked, day, effort_of(arguments))
    met = tuple(plan.planning.wishes.shares)
    while True:
        text = block_text(plan.planning, plan.asked, plan.plan, met)
        entries = [*_drafts(plan), Unwritten("block", id, text)]
        answer = _tried(everything, plan, entries, day)
        kept = tuple(share.name for share in answer.judged.shares if share.is_met)
        if not set(kept) < set(met):
            break
        met = kept
    _tell(answer, arguments)
    return _save(arguments.root, entries, answer, {}) if arguments.save else FINE


def fill(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> int:
    """The empty days of a block: planned, told, and written."""
    plan, block = filled(everything, analysis, arguments, day)
    entries = [*_drafts(plan), block]
    answer = _tried(everything, plan, entries, day)
    _tell(answer, arguments)
    if arguments.dry_run:
        return FINE
    document = everything.loaded.documents["block", block.id]
    return _save(arguments.root, entries, answer, {document.file: document.text})


def _drafts(plan: BlockPlan) -> list[Unwritten]:
    return [Unwritten("practice", draft.id, draft.text) for draft in plan.drafts]


def _tried(
    everything: CheckedCatalogue, plan: BlockPlan, entries: list[Unwritten], day: date
) -> BlockAnswer:
    """The block beside its wishes, as it is once it stands in the catalogue. Raises UsageError."""
    there, findings = tried(everything, entries, day)
    aims, id = plan.planning.aims, entries[-1].id
    wanted = {goal: aims.wanted(goal) for goal in plan.planning.wishes.goals}
    found = None
    if there.analysis is not None:
        found = judged(there.analysis, id, plan.planning.wishes, wanted, full=aims.full)
    if there.analysis is None or found is None:
        raise UsageError(f"what was planned cannot be worked out: {as_text(findings, 1)}")
    return _answer(there.analysis, id, plan, found, findings)


def _answer(
    analysis: Analysis, id: str, plan: BlockPlan, found: Judged, findings: Iterable[Finding]
) -> BlockAnswer:
    slots = enumerate(zip(plan.planning.slots, plan.plan, strict=True))
    empty = [
        f"nothing fits {_when(slot.on)} at {slot.begins}, and it is written as rest; of the "
        f"practices there are {plan.planning.why_empty(number)}"
        for number, (slot, place) in slots
        if not place
    ]
    left = [f"left out: {_when(own.slot.on)}, {own.why}" for own in plan.left]
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
        has_loads=bool(plan.asked.loads),
    )


def _when(on: date) -> str:
    return f"{on:%a} {on}"


def how(plan: BlockPlan) -> str:
    """How it was chosen, and how far from the best it may be."""
    begun = f"{plan.cost} points (greedy alone {plan.greedy})"
    if plan.bound is None:
        missing = "" if can_solve() else f"; {GET_SOLVER}"
        return f"Greedy, then exchanges: {begun}, how far from the best is not known{missing}"
    gap = plan.cost - plan.bound
    if gap <= 0:
        return f"By the solver: {begun}, and no plan has fewer"
    return f"By the solver: {begun}; no plan has fewer than {plan.bound}, so the gap is {gap}"


def _tell(answer: BlockAnswer, arguments: argparse.Namespace) -> int:
    if arguments.json:
        print(json.dumps(answer_json(answer), ensure_ascii=False, indent=1))
    else:
        print(answer_text(answer))
    return FINE


def _save(
    root: Path, entries: list[Unwritten], answer: BlockAnswer, read: Mapping[str, str]
) -> int:
    """Write the block and its practices, all of them or none; none where a check has an error."""
    if any(finding.is_error for finding in answer.findings):
        print("nothing was written: it would have these findings")
        return ERRORS
    root = root_of(root)
    for own in entries:
        (root / own.file).parent.mkdir(parents=True, exist_ok=True)
    try:
        change(root, {own.file: own.text for own in entries}, read)
    except ChangedSince as problem:
        raise UsageError(str(problem)) from None
    for own in entries:
        print(f"wrote {root / own.file}")
    print(f"read it through, then: almanac sum {answer.id}")
    return FINE
