"""A rule on what was wished of a block: wishes that can be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids
from almanac.findings import counted
from almanac.model.block import Block, BlockWish, ShareRange
from almanac.source.reader import DataPath
from almanac.units import show_number


@forbids("impossible-wish")
def impossible_wish(analysis: Analysis) -> Iterator[Problem]:
    """What is wished of a block can be: each range of a share goes from its least to its most, and
    loads are named for each week or for none.
    """
    for block in analysis.catalogue.blocks.values():
        wishes = block.wishes or BlockWish()
        yield from _ranges(block, ("balance",), block.balance)
        yield from _ranges(block, ("wishes", "shares"), wishes.shares)
        if wishes.loads and len(wishes.loads) != len(block.weeks):
            loads = counted(len(wishes.loads), "load")
            message = f"{loads} for {counted(len(block.weeks), 'week')}"
            yield Problem(block, ("wishes", "loads"), message, "name one for each week")


def _ranges(block: Block, path: DataPath, shares: Mapping[str, ShareRange]) -> Iterator[Problem]:
    for name, own in shares.items():
        if own.least > own.most:
            message = (
                f"the {name.replace('_', ' ')} goes from {show_number(own.least, 3)} down to "
                f"{show_number(own.most, 3)}"
            )
            yield Problem(block, (*path, name), message, "put the smaller under from")
