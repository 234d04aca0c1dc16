"""What swimming trains: of a goal the metres that do, by the signs that the list of goals names,
and what they are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Piece, Rep
from almanac.model.effort_plans import Build, Descend, Rotate
from almanac.model.gear import Gear

NAMED, LEGS, ON_BACK, STROKE, AFTER_KICK, RESISTED, PACED = (
    "named", "legs", "on-back", "stroke", "after-kick", "resisted", "paced",
)  # fmt: skip
FAST, WORKED, GENTLE, EASIEST = "fast", "worked", "gentle", "easiest"
SIGNS = (NAMED, LEGS, ON_BACK, STROKE, AFTER_KICK, RESISTED, PACED, FAST, WORKED, GENTLE, EASIEST)
"""What can be seen of a metre; the schema of vocabularies says what each means."""
NAMES_MOST = 2
"""A drill is named for a goal that is among its first two: the others it only touches."""


@dataclass(frozen=True)
class Swim:
    """What one drill does for a goal in a piece of work: at which efforts, with which gear, how
    far each time and how far in all. Metres, or seconds where it is ``held``.
    """

    drill: str
    efforts: tuple[str, ...]
    gear: tuple[str, ...]
    each: Fraction
    held: bool
    far: Fraction


@dataclass(frozen=True)
class Trained:
    """Of a goal the share of all that trains it, 0 to 1, and what does, the most first."""

    share: Fraction
    swims: tuple[Swim, ...]


@dataclass(frozen=True)
class Training:
    """Looks at reps by a club's efforts and gear; ``trained_by`` has by goal the ways in which a
    metre trains it, each the signs that it then has, all of them.
    """

    scale: EffortScale
    gear: Mapping[str, Gear]
    trained_by: Mapping[str, Sequence[Sequence[str]]]

    def of(self, reps: Sequence[Rep], goal: str) -> Trained:
        """What of the reps trains a goal. A second that is held counts as a metre: legs that kick
        at a wall, or upright, go about as far in the mind of a coach. House preference.
        """
        ways = self.trained_by.get(goal) or ((NAMED,),)
        found: dict[tuple[object, ...], list[Swim]] = {}
        whole = Fraction(0)
        for rep in reps:
            for place, piece in enumerate(rep.pieces):
                each = Fraction(piece.distance or piece.hold_s or 0)
                whole += each
                if not each or not (words := self._words(rep, place, goal, ways)):
                    continue
                far = each * sum(
                    (self.scale.split(piece.effort)[own] for own in words), Fraction(0)
                )
                own = Swim(piece.drill.id, words, piece.gear, each, not piece.distance, far)
                found.setdefault((own.drill, own.gear, own.each), []).append(own)
        swims = sorted(map(self._together, found.values()), key=lambda own: -own.far)
        share = sum((own.far for own in swims), Fraction(0)) / whole if whole else Fraction(0)
        return Trained(share, tuple(swims))

    def _together(self, alike: Sequence[Swim]) -> Swim:
        words = {word for own in alike for word in own.efforts}
        efforts = tuple(word for word in self.scale.words if word in words)
        first = alike[0]
        far = sum((own.far for own in alike), Fraction(0))
        return Swim(first.drill, efforts, first.gear, first.each, first.held, far)

    def _words(
        self, rep: Rep, place: int, goal: str, ways: Iterable[Iterable[str]]
    ) -> tuple[str, ...]:
        """The efforts of a piece of a rep at which it trains the goal; none where it does not."""
        signs = {*self._signs(rep, place, goal)}
        found = set[str]()
        for way in ways:
            if signs >= set(way) - {*self._efforts}:
                found |= set.intersection(
                    set(self.scale.split(rep.pieces[place].effort)),
                    *(set(self._efforts[own]) for own in way if own in self._efforts),
                )
        return tuple(word for word in self.scale.words if word in found)

    @cached_property
    def _efforts(self) -> Mapping[str, tuple[str, ...]]:
        scale = self.scale
        easiest = (scale.easiest,)
        worked = tuple(word for word in scale.words if word not in easiest)
        return {FAST: scale.fast, WORKED: worked, GENTLE: scale.gentle, EASIEST: easiest}

    def _signs(self, rep: Rep, place: int, goal: str) -> Iterator[str]:
        piece = rep.pieces[place]
        drill = piece.drill
        if goal in drill.goals[:NAMES_MOST] and not drill.is_full_stroke:
            yield NAMED
        if drill.is_kick:
            yield LEGS
        if drill.is_on_back:
            yield ON_BACK
        if drill.is_full_stroke:
            yield STROKE
        if _is_after_kick(rep, place):
            yield AFTER_KICK
        if any(self.gear[id].resists for id in piece.gear):
            yield RESISTED
        plans = (part.effort for part in rep.item.parts)
        if rep.item.aim or any(isinstance(own, Build | Descend | Rotate) for own in plans):
            yield PACED


def _is_after_kick(rep: Rep, place: int) -> bool:
    """Whether it is full stroke that goes on from kick, without a rest."""
    if not place or not rep.pieces[place].drill.is_full_stroke:
        return False
    before: Piece = rep.pieces[place - 1]
    return before.drill.is_kick and not before.rest_s
