"""Take an entry out of use: its page stays and says what took its place, and each place that still
names it is told, now and by ``check``.

Nothing is written, and the exit code is 1, where what takes its place could not stand there: it
would come before itself, or be broken. Other errors that come of it are told.
"""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.rename import KINDS_NAMED, kind_of_id, make
from almanac.commands.shared import checked
from almanac.findings import Finding, as_text, counted
from almanac.kinds import KIND
from almanac.model.catalogue import Key
from almanac.model.load import Loaded, load
from almanac.model.renaming import places_naming, retired
from almanac.source.reader import Document, read
from almanac.source.rewrite import Rewrites
from almanac.source.taken_out import without

NAME = "retire"
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
    document, successor = loaded.documents[kind, arguments.id], loaded.documents[kind, other]
    day = arguments.today or today()
    naming = places_naming(loaded.documents, kind, arguments.id)
    texts: dict[str, str | None] = {document.file: retired(document, other, day)}
    own = [
        (at.line, at.column)
        for at in (successor.place(*use) for use in naming.get((kind, other), {}))
    ]
    if own and _reads(successor, text := without(successor.text, own)):
        texts[successor.file] = text
    errors = _new_errors(root, loaded, texts, day)
    if refused := [own for own in errors if own.place.file in texts or own.code == _CIRCLE]:
        print(as_text(refused, len(loaded.documents)))
        print(f"nothing was written: {other} cannot take its place as it stands")
        return ERRORS
    if not arguments.dry_run:
        make(root, texts, loaded)
    named = _tell(loaded, naming, (kind, arguments.id), other, successor.file in texts)
    verb = "would be" if arguments.dry_run else "is"
    print(
        f"{kind} {arguments.id} {verb} retired; its page leads to {other}."
        f" {counted(named, 'place names', 'places name')} it: write {other} there, or another"
    )
    if errors:
        print(f"until then {other} is taken there, and check finds:")
        print(as_text(errors, len(loaded.documents)))
    return FINE


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


def _tell(
    loaded: Loaded, naming: Mapping[Key, Rewrites], gone: Key, other: str, is_out: bool
) -> int:
    """Say who names what is retired. How many places another entry has to be written in."""
    named = 0
    for key, places in naming.items():
        if key == gone:
            continue
        for path, is_key in places:
            place = loaded.documents[key].place(path, is_key)
            if key == (gone[0], other):
                told = "it is taken out there" if is_out else "take it out there"
                print(f"{place}: {other} names {gone[1]}: {told}")
            else:
                print(f"{place}: names {gone[1]}")
                named += 1
    return named
