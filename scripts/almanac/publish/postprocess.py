"""The last touches on a site that MkDocs has rendered, before it takes the old one's place."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

from almanac.publish.content_security import add_policies
from almanac.publish.offline import write_app_manifest, write_offline_files
from almanac.site.settings import SiteSettings

# What the theme brings along that no page of ours asks for: source maps, and the search's other
# languages.
_NEVER_ASKED_FOR = ("assets/**/*.map", "sitemap.xml.gz")
_OTHER_LANGUAGES = "assets/javascripts/lunr"


def postprocess(site: Path, settings: SiteSettings, worker: str) -> None:
    """Thin out what the theme brings, defer the search index, add the policies, and list what a
    phone keeps.

    ``worker`` is the text of the offline worker, bundled.
    """
    _thin_out(site)
    for page in site.rglob("*.html"):
        page.write_text(close_set(page.read_text("utf-8")), "utf-8")
    defer_search_index(site)
    write_app_manifest(site, settings.name, settings.description)
    add_policies(site)
    write_offline_files(site, worker)


def _thin_out(site: Path) -> None:
    for pattern in _NEVER_ASKED_FOR:
        for path in site.glob(pattern):
            path.unlink()
    shutil.rmtree(site / _OTHER_LANGUAGES, ignore_errors=True)


def close_set(page: str) -> str:
    """A page without the theme's empty lines and indents, a seventh of it; one with a preformatted
    block stays as it is.
    """
    return page if "<pre" in page or "<textarea" in page else re.sub(r"[ \t]*\n\s*", "\n", page)


def defer_search_index(site: Path) -> None:
    """Leave an empty search index where the theme fetches one with every page; our search worker
    fetches the whole.

    A page opened from a folder asks for the index as a script: it gets an empty one too.
    """
    index = site / "search" / "search_index.json"
    whole = json.loads(index.read_text("utf-8"))
    (index.parent / "whole_index.json").write_text(
        json.dumps(whole, ensure_ascii=False, separators=(",", ":")), "utf-8"
    )
    empty = json.dumps({**whole, "docs": []})
    index.write_text(empty, "utf-8")
    (index.parent / "search_index.js").write_text(f"var __index = {empty}", "utf-8")
