"""What was renamed between two states of a catalogue, and the earlier one as it would be had each
place that names it said the new id: what then still differs is a change.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from almanac.kinds import IN_CLUB
from almanac.model.catalogue import Key
from almanac.model.closed import CLUB
from almanac.model.compare import EntryChange, renamed_entries
from almanac.model.renaming import naming_anew
from almanac.source.edits.rewrite import with_words
from almanac.source.reader import Document

_ORDER = ("squad", "pool", "lane_group")  # a lane group names its squad


@dataclass(frozen=True)
class Followed:
    """``before`` as if the new ids had stood there; ``ids`` gives them by kind and old id;
    ``naming`` the entries that only name one anew; ``in_club`` what the club's file lists.
    """

    before: Mapping[Key, Document]
    ids: Mapping[Key, str] = field(default_factory=dict)
    naming: frozenset[Key] = frozenset()
    in_club: tuple[EntryChange, ...] = ()

    @property
    def lane_groups(self) -> dict[str, str]:
        """The new id of each lane group that has one, by its old one."""
        return {id: new for (kind, id), new in self.ids.items() if kind == "lane_group"}

    def words(self, text: str) -> str:
        """A message with ids in quotes as they are now."""
        for (_, old), new in self.ids.items():
            text = text.replace(f"'{old}'", f"'{new}'")
        return text


def followed(before: Mapping[Key, Document], after: Mapping[Key, Document]) -> Followed:
    """Follow every id that is another now; documents need not be sound."""
    told, ids = dict(before), dict(renamed_entries(before, after))
    for (kind, old), new in ids.items():
        told.update(_naming_anew(told, kind, old, new))
    in_club = []
    for kind in _ORDER:
        for old, new in list(_renamed_in_club(told.get(CLUB), after.get(CLUB), kind)):
            told.update(_naming_anew(told, kind, old, new))
            told[CLUB] = _with_key(told[CLUB], kind, old, new)
            ids[kind, old] = new
            file = after[CLUB].file
            in_club.append(EntryChange("moved", kind, new, file, moved_from=old))
    naming = frozenset(
        key
        for key, document in told.items()
        if document is not before[key] and key in after and after[key].data == document.data
    )
    return Followed(told, ids, naming - {CLUB}, tuple(in_club))


def _naming_anew(
    documents: Mapping[Key, Document], kind: str, old: str, new: str
) -> Iterator[tuple[Key, Document]]:
    for key, words in naming_anew(documents, kind, old, new).items():
        document = documents[key]
        yield key, replace(document, data=with_words(document.data, words))


def _with_key(club: Document, kind: str, old: str, new: str) -> Document:
    return replace(club, data=with_words(club.data, {((IN_CLUB[kind], old), True): new}))


def _renamed_in_club(
    before: Document | None, after: Document | None, kind: str
) -> Iterator[tuple[str, str]]:
    """What has another id and the same title; where two could be meant, none."""
    was, now = (_titles(club, kind) for club in (before, after))
    gone = {id: title for id, title in was.items() if id not in now}
    come = {id: title for id, title in now.items() if id not in was}
    for old, title in gone.items():
        meant = [id for id, other in come.items() if other == title]
        if title and len(meant) == 1 and list(gone.values()).count(title) == 1:
            yield old, meant[0]


def _titles(club: Document | None, kind: str) -> dict[str, Any]:
    listed = club.data.get(IN_CLUB[kind]) if club else None
    if not isinstance(listed, Mapping):
        return {}
    return {str(id): own.get("title") for id, own in listed.items() if isinstance(own, Mapping)}
