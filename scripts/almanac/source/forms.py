"""The form of a catalogue: which version of the shapes of entries it is written in.

``plans/club.yml`` carries it as ``form``; where it does not, the form is 1. Whoever changes the
shape of an entry so that entries of clubs no longer fit raises ``FORM`` by one and writes, in the
same commit, what the older shape is known by (``old_shapes``) and what ``almanac update`` makes of
it. A club of an older form whose entries all fit is read as it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from almanac.findings import Finding, Place, error
from almanac.source.old_shapes import SPEED, old_shapes
from almanac.source.reader import Document

FORM = 2
_TOLD_BY = {"unknown-word", "unknown-key", "wrong-type"}  # what the schema says of an older shape
_FEW = 1  # one place is told with its own mend, where it has one; more of them in one sentence


def form_of(club: Mapping[str, Any]) -> int:
    """The form that a club's data are in. What cannot be a form counts as the present one, and is
    left to the schema.
    """
    form = club.get("form", 1)
    return form if isinstance(form, int) and not isinstance(form, bool) and form > 0 else FORM


def newer_form(club: Document | None, form: int = FORM) -> Finding | None:
    """What to say, once, of a catalogue in a newer form than ``form``."""
    if club is None or (found := form_of(club.data)) <= form:
        return None
    return error(
        "newer-form",
        club.place(("form",)),
        f"the entries are in form {found}, and this program reads no form after {form}",
        "install the newer program that wrote them; nothing in the entries needs changing",
    )


def older_told(
    findings: list[Finding], documents: Iterable[Document], club: Document | None
) -> tuple[list[Finding], bool]:
    """The findings with all that ``almanac update`` mends told as one, and whether nothing else is
    to be told of any entry, because the club says no newer form itself.
    """
    documents = list(documents)
    suspect = {one.place.file for one in findings if one.code in _TOLD_BY}
    old: dict[str, dict[Place, str]] = {}
    for document in documents:
        if document.file in suspect and not document.lent:
            shapes = old_shapes(document)
            old[document.file] = {shape.place(document): shape.sort for shape in shapes}
    mended = {
        one.place
        for one in findings
        if one.code in _TOLD_BY and one.place in old.get(one.place.file, ())
    }
    says_how = all(old[place.file][place] != SPEED for place in mended)
    if len(mended) <= _FEW and says_how:
        return findings, False
    is_whole = club is not None and form_of(club.data) < FORM
    first = min(mended, key=lambda place: (place.file, place.line, place.column))
    others = len({place.file for place in mended}) - 1
    if club is not None and is_whole:
        who = f"{first.file} and {others:,} more are" if others else f"{first.file} is"
        read = {document.file for document in documents}
        unread = [one for one in findings if one.place.file not in read]
        return [*unread, _older(club.place(("form",)), who)], True
    who = f"this entry and {others:,} more are" if others else "this entry is"
    return [*(one for one in findings if one.place not in mended), _older(first, who)], False


def _older(place: Place, who: str) -> Finding:
    return error(
        "older-form",
        place,
        f"{who} written in form {FORM - 1}, and this program reads form {FORM}",
        "almanac update writes them anew; with --dry-run it says what it would do",
    )
