"""Entries that a second process reads while the first still imports what works them out, which
takes as long.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from itertools import chain
from pathlib import Path
from typing import Any

from almanac.findings import Finding
from almanac.second_process import begun, in_turns, is_worth
from almanac.source.document_store import DocumentStore
from almanac.source.files import entry_files
from almanac.source.harmless_texts import HarmlessFiles, Told, mark_of, told_in
from almanac.source.reader import Document, read

Parsed = tuple[dict[str, Any] | None, list[Finding]]
"""The data of a file, None where nothing sound can be made of it, and the findings on its YAML."""


@dataclass(frozen=True)
class ReadAhead:
    """What was read: the data by file, and by the marks of entries the dangers that their texts ask
    for.
    """

    data: Mapping[str, Parsed] = field(default_factory=dict)
    told: Mapping[bytes, Told] = field(default_factory=dict)


def begin_reading(
    root: Path, store: DocumentStore, contents: Mapping[str, bytes]
) -> Callable[[], ReadAhead]:
    """Have the files below ``root`` that ``store`` does not remember read beside what comes next;
    ``contents`` are their bytes. Returns what waits for the result.

    Files and then their texts are read as long as nobody waits: who comes for the result does the
    rest later, and not alone.
    """
    files = {
        one.file: (one.kind, one.id)
        for one in entry_files(root)[0]
        if one.file in contents and not one.lent
    }
    new = [file for file, (kind, _) in files.items() if not store.find(kind, contents[file])]
    if not is_worth(len(new)):
        return ReadAhead
    turns, turns_of_texts = in_turns(new), in_turns(new)

    def work() -> ReadAhead:
        found = {file: read(contents[file], file) for file in turns}
        documents = {file: own for file, (own, _) in found.items() if own}
        harmless = HarmlessFiles()
        marks = {file: mark_of(*files[file], own.text) for file, own in documents.items()}
        unread = (file for file in turns_of_texts if file in marks and marks[file] not in harmless)
        told = {marks[file]: told_in(*files[file], documents[file].data) for file in unread}
        return ReadAhead({file: _parsed(*own) for file, own in found.items()}, told)

    beside = begun(work)

    def result() -> ReadAhead:
        for _ in chain(turns, turns_of_texts):  # none is left for the other
            pass
        return beside()

    return result


def _parsed(document: Document | None, findings: list[Finding]) -> Parsed:
    """Without its text, which the first process has already."""
    return document.data if document else None, findings
