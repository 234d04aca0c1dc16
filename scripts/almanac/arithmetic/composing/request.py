"""A request by ids, as a command or a page asks it, made into wishes; and what of it cannot be."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from almanac.arithmetic.composing.asked import GEAR, NOT_FOR, Asked
from almanac.arithmetic.composing.pieces import MAIN, ROLES, UNKNOWN
from almanac.arithmetic.composing.sentences import role_word, said, words_in_a_row
from almanac.arithmetic.composing.table import ComposeTable, TableSquad
from almanac.arithmetic.composing.wishes import (
    GOALS_MOST,
    MINUTES_LEAST,
    MINUTES_MOST,
    SECOND,
    Kept,
    Wishes,
)

MOST = 200
"""No more heads, lanes or days are taken for a number that is meant."""
SHOWN = 25
"""Of more names none is told."""


class BadWish(ValueError):
    """A wish that cannot be; the text is one sentence that says why."""


@dataclass(frozen=True)
class Request:
    """What is asked for, by ids. What is left out is as usual: all lane groups of the squad, their
    lanes and heads, the gear that the club owns, no effort, any number of adults, nothing done
    lately, and taught what the squad's blocks have had done or ask for.

    ``done`` are keys of pieces or ids of practices with the days since; ``taught`` by progression
    how many of its stages; ``keep`` a key, a role and how often (``UNKNOWN``: however often).
    """

    pool: str
    minutes: int
    goals: Sequence[str]
    groups: Sequence[str] = ()
    lanes: Mapping[str, int] = field(default_factory=dict)
    heads: Mapping[str, int] = field(default_factory=dict)
    gear: Mapping[str, int] = field(default_factory=dict)
    effort: str = ""
    adults: int = UNKNOWN
    done: Sequence[tuple[str, int]] = ()
    taught: Mapping[str, int] = field(default_factory=dict)
    keep: Sequence[tuple[str, str, int]] = ()
    leave_out: Sequence[str] = ()


def wishes_of(table: ComposeTable, request: Request) -> Wishes:
    """The wishes of a request. Raises BadWish for the first that cannot be."""
    squad = table.squad
    pools = [pool.id for pool in table.pools]
    _places("pool", [request.pool], pools)
    _minutes(squad, request.minutes)
    names = [group.id for group in squad.groups]
    groups = _places("group", request.groups or names, names)
    lanes = next(pool.lanes for pool in table.pools if pool.id == request.pool)
    for what, own, most in (("lanes", request.lanes, lanes), ("heads", request.heads, MOST)):
        _places("group", own, names)
        for group, number in own.items():
            if not 0 < number <= most:
                key = "bad-number" if number > 0 else "bad-none"
                told = {"group": squad.groups[names.index(group)].title, "number": number}
                raise BadWish(said(key, what=said(f"what-{what}"), most=most, **told))
    wishes = Wishes(
        pool=request.pool,
        groups=tuple(sorted(groups)),
        lanes=tuple(request.lanes.get(group.id, group.lanes) for group in squad.groups),
        heads=tuple(request.heads.get(group.id, group.heads) for group in squad.groups),
        minutes=request.minutes,
        goals=_goals(table, request),
        gear=_gear(table, request.gear),
        effort=_effort(table, request.effort),
        adults=request.adults,
        days=_days(table, request.done),
        taught=_taught(table, request.taught),
        kept=_kept(table, request.keep),
        left_out=frozenset(_places("piece", request.leave_out, [*table.piece_of])),
    )
    _room(table, wishes)
    _may_stand(table, wishes)
    return wishes


def with_minutes(table: ComposeTable, wishes: Wishes, minutes: int) -> Wishes:
    """The same wishes in other minutes. Raises BadWish where these cannot be."""
    _minutes(table.squad, minutes)
    return replace(wishes, minutes=minutes)


def _places(what: str, wanted: Iterable[str], known: Sequence[str]) -> list[int]:
    ids = list(dict.fromkeys(wanted))
    for id in ids:
        if id not in known:
            key = "bad-place" if len(known) > SHOWN else "bad-place-known"
            raise BadWish(said(key, what=said(f"what-{what}"), id=id, known=", ".join(known)))
    return [known.index(id) for id in ids]


def _minutes(squad: TableSquad, minutes: int) -> None:
    if not MINUTES_LEAST <= minutes <= MINUTES_MOST:
        bounds = {"least": MINUTES_LEAST, "most": MINUTES_MOST}
        raise BadWish(said("bad-minutes", minutes=minutes, **bounds))
    if minutes > squad.minutes:
        told = {"squad": squad.title, "most": squad.minutes}
        raise BadWish(said("bad-minutes-squad", minutes=minutes, **told))


def _goals(table: ComposeTable, request: Request) -> tuple[int, ...]:
    found = _places("goal", request.goals, [goal.id for goal in table.goals])
    if not 1 <= len(found) <= GOALS_MOST:
        key = "bad-goals" if found else "no-goals"
        raise BadWish(said(key, number=len(found), most=GOALS_MOST))
    offers = table.squad.offers.get(request.pool, ())
    known = {goal for offer in offers for goal in table.pieces[offer.piece].goals}
    for goal in found:
        if goal not in known:
            own = table.goals[goal].title.lower()
            told = {"goal": own, "known": ", ".join(table.goals[one].id for one in sorted(known))}
            raise BadWish(said("bad-goal", squad=table.squad.title, **told))
    return tuple(found)


def _gear(table: ComposeTable, at_hand: Mapping[str, int]) -> tuple[int, ...]:
    _places("gear", at_hand, [gear.id for gear in table.gear])
    for gear in table.gear:
        number = at_hand.get(gear.id, 0)
        if number > gear.owned or number < 0:
            key = "bad-gear" if gear.owned else "no-gear"
            raise BadWish(said(key, number=number, gear=gear.id, owned=gear.owned))
    return tuple(at_hand.get(gear.id, gear.owned) for gear in table.gear)


def _effort(table: ComposeTable, effort: str) -> int:
    efforts = [own.id for own in table.efforts]
    return _places("effort", [effort], efforts)[0] if effort else UNKNOWN


def _days(table: ComposeTable, done: Iterable[tuple[str, int]]) -> dict[int, int]:
    """By piece the days since it was last done."""
    practices = {own.id: own.pieces for own in table.practices}
    found: dict[int, int] = {}
    for key, days in done:
        pieces = practices.get(key)
        if pieces is None:
            pieces = tuple(_places("done", [key], [*table.piece_of]))
        if days < 0:
            raise BadWish(said("bad-days", key=key, days=days))
        for piece in pieces:
            found[piece] = min(days, found.get(piece, days))
    return found


def _taught(table: ComposeTable, stages: Mapping[str, int]) -> frozenset[int]:
    """The drills that have been taught: the squad's own, but of a progression that is told the
    stages that are told.
    """
    known = {own.id: own for own in table.progressions}
    _places("progression", stages, [*known])
    found = set(table.squad.taught)
    for id in stages:
        found -= {drill for stage in known[id].stages for drill in stage}
    for id, count in stages.items():
        if not 0 <= count <= len(known[id].stages):
            most = len(known[id].stages)
            raise BadWish(said("bad-stages", id=id, stages=most, told=count))
        found |= {drill for stage in known[id].stages[:count] for drill in stage}
    return frozenset(found)


def _kept(table: ComposeTable, keep: Iterable[tuple[str, str, int]]) -> tuple[Kept, ...]:
    found: list[Kept] = []
    for key, role, number in keep:
        (place,) = _places("piece", [key], [*table.piece_of])
        letter = MAIN if role == SECOND else role
        if letter not in ROLES or letter not in table.pieces[place].roles:
            raise BadWish(_not_as(key, letter, table.pieces[place].roles))
        if role in {own.role for own in found}:
            raise BadWish(said("bad-keep-twice", key=key))
        found.append(Kept(place, role, number))
    return tuple(found)


def _not_as(key: str, letter: str, roles: str) -> str:
    """That a piece cannot stand in a role, and in which it can."""
    if letter not in ROLES or not roles:
        return said("bad-keep", key=key)
    can = words_in_a_row([role_word(own).lower() for own in roles], "or")
    return said("bad-keep-role", key=key, role=role_word(letter).lower(), roles=can)


def _may_stand(table: ComposeTable, wishes: Wishes) -> None:
    """What is kept may stand, whatever stands beside it."""
    asked = Asked(table, wishes)
    for own in wishes.kept:
        piece = table.pieces[own.piece]
        offer = next((one for one in asked.offers if one.piece == own.piece), None)
        reason = asked.why_not(offer, own.role) if offer else NOT_FOR
        if reason == GEAR:
            used = asked.used_at_once(piece)
            gear = next(id for id in piece.gear if used > wishes.gear[id])
            at_hand = {"gear": table.gear[gear].title.lower(), "here": wishes.gear[gear]}
            raise BadWish(said("bad-keep-gear", title=piece.title, used=used, **at_hand))
        if reason:
            raise BadWish(said(f"bad-keep-{reason}", title=piece.title))


def _room(table: ComposeTable, wishes: Wishes) -> None:
    """The lanes are there, and with them the adults that so many heads need."""
    pool = next(own for own in table.pools if own.id == wishes.pool)
    lanes = sum(wishes.lanes[group] for group in wishes.groups)
    if lanes > pool.lanes:
        raise BadWish(said("bad-lanes", lanes=lanes, pool=pool.title, most=pool.lanes))
    least = Asked(table, wishes).adults_least
    if UNKNOWN != wishes.adults < least:
        heads = sum(wishes.heads[group] for group in wishes.groups)
        told = {"adults": wishes.adults, "heads": heads, "pool": pool.title, "least": least}
        raise BadWish(said("bad-adults-1" if wishes.adults == 1 else "bad-adults", **told))
