"""A club's own list of words in which the program's have no counterpart is told at the list: what
names those is told with it, and not place by place.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from almanac.findings import Finding, counted, error
from almanac.model.catalogue import Key
from almanac.source.lent import lent_words
from almanac.source.reader import Document
from almanac.source.suggest import listed
from almanac.source.validate import Validated

_FEW = 5  # places, that are told each


def told_of_lists(
    findings: list[Finding],
    said: Iterable[Validated],
    documents: Mapping[Key, Document],
) -> list[Finding]:
    """The findings with those of each such list told as one. Of the words of no
    list that ``said`` has those count for which none of the club's own surely stands.
    """
    by_list: dict[str, list[tuple[str, Finding]]] = {}
    for own in (own for one in said for own in one.unfound):
        if own.keyword == "vocabulary" and not own.certain:
            by_list.setdefault(own.name, []).append((own.word, own.finding))
    for name, every in by_list.items():
        of_list = documents.get(("vocabulary", name))
        if len(every) <= _FEW or of_list is None or of_list.lent:
            continue
        told = [own for own in every if own[0] in lent_words(name)]
        if len(told) > _FEW:
            gone = {finding for _, finding in told}
            findings = [own for own in findings if own not in gone]
            findings.append(_told(name, told, of_list))
    return findings


def _told(name: str, told: list[tuple[str, Finding]], of_list: Document) -> Finding:
    words = [word for word, _ in Counter(word for word, _ in told).most_common()]
    first = min((own.place for _, own in told), key=lambda place: (place.file, place.line or 0))
    row = listed(words, 12).replace(" or ", " and ")
    message = (
        f"nothing here stands for {row} of the program's {name.replace('-', ' ')}, named in "
        f"{counted(len(told), 'place')}, first in {first.file}:{first.line}"
    )
    hint = (
        f"write also: [{words[0]}] in the word that stands for it"
        f"{', and so for each' if len(words) > 1 else ''}; almanac check --fix then writes it "
        "everywhere"
    )
    return error("unknown-word", of_list.place(("words",), of_key=True), message, hint)
