"""What a piece may stand as in a practice, and the talk before it: by what practices have it as,
and by its goals.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from statistics import median_low

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import (
    COOL_DOWN,
    DRILL,
    EASY,
    MAIN,
    PART,
    ROLES,
    SET,
    SKILL,
    WARM_UP,
)
from almanac.arithmetic.events import Rep
from almanac.arithmetic.warm_and_easy import effort_words_of, opening
from almanac.model.vocabularies import (
    CLOSES,
    LEADS_ON,
    OPENS,
    TEACHES,
    TO_RECOVER,
    TO_WARM_UP,
)
from almanac.report.compose.candidate import Candidate

_TALK_S = {WARM_UP: 90, SKILL: 120, MAIN: 120, EASY: 30, COOL_DOWN: 0}
"""Where no practice of the club has it: as the club's practices mostly do."""


@dataclass(frozen=True)
class PieceRoles:
    """Says of candidates what they may stand as, from the practices of the club."""

    analysis: Analysis

    @cached_property
    def _used(self) -> Mapping[str, tuple[tuple[str, int], ...]]:
        """By set the parts of practices that it is used as, and the talk before each."""
        found: dict[str, list[tuple[str, int]]] = {}
        for practice in self.analysis.computable_practices.values():
            for part in practice.parts:
                for _, doing in part.doings:
                    if doing.set:
                        talk = int(doing.talk or part.talk or 0)
                        found.setdefault(doing.set, []).append((part.part, talk))
        return {id: tuple(own) for id, own in found.items()}

    def roles(self, own: Candidate, reps: Sequence[Rep]) -> str:
        """What a piece may stand as. A set: what practices have it as, and what its goals say. A
        part: what it was. What is fast teaches nothing new.
        """
        scale = self.analysis.scale
        words = {word for rep in reps for word in effort_words_of(rep, scale)}
        gentle, fast = words <= set(scale.gentle), not words.isdisjoint(scale.fast)
        told = opening((effort_words_of(rep, scale) for rep in reps), scale)
        eases_in = told is not None and not told[1]
        if own.of == DRILL:
            return SKILL + MAIN
        parts = {part for part, _ in self._used.get(own.id, ())} if own.of == SET else {own.word}
        goals = set(own.swim_set.goals) if own.swim_set else set()
        found = set()
        if eases_in and (OPENS in parts or TO_WARM_UP in goals):
            found.add(WARM_UP)
        if gentle and scale.easiest in words and (CLOSES in parts or TO_RECOVER in goals):
            found |= {COOL_DOWN, EASY}
        if not found:
            found.add(MAIN)
            taught = parts & {TEACHES, LEADS_ON} if parts else not fast
            found |= {SKILL} if taught and not (own.of == PART and fast) else set()
            eases = (
                own.of == PART and own.follows and gentle and own.word not in (TEACHES, LEADS_ON)
            )
            found |= {EASY} if eases else set()
        return "".join(role for role in ROLES if role in found)

    def talk(self, own: Candidate, roles: str) -> int:
        """Before a set what practices mostly have; before a part no more than is usual in its role,
        for the rest was that evening's.
        """
        if own.talk_s is not None:
            return min(own.talk_s, _TALK_S[roles[0]])
        talks = [talk for _, talk in self._used.get(own.id, ())]
        return median_low(talks) if talks else _TALK_S[roles[0]]
