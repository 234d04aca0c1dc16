"""The finder's table as the browser reads it: words once, and rows that name them by number."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from statistics import median
from typing import Any

from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue
from almanac.site.entry_times import Times
from almanac.site.finder_facts import Facts
from almanac.site.search_documents import SearchedPage
from almanac.site.search_pages import KINDS

LISTS = ("goal", "fault", "position", "stroke", "effort", "level", "whom")
_TALK_S = 60  # where no practice of the club says how long a part is explained

Numbers = Mapping[str, Mapping[str, int]]  # by facet, the number of each word


def rows(
    found: Sequence[tuple[SearchedPage, Facts | None]], number: Numbers, texts: Mapping[str, int]
) -> list[dict[str, Any]]:
    """A row for each document, with what the finder knows of it; ``texts`` is the place of each
    document's text by where it is.
    """
    return [dict(_row(document, fact, number, texts)) for document, fact in found]


def _row(
    document: SearchedPage, fact: Facts | None, number: Numbers, texts: Mapping[str, int]
) -> Iterator[tuple[str, Any]]:
    yield "href", document.location
    yield "kind", document.kind
    yield "title", document.title
    yield "also", document.also
    yield "tags", document.tags
    yield "summary", document.summary
    yield "fact", document.fact
    yield "text", texts[document.location]
    words = fact.words if fact else {}
    for facet in LISTS:
        yield facet, [number[facet][word] for word in words.get(facet, ())]
    yield "needs", [number["gear"][id] for id in fact.needs] if fact else []
    yield "suits", [number["gear"][id] for id in fact.suits] if fact else []
    times = fact.times if fact else Times()
    yield "takes", times.takes
    yield "cuts", [[cut.number, cut.words, cut.takes, cut.distance] for cut in times.cuts]
    yield "gear_s", times.gear_s
    yield "figure", fact.figure if fact else ""
    yield "meant", [number["group"][id] for id in fact.meant] if fact else []
    yield "distance", list(fact.distance) if fact else []
    yield "lanes", fact.lanes if fact else 0
    yield "adults", fact.adults if fact else 0
    yield "own_pool", fact.own_pool if fact else ""


def kinds(documents: Sequence[SearchedPage]) -> list[tuple[str, str, str]]:
    """The kinds that are found, each with its title and that of many."""
    used = {document.kind for document in documents}
    own = [(key, kind.title, kind.plural) for key, kind in KIND.items() if key in used]
    return [*own, *(kind for kind in KINDS if kind[0] in used)]


def lane_groups(catalogue: Catalogue) -> list[dict[str, Any]]:
    """The lane groups: their squad's title, lanes and heads, and the seconds between swimmers."""
    squads, gap = catalogue.club.squads, catalogue.policy.limit("gap_on_back")
    return [
        {
            "id": id,
            "title": group.title,
            "squad": squads[group.squad].title,
            "lanes": group.lanes,
            "heads": group.heads,
            "gap_s": max(group.gap, gap),
        }
        for id, group in catalogue.lane_groups.items()
    ]


def talk_s(catalogue: Catalogue) -> int:
    """Seconds that a part is explained for: the middle of what the club's own practices give it."""
    given = [
        float(part.talk)
        for practice in catalogue.practices.values()
        for part in practice.parts
        if part.talk
    ]
    return round(median(given)) if given else _TALK_S
