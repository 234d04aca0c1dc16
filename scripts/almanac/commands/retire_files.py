"""The files of a catalogue once an entry is out of use, and the places that name it yet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from typing import Any

from almanac.arithmetic.graph import circles
from almanac.model.catalogue import Catalogue, Key
from almanac.model.drill import Drill
from almanac.model.load import Loaded
from almanac.model.renaming import retired
from almanac.source.edits.rewrite import Rewrites, rewritten
from almanac.source.edits.taken_out import without
from almanac.source.reader import DataPath, Document, read
from almanac.source.results import is_result

Use = tuple[DataPath, bool]  # where it is named, and whether by a key
_LEADS_ON = ("easier", "harder")


class RetiredFiles:
    """What files hold once an entry is out of use, and where it is no longer named: by the one that
    takes its place, and where that would come before itself; ``written`` counts where it names that
    one instead, ``left`` where it still stands.
    """

    def __init__(
        self, loaded: Loaded, naming: Mapping[Key, Rewrites], gone: Key, other: str, day: date
    ) -> None:
        self._loaded, self._naming, self._gone, self._other = loaded, naming, gone, other
        document = loaded.documents[gone]
        self._taken: dict[Key, set[Use]] = {}
        self._written: set[tuple[Key, Use]] = set()
        self.texts: dict[str, str | None] = {document.file: retired(document, other, day)}

    @property
    def written(self) -> int:
        """In how many places the other stands now."""
        return len(self._written)

    @property
    def left(self) -> int:
        """In how many places another entry has to be written yet."""
        return sum(
            not self._is_others(key) and not self._is_done(key, use) for key, use in self._uses()
        )

    @property
    def may_write(self) -> bool:
        """Whether the other may stand in one of these: where no time is told that was swum."""
        return any(
            not self._is_others(key) and not self._is_done(key, use) and not is_result(use[0])
            for key, use in self._uses()
        )

    def take(self, key: Key, uses: Iterable[Use]) -> None:
        """Take places out that name it; nothing where the file would then no longer read."""
        before = self._taken.get(key, set())
        document, taken = self._loaded.documents[key], before | {*uses}
        if taken != before and _reads(document, text := _less(document, taken)):
            self._taken[key], self.texts[document.file] = taken, text

    def take_from_circles(self) -> None:
        """Take each place out by which what takes its place would come before itself."""
        for drill, relation in _closing(self._loaded.catalogue, self._gone, self._other):
            key = self._gone[0], drill
            uses = [use for use in self._naming.get(key, ()) if use[0][0] == relation]
            self.take(key, uses)

    def write_everywhere(self) -> None:
        """Write what takes its place wherever it is named; where a list names that already, take it
        out. A place that cannot be written, and a time that was swum, stays and is told.
        """
        for key, uses in self._naming.items():
            if key == self._gone or self._is_others(key):
                continue
            document = self._loaded.documents[key]
            self.take(key, [use for use in uses if _stands_beside(document, use, self._other)])
            taken = self._taken.get(key, set())
            due = {use: self._other for use in uses if use not in taken and not is_result(use[0])}
            text = rewritten(document, due) if due else None
            again, _ = read(text.encode("utf-8"), document.file) if text else (None, [])
            if again is not None:
                self.texts[document.file] = _less(again, taken) if taken else again.text
                self._written |= {(key, use) for use in due}

    def told(self, verb: str) -> Iterator[str]:
        """Who names it, where, and what is to stand there; a line a place. ``verb`` is what is, or
        would be.
        """
        for key, use in self._uses():
            place = self._loaded.documents[key].place(*use)
            who = f"{self._other} names" if self._is_others(key) else "names"
            if use in self._taken.get(key, ()):
                what = f"it {verb} taken out there"
            elif (key, use) in self._written:
                what = f"{self._other} {verb} written there"
            elif is_result(use[0]):
                what = f"take it out there: what was timed is no time of {self._other}"
            else:
                what = "take it out there" if self._is_others(key) else f"write {self._other}"
            yield f"{place}: {who} {self._gone[1]}: {what}"

    def _uses(self) -> Iterator[tuple[Key, Use]]:
        return (
            (key, use) for key, uses in self._naming.items() for use in uses if key != self._gone
        )

    def _is_others(self, key: Key) -> bool:
        return key == (self._gone[0], self._other)

    def _is_done(self, key: Key, use: Use) -> bool:
        return use in self._taken.get(key, ()) or (key, use) in self._written


def _less(document: Document, uses: Iterable[Use]) -> str:
    places = (document.place(*use) for use in uses)
    return without(document.text, [(at.line, at.column) for at in places])


def _reads(document: Document, text: str) -> bool:
    """Whether a document without what it names still reads."""
    again, findings = read(text.encode("utf-8"), document.file)
    return again is not None and not findings


def _stands_beside(document: Document, use: Use, other: str) -> bool:
    """Whether a list of ids names another one already."""
    path, is_key = use
    beside: Any = document.data
    for step in path[:-1]:
        beside = beside[step]
    return not is_key and isinstance(beside, list) and other in beside


def _closing(catalogue: Catalogue | None, gone: Key, other: str) -> Iterator[tuple[str, str]]:
    """The drills that lead to one that goes, and the fields, by which there would be a circle with
    another in its place. What a drill needs first no program takes out.
    """
    for relation in _LEADS_ON if catalogue and gone[0] == Drill.kind else ():
        assert catalogue is not None
        graph = {
            id: [other if next == gone[1] else next for next in getattr(drill, relation)]
            for id, drill in catalogue.drills.items()
            if id != gone[1]
        }
        named = {id for id in graph if gone[1] in getattr(catalogue.drills[id], relation)}
        while (
            closing := {chain[chain.index(other) - 1] for chain in circles(graph) if other in chain}
            & named
        ):
            named -= closing
            for id in closing:
                graph[id] = [next for next in graph[id] if next != other]
                yield id, relation
