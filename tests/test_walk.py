"""The walks over what is written."""

from __future__ import annotations

from shared import CATALOGUE

from almanac.model.load import load
from almanac.model.walk import written_notes


def test_every_note_is_met_once_and_with_the_items_that_it_is_about() -> None:
    """Be it of a part that names a set, in a practice that holds no items in place."""
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    found = [(entry.id, path, items) for entry, items, path, _ in written_notes(catalogue)]
    assert len({(id, path) for id, path, _ in found}) == len(found)
    practice = catalogue.practices["osprey-ladder"]
    (path, doing), *others = [own for own in practice.doings if own[1].note]
    assert doing.set and not others
    assert (practice.id, (*path, "note"), catalogue.sets[doing.set].items) in found
