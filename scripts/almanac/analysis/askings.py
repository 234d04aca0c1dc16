"""The dangers that the texts of a catalogue ask for."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from typing import NamedTuple

from almanac.model.catalogue import Catalogue, Key
from almanac.model.entry import Entry
from almanac.source.harmless_texts import HarmlessFiles, Told, mark_of, told_in
from almanac.source.texts import Text
from almanac.wording.reading import Asking


class AskingText(NamedTuple):
    """A danger that a text of an entry asks for."""

    entry: Entry
    text: Text
    asking: Asking


class Readings:
    """The texts of a catalogue, read document by document: by whom and in which order is all the
    same.
    """

    def __init__(self, catalogue: Catalogue) -> None:
        self._catalogue = catalogue
        self._harmless = HarmlessFiles()
        documents = catalogue.documents
        self._marks = {key: mark_of(*key, documents[key].text) for key in catalogue.entries}
        self._found: dict[Key, Told] = {}

    @property
    def unread(self) -> list[Key]:
        """The entries whose texts are neither read nor remembered."""
        marks, read = self._marks.items(), self._found
        return [key for key, mark in marks if mark not in self._harmless and key not in read]

    def read(self, key: Key) -> Told:
        """The dangers that the texts of an entry ask for."""
        return told_in(*key, self._catalogue.documents[key].data)

    def take(self, found: Mapping[Key, Told]) -> None:
        """Know what somebody has read."""
        self._found.update(found)

    def take_marked(self, told: Mapping[bytes, Told]) -> None:
        """Know what somebody has read of files that have these marks."""
        self.take({key: told[mark] for key, mark in self._marks.items() if mark in told})

    @cached_property
    def askings(self) -> tuple[AskingText, ...]:
        """Every danger that a text of an entry asks for."""
        self.take({key: self.read(key) for key in self.unread})
        self._harmless.remember({self._marks[key] for key, own in self._found.items() if not own})
        entries = self._catalogue.entries
        return tuple(
            AskingText(entries[key], *own) for key in entries for own in self._found.get(key, ())
        )
