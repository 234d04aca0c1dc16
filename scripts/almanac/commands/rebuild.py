"""What ``serve`` does at a save: check, redo what has changed, tell the browsers. Whatever the save
has done, the last good site stays and the next save is tried.
"""

from __future__ import annotations

import contextlib
import gc
import itertools
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path, PurePosixPath
from typing import TextIO

from almanac.analysis.analysis import Analysis
from almanac.analysis.touched import lost, retold, touched
from almanac.cache import digest
from almanac.commands.outcome import UsageError, keep_traceback
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.kinds import WITH_PAGES
from almanac.model.catalogue import Key
from almanac.model.entry import Entry
from almanac.publish.build import build_site, mend_site
from almanac.publish.errors import DiskError, SiteError
from almanac.publish.live_site import LiveSite, as_bytes, below
from almanac.publish.mkdocs_settings import seen_on
from almanac.publish.node import NodeError
from almanac.publish.turn import turn
from almanac.publish.viewers import Viewers
from almanac.report.findings_shown import as_text
from almanac.resources import SETTINGS, SITE_SOURCE
from almanac.site.news import MOST_COMMITS, news_items
from almanac.site.settings import settings_of
from almanac.site.site_pages import SitePages
from almanac.site.templates import Templates
from almanac.source.document_store import DocumentStore
from almanac.source.git.revision import history

STAYS = "the last good site stays"
_PAGE_OF = {kind.pages: key for key, kind in WITH_PAGES.items()}


@dataclass
class _Known:
    """What the last good site was made from."""

    checked: CheckedCatalogue
    today: date
    foundation: bytes
    turn: str  # in which that was: in a later one of another process all of it may have changed


