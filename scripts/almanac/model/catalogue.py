"""The Catalogue: every sound entry, by kind and id, with who uses whom and where each thing
stands.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from almanac.findings import Place
from almanac.model.benchmark import Benchmark
from almanac.model.block import Block
from almanac.model.club import Club, LaneGroup
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.fault import Fault
from almanac.model.gear import Gear
from almanac.model.log import Log
from almanac.model.meet import Meet
from almanac.model.need import Need
from almanac.model.policy import Policy, Vocabulary, Word
from almanac.model.practice import Practice
from almanac.model.progression import Progression
from almanac.model.published import Source
from almanac.model.season import Season
from almanac.model.swim_set import SwimSet
from almanac.model.timetable import Timetable
from almanac.source.reader import DataPath, Document

E = TypeVar("E", bound=Entry)
Key = tuple[str, str]


@dataclass(frozen=True, eq=False)  # two catalogues are never compared, and one may be a key
class Catalogue:
    """All entries of one catalogue; every reference among them leads to an entry that is here.

    ``entries`` and ``documents`` are by (kind, id); ``moved`` maps (kind, old id) to the present
    id.
    """

    entries: Mapping[Key, Entry]
    documents: Mapping[Key, Document]
    moved: Mapping[Key, str]

    @property
    def is_whole(self) -> bool:
        """Whether every entry is here: none is broken, and none names one that is."""
        return all(
            key in self.entries or "moved_to" in document.data
            for key, document in self.documents.items()
        )

    def _all(self, cls: type[E]) -> dict[str, E]:
        return {id: entry for (kind, id), entry in self.entries.items() if isinstance(entry, cls)}

    @cached_property
    def vocabularies(self) -> dict[str, Vocabulary]:
        return self._all(Vocabulary)

    @cached_property
    def drills(self) -> dict[str, Drill]:
        return self._all(Drill)

    @cached_property
    def faults(self) -> dict[str, Fault]:
        return self._all(Fault)

    @cached_property
    def gear(self) -> dict[str, Gear]:
        return self._all(Gear)

    @cached_property
    def benchmarks(self) -> dict[str, Benchmark]:
        return self._all(Benchmark)

    @cached_property
    def progressions(self) -> dict[str, Progression]:
        return self._all(Progression)

    @cached_property
    def sources(self) -> dict[str, Source]:
        return self._all(Source)

    def sources_of(self, ids: Iterable[str]) -> list[Source]:
        """Those of some sources that are here: a broken one leaves what leans on it standing."""
        return [self.sources[id] for id in ids if id in self.sources]

    @cached_property
    def needs(self) -> dict[str, Need]:
        return self._all(Need)

    @cached_property
    def sets(self) -> dict[str, SwimSet]:
        return self._all(SwimSet)

    @cached_property
    def practices(self) -> dict[str, Practice]:
        return self._all(Practice)

    @cached_property
    def blocks(self) -> dict[str, Block]:
        return self._all(Block)

    @cached_property
    def meets(self) -> dict[str, Meet]:
        return self._all(Meet)

    @cached_property
    def timetables(self) -> dict[str, Timetable]:
        return self._all(Timetable)

    @cached_property
    def seasons(self) -> dict[str, Season]:
        return self._all(Season)

    @cached_property
    def logs(self) -> dict[str, Log]:
        return self._all(Log)

    @cached_property
    def club(self) -> Club:
        return self._all(Club)["club"]

    @cached_property
    def policy(self) -> Policy:
        return self._all(Policy)["policy"]

    @property
    def lane_groups(self) -> Mapping[str, LaneGroup]:
        return self.club.lane_groups

    @property
    def efforts(self) -> Mapping[str, Word]:
        """The effort words, easiest first."""
        return self.vocabularies["efforts"].words

    def words(self, vocabulary: str) -> Mapping[str, Word]:
        """The words of a vocabulary, in order."""
        return self.vocabularies[vocabulary].words

    def place(self, entry: Entry, path: DataPath = (), of_key: bool = False) -> Place:
        """Where a piece of an entry stands in its file."""
        return self.documents[entry.kind, entry.id].place(path, of_key)

    @cached_property
    def _users(self) -> Mapping[Key, tuple[tuple[Entry, str], ...]]:
        users: dict[Key, dict[tuple[Key, str], tuple[Entry, str]]] = defaultdict(dict)
        for entry in self.entries.values():
            for reference in entry.references():
                who = ((entry.kind, entry.id), reference.role)
                users[reference.kind, reference.id][who] = (entry, reference.role)
        return {key: tuple(found.values()) for key, found in users.items()}

    def users(self, entry: Entry, cls: type[E], *roles: str) -> Iterator[E]:
        """Entries of one kind that name this one, once each; only in ``roles`` where some are
        given.
        """
        seen: set[str] = set()
        for user, role in self._users.get((entry.kind, entry.id), ()):
            if isinstance(user, cls) and (not roles or role in roles) and user.id not in seen:
                seen.add(user.id)
                yield user
