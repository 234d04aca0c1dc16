"""Rules on blocks: rest, order, balance, taper and tests over weeks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.appearances import (
    LateNeed,
    benchmark_plans,
    drills_before,
    goal_appearances,
    late_needs,
)
from almanac.arithmetic.balance import Balance
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import DayPlan
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.block import Block
from almanac.source.reader import DataPath
from almanac.units import show_number, show_share


@forbids("other-squad")
def other_squad(analysis: Analysis) -> Iterator[Problem]:
    """The practices of a block, and the lane groups that it names, are the block's own squad's."""
    for block in analysis.catalogue.blocks.values():
        for number, week in enumerate(block.weeks):
            for name, day in week.days.items():
                path: DataPath = ("weeks", number, "days", name)
                if day.practice:
                    yield from _not_own(analysis, block, (*path, "practice"), day.practice)
                for index, own in enumerate(day.sessions):
                    at: DataPath = (*path, "sessions", index)
                    if own.practice:
                        yield from _not_own(analysis, block, (*at, "practice"), own.practice)
                    yield from _groups_not_own(analysis, block, (*at, "groups"), own.groups)


def _not_own(analysis: Analysis, block: Block, path: DataPath, practice: str) -> Iterator[Problem]:
    squad = analysis.catalogue.practices[practice].squad
    if squad != block.squad:
        message = f"'{practice}' is a practice of {squad}, and the block is for {block.squad}"
        yield Problem(block, path, message, f"name a practice of {block.squad}")


def _groups_not_own(
    analysis: Analysis, block: Block, path: DataPath, groups: Sequence[str]
) -> Iterator[Problem]:
    for index, group in enumerate(groups):
        squad = analysis.catalogue.lane_groups[group].squad
        if squad != block.squad:
            message = f"'{group}' is a lane group of {squad}, and the block is for {block.squad}"
            yield Problem(block, (*path, index), message, f"name a lane group of {block.squad}")


@warns("hard-days-in-a-row")
def hard_days_in_a_row(analysis: Analysis) -> Iterator[Problem]:
    """No more hard days follow each other than the policy's ``hard_days_in_a_row``.

    A day is hard with at least ``hard_day_fast`` metres at efforts that count as fast
    (``counts_as`` in the vocabulary of efforts).
    """
    most = analysis.catalogue.policy.limit("hard_days_in_a_row")
    for block, summary, whose in blocks_of(analysis):
        run = 0
        for week in summary.weeks:
            for day in week.days:
                run = run + 1 if is_hard(analysis, day) else 0
                if run == most + 1:
                    message = f"{run} hard days in a row{whose}"
                    path = ("weeks", week.number - 1, "days", day.name)
                    yield Problem(
                        block,
                        path,
                        message,
                        f"put a quieter day before it: at most {show_number(most)} in a row",
                    )


def is_hard(analysis: Analysis, day: DayPlan) -> bool:
    """Whether a day holds as much fast distance as the policy calls hard."""
    return bool(day.swum) and day.balance.fast_m >= analysis.catalogue.policy.limit("hard_day_fast")


@warns("supine-share")
def supine_share(analysis: Analysis) -> Iterator[Problem]:
    """Of the flutter kick of a block, at least the policy's ``supine_share_aim`` is on the back.

    A block that states its own range under ``balance`` is held to that instead.
    """
    aim = analysis.catalogue.policy.limit("supine_share_aim")
    for block, summary, whose in blocks_of(analysis):
        share = summary.balance.supine_share
        if "supine_share" not in block.balance and share is not None and share < aim:
            message = (
                f"{show_share(share)} of the flutter kick is on the back{whose}; the club aims at "
                f"{show_share(aim)}"
            )
            hint = "turn kick on the front over, or state another range under balance"
            yield Problem(block, ("weeks",), message, hint, of_key=True)


@warns("balance-missed")
def balance_missed(analysis: Analysis) -> Iterator[Problem]:
    """The shares of a block lie in the ranges that the block itself states under ``balance``."""
    for block, summary, whose in blocks_of(analysis):
        for name, wanted in block.balance.items():
            share: float | None = getattr(summary.balance, name)
            if not wanted.holds(share):
                message = f"the {name.replace('_', ' ')} is {show_share(share)}{whose}"
                span = f"{show_share(wanted.least)} and {show_share(wanted.most)}"
                hint = f"it should lie between {span}: change practices, or the range"
                yield Problem(block, ("balance", name), message, hint)


@warns("taught-before-need")
def taught_before_need(analysis: Analysis) -> Iterator[Problem]:
    """A drill comes after what it needs first: earlier in the block or in one that its lane group
    ended in the year before, or below the squad's level and so known.
    """
    levels = list(analysis.catalogue.words("levels"))
    found: dict[tuple[str, LateNeed], list[str]] = {}
    ways = Counter[str]()
    for block, summary, whose in blocks_of(analysis):
        ways[block.id] += 1
        level = analysis.catalogue.club.squads[block.squad].level
        every = analysis.blocks.values()
        before = drills_before(every, block.squad, summary.group, block.starts)
        for late in late_needs(summary, analysis.catalogue.drills, levels, level, before):
            if late.need != late.drill:  # a circle of one is told as that
                found.setdefault((block.id, late), []).append(whose)
    for (id, late), each in found.items():
        when = f"comes only in week {late.need_first}" if late.need_first else "never comes"
        message = (
            f"'{late.drill}' is used in '{late.practice}', and '{late.need}', which it "
            f"needs first, {when}"
        )
        # In the same words of all lane groups it is told once.
        for whose in [""] if len(each) == ways[id] else each:
            mend = f"put {late.need} before it"
            block = analysis.catalogue.blocks[id]
            yield Problem(block, ("weeks", late.week - 1), message + whose, mend)


@warns("goal-unserved")
def goal_unserved(analysis: Analysis) -> Iterator[Problem]:
    """Every goal of a block is served by a practice in it."""
    for block, summary, whose in blocks_of(analysis):
        served = goal_appearances(summary)
        for index, goal in enumerate(block.goals):
            if goal not in served:
                hint = "add a set that does, or take the goal out"
                yield Problem(block, ("goals", index), f"no practice serves '{goal}'{whose}", hint)


@warns("benchmark-due")
def benchmark_due(analysis: Analysis) -> Iterator[Problem]:
    """A benchmark that a block runs is run again as often as its own entry asks, to the end of the
    block.
    """
    for block in analysis.catalogue.blocks.values():
        for plan in benchmark_plans(block.weeks, analysis.catalogue.benchmarks):
            for week in plan.due:
                every = analysis.catalogue.benchmarks[plan.benchmark].repeat_every
                message = f"'{plan.benchmark}' is due again by week {week} (every {every})"
                number = min(week, len(block.weeks)) - 1
                yield Problem(block, ("weeks", number), message, "run it in that week")


def blocks_of(analysis: Analysis) -> Iterator[tuple[Block, BlockSummary, str]]:
    """Each block with its figures: for the first lane group where all do the same, else for each
    that does another thing, with words that say whose they are.
    """
    for id, groups in analysis.blocks.items():
        ways: dict[str, tuple[Balance, ...]] = {}
        for group, summary in groups.items():
            days = tuple(day.balance for day in summary.days)
            if days not in ways.values():
                ways[group] = days
        for group in ways:
            title = analysis.catalogue.lane_groups[group].title
            whose = f" for {title}" if len(ways) > 1 else ""
            yield analysis.catalogue.blocks[id], groups[group], whose
