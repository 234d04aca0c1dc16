"""A page for each id that has moved, which leads to the entry's present page."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.kinds import WITH_PAGES
from almanac.site.links import Page, link


def moved_pages(analysis: Analysis) -> Iterator[Page]:
    """A redirect for every old id of a kind that has pages."""
    for (kind, old), new in analysis.catalogue.moved.items():
        entry = analysis.catalogue.entries.get((kind, new))
        if entry is not None and kind in WITH_PAGES:
            yield Page(f"{WITH_PAGES[kind].pages}/{old}.md", "moved", {"to": link(entry)})
