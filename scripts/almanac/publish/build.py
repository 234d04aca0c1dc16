"""The whole site published: pages and data on disk, then MkDocs, then one rename."""

from __future__ import annotations

import shutil
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.publish.bundles import bundles
from almanac.publish.errors import SiteError
from almanac.publish.node import NodeError
from almanac.publish.postprocess import postprocess
from almanac.publish.render import render, seen_on
from almanac.resources import SETTINGS
from almanac.site.news import MOST_COMMITS, news_items
from almanac.site.settings import read_settings
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages
from almanac.source.names import Names
from almanac.source.revision import history


def build_site(analysis: Analysis, names: Names, root: Path, out: Path) -> None:
    """Write the pages of a checked catalogue, have MkDocs render them, and put the result in place
    of ``out``.

    Raises SiteError where that fails; ``out`` is then as it was.
    """
    work = root / "build"
    pages, fresh = work / "pages", work / "site"
    try:
        bundled = bundles()
        for folder in (pages, fresh):
            shutil.rmtree(folder, ignore_errors=True)
        settings = read_settings(SETTINGS)
        news = news_items(history(root, MOST_COMMITS))
        write_pages(SitePages(analysis, names, settings, news), pages)
        shutil.copytree(bundled / "scripts", pages / "scripts")
        with seen_on(analysis.today):
            render(work, pages, fresh)
        postprocess(fresh, settings, (bundled / "offline" / "worker.js").read_text("utf-8"))
        _replace(fresh, out)
    except NodeError as problem:
        raise SiteError(str(problem)) from problem
    except OSError as problem:
        raise SiteError(f"{problem.filename}: {problem.strerror}") from problem


def _replace(fresh: Path, out: Path) -> None:
    """Put the fresh site in place of the old by renames, so that a reader sees the one or the
    other.
    """
    out.parent.mkdir(parents=True, exist_ok=True)
    if (
        fresh.stat().st_dev != out.parent.stat().st_dev
    ):  # a rename cannot cross file systems: copy beside it first
        near = out.with_name(f".{out.name}.new")
        shutil.rmtree(near, ignore_errors=True)
        fresh = Path(shutil.move(fresh, near))
    old = out.with_name(f".{out.name}.old")
    shutil.rmtree(old, ignore_errors=True)
    if out.exists():
        out.rename(old)
    fresh.rename(out)
    shutil.rmtree(old, ignore_errors=True)
