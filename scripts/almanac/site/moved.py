"""A page for each id that has moved or was retired, which leads to what took its place."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.kinds import WITH_PAGES
from almanac.site.links import Page, link


def moved_pages(analysis: Analysis) -> Iterator[Page]:
    """A redirect for every old id of a kind that has pages; of a retired one, a page to read."""
    for (kind, old), new in analysis.catalogue.moved.items():
        entry = analysis.catalogue.entries.get((kind, new))
        if entry is not None and kind in WITH_PAGES:
            said = analysis.catalogue.documents[kind, old].data
            told = {"to": link(entry), "retired": said.get("retired"), "was": said.get("title")}
            yield Page(f"{WITH_PAGES[kind].pages}/{old}.md", "moved", told)
