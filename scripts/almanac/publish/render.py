"""MkDocs on the written pages, within this process: to start another one takes longer than it is
worth.
"""

from __future__ import annotations

import logging
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from pathlib import Path

from jinja2 import Environment, TemplateError
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import MkDocsException
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import Files, InclusionLevel
from mkdocs.structure.pages import Page
from yaml import YAMLError

from almanac.publish.errors import SiteError
from almanac.resources import SETTINGS, SITE_SOURCE
from almanac.site.folder import naming

HOOKS = tuple(Path(__file__).with_name(name) for name in ("keep_html.py", "theme_hook.py"))

Take = Callable[[str, bytes], None]
_EPOCH = "SOURCE_DATE_EPOCH"  # MkDocs reads it too


def render(work: Path, pages: Path, take: Take, hooks: tuple[Path, ...] = HOOKS) -> None:
    """Render the Markdown below ``pages``; ``take`` is given each file of the site, by its path
    from the root, and what it holds. ``work`` takes the configuration.

    Raises SiteError, with what MkDocs says, where it fails or warns.
    """
    with as_site_error():
        config = configuration(work, pages, work / "nothing", hooks)
        config.plugins["almanac"] = _Taker(take)
        build(config)


class _Taker(BasePlugin):  # type: ignore[no-untyped-call,type-arg]
    """Takes what MkDocs makes, in place of a folder that it would write to and we read again."""

    def __init__(self, take: Take) -> None:
        self._take = take

    def on_env(self, env: Environment, /, *, config: MkDocsConfig, files: Files) -> Environment:
        """Take every file that is no page; MkDocs has nothing to copy then."""
        for file in files:
            if not file.is_documentation_page() and file.inclusion == InclusionLevel.INCLUDED:
                self._take(file.dest_uri, file.content_bytes)
                file.inclusion = InclusionLevel.EXCLUDED
        return env

    def on_post_template(self, output: str, /, *, template_name: str, config: MkDocsConfig) -> str:
        """Take what the theme renders for the site as a whole."""
        self._take(template_name, output.encode())
        return ""

    def on_post_page(self, output: str, /, *, page: Page, config: MkDocsConfig) -> str:
        """Take a page."""
        self._take(page.file.dest_uri, output.encode())
        return ""


@contextmanager
def as_site_error() -> Iterator[list[str]]:
    """Keep what MkDocs warns of from the terminal, and make a SiteError of what it raises, which
    tells both. Yields what was said so far.
    """
    said: list[str] = []
    with _listening(said):
        try:
            yield said
        except (MkDocsException, TemplateError, YAMLError) as problem:
            lines = "\n".join([*said, str(problem)]).rstrip()
            raise SiteError(f"MkDocs failed:\n{lines}") from problem


def configuration(work: Path, pages: Path, site: Path, hooks: tuple[Path, ...]) -> MkDocsConfig:
    """The repository's settings with the folders of this build, which the paths in them are put
    beside.
    """
    file = work / "mkdocs.yml"
    content = (
        f"INHERIT: {os.path.relpath(SETTINGS, work)}\n"
        f"docs_dir: {os.path.relpath(pages, work)}\nsite_dir: {os.path.relpath(site, work)}\n"
        f"theme:\n  custom_dir: {SITE_SOURCE / 'theme'}\nhooks: {[str(hook) for hook in hooks]}\n"
    )
    with naming(file):
        file.write_text(content, "utf-8")
    os.environ["NO_MKDOCS_2_WARNING"] = "1"  # the theme's own switch for its banner
    return load_config(str(file), strict=True)


@contextmanager
def seen_on(day: date) -> Iterator[None]:
    """Have MkDocs take ``day`` for today: it stands in the map of the site."""
    before = os.environ.get(_EPOCH)
    os.environ[_EPOCH] = str(int(datetime.combine(day, time(), UTC).timestamp()))
    try:
        yield
    finally:
        if before is None:
            del os.environ[_EPOCH]
        else:
            os.environ[_EPOCH] = before


class _Ear(logging.Handler):
    def __init__(self, said: list[str]) -> None:
        super().__init__(logging.WARNING)
        self._said = said

    def emit(self, record: logging.LogRecord) -> None:
        self._said.append(f"{record.levelname}: {record.getMessage()}")


@contextmanager
def _listening(said: list[str]) -> Iterator[None]:
    """Gather in ``said`` what MkDocs warns of, and keep it from the terminal."""
    logger, ear = logging.getLogger("mkdocs"), _Ear(said)
    logger.addHandler(ear)
    was, logger.propagate = logger.propagate, False
    try:
        yield
    finally:
        logger.propagate = was
        logger.removeHandler(ear)
