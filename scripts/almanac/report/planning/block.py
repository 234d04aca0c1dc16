"""A block that is there beside what is asked for: each with what the other says."""

from __future__ import annotations

from dataclasses import replace

from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.planning.wishes import BlockWishes
from almanac.model.block import Block, BlockWish, ShareRange
from almanac.report.planning.request import BlockRequest


def request_of(block: Block, asked: BlockRequest) -> BlockRequest:
    """What is asked for, with what a block that is there says of itself."""
    own = block.wishes or BlockWish()
    shares = {name: (round(1000 * one.least), round(1000 * one.most))
              for name, one in block.wished_shares.items()}  # fmt: skip
    tests: dict[str, list[int]] = {}
    for number, week in enumerate(block.weeks, 1):
        for benchmark in week.benchmarks:
            tests.setdefault(benchmark, []).append(number)
    return replace(
        asked,
        squad=block.squad,
        first=block.starts,
        weeks=len(block.weeks),
        goals=asked.goals or dict(own.goals) or dict.fromkeys(block.goals, 1),
        weighed=bool(asked.goals or own.goals),
        loads=asked.loads or own.loads,
        tests=asked.tests or tests,
        meet=asked.meet or block.meet or "",
        race=asked.race or block.race_day,
        shares={**shares, **asked.shares},
        strokes=asked.strokes or round(100 * own.strokes),
    )


def as_wished(
    summary: BlockSummary, asked: BlockRequest, wishes: BlockWishes, full: int = 0
) -> BlockSummary:
    """A block as if it said itself what is asked of it; ``full`` is the load of a full week where
    it does not say that.
    """
    block = summary.block
    own = block.wishes or BlockWish()
    wish = replace(
        own,
        goals=asked.goals if asked.weighed else {},
        shares={n: ShareRange(one[0] / 1000, one[1] / 1000) for n, one in asked.shares.items()},
        strokes=asked.strokes / 100,
        loads=tuple(asked.loads),
        full_load=own.full_load or full,
    )
    weeks = tuple(
        replace(week, benchmarks=wished.benchmarks)
        for week, wished in zip(block.weeks, wishes.weeks, strict=True)
    )
    return replace(summary, block=replace(block, wishes=wish, weeks=weeks))
