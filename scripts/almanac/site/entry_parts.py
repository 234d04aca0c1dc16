"""What data files and lists hold of each entry, made by whichever process comes to the entry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Key
from almanac.site.data_files import entry_data
from almanac.site.entry_times import Times, times_of


@dataclass(frozen=True)
class EntryParts:
    """Of one entry its data as JSON, and the times that the finder reads."""

    data: str
    times: Times


@dataclass(frozen=True)
class Parts:
    """The parts of every entry of an analysis, made when asked for where nobody has made them."""

    analysis: Analysis
    _made: dict[Key, EntryParts] = field(default_factory=dict)

    def of(self, key: Key) -> EntryParts:
        """What there is of an entry."""
        if key not in self._made:
            data = entry_data(self.analysis, key)
            self._made[key] = EntryParts(data, times_of(self.analysis, key))
        return self._made[key]

    def take(self, made: Mapping[Key, EntryParts]) -> None:
        """Take what was made elsewhere."""
        self._made.update(made)

    def data(self, key: Key) -> str:
        """Its data."""
        return self.of(key).data

    def times(self, key: Key) -> Times:
        """How long it takes."""
        return self.of(key).times
