"""How the entries of a catalogue fit the needs of swimmers, worked out once for an analysis."""

from __future__ import annotations

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.adapting import Answers, SetAnswer, answers, set_answers
from almanac.model.knowledge import Drill, Gear
from almanac.model.need import LEAVE_OUT
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet


def answers_of(analysis: Analysis) -> Answers:
    """How every drill and piece of gear fits every need."""
    own = analysis.catalogue
    return analysis.once(
        answers_of, lambda: answers(own.needs, own.drills, own.gear, list(own.words("levels")))
    )


def set_answers_of(analysis: Analysis, swim_set: SwimSet) -> list[SetAnswer]:
    """How a set fits each need, by the drills and the gear that its items name."""
    own = analysis.catalogue

    def work() -> list[SetAnswer]:
        named = dict.fromkeys((ref.kind, ref.id) for ref in swim_set.references())
        drills = [own.drills[id] for kind, id in named if kind == Drill.kind]
        gear = tuple(id for kind, id in named if kind == Gear.kind)
        return list(set_answers(own.needs, answers_of(analysis), drills, gear, swim_set.adapt))

    return analysis.once((set_answers_of, swim_set.id), work)


def done_by(analysis: Analysis, entry: Drill | SwimSet | Practice) -> tuple[str, ...]:
    """The needs that leave out nothing of an entry: neither a drill of it nor gear that is worn in
    it, unless a set says itself what is done in their place.
    """
    return tuple(
        need for need in analysis.catalogue.needs if need not in _left_out(analysis, entry)
    )


def _left_out(analysis: Analysis, entry: Drill | SwimSet | Practice) -> frozenset[str]:
    """The needs that leave out something of an entry."""
    own = analysis.catalogue
    if isinstance(entry, Drill):
        of = answers_of(analysis).of
        return frozenset(need for need in own.needs if of[need, entry.id].is_left_out)
    if isinstance(entry, SwimSet):
        found = set_answers_of(analysis, entry)
        return frozenset(
            one.need
            for one in found
            if (one.fits == LEAVE_OUT if one.own else one.left_out or one.without)
        )

    def work() -> frozenset[str]:
        named = {(ref.kind, ref.id) for ref in entry.references()}
        parts = [own.drills[id] for kind, id in named if kind == Drill.kind]
        sets = [own.sets[id] for kind, id in named if kind == SwimSet.kind]
        done: list[Drill | SwimSet] = [*parts, *sets]
        return frozenset().union(*(_left_out(analysis, one) for one in done))

    return analysis.once((done_by, entry.id), work)
