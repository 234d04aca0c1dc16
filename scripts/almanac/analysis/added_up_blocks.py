"""Blocks added up by lane group: which can be, and by which rules."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from datetime import date
from functools import partial

from almanac.arithmetic.block import BlockRules, BlockSummary, summarise_block
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.summary import SetSummary
from almanac.model.catalogue import Catalogue


def added_up_blocks(
    catalogue: Catalogue,
    practices: Collection[str],
    circuits: Collection[str],
    practice_on: Callable[[str, date], PracticeSummary],
    circuit: Callable[[str], SetSummary],
) -> Iterator[tuple[str, dict[str, BlockSummary]]]:
    """The figures of every computable block, by lane group: its practices are its own squad's, and
    among the computable ``practices``, as its circuits on land are among ``circuits``.
    """
    logs = tuple(catalogue.logs.values())
    for id, block in catalogue.blocks.items():
        used = {practice for day in block.days for practice in day.practices}
        own = {name for name in practices if catalogue.practices[name].squad == block.squad}
        on_land = {id for day in block.days for id in day.circuits}
        if used <= own and on_land <= {*circuits}:
            squad = [
                name for name, group in catalogue.lane_groups.items() if group.squad == block.squad
            ]
            rules = _rules(catalogue, block.squad)
            meet = catalogue.meets.get(block.meet or "")
            days = [day.on for day in meet.days] if meet else []
            add_up = partial(summarise_block, circuit=circuit, logs=logs, meet_days=days)
            yield id, {group: add_up(block, practice_on, group, rules) for group in squad}


def _rules(catalogue: Catalogue, squad: str) -> BlockRules:
    limits = catalogue.policy.of_level(catalogue.club.squads[squad].level)
    strokes = catalogue.words("strokes")
    four = tuple(id for id, word in strokes.items() if word.medley is not None)
    return BlockRules(catalogue.policy.limit("week_load_least"), limits.light_days, four)
