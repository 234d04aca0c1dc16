"""Files become documents: read, held against their schemas, each remembered by its bytes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from almanac.findings import Finding
from almanac.model.catalogue import Key
from almanac.model.reading import EntryReader
from almanac.second_process import shared
from almanac.source import schemas
from almanac.source.at_once import takes
from almanac.source.edits.style import style_findings
from almanac.source.files import EntryFile
from almanac.source.misplaced import of_another_kind
from almanac.source.reader import Document
from almanac.source.validate import Shapes, Validated

_SIGNED = {"by": "coach", "on": "2027-01-01", "again": "2028-01-01"}


def documents_of(
    reader: EntryReader, files: Iterable[EntryFile], findings: list[Finding]
) -> tuple[dict[Key, Document], set[str]]:
    """The documents of files, with what is amiss added to ``findings``; and the ids of entries that
    stand in the folder of another kind, which are left out.
    """
    documents: dict[Key, Document] = {}
    astray: set[str] = set()
    for entry_file, (document, said) in reader.read_all(list(files)).items():
        findings += said
        if document is not None and (told := of_another_kind(entry_file.kind, document)):
            findings.append(told)
            astray.add(entry_file.id)
        elif document is not None:
            documents.setdefault((entry_file.kind, entry_file.id), document)
    return documents, astray


def held_to_schemas(
    documents: Mapping[Key, Document], reader: EntryReader, shapes: Shapes
) -> dict[Key, Validated]:
    """Each document held against its schema, as it was found before where that still holds."""
    known = {key: reader.known(document, shapes) for key, document in documents.items()}
    new = [key for key, found in known.items() if found is None]
    checked = shared(new, lambda key: _held(documents[key], key[0], shapes))
    return {key: found or checked[key] for key, found in known.items()}


def _held(document: Document, kind: str, shapes: Shapes) -> Validated:
    said = shapes.check(document, kind)
    if said.sound and not is_stub(document.data):
        said.style += style_findings(document, kind)
    return said


def can_be_read(document: Document, kind: str, said: Validated) -> bool:
    """Whether an entry has the shape of its kind. That nobody has signed it yet is an error, and
    keeps no other check from what it says.
    """
    is_due = "review" in schemas.raw(kind).get("required", ()) and "review" not in document.data
    codes = [finding.code for finding in said.findings if finding.is_error]
    if not is_due or codes != ["missing-key"]:
        return said.sound
    # The one finding may be of something else, told alone: a move of lines that mends more.
    return takes(schemas.inlined(kind), {**document.data, "review": _SIGNED}, lambda *_: True)


def is_stub(data: Mapping[str, Any]) -> bool:
    """Whether an entry only says where it has moved to."""
    return isinstance(data.get("moved_to"), str)
