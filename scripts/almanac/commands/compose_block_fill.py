"""The empty days of a block filled; nothing else of it is touched."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Mapping
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.planning.choices import DaySlot
from almanac.commands.compose_block_asked import asked_for, effort_of
from almanac.commands.compose_block_plan import Begun, BlockPlan, planned
from almanac.commands.compose_block_there import block_there, refuse_others
from almanac.commands.drafts import Unwritten
from almanac.commands.outcome import UsageError
from almanac.commands.shared import CheckedCatalogue
from almanac.model.block import Block
from almanac.report.block.answer import OPTIONS
from almanac.report.block.entry_weeks import day_text, standing
from almanac.report.planning.block import request_of
from almanac.report.planning.request import BlockRequest, checked_request
from almanac.report.planning.usual import wishes_of_begun
from almanac.source.edits.added_keys import with_keys

Empty = tuple[int, str, date]  # the week from 0, the day's name, its date


def filled(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> tuple[BlockPlan, Unwritten]:
    """The plan of a block's empty days, and its text with them. Raises UsageError and BadWish."""
    block = block_there(everything, analysis, arguments.fill)
    refuse_others(analysis, block)
    asked = request_of(block, asked_for(analysis, arguments, block.squad, block.starts))
    empty = [*empty_days(block)]
    if not empty:
        raise UsageError(f"'{block.id}' has no empty day: each is named, as rest or with sessions")
    checked_request(analysis, asked)
    wishes = wishes_of_begun(analysis, asked, block)
    taken = tuple(taken_slots(analysis, block))
    days = {block.starts + timedelta(days=n) for n in range(7 * len(block.weeks))}
    named = frozenset(days - {on for _, _, on in empty})
    begun = Begun(block.id, wishes, taken, named)
    plan = planned(everything, analysis, asked, day, effort_of(arguments), begun)
    return plan, Unwritten("block", block.id, _text(everything, block, plan, empty))


def other_wishes(block: Block, arguments: argparse.Namespace, asked: BlockRequest) -> Iterator[str]:
    """The wishes that are given and that the block does not say itself, which filling leaves as
    they stand in it.
    """
    said = request_of(block, BlockRequest(asked.squad, asked.first, asked.weeks, {}))
    named = {
        "--goals": (arguments.goals, asked.goals != said.goals),
        "--loads": (arguments.loads, tuple(asked.loads) != tuple(said.loads)),
        "--test": (arguments.test, asked.tests != said.tests),
        "--strokes": (arguments.strokes, asked.strokes != said.strokes),
        "--meet": (arguments.meet, asked.meet != said.meet),
        "--race-day": (arguments.race_day, asked.race != said.race),
    }
    for name, own in asked.shares.items():
        named[OPTIONS[name]] = True, own != said.shares.get(name)
    yield from (name for name, (given, differs) in named.items() if given and differs)


def empty_days(block: Block) -> Iterator[Empty]:
    """The days that a block does not name."""
    for number, week in enumerate(block.weeks):
        for place, name in enumerate(DAYS):
            if name not in week.days:
                yield number, name, block.starts + timedelta(days=7 * number + place)


def taken_slots(analysis: Analysis, block: Block) -> Iterator[DaySlot]:
    """The slots of the practices that a block has."""
    for number, week in enumerate(block.weeks):
        for name, day in week.days.items():
            on = block.starts + timedelta(days=7 * number + DAYS.index(name))
            for session in day.every_session:
                practice = analysis.catalogue.practices.get(session.practice or "")
                if practice is not None and practice.id in analysis.practices:
                    slot = practice.slot
                    begins = session.start or slot.start
                    yield DaySlot(
                        on, number, practice.pool, begins, slot.minutes, only=(practice.id,)
                    )


def _text(everything: CheckedCatalogue, block: Block, plan: BlockPlan, empty: list[Empty]) -> str:
    by_day = standing(plan.planning, plan.plan)
    added: dict[tuple[str | int, ...], Mapping[str, str]] = {}
    for number, name, on in empty:
        written = day_text(plan.planning, plan.asked, on, by_day.get(on, ()))
        path = ("weeks", number, "days")
        added[path] = {**added.get(path, {}), name: written}
    document = everything.loaded.documents["block", block.id]
    text = with_keys(document, added, DAYS)
    if text is None:
        raise BadWish(f"{block.file}: its days are written so that none can be added; fill by hand")
    return text
