"""Composed practices in words: why a piece stands there, what is not met, which wish hinders."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.arithmetic.composing_order import Stood
from almanac.arithmetic.composing_pieces import ROLES, UNKNOWN
from almanac.arithmetic.composing_sentences import role_word, said
from almanac.arithmetic.composing_table import Table
from almanac.arithmetic.composing_why import EFFORT, GOAL, MINUTES, PIECE, Hinders, Unmet, Why


def why_words(table: Table, one: Stood, own: Why) -> Iterator[str]:
    """Why a piece stands there, in short phrases."""
    goals = [table.goals[goal].title.lower() for goal in own.goals]
    yield said("serves", goals=said("and").join(goals)) if goals else said(f"serves-{one.role}")
    if own.days != UNKNOWN:
        yield said(f"done-{own.days}" if own.days < 2 else "done", days=own.days)
    for gear, used, here in own.gear:
        yield said("gear", used=used, gear=table.gear[gear].title.lower(), here=here)


def unmet_words(table: Table, own: Unmet) -> str:
    """What is not met, as a sentence."""
    if own.wish == GOAL:
        because = said(f"because-{own.because}")
        return said("unmet-goals", goal=table.goals[own.which].title, because=because)
    if own.wish == EFFORT:
        return said("unmet-effort", effort=table.efforts[own.which].title.lower())
    return said(f"unmet-{own.wish}")


def hinders_words(table: Table, own: Hinders) -> str:
    """A wish that hinders, as a sentence."""
    if own.wish == GOAL:
        return said("hinders-goals", goal=table.goals[own.which].title.lower())
    if own.wish == PIECE:
        return said("hinders-piece", role=role_word(ROLES[own.which]).lower())
    if own.wish == MINUTES:
        return said("hinders-minutes", minutes=own.which)
    return said(f"hinders-{own.wish}")