class Rebuilder:
    """Keeps the site of ``root`` in ``out`` as its files are. ``is_newer`` says whether a save has
    come that is not looked at yet: what can wait is then left to it.
    """

    def __init__(
        self,
        root: Path,
        out: Path,
        viewers: Viewers,
        day: Callable[[], date],
        is_newer: Callable[[], bool],
    ) -> None:
        self._root, self._out, self._viewers, self._day = root, out, viewers, day
        self._is_newer = is_newer
        self._store = DocumentStore(root)
        self._templates = Templates(SITE_SOURCE / "templates")
        self._template_digest = b""
        self._live: LiveSite | None = None
        self._known: _Known | None = None

    def finished(self, file: str) -> bytes | None:
        """A file of the site that is finished and not written yet."""
        live = self._live
        return live.unwritten.get(file) if live else None

    def mend(self) -> None:
        """Undo what a build that was killed has left."""
        try:
            mend_site(self._root, self._out, self._wait_for)
        except SiteError as problem:
            self._fail(str(problem))

    def rebuild(self) -> bool:
        """Bring the site up to date. Returns False, with the reason told, where it stays as it
        was.
        """
        started = time.perf_counter()
        try:
            what = self._rebuild()
        except OSError as problem:
            what = self._fail(f"nothing was built: {DiskError(problem, self._root)}")
        except (SiteError, NodeError, UsageError) as problem:
            what = self._fail(f"nothing was built: {problem}")
        except Exception:  # noqa: BLE001 (whatever it is, the next save is tried)
            what = self._fail(f"a fault of the program itself; please report {keep_traceback()}")
        tell(f"{what} in {time.perf_counter() - started:.1f} s" if what else STAYS)
        return bool(what)

    def prepare(self) -> None:
        """Look at the site that a build has left, so that the first save is as quick as the
        others.
        """
        analysis = self._known.checked.analysis if self._known else None
        if self._known and analysis and self._live is None:
            try:
                settings = settings_of(analysis.catalogue)
                with seen_on(self._known.today):
                    self._live = LiveSite(self._root, self._out, settings, self._viewers.changed)
            except Exception:  # noqa: BLE001 (the next save builds everything, and tells what is amiss)
                self._live = None

    def _fail(self, words: str) -> str:
        tell(words, sys.stderr)
        self._viewers.say(words)
        self._live = None  # what it knows may no longer be so: the next save builds everything
        return ""

    def _rebuild(self) -> str:
        today = self._day()
        before = self._known.checked.analysis if self._known else None
        checked = load_and_check(self._root, today, self._store, before=before)
        findings = as_text(checked.findings, checked.loaded.count)
        tell(findings)
        self._viewers.say(findings if checked.findings else "")
        if checked.exit_code or checked.analysis is None:
            return ""
        theme = _contents(SITE_SOURCE / "theme")
        own = repr(settings_of(checked.analysis.catalogue))
        foundation = digest(today.isoformat(), own, SETTINGS.read_bytes(), *theme)
        known, live = self._known, self._live
        if live and known and known.foundation == foundation:
            with turn(self._root / "build", self._wait_for) as taken, seen_on(today):
                if taken.before == known.turn:
                    what = self._update(live, known, checked, checked.analysis)
                    self._known = _Known(checked, today, foundation, taken.own)
                    return what
        self._live = None
        taken_turn = build_site(
            checked.analysis,
            checked.loaded.names,
            self._root,
            self._out,
            wait_for=self._wait_for,
        )
        self._viewers.all_changed()
        self._known = _Known(checked, today, foundation, taken_turn)
        return "built"

    def _wait_for(self, who: str) -> None:
        words = f"{who} builds here; this build waits until it is done"
        tell(words, sys.stderr)
        self._viewers.say(words)

    def _update(
        self, live: LiveSite, known: _Known, checked: CheckedCatalogue, analysis: Analysis
    ) -> str:
        """Redo what has changed: what is in view, what shows a text that is another now, what the
        change may reach otherwise, then the rest.
        """
        pages = self._pages(checked, analysis)
        done: set[Key] = set()

        def texts(keys: set[Key]) -> Iterator[tuple[str, bytes]]:
            keys -= done
            done.update(keys)
            yield from as_bytes(pages.of_entries(lambda entry: _key(entry) in keys))

        in_view = list(map(_entry_of, self._viewers.in_view))
        showing = live.holding(_lost(known, analysis))
        live.begin()
        live.take(texts(set(filter(None, in_view))))
        live.take(as_bytes(pages.lists))  # they take a tenth of what the finder takes
        live.take(texts(set(filter(None, map(_entry_of, showing)))))
        live.take(as_bytes(pages.others))
        live.write()
        live.take(texts(set(_near(known, checked, analysis))))
        live.write()
        rest = texts(set(analysis.catalogue.entries))
        live.take(itertools.takewhile(lambda _: not self._is_newer(), rest))
        if self._is_newer():
            return "the touched pages built"
        live.take(as_bytes(pages.data()))
        live.take([pages.spreadsheets()])
        live.end()
        pages.codes.save()
        gc.collect()  # the catalogue before this one
        return "built"

    def _pages(self, checked: CheckedCatalogue, analysis: Analysis) -> SitePages:
        news = news_items(history(self._root, MOST_COMMITS))
        template_digest = digest(*_contents(SITE_SOURCE / "templates"))
        if template_digest != self._template_digest:
            self._templates = Templates(SITE_SOURCE / "templates")
            self._template_digest = template_digest
        return SitePages(analysis, checked.loaded.names, news, self._templates)


def tell(words: str, stream: TextIO | None = None) -> None:
    """Print where somebody listens: a terminal that has gone is no reason to stop serving."""
    with contextlib.suppress(OSError, ValueError):
        print(words, file=stream, flush=True)


def _lost(known: _Known, analysis: Analysis) -> set[str]:
    before = known.checked.analysis
    return lost(before.catalogue.documents, analysis.catalogue.documents) if before else set()


def _near(known: _Known, checked: CheckedCatalogue, analysis: Analysis) -> dict[Key, None]:
    before = known.checked.analysis
    if before is None or known.today != analysis.today:
        return dict.fromkeys(analysis.catalogue.entries)
    return {
        **touched(before.catalogue, analysis.catalogue),
        **retold(known.checked.findings, checked.findings, analysis.catalogue),
    }


def _key(entry: Entry) -> Key:
    return entry.kind, entry.id


def _entry_of(page: str) -> Key | None:
    """The entry whose page this is, or beside whose page it stands."""
    path = PurePosixPath(page)
    kind = _PAGE_OF.get(path.parts[0]) if len(path.parts) > 1 else None
    return (kind, path.stem) if kind else None


def _contents(folder: Path) -> Iterator[bytes]:
    for file, path in below(folder):
        yield file.encode()
        yield path.read_bytes()
