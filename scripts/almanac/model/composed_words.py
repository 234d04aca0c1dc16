"""The words of the address of Make a practice that a composed practice keeps (``composed``): whom
they name, and the same for whoever has another id. ``report/compose_address`` writes them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

_PIECES = {"set": "set", "part": "practice", "drill": "drill"}
_KINDS = {
    "squad": "squad", "pool": "pool", "groups": "lane_group", "lanes": "lane_group",
    "heads": "lane_group", "gear": "gear", "goals": "goals", "effort": "efforts",
    "from": "practice",
}  # fmt: skip
"""By word of the address the kind that it names, or the vocabulary."""
_WORD = re.compile(r"(?P<word>\w+)=(?P<value>[^&]*)")
_PIECE = re.compile(r"(?P<of>set|part|drill)/(?P<id>[\w-]+)[^,]*")
_ID = re.compile(r"(?P<id>[\w-]+)[^,]*")


@dataclass(frozen=True)
class NamedInWords:
    """Somebody whom the words name: the kind or the vocabulary, the id, and where it begins."""

    kind: str
    id: str
    at: int


def named_in(words: str) -> Iterator[NamedInWords]:
    """All whom the words name, in order."""
    for word in _WORD.finditer(words):
        is_piece = word["word"] == "parts"
        for own in (_PIECE if is_piece else _ID).finditer(words, *word.span("value")):
            kind = _PIECES[own["of"]] if is_piece else _KINDS.get(word["word"])
            if kind:
                yield NamedInWords(kind, own["id"], own.start("id"))


def made_from(words: str) -> str:
    """The practice that one was opened from to be changed; "" of what was composed."""
    return next((own["value"] for own in _WORD.finditer(words) if own["word"] == "from"), "")


def with_new_id(words: str, kind: str, old: str, new: str) -> str:
    """The words, where they name an entry by its new id."""
    for own in reversed([*named_in(words)]):
        if (own.kind, own.id) == (kind, old):
            words = words[: own.at] + new + words[own.at + len(old) :]
    return words
