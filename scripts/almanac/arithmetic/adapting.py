"""How a drill or a piece of gear fits a need: as it is, with a change, or left out; and what is
done in place of what is left out.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from almanac.frozen import quick
from almanac.model.drill import Drill
from almanac.model.entry import Ids
from almanac.model.gear import Gear
from almanac.model.need import AS_IS, FITS, LEAVE_OUT, UNDER_WATER, Adapt, Need, NeedRule

Traits = Mapping[str, frozenset[str]]
"""By each field of a rule's ``where`` the words that an entry has there."""


@quick
@dataclass(frozen=True, slots=True)
class NeedFit:
    """How an entry fits a need. ``changes`` is what is done otherwise, or why it is left out;
    ``is_own`` where the entry says so itself.
    """

    fits: str
    changes: Ids = ()
    is_own: bool = False

    @property
    def is_left_out(self) -> bool:
        """Whether it is not done."""
        return self.fits == LEAVE_OUT


def traits_of_gear(gear: Gear) -> Traits:
    """What rules know a piece of gear by: those that ask for anything else do not hold of it."""
    return {"gear": frozenset([gear.id]), "effects": frozenset([gear.effect])}


def traits_of_drill(drill: Drill, gear: Mapping[str, Gear]) -> Traits:
    """What rules know a drill by."""
    needed = [gear[id] for id in drill.gear.needs if id in gear]
    goes_under = drill.is_under_water or bool(drill.under_water)
    return {
        "modes": frozenset([drill.mode]),
        "strokes": frozenset([drill.stroke]),
        "kicks": frozenset([drill.kick]),
        "positions": frozenset([drill.position]),
        "arms": frozenset([drill.arms]),
        "levels": frozenset([drill.level]),
        "starts": frozenset([drill.start]),
        "efforts": frozenset([drill.effort.easiest]),
        "hazards": frozenset(own.hazard for own in drill.hazards),
        "gear": frozenset(drill.gear.needs),
        "effects": frozenset(own.effect for own in needed),
        UNDER_WATER: frozenset([UNDER_WATER] if goes_under else ()),
    }


def holds(rule: NeedRule, traits: Traits) -> bool:
    """Whether a rule is of an entry: all that it names must agree, each with one of its words."""
    return all(
        not traits.get(facet, frozenset()).isdisjoint(words) for facet, words in rule.where.named
    )


def by_rules(need: Need, traits: Traits) -> NeedFit:
    """How an entry fits a need by the need's rules alone: the gravest that hold of it, with what
    each of that weight changes. As it is where none does.
    """
    rules = [rule for rule in need.rules if holds(rule, traits)]
    fits = max((rule.fits for rule in rules), key=FITS.index, default=AS_IS)
    return NeedFit(fits, tuple(rule.change for rule in rules if rule.fits == fits))


def own_line(need: str, lines: Iterable[Adapt]) -> Adapt | None:
    """What an entry says itself for a need; None where it says nothing."""
    return next((line for line in lines if line.need == need), None)


def answer(need: Need, traits: Traits, lines: Iterable[Adapt]) -> NeedFit:
    """How an entry fits a need: what it says itself, else what the rules say."""
    own = own_line(need.id, lines)
    if own is None:
        return by_rules(need, traits)
    return NeedFit(own.fits, (own.change,) if own.change else (), is_own=True)


