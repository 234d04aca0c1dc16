"""The whole site published: pages and data on disk, then MkDocs, then two renames."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.progress import Progress, unseen
from almanac.publish.bundles import PUBLISHED, bundles
from almanac.publish.errors import DiskError, SiteError
from almanac.publish.mkdocs_settings import seen_on
from almanac.publish.node import NodeError
from almanac.publish.place import keep_others_work, mend, place_of, put
from almanac.publish.turn import turn
from almanac.publish.whole_site import write_site
from almanac.site.news import MOST_COMMITS, news_items
from almanac.site.settings import settings_of
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages
from almanac.source.git.revision import history
from almanac.source.names import Names


def build_site(
    analysis: Analysis,
    names: Names,
    root: Path,
    out: Path,
    told: Progress = unseen,
    wait_for: Callable[[str], None] = lambda _: None,
) -> str:
    """Write the pages of a checked catalogue, have MkDocs render them, and put the result in place
    of ``out``. Returns the name of the turn that it was built in.

    ``told`` is told how far it is, ``wait_for`` who else builds below ``root`` at the time. Raises
    SiteError where it fails; ``out`` is then as it was.
    """
    work = root / "build"
    pages, fresh = work / "pages", work / "site"
    try:
        keep_others_work(work)
        place = place_of(out, root, work)
        with turn(work, wait_for) as taken:
            mend(place)
            bundled = bundles()
            settings = settings_of(analysis.catalogue)
            news = news_items(history(root, MOST_COMMITS))
            write_pages(SitePages(analysis, names, news), pages, _scripts(bundled), told)
            worker = (bundled / "offline" / "worker.js").read_text("utf-8")
            with seen_on(analysis.today):
                write_site(work, pages, fresh, settings, worker, told)
            put(fresh, place)
            return taken.own
    except NodeError as problem:
        raise SiteError(str(problem)) from problem
    except OSError as problem:
        raise DiskError(problem, work) from problem


def mend_site(root: Path, out: Path, wait_for: Callable[[str], None] = lambda _: None) -> None:
    """Undo what a build into ``out`` that was killed has left. Raises SiteError."""
    work = root / "build"
    try:
        place = place_of(out, root, work)
        if not place.exists():
            keep_others_work(work)
            with turn(work, wait_for):
                mend(place)
    except OSError as problem:
        raise DiskError(problem, work) from problem


def _scripts(bundled: Path) -> Iterator[tuple[str, bytes]]:
    """The bundled scripts and the faces of the pages, by the file of the site that each becomes."""
    for folder in PUBLISHED:
        for path in sorted((bundled / folder).rglob("*")):
            if path.is_file():
                yield path.relative_to(bundled).as_posix(), path.read_bytes()
