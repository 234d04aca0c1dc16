"""What ``compose practice`` is asked: which names are meant, and the request that they make."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.changes import DEEDS, Deed
from almanac.arithmetic.composing.minutes import OtherMinutes
from almanac.arithmetic.composing.pieces import MAIN, ROLES, UNKNOWN
from almanac.arithmetic.composing.request import Request
from almanac.arithmetic.composing.sentences import role_word
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.wishes import SECOND, THIRD
from almanac.commands.compose_days import kept_days, of_block
from almanac.commands.given import listed, numbers, once, pairs
from almanac.commands.named import NamesOf, entries, words
from almanac.commands.outcome import UsageError
from almanac.model.catalogue import Catalogue
from almanac.model.log import Log
from almanac.report.compose.table import can_compose
from almanac.report.compose.usual import usual_pool

ALL_ROLES = (*ROLES[:3], SECOND, THIRD, *ROLES[3:])
_ROLES = NamesOf(
    "role",
    {own: (role_word(own), *(["main"] if own == MAIN else [])) for own in ALL_ROLES}
    | {SECOND: ("second main set", "second main"), THIRD: ("third main set", "third main")},
    hint="warm-up, skill, main set, second main set, third main set, relief, cool-down",
)
# A third main set is only tried beside two that stand, so none can be asked for beforehand.
_TO_KEEP = NamesOf(
    "role for --keep",
    {own: names for own, names in _ROLES.called.items() if own != THIRD},
    hint="a third main set is kept where it stands: --change keep=o",
)
MINUTES = "minutes"
_DEEDS = NamesOf("change", dict.fromkeys((*DEEDS, MINUTES), ()))
_KEYS = (
    "a practice goes by its id, a piece by set/ID, drill/ID or part/PRACTICE/NUMBER, as --json has "
    "them"
)

_NO_WATER = (
    "the club has no pool, and what is composed is swum: write one for land with almanac new "
    "practice"
)


def squad_of(analysis: Analysis, named: str | None, groups: list[str]) -> str:
    """The squad that is named, else that of the lane groups, else the club's only one."""
    squads, known = analysis.catalogue.club.squads, analysis.catalogue.lane_groups
    every = entries("squad", squads)
    if named and "," in named:
        both = " and one for ".join(every.ids_of(listed(named)))
        raise UsageError(f"a practice is for one squad: compose one for {both}")
    groups = entries("lane group", known).ids_of(groups)
    found = {every.id_of(named)} if named else {known[own].squad for own in groups} or set(squads)
    if len(found) > 1:
        raise UsageError(f"say whose it is: --squad {' or '.join(sorted(map(str, found)))}")
    (squad,) = found
    for own in groups:
        if known[own].squad != squad:
            theirs = [id for id, group in known.items() if group.squad == squad]
            raise UsageError(
                f"'{own}' is a lane group of {known[own].squad}; those of {squad} are "
                f"{' and '.join(theirs)}"
            )
    if not analysis.catalogue.club.waters:
        raise UsageError(_NO_WATER)
    if not any(group.squad == squad for group in known.values()):
        raise UsageError(f"the squad '{squad}' has no lane group in plans/club.yml")
    if not can_compose(analysis, squad):
        raise UsageError(
            "no effort that is sound counts as gentle, or none as fast: write counts_as in "
            "drills/vocabulary/efforts.yml"
        )
    return str(squad)


def pool_of(catalogue: Catalogue, named: str | None, squad: str) -> str:
    """The pool that is named, else the squad's usual."""
    club = catalogue.club
    if not club.waters:
        raise UsageError(_NO_WATER)
    if named in club.pools and named not in club.waters:
        raise UsageError(f"'{named}' is on land, and what is composed is swum")
    pools = {id: club.pools[id] for id in club.waters}
    return entries("pool", pools).id_of(named) if named else usual_pool(catalogue, squad)


