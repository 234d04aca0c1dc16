"""The whole site: pages and data on disk, then MkDocs, then one rename."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.pages.adding import form_file
from almanac.pages.address import repository_address, site_address
from almanac.pages.cards import card_context, cards_page
from almanac.pages.changes import MOST_COMMITS, Change, change_files, changes, changes_page
from almanac.pages.computed import computed_page
from almanac.pages.coverage import coverage_page
from almanac.pages.data import data_files
from almanac.pages.entry_pages import entry_pages
from almanac.pages.finder import Finder
from almanac.pages.finish import finish
from almanac.pages.indexes import index_pages
from almanac.pages.kick_cycle import kick_cycle_page
from almanac.pages.links import Page
from almanac.pages.moved import moved_pages
from almanac.pages.pictures import picture_files, picture_names
from almanac.pages.plan_pages import plan_pages
from almanac.pages.reference import reference_pages
from almanac.pages.render import Templates
from almanac.pages.set_page import set_pages
from almanac.source.names import Names
from almanac.source.revision import history

HOME = Path(__file__).resolve().parents[3]  # the repository, which holds mkdocs.yml and site_src/
_COPIED = ("styles", "scripts", "images")


class SiteError(Exception):
    """The site could not be built; the message says why, in a sentence."""


def all_pages(analysis: Analysis) -> Iterator[Page]:
    """Every page of the site that is made from the catalogue."""
    yield from index_pages(analysis)
    yield from entry_pages(analysis)
    findings = check(analysis)
    yield from set_pages(analysis, findings)
    yield from plan_pages(analysis, findings)
    yield from reference_pages(analysis)
    yield computed_page(analysis)
    yield coverage_page(analysis)
    yield kick_cycle_page(analysis.catalogue)
    yield from moved_pages(analysis)


def build_site(analysis: Analysis, names: Names, root: Path, out: Path) -> None:
    """Write the pages of a checked catalogue, have MkDocs render them, and put the result in place of ``out``.

    Raises SiteError where that fails; ``out`` is then as it was.
    """
    work = root / "build"
    pages, fresh = work / "pages", work / "site"
    try:
        for folder in (pages, fresh):
            shutil.rmtree(folder, ignore_errors=True)
        write_pages(analysis, names, pages, changes(history(root, MOST_COMMITS)))
        _run_mkdocs(work, pages, fresh)
        finish(fresh, HOME / "site_src", HOME / "mkdocs.yml")
        _replace(fresh, out)
    except OSError as problem:
        raise SiteError(f"{problem.filename}: {problem.strerror}") from problem


def write_pages(analysis: Analysis, names: Names, folder: Path, news: list[Change]) -> None:
    """Everything that MkDocs reads, as plain files below ``folder``."""
    shutil.copytree(HOME / "site_src" / "pages", folder)
    for name in _COPIED:
        if (HOME / "site_src" / name).is_dir():
            shutil.copytree(HOME / "site_src" / name, folder / name)
    templates = Templates(HOME / "site_src" / "templates")
    address = site_address(HOME / "mkdocs.yml")
    pictures, drawn = picture_names(analysis.catalogue.drills)
    for page in (
        *all_pages(analysis),
        Finder(analysis, pictures).page(),
        cards_page(analysis),
        changes_page(analysis.catalogue, news),
    ):
        _write(folder / page.file, _text(templates, page, address))
    form = form_file(analysis.catalogue, names, repository_address(HOME / "mkdocs.yml"))
    for file, text in (
        *data_files(analysis, names, address),
        form,
        *change_files(analysis.catalogue, news, address),
        *picture_files(drawn),
    ):
        _write(folder / file, text)


def _text(templates: Templates, page: Page, address: str) -> str:
    """A page's Markdown; an entry's page ends with its deck card."""
    context = {**page.context, "base": page.base}
    card = card_context(page, address)
    text = templates.page(page.template, context)
    return text if card is None else text + templates.page("card", {**context, "card": card})


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")


def _run_mkdocs(work: Path, pages: Path, fresh: Path) -> None:
    config = work / "mkdocs.yml"
    inherited = os.path.relpath(HOME / "mkdocs.yml", work)
    theme = f"theme:\n  custom_dir: {HOME / 'site_src' / 'theme'}\n"
    config.write_text(f"INHERIT: {inherited}\ndocs_dir: {pages.name}\nsite_dir: {fresh.name}\n{theme}", "utf-8")
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "--config-file", str(config)]
    done = subprocess.run(
        command, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"}, capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise SiteError(f"MkDocs failed:\n{done.stdout}{done.stderr}".rstrip())


def _replace(fresh: Path, out: Path) -> None:
    """Put the fresh site in place of the old by renames, so that a reader sees the one or the other."""
    out.parent.mkdir(parents=True, exist_ok=True)
    if fresh.stat().st_dev != out.parent.stat().st_dev:  # a rename cannot cross file systems: copy beside it first
        near = out.with_name(f".{out.name}.new")
        shutil.rmtree(near, ignore_errors=True)
        fresh = Path(shutil.move(fresh, near))
    old = out.with_name(f".{out.name}.old")
    shutil.rmtree(old, ignore_errors=True)
    if out.exists():
        out.rename(old)
    fresh.rename(out)
    shutil.rmtree(old, ignore_errors=True)