@dataclass(frozen=True)
class Answers:
    """How every drill and piece of gear fits every need: by the ids of the need and of the drill,
    of the need and of the gear. ``levels`` are in their order.
    """

    drills: Mapping[str, Drill]
    levels: Sequence[str]
    of: Mapping[tuple[str, str], NeedFit]
    of_gear: Mapping[tuple[str, str], NeedFit]
    _instead: dict[tuple[str, str], Drill | None] = field(default_factory=dict, repr=False)
    _words: dict[tuple[str, str, str], NeedFit] = field(default_factory=dict, repr=False)

    @cached_property
    def _serving(self) -> Mapping[tuple[str, str], Mapping[Hashable, Drill]]:
        """By need and goal the drills that serve it and are not left out: of those that could stand
        for the same drills, and are as like them, the first by id.
        """
        found: dict[tuple[str, str], dict[Hashable, Drill]] = defaultdict(dict)
        for id, drill in sorted(self.drills.items()):
            same = _seen(drill)
            for need in self.needs:
                answer = self.of[need, id]
                if not answer.is_left_out:
                    for goal in drill.goals:
                        found[need, goal].setdefault((same, answer.fits == AS_IS), drill)
        return found

    @cached_property
    def needs(self) -> tuple[str, ...]:
        """The needs that are answered."""
        return tuple(dict.fromkeys(need for need, _ in self.of))

    def of_word(self, need: Need, facet: str, word: str) -> NeedFit:
        """How one word that a set asks, of an effort or a start, fits a need."""
        key = need.id, facet, word
        if key not in self._words:
            self._words[key] = by_rules(need, {facet: frozenset([word])})
        return self._words[key]

    def instead(self, need: str, drill: Drill) -> Drill | None:
        """What is done in place of a drill that is left out for a need: a drill that is not, of no
        higher level, serves one of its goals, is done in the water where it is, and needs no gear
        beyond its own; the likest by ``_likeness``, the first by id of two alike. None where there
        is none.
        """
        key = need, drill.id
        if key not in self._instead:
            found = [self._serving.get((need, goal), {}).values() for goal in drill.goals]
            near = {own.id: own for each in found for own in each}
            easier = [self.drills[id] for id in drill.easier]
            near |= {own.id: own for own in easier if not set(own.goals).isdisjoint(drill.goals)}
            self._instead[key] = max(
                (near[id] for id in sorted(near) if self._may_stand_for(need, drill, near[id])),
                key=lambda own: _likeness(drill, own) + 2 * (self.of[need, own.id].fits == AS_IS),
                default=None,
            )
        return self._instead[key]

    def _may_stand_for(self, need: str, drill: Drill, other: Drill) -> bool:
        return (
            not self.of[need, other.id].is_left_out
            and self.levels.index(other.level) <= self.levels.index(drill.level)
            and drill.is_on_land == other.is_on_land
            and set(other.gear.needs) <= {*drill.gear.needs, *drill.gear.may_add}
            and _is_near(drill, other)
        )


def _seen(drill: Drill) -> Hashable:
    """All that is asked of a drill that may stand for another, but how it fits a need."""
    words = tuple(getattr(drill, field) for field in _WORDS)
    wall = drill.is_wall_work, drill.is_on_land, drill.start
    return words, wall, drill.level, frozenset(drill.goals), frozenset(drill.gear.needs)


_WORDS = ("mode", "stroke", "kick", "position", "arms")
_AT_WALLS = 3


def _is_near(drill: Drill, other: Drill) -> bool:
    """Work at a wall stands for little: for what starts alike, with at least three words alike."""
    if not drill.is_wall_work and not other.is_wall_work:
        return True
    starts_alike = not other.is_wall_work or drill.start == other.start
    return starts_alike and _words_alike(drill, other) >= _AT_WALLS


def _words_alike(drill: Drill, other: Drill) -> int:
    """How many words of mode, stroke, kick, position and arms two drills both have."""
    return len([field for field in _WORDS if getattr(drill, field) == getattr(other, field)])


def _likeness(drill: Drill, other: Drill) -> int:
    """How like another drill is: a point for each goal that both serve and for each word of mode,
    stroke, kick, position and arms that both have; two for one that is the drill's easier one.
    """
    goals = len(set(drill.goals) & set(other.goals))
    return goals + _words_alike(drill, other) + 2 * (other.id in drill.easier)


def answers(
    needs: Mapping[str, Need],
    drills: Mapping[str, Drill],
    gear: Mapping[str, Gear],
    levels: Sequence[str],
) -> Answers:
    """How every drill and piece of gear fits every need."""
    of_gear = {
        (need.id, own.id): answer(need, traits_of_gear(own), own.adapt)
        for own in gear.values()
        for need in needs.values()
    }
    of: dict[tuple[str, str], NeedFit] = {}
    for drill in drills.values():
        traits = traits_of_drill(drill, gear)
        of |= {(id, drill.id): answer(need, traits, drill.adapt) for id, need in needs.items()}
    return Answers(drills, levels, of, of_gear)
