"""Plan a block: the practices of a squad placed on the days that it has, composed ones where none
fits; planned figures beside what is wished, and which wish to drop for what is not met.

Days come from the timetables, --slot or --like; closures and days of meets are read. The same
wishes give the same block. ``--judge ID`` sets a block that is there beside wishes; ``--fill ID``
fills the days that it does not name, and touches nothing else.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.composing.sentences import words_in_a_row
from almanac.commands import compose_block_asked
from almanac.commands.as_checked import load_as_checked
from almanac.commands.compose_block_asked import asked_for, squad_of
from almanac.commands.compose_block_fill import filled, other_wishes
from almanac.commands.compose_block_there import block_there, refuse_others
from almanac.commands.compose_block_tried import UNSAVED, composed_in, sound_plan, tried_block
from almanac.commands.drafts import Unwritten
from almanac.commands.given import in_club, listed
from almanac.commands.new_file import refuse_bad_id
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.shared import CheckedCatalogue
from almanac.publish.together import ChangedSince, change
from almanac.report.block.answer import BlockAnswer
from almanac.report.block.answer_json import answer_json
from almanac.report.block.answer_text import answer_text
from almanac.report.block.judged import judged
from almanac.report.findings_shown import as_text
from almanac.report.planning.block import as_wished, request_of
from almanac.report.planning.limits import limits_of
from almanac.report.planning.request import checked_request, not_over
from almanac.report.planning.usual import wishes_for

NAME = "block"
HELP = "a block of weeks for what is wished"
EXAMPLE = "--squad heron --starts 2027-04-12 --weeks 8 --goals walls=2,kick-technique"
add_arguments = compose_block_asked.add_arguments


def run(arguments: argparse.Namespace) -> int:
    day = arguments.today or today()
    everything = load_as_checked(arguments.root, day)
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
    block = block_there(everything, analysis, arguments.judge)
    refuse_others(analysis, block)
    asked = request_of(block, asked_for(analysis, arguments, block.squad, block.starts))
    checked_request(analysis, asked)
    groups = analysis.blocks.get(block.id)
    if not groups:
        raise UsageError(f"'{block.id}' cannot be worked out: almanac check tells why")
    wishes = wishes_for(analysis, asked)
    summary = as_wished(next(iter(groups.values())), asked, wishes)
    found = judged(analysis, summary)
    own = tuple(one for one in everything.findings if one.place.file == block.file)
    limits = limits_of(analysis, block.squad)
    return BlockAnswer(analysis, block.id, found, wishes, limits, own)


def compose(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> int:
    """A new block: planned, told, and written where that is asked for."""
    lacks = [
        f"--{name}"
        for name in ("starts", "weeks", "goals")
        if getattr(arguments, name) is None and not (name == "goals" and arguments.like)
    ]
    if lacks:
        example = in_club(EXAMPLE, listed(arguments.squad) or analysis.catalogue.club.squads)
        raise UsageError(f"say {words_in_a_row(lacks)}: almanac compose block {example}")
    asked = asked_for(analysis, arguments, squad_of(analysis, arguments), arguments.starts)
    checked_request(analysis, asked)
    not_over(analysis.catalogue, asked)
    id = arguments.save or UNSAVED
    if arguments.save:
        refuse_bad_id(everything.loaded, "block", id, f"plans/blocks/{id}.yml")
    entries, answer = sound_plan(everything, analysis, asked, arguments, day)
    if asked.first < day:
        answer = replace(answer, left=(_past(asked.first, day), *answer.left))
    _tell(answer, arguments)
    return _save(arguments, entries, answer, {}) if arguments.save else FINE


def _past(first: date, day: date) -> str:
    return (
        f"it starts on {first}, before today ({day}): its past days are planned like any other; "
        f"name another --starts where that is not meant"
    )


def fill(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> int:
    """The empty days of a block: planned, told, and written. Gives the exit code. Raises UsageError
    for what cannot be asked.
    """
    plan, block = filled(everything, analysis, arguments, day)
    entries = [*composed_in(plan), block]
    answer = tried_block(everything, plan, entries, day)
    _tell(answer, arguments)
    old = analysis.catalogue.blocks[block.id]
    if others := [*other_wishes(old, arguments, plan.asked)]:
        told = sys.stderr if arguments.json else sys.stdout
        print(
            f"of other wishes the entry keeps its own: {', '.join(others)}; where these are to "
            "stand, write them into it",
            file=told,
        )
    if arguments.dry_run:
        return FINE
    document = everything.loaded.documents["block", block.id]
    return _save(arguments, entries, answer, {document.file: document.text})


def _tell(answer: BlockAnswer, arguments: argparse.Namespace) -> int:
    if arguments.json:
        print(json.dumps(answer_json(answer), ensure_ascii=False, indent=1))
    else:
        print(answer_text(answer))
    return FINE


def _save(
    arguments: argparse.Namespace,
    entries: list[Unwritten],
    answer: BlockAnswer,
    read: Mapping[str, str],
) -> int:
    """Write the block and its practices, all of them or none; none where a check has an error."""
    told = sys.stderr if arguments.json else sys.stdout  # JSON is alone where it is read
    if any(finding.is_error for finding in answer.findings):
        print("nothing was written: it would have these findings", file=told)
        return ERRORS
    root = root_of(arguments.root)
    for own in entries:
        (root / own.file).parent.mkdir(parents=True, exist_ok=True)
    try:
        change(root, {own.file: own.text for own in entries}, read)
    except ChangedSince as problem:
        raise UsageError(str(problem)) from None
    for own in entries:
        print(f"wrote {root / own.file}", file=told)
    print(f"read it through, then: almanac sum {answer.id}", file=told)
    return FINE
