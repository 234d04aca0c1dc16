"""Every text of entries that has somebody do something, with the level of those who do it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.model.progression import Progression
from almanac.model.swim_set import SwimSet
from almanac.model.walk import told_with_paths, written_notes
from almanac.source.reader import DataPath


class AskedText(NamedTuple):
    """A text, where it stands, and the level of those whom it is for; "" where none is said."""

    entry: Entry
    path: DataPath
    text: str
    level: str = ""


def asked(catalogue: Catalogue) -> Iterator[AskedText]:
    """What drills tell, what notes say, how tests are run, what tells causes apart, by what a stage
    is left, and what a question of it takes for right.
    """
    for drill in catalogue.drills.values():
        yield from (AskedText(drill, *told, drill.level) for told in told_with_paths(drill))
    for entry, _, path, note in written_notes(catalogue):
        squad = None if isinstance(entry, SwimSet) else catalogue.club.squads[entry.squad]
        level = squad.level if squad else entry.level if isinstance(entry, SwimSet) else ""
        yield AskedText(entry, path, note, level)
    for benchmark in catalogue.benchmarks.values():
        for number, step in enumerate(benchmark.protocol.steps):
            yield AskedText(benchmark, ("protocol", "steps", number), step)
    for fault in catalogue.faults.values():
        yield AskedText(fault, ("refer_on",), fault.refer_on)
        for number, cause in enumerate(fault.causes):
            yield AskedText(fault, ("causes", number, "tell_apart"), cause.tell_apart)
    for progression in catalogue.progressions.values():
        yield from _of_stages(progression)


def _of_stages(progression: Progression) -> Iterator[AskedText]:
    for number, stage in enumerate(progression.stages):
        path, level = ("stages", number), progression.level
        yield AskedText(progression, (*path, "move_on_when"), stage.move_on_when, level)
        for at, question in enumerate(stage.check_yourself):
            for place, option in enumerate(question.options):
                if option.right:
                    here = (*path, "check_yourself", at, "options", place, "answer")
                    yield AskedText(progression, here, option.answer, level)
