"""Which sources a citation in words names."""

from __future__ import annotations

import re
from collections.abc import Mapping

from almanac.model.catalogue import Key
from almanac.model.published import BEARING
from almanac.source.reader import Document
from almanac.source.to_present_form import Cited

_INITIALS = re.compile(r",.*| [A-Z]{1,4}$")  # behind a surname, as printed
_YEAR = re.compile(r"\b(?:1[89]|20)\d\d\b")
_LONG_NUMBER = re.compile(r"\d{4,}")


def cited_by(text: str, sources: Mapping[Key, Document]) -> Cited:
    """The sources that a citation in words names: by the first author and the year, of each
    publication in it; where two have both, by a number of the one's place in print.
    """
    pieces = [piece for piece in text.split(";") if piece.strip()]
    found = [_named_in(piece, sources) for piece in pieces]
    ids = dict.fromkeys(own[0] for own in found if len(own) == 1)
    return Cited(
        tuple(ids),
        bool(ids) and all(len(own) == 1 for own in found),
        any(sources["source", id].data.get("sort") in BEARING for id in ids),
    )


def _named_in(piece: str, sources: Mapping[Key, Document]) -> list[str]:
    years = set(_YEAR.findall(piece))
    found = {
        id: document.data
        for (_, id), document in sources.items()
        if str(document.data.get("year")) in years and _is_first(document.data.get("by"), piece)
    }
    if len(found) > 1:
        numbers = set(_LONG_NUMBER.findall(piece)) - years
        found = {
            id: data
            for id, data in found.items()
            if numbers & set(_LONG_NUMBER.findall(f"{data.get('published_in')} {data.get('doi')}"))
        }
    return list(found)


def _is_first(by: object, piece: str) -> bool:
    if not isinstance(by, list) or not by:
        return False
    surname = _INITIALS.sub("", str(by[0]))
    return re.search(rf"\b{re.escape(surname)}\b", piece, re.IGNORECASE) is not None
