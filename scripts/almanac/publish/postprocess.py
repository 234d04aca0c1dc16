"""The last touches on what MkDocs has rendered, file by file."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from almanac.publish.content_security import with_policy
from almanac.publish.errors import SiteError
from almanac.publish.links import LinkCheck
from almanac.publish.offline import MANIFEST, app_manifest
from almanac.site.settings import SiteSettings

_NEVER_ASKED_FOR = {"sitemap.xml.gz"}  # by no page of ours: MkDocs makes it beside sitemap.xml
_MOST_LINES = 20


def is_asked_for(file: str) -> bool:
    """Whether a file that MkDocs makes has a place in the site."""
    return file not in _NEVER_ASKED_FOR


def postprocessed(page: str) -> str:
    """A page as it is published, from what MkDocs has rendered."""
    return with_policy(close_set(page))


def demand_links(links: LinkCheck, files: Iterable[str]) -> None:
    """Raise SiteError where a page leads to what is not among the site's files."""
    broken = list(links.broken(files))
    if broken:
        more = len(broken) - _MOST_LINES
        lines = broken[:_MOST_LINES] + ([f"and {more} more"] if more > 0 else [])
        raise SiteError("links lead nowhere:\n" + "\n".join(lines))


def close_set(page: str) -> str:
    """A page without empty lines and indents; one with a preformatted block stays as it is."""
    if "<pre" in page or "<textarea" in page:
        return page
    first, *lines = (line.strip(" \t\r") for line in page.split("\n"))
    return "\n".join([first, *filter(None, lines[:-1]), *lines[-1:]])


def own_files(settings: SiteSettings) -> Iterator[tuple[str, str]]:
    """Files of the site that are no pages and come from no entry: the web app manifest."""
    yield MANIFEST, app_manifest(settings)
