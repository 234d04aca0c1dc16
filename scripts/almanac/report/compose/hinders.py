"""Where no practice fits, what is said of it: which wish to drop, and what there would be then."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.composing.asked import GEAR, Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.hinders import FULL, PIECE, TOGETHER, Hinders
from almanac.arithmetic.composing.pieces import ROLES, UNKNOWN
from almanac.arithmetic.composing.sentences import role_word, said, words_in_a_row
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.unmet import GOAL, MINUTES
from almanac.arithmetic.composing.wishes import Wishes
from almanac.report.compose.named import title

_NEAR = 10  # minutes more or fewer that are nearer than any other wish


def said_hinders(
    table: ComposeTable, wishes: Wishes, found: Sequence[Hinders]
) -> Iterator[tuple[Hinders, str]]:
    """What hinders, each with its sentence: what would do soonest first and by name, what has no
    room for so many once.
    """
    full = [own for own in found if own.wish == FULL]
    ways = [own for own in found if own.instead is not None]
    near = next(
        (own for own in ways if own.wish == MINUTES and abs(own.which - wishes.minutes) <= _NEAR),
        next(iter(ways), None),
    )
    if full:
        yield full[0], _full_words(full)
    if near and near.instead is not None:
        (first,) = compose(table, near.instead, most=1)
        called = said("nearest", title=title(Asked(table, near.instead), first))
        yield near, hinders_words(table, wishes, near).removesuffix(".") + called
    for own in found:
        if own not in full and own is not near:
            yield own, hinders_words(table, wishes, own)


def _full_words(full: Sequence[Hinders]) -> str:
    roles = words_in_a_row([role_word(ROLES[own.which]).lower() for own in full], "or")
    return said("hinders-room", role=roles, heads=full[0].heads[0][1])


def hinders_words(table: ComposeTable, wishes: Wishes, own: Hinders) -> str:
    """A wish that hinders, as a sentence."""
    if own.wish == GOAL:
        return said("hinders-goals", goal=table.goals[own.which].title.lower())
    if own.wish == PIECE:
        return said("hinders-piece", role=role_word(ROLES[own.which]).lower())
    if own.wish == GEAR and own.which != UNKNOWN:
        return said("hinders-gear-one", gear=table.gear[own.which].title.lower())
    if own.wish == TOGETHER:
        drops = [said(f"together-{wish}") for wish in own.drops]
        minutes = [said("together-minutes", minutes=own.which)]
        drops += minutes if own.which != wishes.minutes else []
        return said("hinders-together", drops=words_in_a_row(drops))
    if own.heads:
        groups = table.squad.groups
        each = [said("heads", heads=heads, group=groups[group].title) for group, heads in own.heads]
        return said("hinders-fewer", heads=words_in_a_row(each), most=own.which)
    if own.wish == MINUTES:
        return said("hinders-minutes", minutes=own.which)
    return said(f"hinders-{own.wish}")
