"""How the entries of a catalogue fit the needs of swimmers, worked out once for an analysis."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.adapting import Answers, answers
from almanac.arithmetic.adapting_sets import SetAnswer, SetAsks, set_answers
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.need import LEAVE_OUT
from almanac.model.practice import Practice
from almanac.model.swim_set import Item, SwimSet, item_references
from almanac.model.walk import efforts_named, starts_named


def answers_of(analysis: Analysis) -> Answers:
    """How every drill and piece of gear fits every need."""
    own = analysis.catalogue
    return analysis.once(
        answers_of, lambda: answers(own.needs, own.drills, own.gear, list(own.words("levels")))
    )


def set_answers_of(analysis: Analysis, swim_set: SwimSet) -> list[SetAnswer]:
    """How a set fits each need, by what its items ask."""

    def work() -> list[SetAnswer]:
        needs, known = analysis.catalogue.needs, answers_of(analysis)
        asked = _asked(analysis.catalogue, swim_set.items)
        return list(set_answers(needs, known, asked, swim_set.adapt))

    return analysis.once((set_answers_of, swim_set.id), work)


def _asked(catalogue: Catalogue, items: tuple[Item, ...]) -> SetAsks:
    """What items ask, for anybody and in any round."""
    named = dict.fromkeys((ref.kind, ref.id) for ref in item_references(items))
    return SetAsks(
        drills=[catalogue.drills[id] for kind, id in named if kind == Drill.kind],
        gear=tuple(id for kind, id in named if kind == Gear.kind),
        efforts=tuple(efforts_named(items)),
        starts=tuple(starts_named(items)),
    )


def done_by(analysis: Analysis, entry: Drill | SwimSet | Practice) -> tuple[str, ...]:
    """The needs that leave out nothing of an entry: no drill of it, no gear, effort or start that
    it asks, unless a set says itself what is done in their place.
    """
    left = _left_out(analysis, entry)
    return tuple(need for need in analysis.catalogue.needs if need not in left)


def _left_out(analysis: Analysis, entry: Drill | SwimSet | Practice) -> frozenset[str]:
    """The needs that leave out something of an entry."""
    return analysis.once((_left_out, entry.kind, entry.id), lambda: _leaves(analysis, entry))


def _leaves(analysis: Analysis, entry: Drill | SwimSet | Practice) -> frozenset[str]:
    catalogue, known = analysis.catalogue, answers_of(analysis)
    if isinstance(entry, Drill):
        return frozenset(id for id in catalogue.needs if known.of[id, entry.id].is_left_out)
    if isinstance(entry, SwimSet):
        return _leaving_out(set_answers_of(analysis, entry))
    return frozenset().union(*(left for _, left in parts_left_out(analysis, entry)))


def parts_left_out(
    analysis: Analysis, practice: Practice
) -> list[tuple[SwimSet | None, frozenset[str]]]:
    """Of each thing that is done in a practice its set, None for items in place, and the needs that
    leave out something of it.
    """
    return analysis.once(
        (parts_left_out, practice.id), lambda: list(_parts_left_out(analysis, practice))
    )


def _parts_left_out(
    analysis: Analysis, practice: Practice
) -> Iterator[tuple[SwimSet | None, frozenset[str]]]:
    catalogue = analysis.catalogue
    for _, doing in practice.doings:
        if doing.set:
            swim_set = catalogue.sets[doing.set]
            yield swim_set, _left_out(analysis, swim_set)
        elif doing.items:
            asked = _asked(catalogue, doing.items)
            found = list(set_answers(catalogue.needs, answers_of(analysis), asked))
            yield None, _leaving_out(found)


def _leaving_out(found: list[SetAnswer]) -> frozenset[str]:
    """The needs that leave out something, or all of it as the set says itself."""
    return frozenset(
        own.need for own in found if (own.fits == LEAVE_OUT if own.own else own.leaves_out)
    )
