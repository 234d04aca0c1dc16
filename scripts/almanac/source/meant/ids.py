"""Ids that somebody wrote where fields belong: a row of them, or how many there are of each."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from almanac.source.failure import Failure
from almanac.source.meant.words import BETWEEN, word_meant

_COUNTED = re.compile(r"([0-9]{1,4}) ?[x×]? *([a-z -]+)|([a-z -]+?)(?: *[x×:=-]? *([0-9]{1,4}))?")


def _items(failure: Failure, name: str) -> Mapping[str, Any]:
    piece = failure.resolved(failure.fields[name])
    return failure.resolved(piece.get("items", {})) if piece.get("type") == "array" else {}


def _list_of(failure: Failure, name: str, text: str) -> str:
    """The ids of a field's list that a text names, in brackets; "" where one of them is none."""
    pieces = [own for own in BETWEEN.split(text.strip()) if own]
    words = [word_meant(failure, _items(failure, name), own, is_sure=True) for own in pieces]
    return f"[{', '.join(words)}]" if words and all(words) else ""


def lists_meant(failure: Failure) -> str:
    """For ids where fields belong, of which the first takes a list of them: how they are written;
    "" elsewhere.
    """
    value = failure.value
    said = ", ".join(map(str, value)) if isinstance(value, list) else str(value)
    names = [own for own in failure.fields if "reference" in _items(failure, own)]
    meant = _list_of(failure, names[0], said) if names and said else ""
    if meant and names[:2] == ["needs", "may_add"]:
        return f"write {{needs: {meant}}}, or may_add in place of needs where it does without"
    return f"write {{{names[0]}: {meant}}}" if meant and len(names) == 1 else ""


def counts_meant(failure: Failure, text: str) -> str:
    """For ``8 boards, 6 fins`` where each belongs behind its id: how they are written; ""
    elsewhere.
    """
    piece = failure.resolved(failure.schema)
    told: dict[str, str] = {}
    for own in re.split(r"[,;]|\band\b", text) if "propertyNames" in piece else ():
        said = _COUNTED.fullmatch(own.strip())
        thing = (said[2] or said[3]).strip() if said else ""
        names = {
            word_meant(failure, piece["propertyNames"], it)
            for it in (thing, thing.removesuffix("s"))
        }
        if not said or len(names - {""}) != 1:
            return ""
        told[(names - {""}).pop()] = said[1] or said[4] or "how many"
    return f"write {{{', '.join(f'{id}: {many}' for id, many in told.items())}}}" if told else ""
