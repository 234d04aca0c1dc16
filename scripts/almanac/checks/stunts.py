"""The rule on acts that no session asks for."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, refuses
from almanac.model.practice import Practice
from almanac.model.walk import notes_with_paths, written_items
from almanac.source.reader import DataPath
from almanac.wording.stunts import asks_for_a_stunt


@refuses("stunt")
def stunt(analysis: Analysis) -> Iterator[Problem]:
    """No drill and no note asks for what hurts whatever is limited: hands tied or a mouth taped,
    eyes shut at a wall or at speed, running on the deck, a leap with a run-up, somebody sat on or
    pushed under, two who meet head on, stretching until it hurts, more work as a punishment.
    """
    mend = "take it out: there is a way to the same end that nobody is hurt by"
    for drill in analysis.catalogue.drills.values():
        texts: list[tuple[DataPath, str]] = [
            (("title",), drill.title),
            (("summary",), drill.summary),
        ]
        texts += [(("steps", number), step) for number, step in enumerate(drill.steps)]
        for path, text in texts:
            if words := asks_for_a_stunt(text):
                message = f"'{words}' is asked for"
                yield Problem(drill, path, message, mend, level=drill.level)
    for entry, items, start in written_items(analysis.catalogue):
        notes = [*notes_with_paths(items, start)]
        if isinstance(entry, Practice):
            notes += [((*path, "note"), doing.note) for path, doing in entry.doings if doing.note]
        for path, note in dict(notes).items():
            if words := asks_for_a_stunt(note):
                yield Problem(entry, path, f"'{words}' is asked for", mend)
