"""A name that is spelt wrong where it is given – a lane group in the club's file, a word in its
list, a file's own name – is told there, and not at each of the places that spell it right: nothing
else names it, and several places name what it nearly is.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from almanac.findings import Finding, Place, counted, error
from almanac.kinds import IN_CLUB
from almanac.model.catalogue import Key
from almanac.model.closed import CLUB
from almanac.source.names import Names, Unfound
from almanac.source.paths import is_id
from almanac.source.reader import Document
from almanac.source.suggest import nearest
from almanac.source.validate import Validated

_SEVERAL = 3  # places with one slip of a hand are none
_CODES = {"unknown-word", "unknown-reference"}


def told_at_names(
    findings: list[Finding],
    said: Sequence[Validated],
    names: Names,
    documents: Mapping[Key, Document],
) -> list[Finding]:
    """The findings with those of each such name told as one. What ``said`` has for ``check --fix``
    writes it nowhere any more.
    """
    by_word: dict[tuple[str, str, str], list[Unfound]] = {}
    for own in (own for one in said for own in one.unfound if own.finding.code in _CODES):
        by_word.setdefault((own.keyword, own.name, own.word), []).append(own)
    for (keyword, name, word), every in by_word.items():
        if len(every) < _SEVERAL or (keyword == "reference" and names.renamed(name, word)):
            continue  # a rename since the last commit was meant
        near = nearest(word, names.of(keyword, name)) or ""
        place = _given(near, keyword, name, names, documents) if is_id(near) else None
        if place and not _is_named(near, place, documents.values()):
            gone = {own.finding for own in every}
            findings = [own for own in findings if own not in gone]
            findings.append(_told(near, every, place))
            for one in said:
                _written_nowhere(near, one)
    return findings


def _given(
    near: str, keyword: str, name: str, names: Names, documents: Mapping[Key, Document]
) -> Place | None:
    """Where a name is given: its key in a list, or its file; None in a list that is lent."""
    if keyword == "reference" and name not in IN_CLUB:
        return Place(names.of(keyword, name)[near])
    key, field = (CLUB, IN_CLUB[name]) if keyword == "reference" else ((keyword, name), "words")
    document = documents.get(key)
    is_own = document is not None and not document.lent
    return document.place((field, near), of_key=True) if document and is_own else None


def _is_named(near: str, place: Place, documents: Iterable[Document]) -> bool:
    """Whether anything names it, but for where it is given."""
    whole = re.compile(rf"(?<![\w-]){re.escape(near)}(?![\w-])")
    of_list = 1 if place.line else 0
    for document in documents:
        is_here = document.file == place.file
        if document.lent or near not in document.text or (is_here and not of_list):
            continue
        if len(whole.findall(document.text)) > (of_list if is_here else 0):
            return True
    return False


def _told(near: str, every: Sequence[Unfound], place: Place) -> Finding:
    own = every[0]
    at = min((one.finding.place for one in every), key=lambda at: (at.file, at.line or 0))
    message = (
        f"nothing names '{near}', and {counted(len(every), 'place')} name '{own.word}', which is "
        f"not here; first {at.file}:{at.line}"
    )
    write = f"write {own.word}" if place.line else f"rename the file {own.word}.yml"
    if own.keyword == "vocabulary":
        other = f"or, where '{near}' is meant, write that in each of them"
    else:
        other = f"if it is to be called {near}, then run almanac rename {own.word} {near}"
    return error(own.finding.code, place, message, f"{write}; {other}")


def _written_nowhere(near: str, said: Validated) -> None:
    said.meant = {path: word for path, word in said.meant.items() if word != near}
    whole = re.compile(rf"(?<![\w-]){re.escape(near)}(?![\w-])")
    said.values = {path: new for path, new in said.values.items() if not whole.search(new)}
