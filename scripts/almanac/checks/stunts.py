"""The rule on acts that no session asks for."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import entry_level
from almanac.model.walk import told_with_paths, written_notes
from almanac.wording.stunts import asks_for_a_stunt


@refuses("stunt")
def stunt(analysis: Analysis) -> Iterator[Problem]:
    """No drill and no note asks for what hurts whatever is limited: hands tied or a mouth taped,
    eyes shut at a wall or at speed, running on the deck, a leap with a run-up, somebody sat on or
    pushed under, two who meet head on, stretching until it hurts, more work as a punishment.
    """
    catalogue = analysis.catalogue
    for drill in catalogue.drills.values():
        for path, text in told_with_paths(drill):
            if words := asks_for_a_stunt(text):
                yield Problem(drill, path, f"'{words}' is asked for", _MEND, level=drill.level)
    for entry, _, path, note in written_notes(catalogue):
        if words := asks_for_a_stunt(note):
            level = entry_level(catalogue, entry)
            yield Problem(entry, path, f"'{words}' is asked for", _MEND, level=level)


_MEND = "take it out: there is a way to the same end that nobody is hurt by"
