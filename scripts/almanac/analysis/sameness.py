"""What of a catalogue is the same in a later state of it, to the letter: what was worked out of
that need not be again.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from almanac.model.catalogue import Catalogue, Key
from almanac.model.entry import Entry

_FOUNDATIONS = (("club", "club"), ("policy", "policy"), ("vocabulary", "efforts"))
_BRIEFED_BY = (("vocabulary", "hazards"), ("vocabulary", "gravities"))  # a catalogue may lack them
_TIMED_BY = ("benchmark", "gear")  # every one of them: the pace of any rep may hang on it


@dataclass(frozen=True, eq=False)
class Sameness:
    """Two states of a catalogue held against each other."""

    before: Catalogue
    after: Catalogue
    _known: dict[Key, bool] = field(default_factory=dict, repr=False)

    @cached_property
    def foundations(self) -> bool:
        """Whether all that every figure stands on is the same, in the same order."""
        if self.before.moved != self.after.moved:
            return False
        if not all(
            self._is_same(key)
            for key in _BRIEFED_BY
            if key in self.after.entries or key in self.before.entries
        ):
            return False
        sides = [list(self._timed_by(side)) for side in (self.before, self.after)]
        return sides[0] == sides[1] and all(map(self._is_same, (*_FOUNDATIONS, *sides[0])))

    def holds(self, kind: str, id: str) -> bool:
        """Whether an entry and all that it names, and so on, are the same."""
        key = kind, id
        if key not in self._known:
            self._known[key] = self._is_same(key) and all(
                self.holds(*named) for named in self._named(key)
            )
        return self._known[key]

    def _named(self, key: Key) -> Iterator[Key]:
        """The entries that one names as what it is made of, whose own names lead no way back."""
        for reference in self.after.entries[key].references():
            named = reference.kind, reference.id
            if named in self.after.entries and (key[0], named[0]) in _MADE_OF:
                yield named

    def _is_same(self, key: Key) -> bool:
        documents: list[Mapping[Key, object]] = [self.before.entries, self.after.entries]
        entries = [found.get(key) for found in documents]
        if not isinstance(entries[0], Entry) or entries[0] != entries[1]:
            return False
        # two entries are equal whatever the order of their keys, which pages may show
        return self.before.documents[key].text == self.after.documents[key].text

    @staticmethod
    def _timed_by(side: Catalogue) -> Iterator[Key]:
        return (key for key in side.entries if key[0] in _TIMED_BY)


_MADE_OF = {("set", "drill"), ("practice", "set"), ("practice", "drill")}
