"""What data files and lists hold of each entry, made by whichever process comes to the entry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from almanac.analysis.analysis import Analysis
from almanac.kinds import WITH_PAGES
from almanac.model.catalogue import Key
from almanac.model.drill import Drill
from almanac.model.practice import Practice
from almanac.site.data_files import entry_data
from almanac.site.drawing_html import picture
from almanac.site.entry_times import Times, times_of
from almanac.site.finder_facts import Words, words_of
from almanac.site.practice_table import practice_table
from almanac.site.search_documents import SearchedPage, document_of


@dataclass(frozen=True)
class EntryParts:
    """Of one entry its data as JSON, the times and words that the finder reads, what it is found
    by, None where it has no page, the picture that lists show, and of a practice that can be worked
    out its table as CSV; "" where it has none.
    """

    data: str
    times: Times
    words: Words
    document: SearchedPage | None
    picture: str
    table: str = ""


@dataclass(frozen=True)
class Parts:
    """The parts of every entry of an analysis, made when asked for where nobody has made them."""

    analysis: Analysis
    _made: dict[Key, EntryParts] = field(default_factory=dict)

    def of(self, key: Key) -> EntryParts:
        """What there is of an entry."""
        if key not in self._made:
            catalogue = self.analysis.catalogue
            entry = catalogue.entries[key]
            self._made[key] = EntryParts(
                data=entry_data(self.analysis, key),
                times=times_of(self.analysis, key),
                words=words_of(self.analysis, key),
                document=document_of(catalogue, entry) if entry.kind in WITH_PAGES else None,
                picture=picture(catalogue, entry) if isinstance(entry, Drill) else "",
                table=self._table(key),
            )
        return self._made[key]

    def _table(self, key: Key) -> str:
        is_known = key[0] == Practice.kind and key[1] in self.analysis.practices
        return practice_table(self.analysis, key[1]) if is_known else ""

    def take(self, made: Mapping[Key, EntryParts]) -> None:
        """Take what was made elsewhere."""
        self._made.update(made)

    def data(self, key: Key) -> str:
        """Its data."""
        return self.of(key).data

    def table(self, practice: str) -> str:
        """The table of a practice, "" where it cannot be worked out."""
        return self.of((Practice.kind, practice)).table

    def times(self, key: Key) -> Times:
        """How long it takes."""
        return self.of(key).times

    def words(self, key: Key) -> Words:
        """For whom it is, and the words of what is swum of it."""
        return self.of(key).words

    def pictures(self) -> dict[str, str]:
        """By drill id its picture."""
        return {id: self.of((Drill.kind, id)).picture for id in self.analysis.catalogue.drills}

    def documents(self) -> list[SearchedPage]:
        """What every entry with a page is found by."""
        found = (self.of(key).document for key in self.analysis.catalogue.entries)
        return [document for document in found if document]
