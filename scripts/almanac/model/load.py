"""From a folder to a Catalogue and every finding on the way. Stops at nothing that one file can hold."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path as FilePath
from typing import Any

from almanac.findings import Finding, Place, error
from almanac.model.catalogue import Catalogue, Key
from almanac.model.entry import Entry
from almanac.model.structure import structure
from almanac.source import schemas
from almanac.source.files import EntryFile, entry_files
from almanac.source.names import Names
from almanac.source.reader import Document, Path, read
from almanac.source.validate import Checked, Shapes

_IN_CLUB = {"squad": "squads", "lane_group": "lane_groups", "pool": "pools"}


@dataclass(frozen=True)
class Loaded:
    """What a folder gave: the catalogue, its findings, the names in it, and how many entries it has.

    ``catalogue`` is None where a file that all else stands on (the club, the policy, a vocabulary) is
    broken or missing. Entries that are broken, and those that name them, are left out of it.
    """

    catalogue: Catalogue | None
    findings: list[Finding]
    names: Names
    count: int


def load(root: FilePath) -> Loaded:
    """Read everything below ``root``: files, YAML, schemas, references. Never raises for what a file holds."""
    files, findings = entry_files(root)
    documents: dict[Key, Document] = {}
    for entry_file in files:
        document, said = _read(root, entry_file)
        findings += said
        if document is not None:
            documents.setdefault((entry_file.kind, entry_file.id), document)
    names = _names(files, documents)
    shapes = Shapes(names)
    checked = {key: shapes.check(document, key[0]) for key, document in documents.items()}
    findings += [finding for said in checked.values() for finding in said.findings]
    moved = _settled(names.moved)
    findings += _moved_in_circles(names.moved, moved, documents)
    return Loaded(_catalogue(documents, checked, moved), findings, names, len(files))


def with_file(loaded: Loaded, path: FilePath, kind: str) -> Loaded:
    """The same with one file from outside the folder in place of the entry of its name, or beside the others."""
    document, findings = _read(FilePath(), EntryFile(kind, path.stem, str(path)))
    if loaded.catalogue is None or document is None:
        return replace(loaded, findings=[*loaded.findings, *findings])
    said = Shapes(loaded.names).check(document, kind)
    kept = {key: entry for key, entry in loaded.catalogue.entries.items() if key != (kind, path.stem)}
    if said.sound and "moved_to" not in document.data:
        data = _updated(document.data, said.moved)
        kept[kind, path.stem] = structure(data, kind, path.stem, str(path))
    documents = {**loaded.catalogue.documents, (kind, path.stem): document}
    catalogue = Catalogue(_closed(kept), documents, loaded.catalogue.moved)
    return replace(loaded, catalogue=catalogue, findings=[*loaded.findings, *findings, *said.findings])


def _read(root: FilePath, entry_file: EntryFile) -> tuple[Document | None, list[Finding]]:
    try:
        raw = (root / entry_file.file).read_bytes()
    except OSError as problem:
        message = f"the file cannot be read: {problem.strerror}"
        return None, [error("cannot-read", Place(entry_file.file), message, "mend its rights, or put it back")]
    return read(raw, entry_file.file)


def _names(files: Iterable[EntryFile], documents: Mapping[Key, Document]) -> Names:
    """Every id and word, those of broken entries too: a broken entry is no unknown one."""
    words: dict[tuple[str, str], dict[str, str]] = {}
    moved: dict[Key, str] = {}
    for file in files:
        data = documents[file.kind, file.id].data if (file.kind, file.id) in documents else {}
        if isinstance(data.get("moved_to"), str):
            moved[file.kind, file.id] = data["moved_to"]
        else:
            words.setdefault(("reference", file.kind), {})[file.id] = file.file
        if file.kind == "vocabulary":
            words["vocabulary", file.id] = _keys(data.get("words"), file.file)
        if file.kind == "club":
            for kind, field in _IN_CLUB.items():
                words["reference", kind] = _keys(data.get(field), file.file)
    return Names(words, moved)


def _keys(data: Any, file: str) -> dict[str, str]:
    return dict.fromkeys(data, file) if isinstance(data, dict) else {}


def _settled(moved: Mapping[Key, str]) -> dict[Key, str]:
    """Each old id with the id at the end of its chain; a chain in a circle is left out."""
    settled: dict[Key, str] = {}
    for kind, id in moved:
        seen, target = {id}, moved[kind, id]
        while (kind, target) in moved and target not in seen:
            seen.add(target)
            target = moved[kind, target]
        if target not in seen:
            settled[kind, id] = target
    return settled


def _moved_in_circles(
    moved: Mapping[Key, str], settled: Mapping[Key, str], documents: Mapping[Key, Document]
) -> list[Finding]:
    return [
        error("moved-in-circle", documents[key].place(("moved_to",)), f"'{key[1]}' moves round in a circle", "name an entry")
        for key in moved
        if key not in settled
    ]


def _catalogue(
    documents: Mapping[Key, Document], checked: Mapping[Key, Checked], moved: Mapping[Key, str]
) -> Catalogue | None:
    sound = {key for key, said in checked.items() if said.sound}
    foundations = {("vocabulary", name) for name in schemas.vocabularies()} | {("club", "club"), ("policy", "policy")}
    if not foundations <= sound:
        return None
    entries = {
        key: structure(_updated(documents[key].data, checked[key].moved), *key, documents[key].file)
        for key in documents
        if key in sound and "moved_to" not in documents[key].data
    }
    return Catalogue(_closed(entries), documents, moved)


def _updated(data: Any, old: Mapping[tuple[Path, str], str], path: Path = ()) -> Any:
    """The data with each id that has moved replaced by the present one."""
    if not old:
        return data
    if isinstance(data, dict):
        return {old.get((path, key), key): _updated(value, old, (*path, key)) for key, value in data.items()}
    if isinstance(data, list):
        return [_updated(value, old, (*path, number)) for number, value in enumerate(data)]
    return old.get((path, data), data) if isinstance(data, str) else data


def _closed(entries: Mapping[Key, Entry]) -> dict[Key, Entry]:
    """Without the entries that name one which is not here, and so on until all references lead somewhere."""
    kept = dict(entries)
    while True:
        lost = [
            key
            for key, entry in kept.items()
            if any(ref.kind not in _IN_CLUB and (ref.kind, ref.id) not in kept for ref in entry.references())
        ]
        if not lost:
            return kept
        for key in lost:
            del kept[key]
