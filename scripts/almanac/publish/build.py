"""The whole site published: pages and data on disk, then MkDocs, then two renames."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.progress import Told, unseen
from almanac.publish.bundles import bundles
from almanac.publish.errors import SiteError
from almanac.publish.node import NodeError
from almanac.publish.render import seen_on
from almanac.publish.whole_site import write_site
from almanac.resources import SETTINGS
from almanac.site.news import MOST_COMMITS, news_items
from almanac.site.settings import read_settings
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages
from almanac.source.names import Names
from almanac.source.revision import history


def build_site(
    analysis: Analysis, names: Names, root: Path, out: Path, told: Told = unseen
) -> None:
    """Write the pages of a checked catalogue, have MkDocs render them, and put the result in place
    of ``out``.

    ``told`` is told how far it is. Raises SiteError where it fails; ``out`` is then as it was.
    """
    work = root / "build"
    pages, fresh = work / "pages", work / "site"
    try:
        bundled = bundles()
        settings = read_settings(SETTINGS)
        news = news_items(history(root, MOST_COMMITS))
        write_pages(SitePages(analysis, names, settings, news), pages, _scripts(bundled), told)
        worker = (bundled / "offline" / "worker.js").read_text("utf-8")
        with seen_on(analysis.today):
            write_site(work, pages, fresh, settings, worker, told)
        _replace(fresh, out)
    except NodeError as problem:
        raise SiteError(str(problem)) from problem
    except OSError as problem:
        raise SiteError(f"{problem.filename}: {problem.strerror}") from problem


def _scripts(bundled: Path) -> Iterator[tuple[str, bytes]]:
    """The bundled scripts of the pages, by the file of the site that each becomes."""
    for path in sorted((bundled / "scripts").rglob("*")):
        if path.is_file():
            yield path.relative_to(bundled).as_posix(), path.read_bytes()


def _replace(fresh: Path, out: Path) -> None:
    """Put the fresh site in place of the old by renames, so that a reader sees the one or the
    other. The old one stays where the fresh one was, for the next build to take what is equal from.
    """
    kept = fresh
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
    if old.exists() and not kept.exists() and old.stat().st_dev == kept.parent.stat().st_dev:
        old.rename(kept)
    shutil.rmtree(old, ignore_errors=True)
