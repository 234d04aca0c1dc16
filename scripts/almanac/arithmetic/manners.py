"""What a start, a partner and a team do to reps: whose share one swims, and who rests while others
go.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from almanac.arithmetic.events import Rep
from almanac.arithmetic.working import Known, Labelled, Product, Sum, Working
from almanac.model.changes import changed
from almanac.model.manner import PARTNERS, STARTS, TEAMS, Manner
from almanac.model.policy import Vocabulary, Word
from almanac.model.reps import Reps
from almanac.model.swim_set import Item, Round


def with_manners(
    items: tuple[Item, ...], vocabularies: Mapping[str, Vocabulary]
) -> tuple[Item, ...]:
    """Items with what the words of their starts, partners and teams come to."""
    return tuple(
        replace(item, items=with_manners(item.items, vocabularies))
        if isinstance(item, Round)
        else _with_manner(item, vocabularies)
        if isinstance(item, Reps)
        else item
        for item in items
    )


def _with_manner(item: Reps, vocabularies: Mapping[str, Vocabulary]) -> Reps:
    starts = (item.start, *(change.start for change in item.by_round.values()))
    if not (any(starts) or item.partner or item.team):
        return item
    by_round = {
        number: replace(change, manner=manner_of(changed(item, change), vocabularies))
        if change.start
        else change
        for number, change in item.by_round.items()
    }
    return replace(item, manner=manner_of(item, vocabularies), by_round=by_round)


def manner_of(item: Reps, vocabularies: Mapping[str, Vocabulary]) -> Manner:
    """What the words of one item come to. Of a team each swims an equal share of every rep; a
    partner who takes turns swims as long as the swimmer does.
    """
    named = {STARTS: item.start, PARTNERS: item.partner, TEAMS: item.team}
    words: list[tuple[str, Word]] = [
        (list_, vocabularies[list_].words[word]) for list_, word in named.items() if word
    ]
    swimmers = max([1, *(word.swimmers for _, word in words if word.swimmers)])
    pair = 2 if any(word.takes_turns for _, word in words) else 1
    return Manner(
        swimmers=swimmers,
        turns=swimmers * pair,
        ready_s=max([0.0, *(float(word.ready_s) for _, word in words if word.ready_s)]),
        hazards=tuple((hazard, list_) for list_, word in words for hazard in word.safety),
    )


def others_turns(rep: Rep, done: Working) -> Working | None:
    """What the others of a pair or a team take, one after the other, each as long as this swimmer
    from start to touch, rests inside a broken swim included; None for who swims alone.
    """
    others = rep.item.manner.turns - 1
    if not others:
        return None
    turns = Product((Known(others, "others' turns"), done))
    return Labelled(turns, "while the others go", "s")


def wait_after(rep: Rep, done: Working) -> Working | None:
    """What goes by after a rep before the same swimmer can start again, whatever the rest: the
    others of a pair or a team swim their turns, each as long as this swimmer from start to touch,
    or the swimmer gets back to where the rep starts; the longer of the two. None where none does.
    """
    others, ready_s = others_turns(rep, done), rep.item.manner.ready_s
    if ready_s > (others.value if others else 0.0):
        return Known(ready_s, "back to the start", "s")
    return others


def until_all_done(rep: Rep, done: Working) -> Working:
    """Seconds from the start of a rep until everybody of the pair or team has touched."""
    others = others_turns(rep, done)
    return Sum((done, others)) if others else done