def names_meant(catalogue: Catalogue, arguments: argparse.Namespace) -> None:
    """Put ids in the place of what is named otherwise. Raises UsageError for what there is not."""
    goals = words(catalogue, "goal", "goals").ids_of(listed(arguments.goals))
    once("goals", goals)
    gear = entries("gear", catalogue.gear)
    without = gear.ids_of(listed(arguments.without))
    at_hand = gear.keyed(numbers(arguments.gear, "gear"))
    for id in without:
        if id in at_hand:
            raise UsageError(f"--gear {id}={at_hand[id]} and --without {id}: leave out one of them")
    efforts = words(catalogue, "effort", "efforts")
    arguments.goals, arguments.at_hand = goals, dict.fromkeys(without, 0) | at_hand
    arguments.effort = efforts.id_of(arguments.effort) if arguments.effort else ""
    arguments.taught = entries("progression", catalogue.progressions).keyed(
        numbers(arguments.taught, "taught")
    )


def request_of(
    arguments: argparse.Namespace,
    table: ComposeTable,
    pool: str,
    day: date,
    catalogue: Catalogue,
) -> Request:
    """The request of arguments whose ``names_meant`` are known. Raises UsageError."""
    group = NamesOf(
        f"lane group of {table.squad.title}", {own.id: (own.title,) for own in table.squad.groups}
    )
    pieces = _pieces(table)
    done = [*_done(table, catalogue, numbers(arguments.done, "done"))]
    return Request(
        pool=pool,
        minutes=arguments.minutes,
        goals=arguments.goals,
        groups=group.ids_of(listed(arguments.groups)),
        lanes=group.keyed(numbers(arguments.lanes, "lanes")),
        heads=group.keyed(numbers(arguments.heads, "heads")),
        gear=arguments.at_hand,
        effort=arguments.effort,
        adults=_adults(arguments.adults),
        done=[*done, *_lately(arguments, table, catalogue.logs.values(), day)],
        taught=arguments.taught,
        keep=[_kept(pieces, text) for text in arguments.keep],
        leave_out=pieces.ids_of(arguments.leave_out),
    )


def _pieces(table: ComposeTable) -> NamesOf:
    """The pieces, by their keys; a set or a drill by its id and its title too."""
    called = {own.key: (own.key.partition("/")[2], own.title) for own in table.pieces}
    return NamesOf("piece", called, hint=_KEYS)


def _done(
    table: ComposeTable, catalogue: Catalogue, told: dict[str, int]
) -> Iterable[tuple[str, int]]:
    """Practices and pieces that were done, each with the days since."""
    practices = {own.id: (own.title,) for own in table.practices}
    what = f"practice of {table.squad.title}, or piece,"
    known = NamesOf(what, {**_pieces(table).called, **practices}, hint=_KEYS)
    for key in told:
        other = catalogue.practices.get(key)
        if other and key not in practices:
            raise UsageError(f"'{key}' is a practice of {other.squad}: {table.squad.title} did not")
    return known.keyed(told).items()


def _lately(
    arguments: argparse.Namespace, table: ComposeTable, logs: Iterable[Log], day: date
) -> Iterable[tuple[str, int]]:
    if arguments.block is not None:
        what = f"block of {table.squad.title}"
        known = NamesOf(what, {own.id: (own.title,) for own in table.blocks})
        yield from of_block(table, known.id_of(arguments.block), day)
    if arguments.kept:
        yield from kept_days(table, logs, day)


def deed_of(text: str) -> Deed | OtherMinutes:
    """A change as it is given: swap=m, minutes=45. Raises UsageError."""
    given = pairs([text], "change")
    if len(given) != 1:
        raise UsageError(f"--change {text}: one change each, --change swap=m --change out=e")
    ((do, role),) = given.items()
    if _DEEDS.id_of(do) == MINUTES:
        (minutes,) = numbers([text], "change").values()
        return OtherMinutes(minutes)
    return Deed(_DEEDS.id_of(do), _ROLES.id_of(role))


def _kept(pieces: NamesOf, text: str) -> tuple[str, str, int]:
    given = pairs([text], "keep")
    if len(given) != 1:
        raise UsageError(f"--keep {text}: one piece each, --keep set/kick-and-go=m --keep ...")
    ((key, role),) = given.items()
    return pieces.id_of(key), _TO_KEEP.id_of(role), UNKNOWN


def _adults(told: int | None) -> int:
    if told is not None and told < 0:
        raise UsageError(f"--adults {told}: write how many adults are there")
    return UNKNOWN if told is None else told
