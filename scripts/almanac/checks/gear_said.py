"""Rules on gear that texts have somebody use and no `gear` names: no limit would see it."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.once import Coded, once
from almanac.checks.rule import Problem, refuses, warns
from almanac.model.entry import Entry
from almanac.model.knowledge import Drill, Gear
from almanac.model.practice import Practice
from almanac.model.swim_set import Item, SwimSet, changes_of, reps_of
from almanac.model.walk import notes_with_paths, written_items
from almanac.source.reader import DataPath
from almanac.wording.gear_named import GearNames
from almanac.wording.loads_named import loads_somebody


def _judged(analysis: Analysis) -> Iterator[Coded]:
    catalogue = analysis.catalogue
    names = GearNames({id: _names(own) for id, own in catalogue.gear.items()})
    for drill in catalogue.drills.values():
        for path, text in _texts(drill):
            has = (*drill.gear.needs, *drill.gear.may_add)
            lacking = [id for id in names.used_in(text) if id not in has]
            is_loaded = any(catalogue.gear[id].resists for id in drill.gear.needs)
            if not (drill.is_on_land or is_loaded) and loads_somebody(text):
                yield "load-unsaid", Problem(drill, path, _LOADED, _WRITE, level=drill.level)
            yield from _problems(analysis, drill, path, lacking, drill.level)
    for entry, items, start in written_items(catalogue):
        level = _level(analysis, entry)
        notes = [*notes_with_paths(items, start)]
        if isinstance(entry, Practice):
            doings = [*entry.doings]
            notes += [((*path, "note"), doing.note) for path, doing in doings if doing.note]
        said = [(path, [*names.used_in(note)]) for path, note in notes]
        if any(used for _, used in said) or any(loads_somebody(note) for _, note in notes):
            worn = _worn(analysis, entry, items)
            if not any(catalogue.gear[id].resists for id in worn):
                yield from (
                    ("load-unsaid", Problem(entry, path, _LOADED, _WRITE, level=level))
                    for path, note in notes
                    if loads_somebody(note)
                )
            for path, used in said:
                lacking = [id for id in used if id not in worn]
                yield from _problems(analysis, entry, path, lacking, level)


_LOADED = "it loads a swimmer with a weight or something that is towed, and no gear says so"
_WRITE = "give it an entry in drills/gear and name it under gear, or take it out of the text"


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


def _texts(drill: Drill) -> Iterator[tuple[DataPath, str]]:
    yield ("title",), drill.title
    yield ("summary",), drill.summary
    yield from ((("steps", number), step) for number, step in enumerate(drill.steps))


def _worn(analysis: Analysis, entry: Entry, items: tuple[Item, ...]) -> set[str]:
    """All gear that the items name, or that their drills need or may add; of a practice, all that
    its sets name too.
    """
    catalogue = analysis.catalogue
    every = [items]
    if isinstance(entry, Practice):
        every += [
            catalogue.sets[doing.set].items if doing.set else doing.items
            for _, doing in entry.doings
        ]
    found = set[str]()
    for own in every:
        drills = set[str]()
        for reps in reps_of(own):
            found.update(reps.gear)
            for part in reps.parts:
                found.update(part.gear)
                drills.update(part.drills)
        for change in changes_of(own):
            found.update(change.gear or ())
            for part in change.parts or ():
                found.update(part.gear)
                drills.update(part.drills)
            drills.update({change.do} if change.do else ())
        for id in drills:
            found.update(catalogue.drills[id].gear.needs)
    return found


def _level(analysis: Analysis, entry: Entry) -> str:
    if isinstance(entry, SwimSet):
        return entry.level
    assert isinstance(entry, Practice)
    return analysis.catalogue.club.squads[entry.squad].level
