"""What the form of the page "Add an entry" reads beside the published schemas: words and ids with
their titles, folders, the repository.
"""

from __future__ import annotations

import json
from typing import Any

from almanac.kinds import IN_CLUB, KINDS, Kind
from almanac.model.catalogue import Catalogue
from almanac.source import published_schemas
from almanac.source.names import Names
from almanac.source.paths import MOST_ID
from almanac.source.snapshot import MOST_BYTES
from almanac.source.stream import DEEPEST

VERSION = 1
FILE = "data/v1/form.json"


def form_file(catalogue: Catalogue, names: Names, repository: str) -> tuple[str, str]:
    """The data file, as its path below the site's root and its text. ``repository`` is the address
    of the host's pages of it, or "".
    """
    kinds = {kind.key: _kind(kind) for kind in KINDS if kind.has_starter}
    data = {
        "version": VERSION,
        "repository": repository,
        "kinds": kinds,
        "families": sorted({drill.family for drill in catalogue.drills.values()}),
        "limits": {"id": MOST_ID, "bytes": MOST_BYTES, "depth": DEEPEST},
        "vocabulary": {id: _words(catalogue, id) for id in catalogue.vocabularies},
        "reference": {
            kind: _ids(catalogue, names, kind)
            for keyword, kind in names.words
            if keyword == "reference"
        },
        "moved": {
            kind: {old: new for (own, old), new in names.moved.items() if own == kind}
            for kind in kinds
        },
    }
    return FILE, json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"


def _kind(kind: Kind) -> dict[str, Any]:
    return {
        "title": kind.title,
        "folder": kind.files,
        "in_families": kind.deep,
        "pages": kind.pages,
        "notes": published_schemas.notes(kind.key),
    }


def _words(catalogue: Catalogue, vocabulary: str) -> list[tuple[str, str, str]]:
    """Each word with its title and what it means."""
    return [(id, word.title, word.means) for id, word in catalogue.words(vocabulary).items()]


def _ids(catalogue: Catalogue, names: Names, kind: str) -> list[tuple[str, str, str]]:
    """Each id with its title and the file that it stands in."""
    in_club = getattr(catalogue.club, IN_CLUB[kind]) if kind in IN_CLUB else {}
    found = []
    for id, file in names.of("reference", kind).items():
        named = catalogue.entries.get((kind, id)) or in_club.get(id)
        found.append((id, str(getattr(named, "title", id)), file))
    return found
