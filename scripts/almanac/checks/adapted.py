"""Rules on needs: what entries say of them themselves, beside what the rules of a need say."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from almanac.analysis.adapted import set_answers_of
from almanac.analysis.analysis import Analysis
from almanac.arithmetic.adapting import Traits, by_rules, traits_of_drill, traits_of_gear
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.gear import Gear
from almanac.model.need import AS_IS, Adapt
from almanac.model.swim_set import SwimSet

_WORD = re.compile(r"\w+")
_Adapting = Drill | Gear | SwimSet


def _adapting(catalogue: Catalogue) -> Iterator[_Adapting]:
    yield from catalogue.drills.values()
    yield from catalogue.gear.values()
    yield from catalogue.sets.values()


def _lines(catalogue: Catalogue) -> Iterator[tuple[_Adapting, int, Adapt]]:
    for entry in _adapting(catalogue):
        for number, line in enumerate(entry.adapt):
            yield entry, number, line


@forbids("need-twice")
def need_twice(analysis: Analysis) -> Iterator[Problem]:
    """An entry speaks of a need once: two lines on it would not both be read."""
    seen: set[tuple[str, str, str]] = set()
    for entry, number, line in _lines(analysis.catalogue):
        key = (*entry.key, line.need)
        if key in seen:
            path = ("adapt", number, "need")
            message = f"'{line.need}' stands above already"
            yield Problem(entry, path, message, "say both in the first line, and remove this one")
        seen.add(key)


@forbids("need-unheeded")
def need_unheeded(analysis: Analysis) -> Iterator[Problem]:
    """What a rule of a need leaves out is not called as it is by the drill or the gear itself: a
    hand held overhead stays overhead. An entry may say what is changed so that it can be done.
    """
    catalogue = analysis.catalogue
    for entry, number, line in _lines(catalogue):
        need = catalogue.needs.get(line.need)
        if need is None or isinstance(entry, SwimSet) or line.fits != AS_IS:
            continue
        ruled = by_rules(need, _traits(catalogue, entry))
        if ruled.is_left_out:
            message = f"it is left out for '{need.id}' by rule: {ruled.changes[0]}"
            hint = (
                f"write fits: changed with what is done otherwise, or mend the rule in {need.file}"
            )
            yield Problem(entry, ("adapt", number, "fits"), message, hint)


def _traits(catalogue: Catalogue, entry: Drill | Gear) -> Traits:
    if isinstance(entry, Drill):
        return traits_of_drill(entry, catalogue.gear)
    return traits_of_gear(entry)


@forbids("need-unheeded-in-set")
def need_unheeded_in_set(analysis: Analysis) -> Iterator[Problem]:
    """A set is not called as it is for a need that leaves out one of its drills, gear that is worn
    in it, or an effort or a start that it asks. It may say what is done in their place.
    """
    for swim_set in analysis.catalogue.sets.values():
        if not any(line.fits == AS_IS for line in swim_set.adapt):
            continue
        found = {own.need: own for own in set_answers_of(analysis, swim_set)}
        for number, line in enumerate(swim_set.adapt):
            own = found.get(line.need)
            if own is None or line.fits != AS_IS or not own.leaves_out:
                continue
            drills = (drill.id for drill, _ in own.left_out)
            out = [*drills, *own.without, *own.efforts, *own.starts]
            message = f"'{line.need}' leaves out {', '.join(out)}"
            hint = "write fits: changed with what is done instead, or leave the line out"
            yield Problem(swim_set, ("adapt", number, "fits"), message, hint)


@warns("change-that-stands-anywhere")
def change_that_stands_anywhere(analysis: Analysis) -> Iterator[Problem]:
    """What an entry says under ``adapt`` is its own. A sentence that stands word for word in
    another entry, or in a rule of the need, says nothing of this one: the rule says it already.
    """
    catalogue = analysis.catalogue
    found: dict[str, list[tuple[_Adapting, int]]] = defaultdict(list)
    for entry, number, line in _lines(catalogue):
        if line.change:
            found[_plain(line.change)].append((entry, number))
    ruled = {
        _plain(rule.change): need.file for need in catalogue.needs.values() for rule in need.rules
    }
    for words, places in found.items():
        entries: dict[str, Entry] = {entry.file: entry for entry, _ in places}
        elsewhere = ruled.get(words) or (next(iter(entries)) if len(entries) > 1 else "")
        if not elsewhere:
            continue
        first = places[0] if elsewhere not in ruled.values() else None
        for place in places:
            if place != first:
                entry, number = place
                message = f"the same sentence stands in {elsewhere}"
                hint = "say what is done otherwise in this one, or leave it to the need's rules"
                yield Problem(entry, ("adapt", number, "change"), message, hint)


def _plain(text: str) -> str:
    return " ".join(_WORD.findall(text.casefold()))
