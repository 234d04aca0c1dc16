"""Entry files read and held against their schemas, or taken as they were found before."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from almanac.findings import Finding
from almanac.resources import HOME
from almanac.second_process import shared
from almanac.source.document_store import DocumentStore, Remembered
from almanac.source.files import EntryFile
from almanac.source.paths import unreadable
from almanac.source.read_ahead import Parsed, ReadAhead
from almanac.source.reader import Document, read
from almanac.source.snapshot import read_at_most
from almanac.source.validate import Shapes, Validated

Read = tuple[Document | None, list[Finding]]


def _text(raw: bytes) -> str:
    return raw.decode("utf-8").removeprefix("\ufeff")


class EntryReader:
    """Reads the entry files below one root.

    ``store`` remembers what files without findings held; ``contents`` are bytes that have been read
    already, by file; ``ahead`` waits for what somebody has made of them meanwhile. With none,
    everything is read and checked anew.
    """

    def __init__(
        self,
        root: Path,
        store: DocumentStore | None = None,
        contents: Mapping[str, bytes] | None = None,
        ahead: Callable[[], ReadAhead] = ReadAhead,
    ) -> None:
        self._root, self._store, self._contents = root, store, contents or {}
        self._ahead = ahead
        self._raw: dict[str, bytes] = {}
        self._remembered: dict[str, Remembered] = {}
        self._lent: dict[str, dict[str, Any]] = {}  # as read, before they are fitted to a club

    def read(self, entry_file: EntryFile) -> Read:
        """The document of a file, None where nothing sound can be made of it; and the findings on
        its YAML.
        """
        return self.read_all([entry_file])[entry_file]

    def read_all(self, files: Sequence[EntryFile]) -> Mapping[EntryFile, Read]:
        """The same of each file, in their order. Those that are read anew, two processes share."""
        given = {one: self._at_hand(one) for one in files}
        ahead = self._ahead().data
        unread = [one for one, own in given.items() if own is None]
        read_ahead = {one: ahead[one.file] for one in unread if one.file in ahead and not one.lent}
        new = read_ahead | shared([one for one in unread if one not in read_ahead], self._read_anew)
        found: dict[EntryFile, Read] = {}
        for one, own in given.items():
            found[one] = document, _ = own or self._document(one.file, *new[one])
            if one.lent and document is not None:
                self._lent[one.file] = document.data
        return found

    def _at_hand(self, entry_file: EntryFile) -> Read | None:
        """What is known without reading a file's YAML; None where that is to be done."""
        file = entry_file.file
        root = HOME if entry_file.lent else self._root
        try:
            raw = None if entry_file.lent else self._contents.get(file)
            raw = read_at_most(root / file) if raw is None else raw
        except OSError as problem:
            return None, [unreadable(file, "file", problem.strerror)]
        self._raw[file] = raw
        found = self._store.find(entry_file.kind, raw) if self._store else None
        if found is None:
            return None
        self._remembered[file] = found
        return Document(file, _text(raw), found.data), []

    def _read_anew(self, entry_file: EntryFile) -> Parsed:
        """The data of a file without its text, which the first process has already."""
        document, findings = read(self._raw[entry_file.file], entry_file.file)
        return document.data if document else None, findings

    def _document(self, file: str, data: dict[str, Any] | None, findings: list[Finding]) -> Read:
        document = None if data is None else Document(file, _text(self._raw[file]), data)
        if findings:
            del self._raw[file]
        return document, findings

    def known(self, document: Document, shapes: Shapes) -> Validated | None:
        """What holding a document against its schema gave before, where it would give it again; one
        that was fitted to a club has other words in every club, and is held anew.
        """
        if document.file in self._lent:
            return None
        found = self._remembered.get(document.file)
        if found is not None and found.holds(shapes.names):
            return Validated(asked=found.asked)
        return None

    def style(self, document: Document, kind: str, said: Validated) -> list[Finding]:
        """What has one right answer in how a sound document is written; one without any finding is
        remembered.
        """
        found = self._remembered.get(document.file)
        if found is not None and document.file in self._lent:
            return said.style
        if found is not None and said.asked is found.asked:
            return []
        raw = self._raw.get(document.file)
        if self._store and raw is not None and not (said.style or said.findings or said.moved):
            data = self._lent.get(document.file, document.data)
            self._store.keep(kind, raw, Remembered(data, said.asked))
        return said.style
