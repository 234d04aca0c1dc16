"""Every page and data file of the site, written as plain files for MkDocs to read."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.kinds import WITH_PAGES
from almanac.resources import SITE_SOURCE
from almanac.site.cards import card_context, cards_page
from almanac.site.computed import computed_page
from almanac.site.coverage import coverage_page
from almanac.site.data_files import data_files
from almanac.site.finder import Finder
from almanac.site.form_data import form_file
from almanac.site.indexes import index_pages
from almanac.site.kick_cycle import kick_cycle_page
from almanac.site.kind_pages import entry_pages
from almanac.site.links import Page
from almanac.site.moved import moved_pages
from almanac.site.news import NewsItem, news_files, news_page
from almanac.site.pictures import picture_files, picture_names
from almanac.site.reference import reference_pages
from almanac.site.search_documents import search_file
from almanac.site.settings import SiteSettings
from almanac.site.templates import Templates
from almanac.source.names import Names

_COPIED = ("styles", "images")
_NOT_SEARCHED = ("list", "moved", "new")  # they only name what has pages of its own


def all_pages(analysis: Analysis) -> Iterator[Page]:
    """Every page of the site that is made from the catalogue."""
    yield from index_pages(analysis)
    yield from entry_pages(analysis, check(analysis))
    yield from reference_pages(analysis)
    yield computed_page(analysis)
    yield coverage_page(analysis)
    yield kick_cycle_page(analysis.catalogue)
    yield from moved_pages(analysis)


def write_pages(
    analysis: Analysis, names: Names, settings: SiteSettings, folder: Path, news: list[NewsItem]
) -> None:
    """Everything that MkDocs reads, as plain files below ``folder``."""
    shutil.copytree(SITE_SOURCE / "pages", folder)
    for name in _COPIED:
        if (SITE_SOURCE / name).is_dir():
            shutil.copytree(SITE_SOURCE / name, folder / name)
    templates = Templates(SITE_SOURCE / "templates")
    pictures, drawn = picture_names(analysis.catalogue)
    others = {path.name: path.read_text("utf-8") for path in (SITE_SOURCE / "pages").glob("*.md")}
    for page in (
        *all_pages(analysis),
        Finder(analysis, pictures).page(),
        cards_page(analysis),
        news_page(analysis.catalogue, news),
    ):
        text = _text(templates, page, settings.address)
        _write(folder / page.file, text)
        if page.template not in (*WITH_PAGES, *_NOT_SEARCHED):
            others[page.file] = text
    form = form_file(analysis.catalogue, names, settings.repository)
    for file, text in (
        *data_files(analysis, names, settings.address),
        form,
        search_file(analysis.catalogue, others),
        *news_files(analysis.catalogue, news, settings.address),
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
