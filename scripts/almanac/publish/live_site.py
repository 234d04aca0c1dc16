"""A site that has been built, kept up to date by redoing only the pages that come out otherwise.

Every text that a build would write is compared with the one that stands there; only what differs
goes through MkDocs, and only a page that then differs is written. What is finished can be looked at
before the rest of the site is.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from pathlib import Path
from urllib.parse import urlsplit

from almanac.cache import digest
from almanac.publish.atomic import replace_file
from almanac.publish.bundles import PUBLISHED, bundles
from almanac.publish.links import LinkCheck
from almanac.publish.mkdocs_pages import MkDocsPages
from almanac.publish.offline import KeptFiles
from almanac.publish.packs import FOLDER as PACKS
from almanac.publish.postprocess import demand_links, postprocessed
from almanac.site.settings import SiteSettings
from almanac.site.write import source_files

_MARKDOWN = ".md"
_OF_WORKER = "offline/worker.js"  # of the bundles; the other bundles are scripts of the pages

Told = Callable[[str], None]


class LiveSite:
    """The site of ``root`` in ``out`` as a build has just left it.

    ``finish_file`` is told of every file of the site that has changed, when it can be looked at:
    first it stands in ``unwritten`` and then, after ``write``, in ``out``.
    """

    def __init__(self, root: Path, out: Path, settings: SiteSettings, finish_file: Told) -> None:
        """Read what stands there. Raises OSError, and SiteError where MkDocs fails."""
        work = root / "build"
        self._settings = settings
        self._pages, self._out, self._finish_file = work / "pages", out, finish_file
        self._scratch = work / "served"
        self.unwritten: dict[str, bytes] = {}
        self._bundled = bundles()
        self._mkdocs = MkDocsPages(work, self._pages, self._scratch, settings)
        self._sources = {file: digest(path.read_bytes()) for file, path in below(self._pages)}
        self._taken: set[str] = set()
        self._links = LinkCheck(urlsplit(settings.address).path or "/")
        self._kept = KeptFiles()
        self._published: dict[str, bytes] = {}
        for file, path in below(out):
            self._note(file, path.read_bytes())

    def begin(self) -> None:
        """Begin to go through the texts of the whole site; what is not taken until ``end`` goes."""
        self._taken = set()
        self._bundled = bundles()
        self.take(of_source(self._bundled, self._settings))

    def take(self, texts: Iterable[tuple[str, bytes]]) -> None:
        """Take texts as a build would write them below its pages, and publish what is new of
        them.
        """
        come: list[tuple[str, bytes]] = []
        for file, content in texts:
            self._taken.add(file)
            mark = digest(content)
            if self._sources.get(file) == mark:
                continue
            replace_file(self._pages / file, content)
            self._sources[file] = mark
            if file.endswith(_MARKDOWN) and not self._mkdocs.holds(file):
                come.append((file, content))
            else:
                self._publish(file, content)
        if come:  # MkDocs makes no page that it has not seen, and looks for all new ones at once
            self._mkdocs.read_again()
            for file, content in come:
                self._publish(file, content)

    def holding(self, texts: Collection[str]) -> Iterator[str]:
        """The pages, as files of the site, that have one of these texts in them."""
        sought = [text.encode() for text in texts]
        for file in self._sources if sought else ():
            if file.endswith(_MARKDOWN):
                content = (self._pages / file).read_bytes()
                if any(text in content for text in sought):
                    yield published_as(file)

    def end(self) -> None:
        """Everything has been taken: what has not is dropped, and what speaks of the whole site is
        made again. Raises SiteError where a page leads to what is not there.
        """
        gone = self._sources.keys() - self._taken
        for file in gone:
            (self._pages / file).unlink(missing_ok=True)
            del self._sources[file]
            self._drop(published_as(file))
        if any(file.endswith(_MARKDOWN) for file in gone):
            self._mkdocs.read_again()
        for file, text in self._mkdocs.of_theme().items():
            self._offer(file, postprocessed(text) if file.endswith(".html") else text)
        demand_links(self._links, self._published)
        worker = (self._bundled / _OF_WORKER).read_text("utf-8")
        for file, told in self._kept.told(worker, self._read):
            self._offer(file, told)
        for file in [file for file in self._published if file.startswith(PACKS)]:
            if file not in self._kept.packs:
                self._drop(file)
        self.write()

    def _read(self, file: str) -> bytes:
        return self.unwritten.get(file) or (self._out / file).read_bytes()

    def write(self) -> None:
        """Put into ``out`` what has been finished."""
        for file, content in list(self.unwritten.items()):
            replace_file(self._out / file, content)
            del self.unwritten[file]
        shutil.rmtree(self._scratch, ignore_errors=True)

    def _publish(self, file: str, content: bytes) -> None:
        if not file.endswith(_MARKDOWN):
            self._offer(file, content)
            return
        became, html = self._mkdocs.html(file)
        self._offer(became, postprocessed(html))

    def _offer(self, file: str, content: str | bytes) -> None:
        """A file of the site as it is now; nothing where it was so before."""
        raw = content.encode() if isinstance(content, str) else content
        if self._published.get(file) != digest(raw):
            self._note(file, raw)
            self.unwritten[file] = raw
            self._finish_file(file)

    def _note(self, file: str, raw: bytes) -> None:
        self._published[file] = digest(raw)
        self._kept.add(file, raw)
        if file.endswith(".html"):
            self._links.add(file, raw.decode("utf-8"))

    def _drop(self, file: str) -> None:
        self._published.pop(file, None)
        self._kept.drop(file)
        self._links.drop(file)
        self.unwritten.pop(file, None)
        (self._out / file).unlink(missing_ok=True)
        self._finish_file(file)


def of_source(bundled: Path, settings: SiteSettings) -> Iterable[tuple[str, bytes]]:
    """What stands on the site as the program has it, and the bundled scripts."""
    yield from source_files(settings)
    for folder in PUBLISHED:
        for file, path in below(bundled / folder):
            yield f"{folder}/{file}", path.read_bytes()


def below(folder: Path) -> Iterable[tuple[str, Path]]:
    """Every file below a folder: its path from there, and its path."""
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            yield path.relative_to(folder).as_posix(), path


def published_as(file: str) -> str:
    """The file of the site that a file of the pages becomes."""
    return f"{file.removesuffix(_MARKDOWN)}.html" if file.endswith(_MARKDOWN) else file


def as_bytes(texts: Iterable[tuple[str, str]] | Mapping[str, str]) -> Iterable[tuple[str, bytes]]:
    """Texts as they are written."""
    pairs = texts.items() if isinstance(texts, Mapping) else texts
    return ((file, text.encode()) for file, text in pairs)
