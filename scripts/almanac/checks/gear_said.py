"""Rules on gear that texts have somebody use and no `gear` names: no limit would see it."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.once import Coded, once
from almanac.checks.rule import Problem, refuses, warns
from almanac.checks.ways import entry_level
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.gear import Gear
from almanac.model.practice import Practice
from almanac.model.reps import Change, Reps
from almanac.model.swim_set import Item, SwimSet, changes_of, reps_of
from almanac.model.walk import drills_named, told_with_paths, written_notes
from almanac.source.reader import DataPath
from almanac.wording.gear_named import GearNames
from almanac.wording.loads_named import loads_somebody


def _judged(analysis: Analysis) -> Iterator[Coded]:
    catalogue = analysis.catalogue
    names = GearNames({id: _names(own) for id, own in catalogue.gear.items()})
    for drill in catalogue.drills.values():
        for path, text in told_with_paths(drill):
            has = (*drill.gear.needs, *drill.gear.may_add)
            lacking = [id for id in names.used_in(text) if id not in has]
            is_loaded = any(catalogue.gear[id].resists for id in drill.gear.needs)
            if not (drill.is_on_land or is_loaded) and loads_somebody(text):
                yield "load-unsaid", Problem(drill, path, _LOADED, _WRITE, level=drill.level)
            yield from _problems(analysis, drill, path, lacking, drill.level)
    for fault in catalogue.faults.values():
        for number, cause in enumerate(fault.causes):
            lacking = [id for id in names.used_in(cause.tell_apart) if id not in cause.gear]
            yield from _problems(analysis, fault, ("causes", number, "tell_apart"), lacking, "")
    for entry, items, path, note in written_notes(catalogue):
        used, is_loaded = [*names.used_in(note)], loads_somebody(note)
        if used or is_loaded:
            level, worn = entry_level(catalogue, entry), _worn(catalogue, entry, items)
            if is_loaded and not any(catalogue.gear[id].resists for id in worn):
                yield "load-unsaid", Problem(entry, path, _LOADED, _WRITE, level=level)
            lacking = [id for id in used if id not in worn]
            yield from _problems(analysis, entry, path, lacking, level)


_LOADED = "it loads a swimmer with a weight or something that is towed, and no gear says so"
_WRITE = (
    "name under gear what resists, with an entry in drills/gear of effect: resists, or take it out "
    "of the text"
)


def _problems(
    analysis: Analysis, entry: Entry, path: DataPath, lacking: list[str], level: str
) -> Iterator[Coded]:
    for id in dict.fromkeys(lacking):
        gear = analysis.catalogue.gear[id]
        code = "load-unsaid" if gear.resists or gear.ties else "gear-unsaid"
        message = f"it is done {gear.use}, and `gear` does not say so"
        where = "gear: needs" if isinstance(entry, Drill) else "gear"
        hint = f"write {where}: [{id}], or take that out of the text"
        yield code, Problem(entry, path, message, hint, level=level)


_found = once(_judged)


@refuses("load-unsaid")
def load_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Gear that resists or ties somebody, and that a drill's name or steps, or a note of a set or a
    practice, has them use, stands under ``gear``: else no limit on it holds. So does a weight that
    is held or worn in the water, and what is towed, by whatever name.
    """
    yield from _found(analysis, "load-unsaid")


@warns("gear-unsaid")
def gear_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Other gear that such a text has somebody use stands under ``gear`` too: whom it is not for,
    what it does not go with and how many pieces are there are then looked at.
    """
    yield from _found(analysis, "gear-unsaid")


def _names(gear: Gear) -> tuple[str, ...]:
    """What a text may call it; of several words in a name the last alone is none."""
    said = gear.said.split(" ", 2)[-1].removeprefix("the ") if gear.said else ""
    names = (gear.title, *gear.also_called, *([said] if said else []))
    return tuple(dict.fromkeys(name.removesuffix("s") for name in names))


def _worn(catalogue: Catalogue, entry: SwimSet | Practice, items: tuple[Item, ...]) -> set[str]:
    """All gear that the items name, or that their drills need; of a practice, of all that it does
    in it.
    """
    every = [items]
    if isinstance(entry, Practice):
        doings = (doing for _, doing in entry.doings)
        every += [catalogue.sets[own.set].items if own.set else own.items for own in doings]
    return {id for own in every for id in _gear(catalogue, own)}


def _gear(catalogue: Catalogue, items: tuple[Item, ...]) -> Iterator[str]:
    every: list[Reps | Change] = [*reps_of(items), *changes_of(items)]
    for one in every:
        yield from one.gear or ()
        for part in one.parts or ():
            yield from part.gear
    for id in drills_named(items):
        yield from catalogue.drills[id].gear.needs
