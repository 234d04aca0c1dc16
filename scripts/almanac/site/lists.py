"""The sections that lists of entries are made of."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.model.swim_set import SwimSet
from almanac.report.ways import distance_words
from almanac.site.links import Link, Page, link

_MOST_IN_SIGHT = 20  # rows of a title and a line each: three screens of a phone
_MOST_OPEN = 12


def list_page(
    file: str,
    title: str,
    summary: str,
    sections: list[dict[str, Any]],
    opens: bool = False,
    kind: str = "",
) -> Page:
    """A page of lists, without the sections that hold none. Where they are long, all sections are
    folded, but the first where it is short, or where the page ``opens`` with it. ``kind`` is that
    of its entries, where they are of one: where there is none yet, it says how to begin.
    """
    shown = [part for part in sections if part["lists"]]
    is_long = len(shown) > 1 and sum(part["count"] for part in shown) > _MOST_IN_SIGHT
    opens = opens or (bool(shown) and shown[0]["count"] <= _MOST_OPEN)
    context = {"title": title, "summary": summary, "sections": shown, "is_long": is_long}
    context |= {"opens": opens, "kind": kind}
    return Page(file, "list", context)


def section(id: str, title: str, summary: str, *lists: tuple[str, list[Link]]) -> dict[str, Any]:
    """A section: its lists, each under its name, those left out that hold nothing."""
    return {
        "id": id,
        "title": title,
        "summary": summary,
        "lists": [(name, found) for name, found in lists if found],
        "count": sum(len(found) for _, found in lists),
    }


def grouped(
    catalogue: Catalogue,
    vocabulary: str,
    entries: Iterable[Any],
    words_of: Callable[[Any], Iterable[str]],
    to_link: Callable[[Any], Link] = link,
) -> list[dict[str, Any]]:
    """A section for each word of a vocabulary, in its order, with the entries that carry it, by
    title.
    """
    ordered = sorted(entries, key=lambda entry: entry.title.casefold())
    return [
        section(
            word,
            meaning.title,
            meaning.means,
            ("", [to_link(entry) for entry in ordered if word in words_of(entry)]),
        )
        for word, meaning in catalogue.words(vocabulary).items()
    ]


def set_link(analysis: Analysis, swim_set: SwimSet) -> Link:
    """A link to a set that says how long it is, where that can be worked out."""
    if swim_set.id not in analysis.computable:
        return link(swim_set)
    summary = analysis.summary(swim_set.id)
    distance = distance_words(summary.first)
    where = "" if swim_set.is_on_land else f", {summary.course.shown} pool"
    return Link(
        link(swim_set).href,
        swim_set.title,
        f"{distance}{where}. {swim_set.summary}".strip(),
    )
