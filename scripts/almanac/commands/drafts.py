"""Entries that are not written yet, tried beside those that are: read and checked as if they were
there.
"""

from __future__ import annotations

import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import NamedTuple

from almanac.commands.shared import CheckedCatalogue, checked
from almanac.findings import Finding
from almanac.kinds import KIND
from almanac.model.load import Loaded, with_file


class Unwritten(NamedTuple):
    """An entry that is not written yet, or one that is to be written anew."""

    kind: str
    id: str
    text: str

    @property
    def file(self) -> str:
        """Where it is to stand."""
        return f"{KIND[self.kind].files}/{self.id}.yml"


def tried(
    everything: CheckedCatalogue, unwritten: Sequence[Unwritten], today: date
) -> tuple[CheckedCatalogue, list[Finding]]:
    """The catalogue with some entries more, and the findings that it then has and did not have
    before, at the places where the entries are to stand.
    """
    loaded, files = everything.loaded, dict[str, str]()
    with tempfile.TemporaryDirectory() as folder:
        for own in unwritten:
            path = Path(folder) / own.kind / f"{own.id}.yml"
            path.parent.mkdir(exist_ok=True)
            path.write_text(own.text, "utf-8")
            loaded = with_file(_naming(loaded, own), path, own.kind)
            files[str(path)] = own.file
        found = checked(loaded, today, everything.analysis)
    before = {(own.place.file, own.code, own.message) for own in everything.findings}
    new = []
    for finding in found.findings:
        file = files.get(finding.place.file, finding.place.file)
        message, hint = (_as_placed(text, files) for text in (finding.message, finding.hint))
        if (file, finding.code, message) not in before:
            place = replace(finding.place, file=file)
            new.append(replace(finding, place=place, message=message, hint=hint))
    return found, new


def _as_placed(text: str, files: Mapping[str, str]) -> str:
    """A sentence that names files where they are to stand, and not where they were tried."""
    for path, file in files.items():
        text = text.replace(path, file)
    return text


def _naming(loaded: Loaded, own: Unwritten) -> Loaded:
    """The same, where others may name the entry."""
    names, key = loaded.names, ("reference", own.kind)
    words = {**names.words, key: {own.id: own.file, **names.of(*key)}}
    return replace(loaded, names=replace(names, words=words))
