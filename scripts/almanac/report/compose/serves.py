"""What goals a piece serves, and what in it does: by what its lines do, never by its tags alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import COOL_DOWN, EASY, MAIN, PART, SKILL, WARM_UP
from almanac.arithmetic.events import Rep
from almanac.arithmetic.trained import FAST, NAMED, Swim, Trained, Training
from almanac.model.vocabularies import TO_RECOVER, TO_WARM_UP
from almanac.report.compose.candidate import Candidate
from almanac.report.set_words import gear_words

_GOALS_MOST, _ALL_MOST = 3, 4
"""Goals that a set names first, or that most of anything else does; and all that are told."""
_A_LITTLE, _HALF, _FAST_HALF, _NEARLY_ALL = 100, 500, 250, 750
"""Permille of a piece: of a goal that its set names, of one that nobody names for it, of one of
speed, which is soon done, and of recovery. House preference.
"""
_FAIR = 200
"""Permille of a piece at an effort, or above it, that make it one of that effort."""


@dataclass(frozen=True)
class Served:
    """A goal, permille of the piece that serve it, and what does, with the ``drill`` that does most
    of it and how far each time (0: it is held, or ends at a mark); "" where it is only written for
    it.
    """

    goal: str
    share: int
    show: str = ""
    drill: str = ""
    each: int = 0


@dataclass(frozen=True)
class Serving:
    """Tells what candidates serve."""

    analysis: Analysis

    @cached_property
    def _training(self) -> Training:
        goals = self.analysis.catalogue.words("goals")
        ways = {id: word.trained_by for id, word in goals.items()}
        return Training(self.analysis.scale, self.analysis.catalogue.gear, ways)

    def of(self, own: Candidate, reps: Sequence[Rep], roles: str) -> tuple[Served, ...]:
        """The goals of a piece that may stand in some roles, the chief one first. Of a set those
        that it names first and does, and that it names last and half of it does; of anything else
        those that half of it does.
        """
        found: list[Served] = []
        if MAIN in roles or SKILL in roles:
            if own.swim_set:
                found += self._written(own.swim_set.goals, reps)
            else:
                found += self._seen(own, reps)
        found += self._around(reps, roles, found)
        return tuple(found[:_ALL_MOST])

    def _written(self, goals: Sequence[str], reps: Sequence[Rep]) -> Iterator[Served]:
        for place, goal in enumerate(goals):
            told = self._training.of(reps, goal)
            if goal in (TO_WARM_UP, TO_RECOVER):
                continue
            if _permille(told) >= (_A_LITTLE if place < _GOALS_MOST else _HALF):
                yield self._served(goal, told)
            elif place < _GOALS_MOST and self._may_be_named(goal):
                yield Served(goal, 0)

    def _may_be_named(self, goal: str) -> bool:
        """Whether a coach's word is enough for it; effort, legs and gear can be seen."""
        ways = self._training.trained_by.get(goal)
        return not ways or (NAMED,) in ways

    def _seen(self, own: Candidate, reps: Sequence[Rep]) -> list[Served]:
        goals = own.drill.goals if own.drill else tuple(self._training.trained_by)
        each = [(goal, self._training.of(reps, goal)) for goal in goals]
        found = [
            self._served(goal, told)
            for goal, told in each
            if goal not in (TO_WARM_UP, TO_RECOVER) and _permille(told) >= self._least(goal, own)
        ]
        if own.of == PART:
            found.sort(key=lambda one: -one.share)
        return found[:_GOALS_MOST]

    def _least(self, goal: str, own: Candidate) -> int:
        ways = self._training.trained_by.get(goal) or ()
        is_speed = bool(ways) and all(FAST in way for way in ways)
        return _FAST_HALF if is_speed and own.of == PART else _HALF

    def _around(self, reps: Sequence[Rep], roles: str, found: Sequence[Served]) -> Iterator[Served]:
        """What opens a practice warms up, and what is easy throughout lets recover."""
        known = self._training.trained_by
        if WARM_UP in roles and TO_WARM_UP in known:
            yield Served(TO_WARM_UP, 1000)
        if TO_RECOVER in known and (EASY in roles or COOL_DOWN in roles):
            told = self._training.of(reps, TO_RECOVER)
            if _permille(told) >= _NEARLY_ALL:
                yield self._served(TO_RECOVER, told)

    def _served(self, goal: str, told: Trained) -> Served:
        first = told.swims[0]
        each = 0 if first.held or first.each.denominator > 1 else int(first.each)
        return Served(goal, _permille(told), self._show(told.swims), first.drill, each)

    def _show(self, swims: Sequence[Swim]) -> str:
        """What serves it: the drill with the most of it, and another with half as much."""
        first, *others = swims
        titles = [self._title(first)]
        beside = next((own for own in others if own.drill != first.drill), None)
        if beside and 2 * beside.far >= first.far:
            titles.append(self._title(beside))
            if beside.efforts == first.efforts:
                titles[0] = self._title(first, with_effort=False)
        return " and ".join(titles)

    def _title(self, own: Swim, with_effort: bool = True) -> str:
        catalogue = self.analysis.catalogue
        words = [catalogue.drills[own.drill].title]
        if with_effort:
            first, last = (catalogue.efforts[own.efforts[end]].title.lower() for end in (0, -1))
            words.append(first if first == last else f"{first} to {last}")
        gear = gear_words(catalogue, own.gear)
        return ", ".join([*words, gear] if gear else words)

    def effort(self, reps: Sequence[Rep], places: Mapping[str, int]) -> int:
        """The effort that a piece is of, by place: the hardest that a fair share of it is swum
        at or above, and no more than a word below its hardest.
        """
        scale = self.analysis.scale
        far = dict.fromkeys(scale.words, 0.0)
        for rep in reps:
            for piece in rep.pieces:
                for word, share in scale.split(piece.effort).items():
                    far[word] += float(share) * float(piece.distance or piece.hold_s or 0)
        whole, above, found = sum(far.values()), 0.0, 0
        hardest = max((places[word] for word, own in far.items() if own), default=0)
        for word in reversed(list(far)):
            above += far[word]
            if 1000 * above >= _FAIR * whole:
                found = places[word]
                break
        return max(found, hardest - 1)


def _permille(told: Trained) -> int:
    return int(1000 * told.share)
