"""All that an entry says, as one text, for finding entries that say nearly the same."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from almanac.kinds import KINDS
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry

TEXT_KINDS = tuple(kind.key for kind in KINDS if kind.says_texts)
_NOT_SAID = {"review", "accepts", "evidence", "safety", "hazards", "also_called", "asked_as"}


def texts_of(catalogue: Catalogue, kind: str) -> dict[str, str]:
    """By id, all that the entries of a kind say, for likeness."""
    return {
        id: _said(catalogue, entry) for (own, id), entry in catalogue.entries.items() if own == kind
    }


def _said(catalogue: Catalogue, entry: Entry) -> str:
    """What an entry says: its texts, without dangers, evidence, review and other names."""
    data = catalogue.documents[entry.kind, entry.id].data
    return " ".join(
        sentences({name: value for name, value in data.items() if name not in _NOT_SAID})
    )


def strings(value: Any) -> list[str]:
    """Every text inside data, wherever it stands: sentences, words and ids."""
    found: list[str] = []

    def gather(value: Any) -> None:
        if isinstance(value, str):
            found.append(value)
        elif isinstance(value, (dict, list)):
            for inner in value.values() if isinstance(value, dict) else value:
                if isinstance(inner, str):  # a call for each of them takes longer
                    found.append(inner)
                elif isinstance(inner, (dict, list)):
                    gather(inner)

    gather(value)
    return found


def sentences(value: Any) -> Iterator[str]:
    """Every text with a space in it: words and ids are none."""
    return (text for text in strings(value) if " " in text)
