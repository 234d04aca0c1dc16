"""The last touches on a site that MkDocs has rendered, before it takes the old one's place."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Iterable
from pathlib import Path
from urllib.parse import urlsplit

from almanac.publish.content_security import with_policy
from almanac.publish.errors import SiteError
from almanac.publish.links import LinkCheck
from almanac.publish.offline import write_app_manifest, write_offline_files
from almanac.site.settings import SiteSettings

# What the theme brings along that no page of ours asks for: source maps, and its own search.
_NEVER_ASKED_FOR = ("assets/**/*.map", "sitemap.xml.gz")
_OWN_SEARCH = ("assets/javascripts/lunr", "assets/javascripts/workers")
_MOST_LINES = 20


def postprocess(site: Path, settings: SiteSettings, worker: str) -> None:
    """Thin out what the theme brings, leave an empty search index, add the policies, check the
    links, and list what a phone keeps.

    ``worker`` is the text of the offline worker, bundled. Raises SiteError where a page leads to
    what is not there.
    """
    _thin_out(site)
    write_empty_index(site)
    write_app_manifest(site, settings.name, settings.description)
    links = LinkCheck(urlsplit(settings.address).path or "/")
    for path in sorted(site.rglob("*.html")):
        page = finished(path.read_text("utf-8"))
        path.write_text(page, "utf-8")
        links.add(path.relative_to(site).as_posix(), page)
    files = (path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    demand_links(links, files)
    write_offline_files(site, worker)


def finished(page: str) -> str:
    """A page as it is published, from what MkDocs has rendered."""
    return with_policy(close_set(page))


def demand_links(links: LinkCheck, files: Iterable[str]) -> None:
    """Raise SiteError where a page leads to what is not among the site's files."""
    broken = list(links.broken(files))
    if broken:
        more = len(broken) - _MOST_LINES
        lines = broken[:_MOST_LINES] + ([f"and {more} more"] if more > 0 else [])
        raise SiteError("links lead nowhere:\n" + "\n".join(lines))


def _thin_out(site: Path) -> None:
    for pattern in _NEVER_ASKED_FOR:
        for path in site.glob(pattern):
            path.unlink()
    for folder in _OWN_SEARCH:
        shutil.rmtree(site / folder, ignore_errors=True)


def close_set(page: str) -> str:
    """A page without the theme's empty lines and indents, a seventh of it; one with a preformatted
    block stays as it is.
    """
    return page if "<pre" in page or "<textarea" in page else re.sub(r"[ \t]*\n\s*", "\n", page)


def write_empty_index(site: Path) -> None:
    """What the theme asks for with every page that has a search field, with nothing in it: our
    search worker fetches its documents at the first search.

    A page opened from a folder asks for it as a script.
    """
    empty = json.dumps({"config": {"lang": ["en"], "separator": "[\\s\\-]+"}, "docs": []})
    folder = site / "search"
    folder.mkdir(exist_ok=True)
    (folder / "search_index.json").write_text(empty, "utf-8")
    (folder / "search_index.js").write_text(f"var __index = {empty}", "utf-8")
