"""Rules on pools, on when a block starts, and on when entries are looked over again."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids, warns
from almanac.source.said.days import year_on


@forbids("depth-range")
def depth_range(analysis: Analysis) -> Iterator[Problem]:
    """A pool's depth runs from its shallowest to its deepest."""
    for id, pool in analysis.catalogue.club.pools.items():
        if pool.depth_m.least > pool.depth_m.most:
            message = f"from {pool.depth_m.least} to {pool.depth_m.most} runs backwards"
            yield Problem(
                analysis.catalogue.club,
                ("pools", id, "depth_m"),
                message,
                "write the shallowest under 'from'",
            )


@forbids("block-starts-monday")
def block_starts_monday(analysis: Analysis) -> Iterator[Problem]:
    """A block starts on a Monday, so that its weeks are calendar weeks."""
    for block in analysis.catalogue.blocks.values():
        if block.starts.weekday() != 0:
            message = f"{block.starts} is a {block.starts:%A}"
            yield Problem(block, ("starts",), message, "write the Monday of its first week")


@forbids("review-order")
def review_order(analysis: Analysis) -> Iterator[Problem]:
    """The next review comes after the last one."""
    for entry in analysis.catalogue.entries.values():
        if entry.review and entry.review.again <= entry.review.on:
            message = f"again on {entry.review.again}, though reviewed on {entry.review.on}"
            offered = year_on(entry.review.on)
            hint = f"write a later day; {offered}" if offered else "write a later day"
            yield Problem(entry, ("review", "again"), message, hint)


@warns("review-overdue")
def review_overdue(analysis: Analysis) -> Iterator[Problem]:
    """An entry is looked over again by the day that its review names."""
    for entry in analysis.catalogue.entries.values():
        if entry.review and entry.review.on < entry.review.again < analysis.today:
            message = f"the review was due on {entry.review.again}"
            yield Problem(
                entry,
                ("review", "again"),
                message,
                "look it over, then write that day under 'on', and under 'again' the next; from"
                f" today, {year_on(analysis.today)}",
            )
