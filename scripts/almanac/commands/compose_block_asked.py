"""The arguments of ``compose block``, and what they ask for."""

from __future__ import annotations

import argparse
import re
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.commands.compose_block_modes import refuse_together
from almanac.commands.compose_block_plan import Effort
from almanac.commands.given import day_of, listed, natural, numbers, once, whole
from almanac.commands.named import day_named, entries, words
from almanac.commands.outcome import UsageError
from almanac.commands.weekly_given import weekly
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.report.planning.request import BlockRequest

STEPS_MOST = 1_000_000
_SHARES = {
    "kick": "kick_share",
    "on_back": "supine_share",
    "resisted": "resisted_share",
    "fast": "fast_share",
    "dolphin": "dolphin_share",
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument_group("what is wished").add_argument
    add("--starts", metavar="DATE", type=day_of, help="the Monday it starts on, YYYY-MM-DD; has to "
        "be said")  # fmt: skip
    add("--weeks", metavar="N", type=whole, help="how many weeks, 1 to 26; has to be said")
    add("--goals", metavar="G=N,G", help="goals, each with a weight, 1 or more (default 1); has to "
        "be said where --like has none")  # fmt: skip
    add("--squad", metavar="S", help="whose block (default: that of --like, or the only one)")
    add("--loads", metavar="N,N", help="the load of each week, in hundredths of a full one "
        "(default: as weeks of that kind usually weigh)")  # fmt: skip
    add("--test", metavar="B=W,W", action="append", default=[],
        help="a benchmark, and the weeks it is run in (default: as often as it asks); may be given "
        "again")  # fmt: skip
    add("--meet", metavar="M", help="the meet that it leads to (default: none)")
    add("--race-day", metavar="DATE", type=day_of, help="the day of the race (default: the meet's)")
    add("--taper", metavar="N", type=whole, help="weeks of taper before the race")
    add = parser.add_argument_group("when").add_argument
    add("--days", metavar="mon,tue", help="only these days of the week (default: all with a slot)")
    add("--slot", metavar="DAY=HH:MM+MIN@POOL", action="append", default=[],
        help="pool time each week, in place of the timetables; may be given again")  # fmt: skip
    add("--like", metavar="B", help="a block whose days and hours are taken")
    add = parser.add_argument_group(
        "shares, in hundredths of all metres: 20-35, 35- for that and more, 0-35 for no more "
        "(default: none is wished)"
    ).add_argument
    add("--kick", metavar="A-B", help="kick")
    add("--on-back", metavar="A-B", help="flutter on the back, in hundredths of all flutter")
    add("--resisted", metavar="A-B", help="resisted metres")
    add("--fast", metavar="A-B", help="fast metres")
    add("--dolphin", metavar="A-B", help="dolphin kick")
    add("--strokes", metavar="N", type=whole, default=0,
        help="the least of each of the four strokes in any two weeks, 0 to 25 (default: 0)",
    )  # fmt: skip
    add = parser.add_argument_group("a block that is there").add_argument
    add("--judge", metavar="B", help="set it beside wishes, change nothing")
    add("--fill", metavar="B", help="fill the days that it does not name, and nothing else")
    add("--dry-run", action="store_true", help="of --fill: only say what would be filled")
    add = parser.add_argument_group("how it is searched, told and written").add_argument
    add("--steps", metavar="N", type=whole, help="exchanges that are tried (default: 60000)")
    add("--no-solver", action="store_true", help="exchanges alone, also where the solver is there")
    add("--save", metavar="ID", help="write the block ID, and composed practices beside it "
        "(default: nothing is written)")  # fmt: skip
    add(
        "--json",
        action="store_true",
        help="print JSON, version 1; what is written is then told on standard error",
    )


def effort_of(arguments: argparse.Namespace) -> Effort:
    """How long is searched."""
    usual = Effort()
    steps = usual.steps if arguments.steps is None else arguments.steps
    if not 0 <= steps <= STEPS_MOST:
        raise UsageError(f"--steps {steps}: from 0 to {STEPS_MOST}")
    return Effort(steps, 0 if arguments.no_solver else usual.deterministic_time)


def asked_for(
    analysis: Analysis, arguments: argparse.Namespace, squad: str, first: date
) -> BlockRequest:
    """What the arguments ask for. Raises UsageError."""
    refuse_together(arguments)
    catalogue = analysis.catalogue
    like = like_of(catalogue, arguments.like)
    of_like = like.goals if like and not arguments.fill else ()  # one that is there has its own
    benchmark = entries("benchmark", catalogue.benchmarks)
    tests = [(benchmark.id_of(name), weeks) for name, weeks in map(_test, arguments.test)]
    once("test", [name for name, _ in tests])
    goals = words(catalogue, "goal", "goals").keyed(_weights(arguments.goals))
    meet = arguments.meet and entries("meet", catalogue.meets).id_of(arguments.meet)
    return BlockRequest(
        squad=squad,
        first=first,
        weeks=arguments.weeks or 0,
        goals=goals or dict.fromkeys(of_like, 1),
        days=[day_named(own) for own in listed(arguments.days)],
        weekly=weekly(analysis.catalogue.club.pools, arguments.slot),
        like=like.id if like else "",
        loads=_loads(arguments.loads),
        tests=dict(tests),
        meet=meet or "",
        race=arguments.race_day,
        taper=arguments.taper,
        shares={
            name: _span(text, option)
            for option, name in _SHARES.items()
            if (text := getattr(arguments, option))
        },
        strokes=arguments.strokes,
    )


def like_of(catalogue: Catalogue, named: str | None) -> Block | None:
    """The block whose days are taken. Raises UsageError where there is none of that name."""
    return catalogue.blocks[entries("block", catalogue.blocks).id_of(named)] if named else None


def squad_of(analysis: Analysis, arguments: argparse.Namespace) -> str:
    """The squad that is named, else that of --like, else the club's only one."""
    squads = analysis.catalogue.club.squads
    like = like_of(analysis.catalogue, arguments.like)
    if arguments.squad:
        return entries("squad", squads).id_of(arguments.squad)
    if like is None and len(squads) != 1:
        raise UsageError(f"say whose it is: --squad {' or '.join(squads)}")
    return like.squad if like else next(iter(squads))


def _weights(text: str | None) -> dict[str, int]:
    pairs = [own if "=" in own else f"{own}=1" for own in listed(text)]
    return numbers(pairs, "goals")


def _loads(text: str | None) -> list[int]:
    each = [natural(own) for own in listed(text)]
    found = [own for own in each if own is not None and 0 < own <= 100]
    if len(found) < len(each):
        raise UsageError(
            f"--loads {text}: hundredths of a full week, a number from 1 to 100 for each week, "
            "say 85,95,100"
        )
    return found


def _test(text: str) -> tuple[str, list[int]]:
    benchmark, _, weeks = text.partition("=")
    each = [natural(own) for own in listed(weeks)]
    found = [own for own in each if own is not None]
    if len(found) < len(each):
        raise UsageError(f"--test {text}: write the weeks by their numbers, say {benchmark}=1,8")
    return benchmark, found


def _span(text: str, option: str) -> tuple[int, int]:
    """A range of hundredths, as thousandths: 20-35, or 60- for that and more."""
    found = re.fullmatch(r"(\d{1,3})-(\d{0,3})", text.replace("%", "").replace(" ", ""))
    least, most = (int(found[1]), int(found[2] or 100)) if found else (1, 0)
    if not least <= most <= 100:
        raise UsageError(
            f"--{option.replace('_', '-')} {text}: write a range in hundredths, from 0 to 100: say "
            "20-35, 35- for that and more, 0-35 for no more"
        )
    return 10 * least, 10 * most
