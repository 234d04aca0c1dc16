"""Take an entry out of use: its page stays and says what took its place, and each place that still
names it is told, now and by ``check``.
"""

from __future__ import annotations

import argparse

from almanac.commands.outcome import FINE, UsageError, root_of, today
from almanac.commands.rename import KINDS_NAMED, kind_of_id, make
from almanac.findings import counted
from almanac.kinds import KIND
from almanac.model.load import load
from almanac.model.renaming import places_naming, retired
from almanac.source.reader import Document, read
from almanac.source.taken_out import without

NAME = "retire"


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
    document = loaded.documents[kind, arguments.id]
    day = arguments.today or today()
    successor = loaded.documents[kind, other]
    own = places_naming(loaded.documents, kind, arguments.id).get((kind, other), {})
    texts: dict[str, str | None] = {document.file: retired(document, other, day)}
    spots = [(at.line, at.column) for at in (successor.place(*use) for use in own)]
    if own and _reads(successor, text := without(successor.text, spots)):
        texts[successor.file] = text
    if not arguments.dry_run:
        make(root, texts, loaded)
    named = 0
    for key, places in places_naming(loaded.documents, kind, arguments.id).items():
        if key == (kind, arguments.id):
            continue
        for path, is_key in places:
            place = loaded.documents[key].place(path, is_key)
            if key == (kind, other):
                is_out = successor.file in texts
                told = "it is taken out there" if is_out else "take it out there"
                print(f"{place}: {other} names {arguments.id}: {told}")
            else:
                print(f"{place}: names {arguments.id}")
                named += 1
    verb = "would be" if arguments.dry_run else "is"
    print(
        f"{kind} {arguments.id} {verb} retired; its page leads to {other}."
        f" {counted(named, 'place names', 'places name')} it: write {other} there, or another"
    )
    return FINE
