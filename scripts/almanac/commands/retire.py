"""Take an entry out of use: its page stays and says what took its place, and each place that still
names it is told, now and by ``check``; or what takes its place is written there.

Nothing is written, and the exit code is 1, where what takes its place could not stand there: it
would come before itself, or be broken. Where another entry has an error by it, nothing is written
either, but for --anyway: a club with an error is not built.
"""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.rename import KINDS_NAMED, kind_of_id, make
from almanac.commands.retire_files import RetiredFiles
from almanac.commands.shared import checked
from almanac.findings import Finding, counted, worst_first
from almanac.kinds import KIND
from almanac.model.load import Loaded, load
from almanac.model.renaming import places_naming
from almanac.report.findings_shown import as_text

NAME = "retire"
_UNTIL = "until then {} is taken there, and check finds:"
_CIRCLE = "circle"  # of drills that come before each other: it stands in no one place


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", metavar="ID", help="the entry that goes")
    what = parser.add_mutually_exclusive_group(required=True)
    what.add_argument("--for", dest="other", metavar="OTHER", help="the one that takes its place")
    what.add_argument("--to", metavar="OTHER", help="the same, and write it wherever ID is named")
    parser.add_argument("--kind", choices=KINDS_NAMED, help="its kind, where two have the id")
    parser.add_argument(
        "--anyway", action="store_true", help="also where check then finds errors, which are told"
    )
    parser.add_argument("--dry-run", action="store_true", help="say what would change, and no more")


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    loaded = load(root)
    kind = kind_of_id(loaded, arguments.id, arguments.kind)
    if not KIND[kind].can_move:
        raise UsageError(
            f"a {kind} has no page that could say what took its place: remove its file"
        )
    other = arguments.to or arguments.other
    kind_of_id(loaded, other, kind)
    if other == arguments.id:
        raise UsageError(f"'{other}' cannot take its own place")
    if loaded.catalogue is None:
        errors = [finding for finding in worst_first(loaded.findings) if finding.is_error]
        print(as_text(errors, loaded.count))
        print("nothing was written: with these nobody can say what would come of it")
        return ERRORS
    day = arguments.today or today()
    naming = places_naming(loaded.documents, kind, arguments.id)
    out = RetiredFiles(loaded, naming, (kind, arguments.id), other, day)
    out.take((kind, other), naming.get((kind, other), ()))
    out.take_from_circles()
    judged = {*out.texts}  # what only gets the other's id is looked at by whoever names it
    if arguments.to:
        out.write_everywhere()
    errors = _new_errors(root, loaded, out.texts, day)
    if refused := [own for own in errors if own.place.file in judged or own.code == _CIRCLE]:
        print(as_text(refused, loaded.count))
        print(f"nothing was written: {other} cannot take its place as it stands")
        return ERRORS
    if errors and not (arguments.anyway or arguments.dry_run):
        print(as_text(errors, loaded.count))
        print(
            f"nothing was written: with {other} in its place check would find these, and no site "
            f"is built with them; mend them first, take another, or add --anyway"
        )
        return ERRORS
    if not arguments.dry_run:
        make(root, out.texts, loaded)
    _say(out, kind, arguments.id, other, "would be" if arguments.dry_run else "is")
    if errors:
        print("check then finds:" if arguments.to else _UNTIL.format(other))
        if arguments.dry_run and not arguments.anyway:
            print("(for these, nothing is written without --anyway)")
        print(as_text(errors, loaded.count))
    return FINE


def _say(out: RetiredFiles, kind: str, id: str, other: str, verb: str) -> None:
    for line in out.told(verb):
        print(line)
    print(f"{kind} {id} {verb} retired; its page leads to {other}.", end=" ")
    if out.written:
        left = f"; {counted(out.left, 'place')} more only a hand can write" if out.left else ""
        print(f"{other} {verb} written in {counted(out.written, 'place')}{left}")
    else:
        if not out.left:
            print("No other entry names it")
            return
        named = counted(out.left, "place names", "places name")
        what = f"write {other} there, or another; --to {other} writes it everywhere"
        print(f"{named} it: {what if out.may_write else 'take it out there'}")


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
