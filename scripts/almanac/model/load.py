"""From a folder to a Catalogue and every finding on the way. Stops at nothing that one file can
hold.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from almanac.findings import Finding
from almanac.kinds import SUMMED
from almanac.model.called import called, looked_for, told_by
from almanac.model.catalogue import Catalogue, Key
from almanac.model.closed import CLUB, closed
from almanac.model.documents import can_be_read, documents_of, held_to_schemas, is_stub
from almanac.model.naming import moved_in_circles, names_of
from almanac.model.places import placed
from almanac.model.reading import EntryReader
from almanac.model.structure import structure
from almanac.model.told_at_names import told_at_names
from almanac.model.told_of_lists import told_of_lists
from almanac.source import schemas
from almanac.source.document_store import DocumentStore
from almanac.source.edits.rewrite import Rewrites
from almanac.source.files import EntryFile, entry_files
from almanac.source.fitted import fitted
from almanac.source.forms import newer_form, older_told
from almanac.source.git.renamed import Renamed
from almanac.source.misplaced import ids_of, placed_by_content
from almanac.source.names import Names
from almanac.source.paths import is_id
from almanac.source.read_ahead import ReadAhead
from almanac.source.reader import DataPath, Document
from almanac.source.results import but_results
from almanac.source.validate import Shapes, Validated


@dataclass(frozen=True)
class Loaded:
    """What a folder gave: the catalogue, its findings, the names in it, how many entries it has.

    ``meant`` has, by entry, the words that were surely meant by some that are of no list;
    ``values``, by entry and path, the YAML that belongs in place of a value.
    ``catalogue`` is None where a file that all else stands on (the club, the policy, a vocabulary)
    is broken or missing. What is broken or named by no id, and what names it, is left out of it.
    """

    catalogue: Catalogue | None
    findings: list[Finding]
    names: Names
    count: int
    documents: Mapping[Key, Document]
    meant: Mapping[Key, Rewrites] = field(default_factory=dict)
    values: Mapping[Key, Mapping[DataPath, str]] = field(default_factory=dict)

    @property
    def looked_back(self) -> bool:
        """Whether findings hang on the last commit too, where files were looked for that are gone:
        the same files may give others after the next.
        """
        renamed = self.names.renamed
        return isinstance(renamed, Renamed) and renamed.was_asked


def load(
    root: Path,
    store: DocumentStore | None = None,
    contents: Mapping[str, bytes] | None = None,
    ahead: Callable[[], ReadAhead] = ReadAhead,
) -> Loaded:
    """Read everything below ``root``: files, YAML, schemas, references. Never raises for what a
    file holds.

    ``store`` is what earlier runs remember of files; ``contents`` are bytes that have been read
    already, by file; ``ahead`` waits for what somebody has made of them meanwhile.
    """
    reader = EntryReader(root, store, contents, ahead)
    files, findings = entry_files(root)
    documents, astray = documents_of(reader, files, findings)
    stubs = {
        key: document.data["moved_to"]
        for key, document in documents.items()
        if is_stub(document.data)
    }
    names = replace(names_of(files, documents, stubs), called=called(documents))
    for one in files:
        if one.lent and (one.kind, one.id) in documents:
            documents[one.kind, one.id] = fitted(documents, (one.kind, one.id), names)
    names = replace(
        names_of(files, documents, stubs),  # without the words that do not fit
        called=called(documents),
        looked_for=looked_for(documents),
        told_by=told_by(documents),
        retired={key for key in stubs if "retired" in documents[key].data},
        misplaced=astray | ids_of(root, findings),
        lent={one.id for one in files if one.lent and one.kind == "vocabulary"},
        renamed=Renamed(root, {document.file: document.text for document in documents.values()}),
    )
    own = sum(not one.lent for one in files)
    findings = placed_by_content(root, findings, documents.values())
    if newer := newer_form(documents.get(CLUB)):  # the cause of whatever else would be told
        return Loaded(None, [newer], names, own, documents)
    findings += moved_in_circles(stubs, documents)
    shapes = Shapes(names)
    checked = held_to_schemas(documents, reader, shapes)
    findings = _with_shapes(findings, [*checked.values()], names, documents)
    findings, is_older = older_told(findings, documents.values(), documents.get(CLUB))
    if is_older:
        return Loaded(None, findings, names, own, documents)
    for key, validated in checked.items():
        if validated.sound:
            findings += reader.style(documents[key], key[0], validated)
    if store is not None:
        store.forget_unused()
    meant = {key: said.meant for key, said in checked.items() if said.meant}
    values = {key: said.values for key, said in checked.items() if said.values}
    catalogue = _catalogue(documents, checked, names)
    return Loaded(catalogue, findings, names, own, documents, meant, values)


def _with_shapes(
    findings: list[Finding], said: list[Validated], names: Names, documents: Mapping[Key, Document]
) -> list[Finding]:
    """The findings with those of entries held to their schemas."""
    # one place, one mistake: the first told is the cause
    reported = {finding.place for finding in findings if finding.is_error}
    told = (finding for one in said for finding in one.findings if finding.place not in reported)
    found = told_of_lists([*findings, *told], said, documents)
    return told_at_names(found, said, names, documents)


def kind_of_file(path: Path) -> str:
    """Which kind that is added up a file outside the catalogue holds: the one of whose own fields,
    that no other of them must have, it has the most; the first where it has none.
    """
    document, _ = EntryReader(Path()).read(EntryFile(SUMMED[0], path.stem, str(path)))
    needed = {kind: set(schemas.raw(kind)["required"]) for kind in SUMMED}

    def own_fields(kind: str) -> int:
        others = set().union(*(needed[other] for other in SUMMED if other != kind))
        return len((needed[kind] - others) & (document.data if document else {}).keys())

    return max(SUMMED, key=own_fields)


def with_file(loaded: Loaded, path: Path, kind: str) -> Loaded:
    """The same with one file from outside the folder in place of the entry of its name, or beside
    the others.
    """
    document, findings = EntryReader(Path()).read(EntryFile(kind, path.stem, str(path)))
    if loaded.catalogue is None or document is None:
        return replace(loaded, findings=[*loaded.findings, *findings])
    said = Shapes(loaded.names).check(document, kind)
    kept = {
        key: entry for key, entry in loaded.catalogue.entries.items() if key != (kind, path.stem)
    }
    if can_be_read(document, kind, said) and "moved_to" not in document.data:
        data = _updated(document.data, said.moved)
        kept[kind, path.stem] = structure(data, kind, path.stem, str(path))
    documents = {**loaded.catalogue.documents, (kind, path.stem): document}
    catalogue = Catalogue(closed(placed(kept)), documents, loaded.catalogue.moved)
    told, _ = older_told(said.findings, [document], None)
    return replace(loaded, catalogue=catalogue, findings=[*loaded.findings, *findings, *told])


def _catalogue(
    documents: Mapping[Key, Document], checked: Mapping[Key, Validated], names: Names
) -> Catalogue | None:
    sound = {k for k, it in checked.items() if is_id(k[1]) and can_be_read(documents[k], k[0], it)}
    foundations = {
        ("vocabulary", name)
        for name in schemas.vocabularies()
        if name not in schemas.WHERE_USED or ("vocabulary", name) in documents
    } | {CLUB, ("policy", "policy")}
    if not foundations <= sound:
        return None
    present = {key: new for key, new in names.moved.items() if new}
    old = {key: but_results(said.moved, names) for key, said in checked.items() if key in sound}
    entries = {
        key: structure(_updated(documents[key].data, old[key]), *key, documents[key].file)
        for key in documents
        if key in sound and "moved_to" not in documents[key].data
    }
    return Catalogue(closed(placed(entries)), documents, present)


def _updated(data: Any, old: Mapping[tuple[DataPath, str], str], path: DataPath = ()) -> Any:
    """The data with each id that has moved replaced by the present one."""
    if not old:
        return data
    if isinstance(data, dict):
        return {
            old.get((path, key), key): _updated(value, old, (*path, key))
            for key, value in data.items()
        }
    if isinstance(data, list):
        return [_updated(value, old, (*path, number)) for number, value in enumerate(data)]
    return old.get((path, data), data) if isinstance(data, str) else data
