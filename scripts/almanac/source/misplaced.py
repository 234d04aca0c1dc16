"""Entries whose files stand, or are named, where nothing reads them: told once, at the file, and by
what is in it, so that nobody is told besides that each reference to them leads nowhere.
"""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from almanac.findings import Finding, Place, error
from almanac.kinds import KIND, Kind
from almanac.source import schemas
from almanac.source.paths import plain_id
from almanac.source.reader import Document, read
from almanac.source.snapshot import read_at_most

_CODES = {"stray-file", "bad-id", "no-family"}
_ENDING = re.compile(
    r"\.y+a*m+l\b|\.ym\b|\.lym\b|\.(?:docx?|odt|rtf|txt|pages|pdf|md)$", re.IGNORECASE
)
_COPY_MARK = re.compile(r"(?i)[ _-]*(\([0-9]+\)|copy)$")
_WITH_E = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue"})
_MOST_LACKING = 2
_MOST_READ = 20  # files that are read only to say where they belong


def placed_by_content(
    root: Path, findings: Iterable[Finding], documents: Iterable[Document]
) -> list[Finding]:
    """The same findings; those on entries that stand beside the folders say where they belong,
    those on names that are no ids by which id the other entries name them.
    """
    texts = [document.text for document in documents]
    read_already = 0
    found = []
    for finding in findings:
        folder, _, name = finding.place.file.rpartition("/")
        is_beside = finding.code == "stray-file" and "/" not in folder and name.endswith(".yml")
        if is_beside and read_already < _MOST_READ:
            read_already += 1
            hint = _hint(root / finding.place.file, finding.hint)
            found.append(replace(finding, hint=hint))
        elif finding.code == "bad-id" and finding.hint.endswith(".yml"):
            found.append(_as_named(finding, name, texts))
        else:
            found.append(finding)
    return found


def _as_named(finding: Finding, name: str, texts: Iterable[str]) -> Finding:
    """A name that is no id, with the id by which other entries name it, and in how many places."""
    for id in ids_meant(name):
        whole = re.compile(rf"(?<![\w-]){re.escape(id)}(?![\w-])")
        if many := sum(len(whole.findall(text)) for text in texts if id in text):
            places = "1 place names" if many == 1 else f"{many} places name"
            return replace(finding, hint=f"rename the file {id}.yml, as {places} it")
    return finding


def _hint(path: Path, otherwise: str) -> str:
    try:
        document, _ = read(read_at_most(path), path.name)
    except OSError:
        return otherwise
    kind = kind_of(document.data) if document else None
    return f"it reads like a {kind.key}: {_move(kind)}" if kind else otherwise


def _move(kind: Kind) -> str:
    return (
        f"move it into a folder below {kind.files}/" if kind.deep else f"move it to {kind.files}/"
    )


def ids_of(root: Path, findings: Iterable[Finding]) -> set[str]:
    """The ids of entries that stand where nothing reads them, or under names that are no ids."""
    found = set[str]()
    for finding in findings:
        path = finding.place.file
        if finding.code in _CODES:
            found.update(ids_meant(path.rpartition("/")[2]))
        elif finding.code == "stray-folder":
            found.update(id_meant(name) for name in _names_in(root / path))
    return found - {""}


def _names_in(folder: Path) -> Iterator[str]:
    try:
        with os.scandir(folder) as listing:
            yield from (item.name for item in listing if _ENDING.search(item.name))
    except OSError:
        return


def ids_meant(name: str) -> tuple[str, ...]:
    """The ids that the name of a file may say, the likeliest first: letters with two dots are also
    written with an e behind them.
    """
    spelt_out = unicodedata.normalize("NFC", name).translate(_WITH_E)
    return tuple(own for own in dict.fromkeys((id_meant(name), id_meant(spelt_out))) if own)


def id_meant(name: str) -> str:
    """The id that the name of a file was meant to say."""
    stem = _COPY_MARK.sub("", _ENDING.split(name)[0])
    return plain_id(stem)


@cache
def _shape(kind: str) -> tuple[frozenset[str], frozenset[str]]:
    """The fields of a kind, and those that each entry of it has."""
    return frozenset(schemas.fields(kind)), frozenset(schemas.raw(kind).get("required", ()))


def _lacks(kind: str, data: Mapping[str, Any]) -> int:
    return len(_shape(kind)[1] - data.keys())


def kind_of(data: Mapping[str, Any]) -> Kind | None:
    """The one kind whose fields all of an entry's are, and which lacks next to none; None where it
    is open.
    """
    fitting = [
        kind
        for kind in KIND.values()
        if not kind.single
        and data.keys() <= _shape(kind.key)[0]
        and _lacks(kind.key, data) <= _MOST_LACKING
    ]
    return fitting[0] if len(fitting) == 1 else None


def of_another_kind(kind: str, document: Document) -> Finding | None:
    """What to say of an entry in the folder of another kind."""
    data = document.data
    if KIND[kind].single or data.keys() <= _shape(kind)[0] or _lacks(kind, data) < _MOST_LACKING:
        return None
    other = kind_of(data)
    if other is None or other.key == kind:
        return None
    home = KIND[kind]
    message = f"this is a {other.key} by its fields, and {home.files}/ is for {home.plural.lower()}"
    return error("stray-file", Place(document.file), message, _move(other))
