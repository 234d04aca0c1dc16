"""The answer to a request for a practice, and its contract as JSON (version 1)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.changes import Deed, change
from almanac.arithmetic.composing.chosen import practice_of, standing
from almanac.arithmetic.composing.hinders import FULL, PIECE, Hinders, hindering
from almanac.arithmetic.composing.minutes import OtherMinutes, asked_in, in_minutes
from almanac.arithmetic.composing.order import Stood, whole
from almanac.arithmetic.composing.pieces import ROLES, TENTHS, UNKNOWN
from almanac.arithmetic.composing.request import Request, wishes_of
from almanac.arithmetic.composing.sentences import role_word
from almanac.arithmetic.composing.table import ComposeTable, GearHere, Named
from almanac.arithmetic.composing.unmet import Unmet, unmet
from almanac.arithmetic.composing.why import why
from almanac.report.compose.hinders import said_hinders
from almanac.report.compose.named import focus, title
from almanac.report.compose.table import Made
from almanac.report.compose.words import change_words, unmet_words, why_words

VERSION = 1


@dataclass(frozen=True)
class Proposals:
    """Proposals, the best first; where there are none, what hinders. ``changes`` are the words of
    each change that was made to the only one.
    """

    analysis: Analysis
    made: Made
    asked: Asked
    proposals: tuple[Proposal, ...]
    hinders: tuple[Hinders, ...]
    changes: tuple[tuple[str, ...], ...] = ()

    @property
    def unit(self) -> str:
        """The unit of distances: the pool's."""
        return self.analysis.catalogue.club.pools[self.asked.wishes.pool].course.unit.value

    @property
    def table(self) -> ComposeTable:
        """What was chosen from."""
        return self.asked.table

    @cached_property
    def said_hinders(self) -> tuple[tuple[Hinders, str], ...]:
        """What hinders, each with its sentence."""
        return tuple(said_hinders(self.table, self.asked.wishes, self.hinders))


def answered(analysis: Analysis, made: Made, request: Request) -> Proposals:
    """The answer to a request. Raises BadWish for a wish that cannot be."""
    wishes = wishes_of(made.table, request)
    found = compose(made.table, wishes)
    hinders = () if found else hindering(made.table, wishes)
    return Proposals(analysis, made, Asked(made.table, wishes), found, hinders)


def changed(answer: Proposals, number: int, deeds: Sequence[Deed | OtherMinutes]) -> Proposals:
    """The proposal of a number after deeds, one after the other. Raises BadWish for one that cannot
    be done.
    """
    asked = answer.asked
    practice = practice_of(answer.proposals[number - 1].order)
    now, words = standing(asked, practice), []
    for deed in deeds:
        own = deed if isinstance(deed, Deed) else None
        if isinstance(deed, OtherMinutes):
            asked = asked_in(asked, deed.minutes)
        practice = change(asked, practice, own) if own else in_minutes(asked, practice)
        before, now = now, standing(asked, practice)
        words.append(tuple(change_words(asked, before.order, now.order, own)))
    proposal = Proposal(now.order, now.cost, practice.out)
    return replace(answer, asked=asked, proposals=(proposal,), changes=tuple(words))


def answer_json(answer: Proposals) -> dict[str, Any]:
    """The contract of ``almanac compose practice --json``; times are seconds to the tenth."""
    asked, table = answer.asked, answer.table
    data = {
        "version": VERSION,
        "squad": table.squad.id,
        "groups": [table.squad.groups[group].id for group in asked.wishes.groups],
        "pool": asked.wishes.pool,
        "unit": answer.unit,
        "minutes": asked.wishes.minutes,
        "goals": [table.goals[goal].id for goal in asked.wishes.goals],
        "proposals": [proposal_json(answer, own) for own in answer.proposals],
        "hinders": [
            {"wish": own.wish, "which": _which(table, own), "words": words}
            for own, words in answer.said_hinders
        ],
    }
    return data | {"changes": [list(own) for own in answer.changes]} if answer.changes else data


def proposal_json(answer: Proposals, own: Proposal) -> dict[str, Any]:
    """A proposal as it is told."""
    asked = answer.asked
    takes = whole(own.order)
    return {
        "title": title(asked, own),
        "focus": focus(asked, own),
        "cost": own.cost,
        "takes_s": takes / TENTHS,
        "left_s": (asked.slot - takes) / TENTHS,
        "distance": sum(one.own.size.distance for one in own.order),
        "adults": adults(asked, own),
        "parts": [_part(answer, own.order, one) for one in own.order],
        "unmet": [
            {
                "wish": one.wish,
                "which": _which(answer.table, one),
                "because": one.because,
                "words": unmet_words(answer.table, one, len(answer.asked.wishes.goals)),
            }
            for one in unmet(asked, own)
        ],
    }


def _part(answer: Proposals, order: Sequence[Stood], one: Stood) -> dict[str, Any]:
    table, piece, told = answer.table, one.own.piece, why(answer.asked, order, one)
    data: dict[str, Any] = {
        "role": role_word(one.role),
        "as": one.role,
        "piece": piece.key,
        "title": piece.title,
        "number": one.own.number,
        "of": piece.what or None,
        "talk_s": one.lead / TENTHS,
        "takes_s": one.own.takes / TENTHS,
        "distance": one.own.size.distance,
        "serves": [table.goals[goal].id for goal in told.goals],
        "days_since": None if told.days == UNKNOWN else told.days,
        "gear": [
            {"id": table.gear[gear].id, "in_use": used, "at_hand": here}
            for gear, used, here in told.gear
        ],
        "why": [*why_words(table, one, told)],
    }
    return data


def _which(table: ComposeTable, own: Unmet | Hinders) -> str | int | None:
    """The id of the goal, the effort or the gear that is meant, or how many minutes."""
    if own.which == UNKNOWN:
        return None
    if own.wish in (PIECE, FULL):
        return role_word(ROLES[own.which]).lower()
    words: Mapping[str, Sequence[Named | GearHere]] = {
        "goals": table.goals, "effort": table.efforts, "gear": table.gear,
    }  # fmt: skip
    return words[own.wish][own.which].id if own.wish in words else own.which


def adults(asked: Asked, own: Proposal) -> int:
    """The adults that a practice needs."""
    return max([asked.adults_least, *(one.own.adults for one in own.order)])
