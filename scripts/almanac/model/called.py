"""What entries and words are called besides their ids, to know what somebody meant by a name."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from almanac.kinds import IN_CLUB
from almanac.source.reader import Document
from almanac.source.suggest import fold

Key = tuple[str, str]
LOOKED_FOR = ("hazards", "levels")
"""Lists whose ``also`` is what people look a word up by and no name of it: an ache leads to a
danger, a slow group may be of any level. Only the program's own word is one there (``Names``).
"""

_SHORT_FOR = {
    "positions": {"back": "supine", "on-back": "supine", "front": "prone", "on-front": "prone"},
    "strokes": {"bk": "backstroke", "back": "backstroke", "fr": "freestyle", "free": "freestyle",
                "fl": "butterfly", "br": "breaststroke"},
    "kicks": {"no": "none", "no-kick": "none"},
    "practice-parts": {"warmup": "warm-up", "swim-down": "cool-down", "warm-down": "cool-down",
                       "cooldown": "cool-down", "preset": "pre-set"},
}  # fmt: skip
"""What coaches write short for a word, where nothing else can be meant: no names that people look
it up by.
"""


def called(documents: Mapping[Key, Document]) -> dict[Key, dict[str, str]]:
    """By list, as ``Names`` has them: each title or other name in the style of an id, and the id or
    word that it stands for. A name of two things stands for neither.
    """
    found: dict[Key, dict[str, str]] = {}
    for (kind, id), document in documents.items():
        for name in _names(document.data):
            _add(found.setdefault(("reference", kind), {}), name, id)
        for own, listing in IN_CLUB.items() if kind == "club" else ():
            listed = document.data.get(listing)
            for word, said in listed.items() if isinstance(listed, dict) else ():
                for name in _names(said) if isinstance(said, dict) else ():
                    _add(found.setdefault(("reference", own), {}), name, word)
        words = document.data.get("words") if kind == "vocabulary" else None
        for word, said in words.items() if isinstance(words, dict) else ():
            for name in _names(said) if isinstance(said, dict) else ():
                if id not in LOOKED_FOR or name == fold(str(said.get("title"))):
                    _add(found.setdefault(("vocabulary", id), {}), name, word)
        for name, word in _SHORT_FOR.get(id, {}).items():
            if isinstance(words, dict) and word in words:
                found.setdefault(("vocabulary", id), {}).setdefault(name, word)
    return found


def looked_for(documents: Mapping[Key, Document]) -> dict[Key, dict[str, str]]:
    """By list of words: what people look for, which is no name of an entry, and the word that it is
    of; "" where two words have it.
    """
    found: dict[Key, dict[str, str]] = {}
    for list_of in LOOKED_FOR:
        document = documents.get(("vocabulary", list_of))
        words = document.data.get("words") if document else None
        for word, said in words.items() if isinstance(words, dict) else ():
            for name in _names(said) if isinstance(said, dict) else ():
                _add(found.setdefault(("vocabulary", list_of), {}), name, word)
    return found


def told_by(documents: Mapping[Key, Document]) -> dict[Key, dict[str, str]]:
    """By vocabulary, each longer word that tells what one of its words means, and no other, with
    that one.
    """
    found: dict[Key, dict[str, str]] = {}
    for (kind, id), document in documents.items():
        words = document.data.get("words") if kind == "vocabulary" else None
        for word, said in words.items() if isinstance(words, dict) else ():
            means = said.get("means") if isinstance(said, dict) else ""
            for own in set(re.findall(r"[a-z]{4,}", str(means).lower())):
                _add(found.setdefault(("vocabulary", id), {}), own.removesuffix("s"), word)
    return found


def _names(data: Mapping[str, Any]) -> Iterator[str]:
    for value in (data.get("title"), data.get("also_called"), data.get("also")):
        for name in value if isinstance(value, list) else [value]:
            if isinstance(name, str):
                yield fold(name)


def _add(names: dict[str, str], name: str, id: str) -> None:
    names[name] = id if names.get(name, id) == id else ""
