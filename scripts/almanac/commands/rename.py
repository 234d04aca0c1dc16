"""Give an entry another id: its file, every place that names it, and the way from its old address;
or a squad, a lane group or a pool of the club, wherever it is named.

Comments and layout stay to the byte. All files are changed or none; what a kill leaves undone, the
next command does.
"""

from __future__ import annotations

import argparse
from codecs import BOM_UTF8
from collections.abc import Collection
from pathlib import Path

from almanac.commands.outcome import FINE, MachineError, UsageError, root_of
from almanac.findings import counted
from almanac.kinds import IN_CLUB, KIND
from almanac.model.load import Loaded, load
from almanac.model.renaming import RenamedFiles, RenameError, in_words, renaming
from almanac.publish.together import ChangedSince, Texts, change
from almanac.source.paths import bad_name
from almanac.source.suggest import nearest

NAME = "rename"
KINDS_NAMED = [kind.key for kind in KIND.values() if not kind.single and kind.key != "vocabulary"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("old", metavar="OLD", help="the id that it has")
    parser.add_argument("new", metavar="NEW", help="the id that it is to have")
    kinds = (*KINDS_NAMED, *IN_CLUB)
    parser.add_argument("--kind", choices=kinds, help="its kind, where two have the id")
    parser.add_argument("--dry-run", action="store_true", help="say what would change, and no more")


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    loaded = load(root)
    old, new = arguments.old, arguments.new
    kind = kind_of_id(loaded, old, arguments.kind, (*KINDS_NAMED, *IN_CLUB))
    if amiss := bad_name(new, new, "file"):
        raise UsageError(f"{amiss.message}: {amiss.hint}")
    try:
        due = renaming(loaded, kind, old, new)
    except RenameError as problem:
        raise UsageError(str(problem)) from None
    if not arguments.dry_run:
        own = KIND["club"].files if kind in IN_CLUB else loaded.documents[kind, old].file
        make(root, _marked(root, own, due), loaded)
    _say(due, kind, old, new, "would be" if arguments.dry_run else "is")
    return FINE


def _marked(root: Path, own: str, due: RenamedFiles) -> Texts:
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


def kind_of_id(
    loaded: Loaded, id: str, asked: str | None, among: Collection[str] = KINDS_NAMED
) -> str:
    """The kind of the one entry that has an id. Raises UsageError, with the nearest id, where none
    has, or several.
    """
    kinds = [asked] if asked else among
    in_club = [(kind, own) for kind in IN_CLUB for own in loaded.names.of("reference", kind)]
    known = dict.fromkeys([*loaded.documents, *in_club])
    found = [kind for kind in kinds if (kind, id) in known]
    if len(found) == 1:
        if found[0] in IN_CLUB:
            return found[0]
        if moved_to := loaded.documents[found[0], id].data.get("moved_to"):
            raise UsageError(f"'{id}' has moved already, to {moved_to}")
        return found[0]
    if found:
        raise UsageError(f"'{id}' is the name of a {' and a '.join(found)}: say which with --kind")
    lists = [name for (kind, name) in loaded.names.words if kind == "vocabulary"]
    own_list = next((own for own in lists if id in loaded.names.of("vocabulary", own)), "")
    if own_list and {*IN_CLUB} <= {*among}:
        raise UsageError(
            f"'{id}' is a word of the {own_list.replace('-', ' ')}: in a list of your own, "
            f"drills/vocabulary/{own_list}.yml, write the new word with 'also: [{id}]'; "
            f"almanac check --fix then puts it in its place everywhere"
        )
    near = nearest(id, [own for kind, own in known if kind in kinds])
    what = in_words(asked) if asked else "entry"
    raise UsageError(f"there is no {what} '{id}'" + (f"; the nearest: {near}" if near else ""))


def _say(due: RenamedFiles, kind: str, old: str, new: str, verb: str) -> None:
    for place in due.places:
        print(f"{place}: {old} {verb} {new}")
    leads = kind in KIND and KIND[kind].can_move
    print(
        f"{in_words(kind)} {old} {verb} {new}, named in {counted(len(due.places), 'place')}"
        + ("; its old address leads to the new one" if leads else "")
    )
    if kind in IN_CLUB and due.title:
        print(f"its title stays '{due.title}': where that is to change too, write it there")
    if kind in IN_CLUB and verb == "is":
        calendar = "" if kind == "pool" else ", or reads its calendar,"
        print(f"whoever has chosen it on a phone{calendar} chooses it once more")
    for place in due.mentions:
        print(f"{place}: the text says '{old}': look at it")
