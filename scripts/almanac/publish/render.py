"""MkDocs on the written pages, within this process: to start another one takes longer than it is
worth.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from jinja2 import Environment
from mkdocs.commands.build import build
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import MkDocsException
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page

from almanac.publish.mkdocs_settings import HOOKS, loaded_settings, written_settings
from almanac.publish.mkdocs_warnings import as_site_error
from almanac.publish.postprocess import postprocessed
from almanac.second_process import begun, is_possible
from almanac.site.settings import SiteSettings

Take = Callable[[str, bytes], None]
N = TypeVar("N")
_NOTHING = "nothing.html"  # a template with nothing in it


def render(
    work: Path,
    pages: Path,
    take: Take,
    own: SiteSettings,
    hooks: tuple[Path, ...] = HOOKS,
    taken: Callable[[], N | None] = lambda: None,
    learn: Callable[[N], None] = lambda _: None,
) -> None:
    """Render the Markdown below ``pages``; ``take`` is given each file of the site, by its path
    from the root, and what it holds, pages with their last touches. ``work`` takes the
    configuration.

    Half of the pages are rendered, and taken, by a second process, where one can be had: ``taken``
    then tells there what has been taken, and ``learn`` is told of it here.

    Raises SiteError, with what MkDocs says, where it fails or warns.
    """
    with as_site_error() as said:
        settings = written_settings(work, pages, work / "nothing", own, hooks)
        try:
            theirs = _half(pages) if is_possible() else frozenset[str]()

            def share() -> N | None:
                if theirs:
                    _build(settings, _Taker(take, frozenset(), theirs))
                return taken()

            beside = begun(share)
            _build(settings, _Taker(take, theirs))
            if (of_theirs := beside()) is not None:
                learn(of_theirs)
        except MkDocsException:  # told again, of all pages
            said.clear()
            _build(settings, _Taker(take, frozenset()))


def _build(settings: Path, taker: _Taker) -> None:
    config = loaded_settings(settings)
    config.plugins["almanac"] = taker
    if taker.takes_pages_alone:  # the map of the site asks every page for its address
        config.theme.static_templates = set()
    build(config)


def _half(pages: Path) -> frozenset[str]:
    """Pages that are half of the work: every second by size, and now and then one more, because
    the files that are no pages are left to the first process.
    """
    found = sorted(pages.rglob("*.md"), key=lambda path: (path.stat().st_size, path))
    chosen = (path for number, path in enumerate(found) if number % 5 in (0, 2, 4))
    return frozenset(path.relative_to(pages).as_posix() for path in chosen)


class _Taker(BasePlugin):  # type: ignore[no-untyped-call,type-arg]
    """Takes what MkDocs makes, in place of a folder that it would write to and we read again.

    Pages in ``others`` are made by somebody else: here they are as good as empty. With ``only``,
    these pages are taken and nothing else.
    """

    def __init__(
        self, take: Take, others: frozenset[str], only: frozenset[str] | None = None
    ) -> None:
        self._take, self._others, self._only = take, others, only
        self._set_aside: list[File] = []

    @property
    def takes_pages_alone(self) -> bool:
        """Whether it takes some pages, and nothing that the theme renders for the whole site."""
        return self._only is not None

    def _is_mine(self, file: File) -> bool:
        path = file.src_uri
        return path not in self._others if self._only is None else path in self._only

    def on_nav(self, nav: Navigation, /, *, config: MkDocsConfig, files: Files) -> Navigation:
        """Set aside what somebody else makes; a page of the navigation is asked for its title."""
        named = {page.file for page in nav.pages}
        for file in files.documentation_pages():
            if not self._is_mine(file) and file not in named:
                file.inclusion = InclusionLevel.EXCLUDED
                self._set_aside.append(file)
        return nav

    @event_priority(100)  # before the hooks look at it
    def on_page_markdown(
        self, markdown: str, /, *, page: Page, config: MkDocsConfig, files: Files
    ) -> str:
        """Leave nothing to do of a page that is made by somebody else."""
        if self._is_mine(page.file):
            return markdown
        page.meta["template"] = _NOTHING
        return ""

    def on_env(self, env: Environment, /, *, config: MkDocsConfig, files: Files) -> Environment:
        """Take every file that is no page; MkDocs has nothing to copy then. The map of the site
        names the pages that were set aside too.
        """
        for file in self._set_aside if self._only is None else ():
            file.inclusion = InclusionLevel.INCLUDED
            Page(None, file, config).meta["template"] = _NOTHING
        for file in files:
            if not file.is_documentation_page() and file.inclusion == InclusionLevel.INCLUDED:
                if self._only is None:
                    self._take(file.dest_uri, file.content_bytes)
                file.inclusion = InclusionLevel.EXCLUDED
        return env

    def on_post_template(self, output: str, /, *, template_name: str, config: MkDocsConfig) -> str:
        """Take what the theme renders for the site as a whole."""
        self._take(template_name, _postprocessed(template_name, output).encode())
        return ""

    def on_post_page(self, output: str, /, *, page: Page, config: MkDocsConfig) -> str:
        """Take a page."""
        if self._is_mine(page.file):
            self._take(page.file.dest_uri, postprocessed(output).encode())
        return ""


def _postprocessed(file: str, output: str) -> str:
    return postprocessed(output) if file.endswith(".html") else output
