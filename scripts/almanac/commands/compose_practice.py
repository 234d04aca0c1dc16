"""Propose up to three practices for what is wished: lane groups, pool, minutes, goals, gear,
effort, what was done lately, what has been taught. The same wishes give the same answer.

A piece is named by its key, as --json tells it: set/ID, part/PRACTICE/NUMBER or drill/ID.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterable
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_changes import DEEDS, Deed
from almanac.arithmetic.composing_pieces import ROLES, UNKNOWN
from almanac.arithmetic.composing_request import BadWish, Request
from almanac.arithmetic.composing_wishes import SECOND
from almanac.commands.compose_days import kept_days, of_block, within_sight
from almanac.commands.compose_save import alone_words, save
from almanac.commands.given import day_of, listed, numbers, once, pairs, there, time_of_day, whole
from almanac.commands.outcome import ERRORS, FINE, UsageError, today
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.findings import as_text
from almanac.model.log import Log
from almanac.report.compose_answer import Proposals, answer_json, answered, changed
from almanac.report.compose_board import answer_text
from almanac.report.compose_table import Made, can_compose, compose_table
from almanac.report.compose_usual import usual_pool
from almanac.source.suggest import fold

NAME = "practice"
HELP = "up to three practices for what is wished"
ALL_ROLES = (*ROLES[:3], SECOND, *ROLES[3:])


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument
    add("--squad", metavar="S", help="whose practice (default: that of its lane groups)")
    add("--groups", metavar="G,G", help="its lane groups that swim (default: all)")
    add("--pool", metavar="P", help="the pool (default: where the squad swims most)")
    add("--minutes", metavar="N", type=whole, required=True, help="of the slot, 20 to 120")
    add("--goals", metavar="G,G", required=True, help="one to three, the chief one first")
    add("--without", metavar="GEAR,GEAR", help="gear that is not at hand")
    add("--gear", metavar="GEAR=N", action="append", default=[], help="so many are at hand")
    add("--effort", metavar="E", default="", help="how hard the main set is")
    add("--lanes", metavar="G=N", action="append", default=[], help="lanes of a lane group")
    add("--heads", metavar="G=N", action="append", default=[], help="swimmers of a lane group")
    add("--adults", metavar="N", type=whole, help="adults who are there")
    add("--done", metavar="ID=DAYS", action="append", default=[],
        help="a practice or a piece that was done so many days ago")  # fmt: skip
    add("--block", metavar="B", help="what a block had before --until was done")
    add("--kept", action="store_true", help="what was kept as done before --until was done")
    add("--until", metavar="DATE", type=day_of, help="the day of the practice (default: today)")
    add("--taught", metavar="P=N", action="append", default=[],
        help="stages of a progression that are done (default: all that its blocks ask for)",
    )  # fmt: skip
    add("--keep", metavar="PIECE=ROLE", action="append", default=[],
        help="a piece that has to stand as w, s, m, n, e or c: warm-up, skill, main set, "
        "second main set, relief, cool-down")  # fmt: skip
    add("--leave-out", metavar="PIECE", action="append", default=[], help="a piece not to take")
    add("--change", metavar="DEED=ROLE", action="append", default=[],
        help="of --proposal: swap, keep, free, up, down or out, and in which role")  # fmt: skip
    add(
        "--json",
        action="store_true",
        help="print JSON, version 1; with --save what is written is told on standard error",
    )
    add("--save", metavar="ID", help="write a proposal as the practice ID")
    add(
        "--proposal",
        metavar="N",
        type=whole,
        default=1,
        help="which is saved or changed (default: 1)",
    )
    add(
        "--start",
        metavar="HH:MM",
        type=time_of_day,
        help="when the slot begins (default: the squad's usual)",
    )


def run(arguments: argparse.Namespace) -> int:
    day = arguments.today or today()
    everything = load_and_check(arguments.root, day)
    analysis = everything.analysis
    if analysis is None:
        print(as_text(everything.findings, everything.loaded.count))
        return ERRORS
    if arguments.until:
        within_sight(analysis, arguments.until, day)
    answer = answer_to(everything, analysis, arguments, arguments.until or day)
    number = proposal_number(answer, arguments) if answer.proposals or arguments.save else 0
    if arguments.json:
        print(json.dumps(answer_json(answer), ensure_ascii=False, indent=1))
    if arguments.save:
        return save(everything, answer, number, arguments)
    if not arguments.json:
        print("\n\n".join(filter(None, (alone_words(answer), answer_text(answer)))))
    return FINE


def answer_to(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> Proposals:
    """The answer to what is asked. Raises UsageError for a wish that cannot be."""
    groups = listed(arguments.groups)
    squad = _squad(analysis, arguments.squad, groups)
    if not analysis.catalogue.club.waters:
        raise UsageError("the club has no pool, and what is composed is swum")
    pool = arguments.pool or usual_pool(analysis.catalogue, squad)
    there("pool", [pool], analysis.catalogue.club.waters)
    _there(analysis, arguments)
    broken = frozenset(own.place.file for own in everything.findings if own.is_error)
    made = compose_table(analysis, squad, broken, [pool])
    try:
        answer = answered(
            analysis,
            made,
            _request(arguments, made, groups, pool, day, analysis.catalogue.logs.values()),
        )
        deeds = [_deed(text) for text in arguments.change]
        return changed(answer, proposal_number(answer, arguments), deeds) if deeds else answer
    except BadWish as problem:
        raise UsageError(str(problem)) from None


def _there(analysis: Analysis, arguments: argparse.Namespace) -> None:
    """Raises UsageError for what is asked for by an id that the catalogue does not have."""
    catalogue = analysis.catalogue
    goals = listed(arguments.goals)
    there("goal", goals, catalogue.words("goals"))
    once("goals", goals)
    called = {fold(name): id for id, own in catalogue.gear.items() for name in own.also_called}
    without, at_hand = listed(arguments.without), numbers(arguments.gear, "gear")
    for id in without:
        if id in at_hand:
            raise UsageError(f"--gear {id}={at_hand[id]} and --without {id}: leave out one of them")
    gear = [*without, *at_hand]
    there("gear", gear, catalogue.gear, called)
    there("effort", listed(arguments.effort), catalogue.efforts)
    there("progression", numbers(arguments.taught, "taught"), catalogue.progressions)


def _request(
    arguments: argparse.Namespace,
    made: Made,
    groups: list[str],
    pool: str,
    day: date,
    logs: Iterable[Log],
) -> Request:
    gear = dict.fromkeys(listed(arguments.without), 0) | numbers(arguments.gear, "gear")
    done = [*numbers(arguments.done, "done").items()]
    pieces, practices = [*made.table.piece_of], [own.id for own in made.table.practices]
    there("practice of the squad, or piece,", [key for key, _ in done], [*practices, *pieces])
    there("piece", arguments.leave_out, pieces)
    done += of_block(made.table, arguments.block, day) if arguments.block else []
    done += kept_days(made.table, logs, day) if arguments.kept else []
    return Request(
        pool=pool,
        minutes=arguments.minutes,
        goals=listed(arguments.goals),
        groups=groups,
        lanes=numbers(arguments.lanes, "lanes"),
        heads=numbers(arguments.heads, "heads"),
        gear=gear,
        effort=arguments.effort,
        adults=_adults(arguments.adults),
        done=done,
        taught=numbers(arguments.taught, "taught"),
        keep=[_kept(text) for text in arguments.keep],
        leave_out=arguments.leave_out,
    )


def _deed(text: str) -> Deed:
    ((do, role),) = pairs([text], "change").items()
    if do not in DEEDS or role not in ALL_ROLES:
        raise UsageError(
            f"--change {text}: write {', '.join(DEEDS)}, and a role, "
            f"{', '.join(ALL_ROLES)}: say --change swap=m"
        )
    return Deed(do, role)


def proposal_number(answer: Proposals, arguments: argparse.Namespace) -> int:
    """Which proposal is meant; the only one where it was changed. Raises UsageError for none."""
    count = len(answer.proposals)
    number: int = 1 if answer.changes else arguments.proposal
    if not 1 <= number <= count:
        are = {0: "is none", 1: "is one"}.get(count, f"are {count}")
        raise UsageError(f"there is no proposal {number}: there {are}")
    return number


def _adults(told: int | None) -> int:
    if told is not None and told < 0:
        raise UsageError(f"--adults {told}: write how many adults are there")
    return UNKNOWN if told is None else told


def _squad(analysis: Analysis, named: str | None, groups: list[str]) -> str:
    """The squad that is named, else that of the lane groups, else the club's only one."""
    squads, known = analysis.catalogue.club.squads, analysis.catalogue.lane_groups
    there("lane group", groups, known)
    found = {named} if named else {known[group].squad for group in groups} or set(squads)
    if len(found) > 1:
        raise UsageError(f"say whose it is: --squad {' or '.join(sorted(map(str, found)))}")
    (squad,) = found
    there("squad", [squad], squads)
    if not can_compose(analysis, squad):
        raise UsageError(f"the squad '{squad}' has no lane group in plans/club.yml")
    return squad


def _kept(text: str) -> tuple[str, str, int]:
    ((key, role),) = pairs([text], "keep").items()
    return key, role, UNKNOWN
