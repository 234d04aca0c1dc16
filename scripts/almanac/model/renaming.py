"""An entry under another id, its file and every place that names it, addresses of composed
practices too; and a squad, a lane group or a pool, which stand in the club's file.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import PurePosixPath

from almanac.findings import Place
from almanac.kinds import IN_CLUB, KIND
from almanac.model.catalogue import Key
from almanac.model.closed import CLUB
from almanac.model.composed_words import with_new_id
from almanac.model.load import Loaded
from almanac.source.edits.rewrite import Rewrites, rewritten, uses
from almanac.source.reader import DataPath, Document
from almanac.source.scalars import in_quotes


class RenameError(ValueError):
    """Why an entry cannot have another id, and what to do; nothing is changed then."""


@dataclass(frozen=True)
class RenamedFiles:
    """What files hold afterwards (None: no more), which of them the entry's own is, the places that
    named the entry, and the places of texts that say the old id, which nobody but a reader can
    mend; ``title`` of a squad, a lane group or a pool, which stays.
    """

    file: str
    texts: dict[str, str | None] = field(default_factory=dict)
    places: list[Place] = field(default_factory=list)
    mentions: list[Place] = field(default_factory=list)
    title: str = ""


def places_naming(documents: Mapping[Key, Document], kind: str, id: str) -> dict[Key, Rewrites]:
    """By entry, the places that name an entry, each with the id that it names. What is lent is the
    program's, and leaves out what names no entry of the club.
    """
    found: dict[Key, Rewrites] = {}
    for key, document in documents.items():
        if id in document.text and not document.lent:
            own = {
                (use.path, use.is_key): use.id
                for use in uses(document, key[0])
                if (use.kind, use.id) == (kind, id)
            }
            if own:
                found[key] = own
    return found


_COMPOSED = "composed"


def naming_anew(
    documents: Mapping[Key, Document], kind: str, old: str, new: str
) -> dict[Key, Rewrites]:
    """By entry, the places that name one, each with what stands there once it has a new id."""
    naming = places_naming(documents, kind, old)
    found: dict[Key, Rewrites] = {key: dict.fromkeys(places, new) for key, places in naming.items()}
    for key, document in documents.items():
        words = document.data.get(_COMPOSED)
        if isinstance(words, str) and (again := with_new_id(words, kind, old, new)) != words:
            found[key] = {**found.get(key, {}), ((_COMPOSED,), False): again}
    return found


def renaming(loaded: Loaded, kind: str, old: str, new: str) -> RenamedFiles:
    """All that a new id changes. The old one leads to the new where its page may be linked to.

    Raises RenameError where a file cannot be read or written anew.
    """
    documents = loaded.documents
    _require_whole(loaded)
    if kind in IN_CLUB:
        return _renaming_in_club(loaded, kind, old, new)
    own = documents[kind, old]
    target = f"{PurePosixPath(own.file).parent}/{new}.yml"
    there = documents.get((kind, new))
    if there is not None and there.data.get("moved_to") != old:
        raise RenameError(f"there is a {kind} '{new}' already ({there.file})")
    change = RenamedFiles(target)
    if there is not None:
        change.texts[there.file] = None
    change.texts[target] = own.text
    change.texts[own.file] = f"moved_to: {new}\n" if KIND[kind].can_move else None
    for key, places in naming_anew(documents, kind, old, new).items():
        document = documents[key]
        if document is there:
            continue
        text = rewritten(document, places)
        if text is None:
            raise RenameError(
                f"{document.file} cannot be written anew: change '{old}' there by hand"
            )
        change.texts[target if key == (kind, old) else document.file] = text
        change.places.extend(document.place(path, is_key) for path, is_key in places)
    change.mentions.extend(_mentions(documents, old, set(change.places)))
    return change


def _renaming_in_club(loaded: Loaded, kind: str, old: str, new: str) -> RenamedFiles:
    """All that a new id of a squad, a lane group or a pool changes: its key in the club's file, and
    every place that names it.
    """
    documents, club = loaded.documents, loaded.documents[CLUB]
    if new in loaded.names.of("reference", kind):
        raise RenameError(f"there is a {in_words(kind)} '{new}' already ({club.file})")
    own: DataPath = (IN_CLUB[kind], old)
    found = {CLUB: {}, **naming_anew(documents, kind, old, new)}
    found[CLUB] = {(own, True): new, **found[CLUB]}
    change = RenamedFiles(club.file, title=str(club.data[IN_CLUB[kind]][old].get("title", "")))
    for key, places in found.items():
        document = documents[key]
        text = rewritten(document, places)
        if text is None:
            raise RenameError(
                f"{document.file} cannot be written anew: change '{old}' there by hand"
            )
        change.texts[document.file] = text
        named = (document.place(path, is_key) for path, is_key in places if path != own)
        change.places.extend(named)
    change.mentions.extend(_mentions(documents, old, {*change.places, club.place(own, True)}))
    return change


def in_words(kind: str) -> str:
    """A kind as a sentence says it."""
    return kind.replace("_", " ")


def retired(document: Document, other: str, day: date) -> str:
    """What the file of an entry holds once another has taken its place."""
    title = in_quotes(str(document.data.get("title", "")))
    return f"moved_to: {other}\nretired: {day.isoformat()}\ntitle: {title}\n"


def _require_whole(loaded: Loaded) -> None:
    """Every file must be readable, or places that name the entry would be missed."""
    read = {document.file for document in loaded.documents.values()}
    for finding in loaded.findings:
        file = finding.place.file
        if finding.is_error and file.endswith(".yml") and file not in read:
            raise RenameError(f"{file} cannot be read, and may name the entry: mend it first")
        if finding.code == "duplicate-key":  # of two values one was read alone
            raise RenameError(f"{finding.place}: {finding.message}: mend it first")


def _mentions(documents: Mapping[Key, Document], id: str, told: set[Place]) -> list[Place]:
    lines = {(place.file, place.line) for place in told}
    return [
        Place(document.file, number, line.index(f"'{id}'") + 1)
        for document in documents.values()
        if f"'{id}'" in document.text and not document.lent
        for number, line in enumerate(document.text.split("\n"), 1)
        if f"'{id}'" in line and (document.file, number) not in lines
    ]
