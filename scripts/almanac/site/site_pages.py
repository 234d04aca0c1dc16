"""Every page and data file of the site, made when asked for: all of them for a build, those that a
save has touched first for ``serve``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.kinds import WITH_PAGES
from almanac.model.entry import Entry
from almanac.model.practice import Practice
from almanac.resources import SITE_SOURCE
from almanac.site.calculators_page import calculators_page
from almanac.site.cards import card_context, cards_page
from almanac.site.compose_data import compose_files
from almanac.site.computed import computed_page
from almanac.site.coverage import coverage_page
from almanac.site.data_files import entry_files, plan_files
from almanac.site.drawing_html import fault_files
from almanac.site.entry_parts import Parts
from almanac.site.finder import Finder
from almanac.site.form_data import form_file
from almanac.site.hand_written import hand_written
from almanac.site.indexes import index_pages
from almanac.site.judge_page import judge_page
from almanac.site.kick_cycle import kick_cycle_page
from almanac.site.kind_pages import Wanted, every, pages_of
from almanac.site.levels_page import levels_page
from almanac.site.links import Page
from almanac.site.make_page import make_page
from almanac.site.moved import moved_pages
from almanac.site.news import NewsItem, news_files, news_page
from almanac.site.pictures import picture_files
from almanac.site.progression_page import learn_page
from almanac.site.qr_codes import QrCodes
from almanac.site.reference import reference_pages
from almanac.site.run_data import run_files, shared_file
from almanac.site.settings import SiteSettings, settings_of
from almanac.site.spreadsheet_files import practice_file, spreadsheets
from almanac.site.templates import Templates
from almanac.site.terms import TermMarks
from almanac.site.vectors import vectors_file
from almanac.source.names import Names

_NOT_SEARCHED = ("home", "list", "moved")  # they only name what has pages of its own
_BY_NAME = "new"  # found by its title alone: the rest names entries, and another one every day


@dataclass(frozen=True)
class SitePages:
    """The pages of one analysis. Each method yields the file below the pages' root and its text."""

    analysis: Analysis
    names: Names
    news: list[NewsItem] = field(default_factory=list)
    templates: Templates = field(default_factory=lambda: Templates(SITE_SOURCE / "templates"))

    def of_entries(self, wanted: Wanted = every) -> Iterator[tuple[str, str]]:
        """The pages of the entries that are wanted, and what they are run by."""
        for entry in filter(wanted, self.analysis.catalogue.entries.values()):
            yield from self.of_entry(entry)

    def of_entry(self, entry: Entry) -> Iterator[tuple[str, str]]:
        """The page of an entry and those beside it, and what it is run by on the deck."""
        yield from map(self._text, pages_of(self.analysis, check(self.analysis), entry))
        yield from run_files(self.analysis, entry)
        if entry.kind == Practice.kind and (table := self.parts.table(entry.id)):
            yield practice_file(entry.id, table)

    @cached_property
    def settings(self) -> SiteSettings:
        """What the club says of its site."""
        return settings_of(self.analysis.catalogue)

    @cached_property
    def parts(self) -> Parts:
        """What data and lists hold of each entry."""
        return Parts(self.analysis)

    @cached_property
    def marks(self) -> TermMarks:
        """The terms that pages mark."""
        return TermMarks(self.analysis.catalogue)

    @cached_property
    def codes(self) -> QrCodes:
        """The QR codes of the pages; to be saved when all pages have been made."""
        return QrCodes(self.settings.address)

    @cached_property
    def lists(self) -> Mapping[str, str]:
        """The pages made from the catalogue that hang on no set's clock, by file."""
        return dict(map(self._text, self._lists))

    @cached_property
    def others(self) -> Mapping[str, str]:
        """Every page made from the catalogue that is no entry's, by file."""
        return {**self.lists, **dict([self.finder])}

    @property
    def finder(self) -> tuple[str, str]:
        """The page that finds all others."""
        return self._text(self._finder_data.page())

    def of_squad(self, squad: str) -> Iterator[tuple[str, str]]:
        """What practices are composed of for a squad."""
        yield from compose_files(self.analysis, squad)

    def data(self) -> Iterator[tuple[str, str]]:
        """Every file that is no page."""
        for squad in self.analysis.catalogue.club.squads:
            yield from self.of_squad(squad)
        yield from self.data_of_club()
        yield from self.data_of_entries()
        yield self.finder_texts

    @property
    def finder_texts(self) -> tuple[str, str]:
        """What people type for each page, and its text."""
        return self._finder_data.texts()

    def data_of_club(self) -> Iterator[tuple[str, str]]:
        """Every file that is no page, of no squad alone, and holds nothing of what ``parts`` has of
        each entry.
        """
        catalogue = self.analysis.catalogue
        yield from plan_files(self.analysis, self.names, self.settings.address)
        yield form_file(catalogue, self.names, self.settings.repository)
        yield shared_file(catalogue)
        yield vectors_file(catalogue)
        yield self.marks.meanings()
        yield from news_files(catalogue, self.news, self.settings)
        yield from fault_files(catalogue)

    def data_of_entries(self) -> Iterator[tuple[str, str]]:
        """The files that are no pages and hold what ``parts`` has of each entry."""
        yield from entry_files(self.analysis, self.parts.data)
        yield from picture_files(self.parts.pictures())

    def spreadsheets(self) -> tuple[str, bytes]:
        """Everything for a spreadsheet, in one file: its path below the site's root, and its
        bytes.
        """
        return spreadsheets(self.analysis, self.parts.table)

    @cached_property
    def _lists(self) -> tuple[Page, ...]:
        analysis = self.analysis
        return (
            *index_pages(analysis),
            *reference_pages(analysis),
            calculators_page(analysis),
            computed_page(analysis),
            coverage_page(analysis),
            kick_cycle_page(analysis.catalogue),
            learn_page(analysis.catalogue),
            levels_page(analysis.catalogue),
            judge_page(analysis.catalogue),
            make_page(analysis),
            self.marks.page(),
            *moved_pages(analysis),
            cards_page(analysis),
            news_page(analysis.catalogue, self.news),
        )

    @cached_property
    def _finder_data(self) -> Finder:
        return Finder(self.parts, self._searched())

    def _searched(self) -> dict[str, str]:
        """The texts of the pages that the search knows, beside those of entries."""
        found = {path.name: text for path, text in hand_written(self.settings.has_water)}
        for page in self._lists:
            if page.template not in _NOT_SEARCHED:
                text = self.lists[page.file]
                head, end, _ = text.partition("\n---\n")
                found[page.file] = head + end if page.template == _BY_NAME else text
        return found

    def _text(self, page: Page) -> tuple[str, str]:
        """A page's file and Markdown; an entry's page ends with its deck card."""
        context = {**page.context, "base": page.base}
        card = card_context(page, self.settings.address, self.codes.of)
        text = self.templates.page(page.template, context)
        if page.template in WITH_PAGES:
            text = self.marks.marked(text, page.base)
        if card is not None:
            text += self.templates.page("card", {**context, "card": card})
        return page.file, text
