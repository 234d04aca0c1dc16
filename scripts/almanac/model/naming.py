"""Every id and word that the files of a catalogue define, and where old ids lead."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from almanac.findings import Finding, error
from almanac.kinds import IN_CLUB, KIND
from almanac.source import schemas
from almanac.source.files import EntryFile
from almanac.source.names import Names
from almanac.source.reader import Document

Key = tuple[str, str]


def names_of(
    files: Iterable[EntryFile], documents: Mapping[Key, Document], stubs: Mapping[Key, str]
) -> Names:
    """Every id and word, those of broken entries too: a broken entry is no unknown one.

    A list that stands in a file which is missing or broken is left out, so that nobody is told that
    every word of it is wrong.
    """
    words: dict[tuple[str, str], dict[str, str]] = {("reference", kind): {} for kind in KIND}
    files = list(files)
    here = {file.id for file in files if file.kind == "vocabulary"}
    words |= {("vocabulary", name): {} for name in schemas.WHERE_USED - here}
    for file in files:
        key = file.kind, file.id
        if key not in stubs:
            words["reference", file.kind].setdefault(file.id, file.file)
        data = documents[key].data if key in documents else {}
        lists = {("vocabulary", file.id): "words"} if file.kind == "vocabulary" else {}
        if file.kind == "club":
            lists = {("reference", kind): field for kind, field in IN_CLUB.items()}
        for name, listing in lists.items():
            if isinstance(data.get(listing), dict):
                words[name] = dict.fromkeys(data[listing], file.file)
    ends = {key: _end(stubs, *key) for key in stubs}
    return Names(
        words, {key: end if end in words["reference", key[0]] else "" for key, end in ends.items()}
    )


def _end(stubs: Mapping[Key, str], kind: str, id: str) -> str:
    """The id at the end of the way that begins at an old id; "" where it goes round in a circle."""
    seen = {id}
    while (kind, id) in stubs:
        id = stubs[kind, id]
        if id in seen:
            return ""
        seen.add(id)
    return id


def moved_in_circles(stubs: Mapping[Key, str], documents: Mapping[Key, Document]) -> list[Finding]:
    """Old ids at whose end no entry stands."""
    return [
        error(
            "moved-in-circle",
            documents[key].place(("moved_to",)),
            f"'{key[1]}' moves round in a circle: no entry stands at the end",
            "write the id of an entry that is there",
        )
        for key in stubs
        if not _end(stubs, *key)
    ]
