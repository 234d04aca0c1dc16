"""A block that is there and is to be judged or filled: which it is, and that it can be."""

from __future__ import annotations

from almanac.analysis.analysis import Analysis
from almanac.commands.named import entries
from almanac.commands.outcome import UsageError
from almanac.commands.shared import CheckedCatalogue
from almanac.model.block import Block
from almanac.report.findings_shown import as_text
from almanac.source.suggest import absent


def block_there(everything: CheckedCatalogue, analysis: Analysis, id: str) -> Block:
    """The block of an id. Raises UsageError where there is none; where its file is there and is not
    read, with what is wrong in it.
    """
    blocks = analysis.catalogue.blocks
    file = f"plans/blocks/{id}.yml"
    wrong = [own for own in everything.findings if own.place.file == file and own.is_error]
    if id not in blocks and wrong:
        raise UsageError(f"'{id}' cannot be read yet:\n{as_text(wrong, 1)}")
    return blocks[entries("block", blocks).id_of(id)]


def refuse_others(analysis: Analysis, block: Block) -> None:
    """Raises UsageError for a practice in a block that its squad does not swim, or that is not
    there: what stands on a day is planned around, and has to be known.
    """
    practices = analysis.catalogue.practices
    for number, week in enumerate(block.weeks, 1):
        for name, day in week.days.items():
            for session in day.every_session:
                own, where = session.practice, f"on {name} of week {number}"
                if own and own not in practices:
                    raise UsageError(f"'{block.id}', {where}: {absent('practice', own, practices)}")
                if own and practices[own].squad != block.squad:
                    raise UsageError(
                        f"'{block.id}', {where}: '{own}' is a practice of {practices[own].squad}; "
                        f"put one of {block.squad} there, or take it out"
                    )
