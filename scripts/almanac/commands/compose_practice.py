"""Propose up to three practices for what is wished: lane groups, pool, minutes, goals, gear,
effort, what was done lately, what has been taught. The same wishes give the same answer.

A piece is named by its key, as --json tells it: set/ID, part/PRACTICE/NUMBER or drill/ID.
"""

from __future__ import annotations

import argparse
import json
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.composing.sentences import words_in_a_row
from almanac.commands.as_checked import load_as_checked
from almanac.commands.compose_days import within_sight
from almanac.commands.compose_practice_asked import (
    deed_of,
    names_meant,
    pool_of,
    request_of,
    squad_of,
)
from almanac.commands.compose_save import alone_words, refuse_taken, save
from almanac.commands.given import day_of, in_club, listed, time_of_day, whole
from almanac.commands.outcome import ERRORS, FINE, UsageError, today
from almanac.commands.shared import CheckedCatalogue
from almanac.report.compose.answer import Proposals, answer_json, answered, changed
from almanac.report.compose.board import answer_text
from almanac.report.compose.table import compose_table
from almanac.report.findings_shown import as_text

NAME = "practice"
HELP = "up to three practices for what is wished"
EXAMPLE = "--squad heron --minutes 60 --goals kick-endurance,walls"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument_group("what is wished").add_argument
    add("--minutes", metavar="N", type=whole, help="of the slot, 20 to 120; has to be said")
    add("--goals", metavar="G,G", help="one to three, the chief one first; has to be said")
    add("--effort", metavar="E", default="", help="how hard the main set is (default: any)")
    add("--keep", metavar="PIECE=ROLE", action="append", default=[],
        help="a piece that has to stand as w, s, m, n, e or c: warm-up, skill, main set, "
        "second main set, relief, cool-down; may be given again")  # fmt: skip
    add("--leave-out", metavar="PIECE", action="append", default=[],
        help="a piece not to take; may be given again")  # fmt: skip
    add = parser.add_argument_group("who is there, and what").add_argument
    add("--squad", metavar="S", help="whose practice (default: that of its lane groups)")
    add("--groups", metavar="G,G", help="its lane groups that swim (default: all)")
    add("--pool", metavar="P", help="the pool (default: where the squad swims most)")
    add("--lanes", metavar="G=N", action="append", default=[],
        help="lanes of a lane group (default: its usual)")  # fmt: skip
    add("--heads", metavar="G=N", action="append", default=[],
        help="swimmers of a lane group, in all its lanes (default: its usual)")  # fmt: skip
    add("--adults", metavar="N", type=whole, help="adults on deck (default: as many as it takes)")
    add("--without", metavar="GEAR,GEAR", help="gear that is not at hand (default: all is)")
    add("--gear", metavar="GEAR=N", action="append", default=[],
        help="so many are at hand (default: all that the club owns)")  # fmt: skip
    add = parser.add_argument_group("what was done before").add_argument
    add("--done", metavar="ID=DAYS", action="append", default=[],
        help="a practice or a piece that was done so many days ago; 0 is today")  # fmt: skip
    add("--block", metavar="B", help="what this block had in the four weeks before was done")
    add("--kept", action="store_true", help="what was kept as done in the four weeks before was")
    add("--until", metavar="DATE", type=day_of, help="the day of the practice (default: today)")
    add("--taught", metavar="P=N", action="append", default=[],
        help="stages of a progression that are done (default: all that its blocks ask for)",
    )  # fmt: skip
    add = parser.add_argument_group("what is done with a proposal").add_argument
    add("--proposal", metavar="N", type=whole, default=1,
        help="which is saved or changed (default: 1)")  # fmt: skip
    add("--change", metavar="DEED=ROLE", action="append", default=[],
        help="swap, keep, free, up, down or out, and which role, or minutes=45; may be given "
        "again, and is done in that order")  # fmt: skip
    add("--save", metavar="ID", help="write it as the practice ID (default: nothing is written)")
    add("--start", metavar="HH:MM", type=time_of_day,
        help="when the slot of the practice that is saved begins (default: the squad's usual)",
    )  # fmt: skip
    add(
        "--json",
        action="store_true",
        help="print JSON, version 1; with --save what is written is told on standard error",
    )


def run(arguments: argparse.Namespace) -> int:
    day = arguments.today or today()
    everything = load_as_checked(arguments.root, day)
    analysis = everything.analysis
    if analysis is None:
        print(as_text(everything.findings, everything.loaded.count))
        return ERRORS
    _has_all(arguments, analysis)
    if arguments.until:
        within_sight(analysis, arguments.until, day)
    if arguments.save:
        refuse_taken(everything, arguments.save)
    answer = answer_to(everything, analysis, arguments, arguments.until or day)
    number = proposal_number(answer, arguments) if answer.proposals else 0
    if arguments.json:
        print(json.dumps(answer_json(answer), ensure_ascii=False, indent=1))
    if arguments.save:
        return save(everything, answer, number, arguments)
    if not arguments.json:
        print("\n\n".join(filter(None, (alone_words(answer), answer_text(answer)))))
    return FINE


def _has_all(arguments: argparse.Namespace, analysis: Analysis) -> None:
    """Raises UsageError for what has to be said."""
    lacks = [f"--{name}" for name in ("minutes", "goals") if getattr(arguments, name) is None]
    if lacks:
        example = in_club(EXAMPLE, listed(arguments.squad) or analysis.catalogue.club.squads)
        raise UsageError(f"say {words_in_a_row(lacks)}: almanac compose practice {example}")


def answer_to(
    everything: CheckedCatalogue, analysis: Analysis, arguments: argparse.Namespace, day: date
) -> Proposals:
    """The answer to what is asked. Raises UsageError for a wish that cannot be."""
    squad = squad_of(analysis, arguments.squad, listed(arguments.groups))
    pool = pool_of(analysis.catalogue, arguments.pool, squad)
    names_meant(analysis.catalogue, arguments)
    deeds = [deed_of(text) for text in arguments.change]
    broken = frozenset(own.place.file for own in everything.findings if own.is_error)
    made = compose_table(analysis, squad, broken, [pool])
    try:
        wished = request_of(arguments, made.table, pool, day, analysis.catalogue)
        answer = answered(analysis, made, wished)
        if (deeds or arguments.save) and not answer.proposals:
            why = " ".join(words for _, words in answer.said_hinders)
            undone = "nothing was written" if arguments.save else "nothing can be changed"
            raise UsageError(f"nothing fits, and {undone}: {why}")
        return changed(answer, proposal_number(answer, arguments), deeds) if deeds else answer
    except BadWish as problem:
        raise UsageError(str(problem)) from None


def proposal_number(answer: Proposals, arguments: argparse.Namespace) -> int:
    """Which proposal is meant; the only one where it was changed. Raises UsageError for none."""
    count = len(answer.proposals)
    number: int = 1 if answer.changes else arguments.proposal
    if not 1 <= number <= count:
        are = {0: "is none", 1: "is one"}.get(count, f"are {count}")
        raise UsageError(f"there is no proposal {number}: there {are}")
    return number
