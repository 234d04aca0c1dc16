"""Give an entry another id: its file, every place that names it, and the way from its old address.

Comments and layout stay to the byte. All files are changed or none; what a kill leaves undone, the
next command does.
"""

from __future__ import annotations

import argparse
from codecs import BOM_UTF8
from pathlib import Path

from almanac.commands.outcome import FINE, MachineError, UsageError, root_of
from almanac.findings import counted
from almanac.kinds import KIND
from almanac.model.load import Loaded, load
from almanac.model.renaming import Change, RenameError, renaming
from almanac.publish.together import ChangedSince, Texts, change
from almanac.source.paths import bad_name
from almanac.source.suggest import nearest

NAME = "rename"
KINDS_NAMED = [kind.key for kind in KIND.values() if not kind.single and kind.key != "vocabulary"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("old", metavar="OLD", help="the id that it has")
    parser.add_argument("new", metavar="NEW", help="the id that it is to have")
    parser.add_argument("--kind", choices=KINDS_NAMED, help="its kind, where two have the id")
    parser.add_argument("--dry-run", action="store_true", help="say what would change, and no more")


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    loaded = load(root)
    old, new = arguments.old, arguments.new
    kind = kind_of_id(loaded, old, arguments.kind)
    if amiss := bad_name(new, new, "file"):
        raise UsageError(f"{amiss.message}: {amiss.hint}")
    try:
        due = renaming(loaded, kind, old, new)
    except RenameError as problem:
        raise UsageError(str(problem)) from None
    if not arguments.dry_run:
        make(root, _marked(root, loaded.documents[kind, old].file, due), loaded)
    _say(due, kind, old, new, "would be" if arguments.dry_run else "is")
    return FINE


def _marked(root: Path, own: str, due: Change) -> Texts:
    """The texts of a change, the entry's own with a byte order mark where it had one."""
    if not (root / own).read_bytes().startswith(BOM_UTF8):
        return due.texts
    return {**due.texts, due.file: f"\ufeff{due.texts[due.file]}"}


def make(root: Path, texts: Texts, loaded: Loaded) -> None:
    """Make a change that was worked out from what was loaded. Raises MachineError where a file was
    written meanwhile.
    """
    read = {document.file: document.text for document in loaded.documents.values()}
    try:
        change(root, texts, read)
    except ChangedSince as problem:
        raise MachineError(str(problem)) from None


def kind_of_id(loaded: Loaded, id: str, asked: str | None) -> str:
    """The kind of the one entry that has an id. Raises UsageError, with the nearest id, where none
    has, or several.
    """
    kinds = [asked] if asked else KINDS_NAMED
    found = [kind for kind in kinds if (kind, id) in loaded.documents]
    if len(found) == 1:
        if moved_to := loaded.documents[found[0], id].data.get("moved_to"):
            raise UsageError(f"'{id}' has moved already, to {moved_to}")
        return found[0]
    if found:
        raise UsageError(f"'{id}' is the name of a {' and a '.join(found)}: say which with --kind")
    near = nearest(id, [own for kind, own in loaded.documents if kind in kinds])
    raise UsageError(f"there is no entry '{id}'" + (f"; the nearest: {near}" if near else ""))


def _say(due: Change, kind: str, old: str, new: str, verb: str) -> None:
    for place in due.places:
        print(f"{place}: {old} {verb} {new}")
    print(
        f"{kind} {old} {verb} {new}, named in {counted(len(due.places), 'place')}"
        + ("; its old address leads to the new one" if KIND[kind].can_move else "")
    )
    for place in due.mentions:
        print(f"{place}: the text says '{old}': look at it")
