"""How lane groups go through a block, where some swim other sessions than others."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.arithmetic.block import BlockSummary

BlockWay = tuple[tuple[str, ...], BlockSummary]  # lane groups, and the block of the first of them


def block_ways(groups: Mapping[str, BlockSummary]) -> list[BlockWay]:
    """Each way through the block, in the order of the lane groups: those for whom every week holds
    the same metres, facet by facet, share one.
    """
    found: list[tuple[list[str], BlockSummary]] = []
    for group, summary in groups.items():
        for ids, other in found:
            if _weeks(summary) == _weeks(other):
                ids.append(group)
                break
        else:
            found.append(([group], summary))
    return [(tuple(ids), summary) for ids, summary in found]


def _weeks(summary: BlockSummary) -> list[object]:
    return [week.balance for week in summary.weeks]
