"""For whom an entry changes, as its page tells it: a line for each need that it does not fit as it
is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.adapted import answers_of, parts_left_out, set_answers_of
from almanac.analysis.analysis import Analysis
from almanac.arithmetic.adapting_sets import SetAnswer
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.need import AS_IS, LEAVE_OUT
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.site.links import Link, link, page_of

_FITS = {"as-is": "as it is", "changed": "changed", "leave-out": "left out"}


@dataclass(frozen=True)
class AdaptRow:
    """How an entry fits one need: in a word or two, what is done otherwise in sentences, and pairs
    of what is left out with what is done instead, None for the entry itself and for nothing.
    """

    need: Link
    fits: str
    says: tuple[str, ...]
    instead: tuple[tuple[Link | None, Link | None], ...] = ()


@dataclass(frozen=True)
class Adapted:
    """For whom an entry changes, whom it is left out for first, and what holds for the others.
    Nothing is known where the club has no needs.
    """

    is_known: bool
    rows: tuple[AdaptRow, ...]
    others: str


def adapted_entry(analysis: Analysis, entry: Drill | Gear) -> Adapted:
    """For whom a drill or a piece of gear changes. Why a rule leaves it out stands on the need's
    page; here stands what is done instead.
    """
    known, needs = answers_of(analysis), analysis.catalogue.needs
    found = known.of if isinstance(entry, Drill) else known.of_gear
    rows = []
    for need in needs.values():
        own = found[need.id, entry.id]
        if own.fits == AS_IS and not own.changes:
            continue
        other = None
        if own.is_left_out and isinstance(entry, Drill):
            other = known.instead(need.id, entry)
        pairs = ((None, link(other)),) if other else ()
        says = () if own.is_left_out and not own.is_own else own.changes
        rows.append((own.is_left_out, AdaptRow(link(need), _FITS[own.fits], says, pairs)))
    return Adapted(bool(needs), _ordered(rows), "As it is for every other.")


def adapted_set(analysis: Analysis, swim_set: SwimSet) -> Adapted:
    """For whom a set changes, by its drills and its gear, and as it says itself."""
    needs = analysis.catalogue.needs
    rows = []
    for own in set_answers_of(analysis, swim_set):
        if own.leaves_out or own.changes or own.own:
            pairs = tuple((link(drill), link(to) if to else None) for drill, to in own.left_out)
            says = tuple(_of_set(analysis.catalogue, own))
            row = AdaptRow(link(needs[own.need]), _in_set(own), says, pairs)
            rows.append((own.leaves_out or own.fits == LEAVE_OUT, row))
    return Adapted(bool(needs), _ordered(rows), "As its drills say for every other.")


def adapted_practice(analysis: Analysis, practice: Practice) -> Adapted:
    """For whom something of a practice is left out, and in which sets; those name what is done
    instead.
    """
    needs, parts = analysis.catalogue.needs, list(parts_left_out(analysis, practice))
    rows = []
    for id, need in needs.items():
        found = [swim_set for swim_set, left in parts if id in left]
        if found:
            sets = dict.fromkeys(_for_whom(swim_set) for swim_set in found if swim_set)
            fits = f"something is left out in {len(found)} of {len(parts)} parts"
            rows.append(AdaptRow(link(need), fits, (), tuple((own, None) for own in sets)))
    return Adapted(bool(needs), tuple(rows), "Every other does all of it, as its drills say.")


def _for_whom(swim_set: SwimSet) -> Link:
    """A link to what a set's page says of whom it changes for."""
    return Link(f"{page_of(swim_set)}#for-whom", swim_set.title)


def _in_set(own: SetAnswer) -> str:
    if own.own or own.fits == LEAVE_OUT or not own.left_out:
        return _FITS[own.fits]
    return f"{len(own.left_out)} of {own.drills} drills left out"


def _of_set(catalogue: Catalogue, own: SetAnswer) -> Iterator[str]:
    """What a set says itself; else what is left out of it beside drills, and what changes at its
    efforts and starts.
    """
    if own.own and own.own.change:
        yield own.own.change
        return
    titles = [catalogue.gear[id].title for id in own.without]
    titles += [catalogue.words("starts")[word].title for word in own.starts]
    if own.efforts:
        words = [catalogue.efforts[word].title.lower() for word in own.efforts]
        yield f"Nothing {' or '.join(words)}."
    if titles:
        yield f"Without: {', '.join(titles).lower()}."
    yield from own.changes


def _ordered(rows: list[tuple[bool, AdaptRow]]) -> tuple[AdaptRow, ...]:
    """What is left out first, else in their order."""
    return tuple(row for _, row in sorted(rows, key=lambda found: not found[0]))
