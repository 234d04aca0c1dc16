"""How the entries of a catalogue fit the needs of swimmers, worked out once for an analysis."""

from __future__ import annotations

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.adapting import Answers, SetAnswer, answers, set_answers
from almanac.model.knowledge import Drill, Gear
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
