"""Take an entry out of use: its page stays and says what took its place, and each place that still
names it is told, now and by ``check``.

Nothing is written, and the exit code is 1, where what takes its place could not stand there: it
would come before itself, or be broken. Other errors that come of it are told.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from pathlib import Path

from almanac.arithmetic.graph import circles
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.rename import KINDS_NAMED, kind_of_id, make
from almanac.commands.shared import checked
from almanac.findings import Finding, as_text, counted, worst_first
from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue, Key
from almanac.model.drill import Drill
from almanac.model.load import Loaded, load
from almanac.model.renaming import places_naming, retired
from almanac.source.reader import DataPath, Document, read
from almanac.source.rewrite import Rewrites
from almanac.source.taken_out import without

NAME = "retire"
Use = tuple[DataPath, bool]  # where it is named, and whether by a key
_LEADS_ON = ("easier", "harder")
_CIRCLE = "circle"  # of drills that come before each other: it stands in no one place


def _reads(document: Document, text: str) -> bool:
    """Whether a document without what it names still reads."""
    again, findings = read(text.encode("utf-8"), document.file)
    return again is not None and not findings


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", metavar="ID", help="the entry that goes")
    parser.add_argument(
        "--for", dest="other", metavar="OTHER", required=True, help="the one that takes its place"
    )
    parser.add_argument("--kind", choices=KINDS_NAMED, help="its kind, where two have the id")
    parser.add_argument("--dry-run", action="store_true", help="say what would change, and no more")


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    loaded = load(root)
    kind = kind_of_id(loaded, arguments.id, arguments.kind)
    if not KIND[kind].can_move:
        raise UsageError(
            f"a {kind} has no page that could say what took its place: remove its file"
        )
    other = kind_of_id(loaded, arguments.other, kind) and arguments.other
    if other == arguments.id:
        raise UsageError(f"'{other}' cannot take its own place")
    if loaded.catalogue is None:
        errors = [finding for finding in worst_first(loaded.findings) if finding.is_error]
        print(as_text(errors, len(loaded.documents)))
        print("nothing was written: with these nobody can say what would come of it")
        return ERRORS
    day = arguments.today or today()
    naming = places_naming(loaded.documents, kind, arguments.id)
    out = _Out(loaded, naming, (kind, arguments.id), other, day)
    out.take((kind, other), naming.get((kind, other), ()))
    out.take_from_circles()
    errors = _new_errors(root, loaded, out.texts, day)
    if refused := [own for own in errors if own.place.file in out.texts or own.code == _CIRCLE]:
        print(as_text(refused, len(loaded.documents)))
        print(f"nothing was written: {other} cannot take its place as it stands")
        return ERRORS
    if not arguments.dry_run:
        make(root, out.texts, loaded)
    named = out.tell()
    verb = "would be" if arguments.dry_run else "is"
    print(
        f"{kind} {arguments.id} {verb} retired; its page leads to {other}."
        f" {counted(named, 'place names', 'places name')} it: write {other} there, or another"
    )
    if errors:
        print(f"until then {other} is taken there, and check finds:")
        print(as_text(errors, len(loaded.documents)))
    return FINE


class _Out:
    """What files hold once an entry is out of use, and where it is no longer named: by the one that
    takes its place, and where that would come before itself.
    """

    def __init__(
        self, loaded: Loaded, naming: Mapping[Key, Rewrites], gone: Key, other: str, day: date
    ) -> None:
        self._loaded, self._naming, self._gone, self._other = loaded, naming, gone, other
        document = loaded.documents[gone]
        self._taken: dict[Key, set[Use]] = {}
        self.texts: dict[str, str | None] = {document.file: retired(document, other, day)}

    def take(self, key: Key, uses: Iterable[Use]) -> None:
        """Take places out that name it; nothing where the file would then no longer read."""
        before = self._taken.get(key, set())
        document, taken = self._loaded.documents[key], before | {*uses}
        if taken == before:
            return
        spots = [(at.line, at.column) for at in (document.place(*use) for use in taken)]
        if _reads(document, text := without(document.text, spots)):
            self._taken[key], self.texts[document.file] = taken, text

    def take_from_circles(self) -> None:
        """Take each place out by which what takes its place would come before itself."""
        for drill, relation in _closing(self._loaded.catalogue, self._gone, self._other):
            key = self._gone[0], drill
            uses = [use for use in self._naming.get(key, ()) if use[0][0] == relation]
            self.take(key, uses)

    def tell(self) -> int:
        """Say who names it. How many places another entry has to be written in."""
        named = 0
        for key, uses in self._naming.items():
            for use in uses if key != self._gone else ():
                place = self._loaded.documents[key].place(*use)
                is_own = key == (self._gone[0], self._other)
                is_out = use in self._taken.get(key, ())
                who = f"{self._other} names" if is_own else "names"
                told = ": take it out there" if is_own else ""
                told = ": it is taken out there" if is_out else told
                print(f"{place}: {who} {self._gone[1]}{told}")
                named += not is_own and not is_out
        return named


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


def _new_errors(
    root: Path, loaded: Loaded, texts: Mapping[str, str | None], day: date
) -> list[Finding]:
    """The errors that the catalogue would have and has not: what names the one gets the other,
    which can make a circle of what comes first, or give a set a drill that it is too long for.
    """
    now = checked(loaded, day)
    known = {(own.code, own.place.file, own.message) for own in now.findings}
    contents = {file: text.encode("utf-8") for file, text in texts.items() if text is not None}
    would_be = checked(load(root, contents=contents), day, now.analysis)
    return [
        own
        for own in would_be.findings
        if own.is_error and (own.code, own.place.file, own.message) not in known
    ]
