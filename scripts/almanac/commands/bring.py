"""Copy entries from another catalogue, with all that they need. Says where each came from, and
never writes over what is there.

A line that only points at an entry that does not come along goes; send-offs of lane groups that are
not here become a rest. The review that an entry had there stands for four weeks: by then somebody
here has read it, and signed it.
"""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from pathlib import Path

from almanac.commands.outcome import FINE, UsageError, root_of, today
from almanac.findings import counted
from almanac.kinds import KIND
from almanac.model.bringing import BROUGHT, Bringing, NotBrought, Origin, bring
from almanac.model.catalogue import Catalogue, Key
from almanac.model.load import load
from almanac.site.folder import naming
from almanac.source.suggest import nearest

NAME = "bring"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "ids", nargs="+", metavar="ID", help="an id, or kind/id where several kinds have it"
    )
    parser.add_argument(
        "--from",
        dest="source",
        type=Path,
        required=True,
        metavar="FOLDER",
        help="the folder of the other catalogue, which holds drills/ and plans/",
    )
    parser.add_argument("--dry-run", action="store_true", help="say what would come, write nothing")


def run(arguments: argparse.Namespace) -> int:
    root, source = root_of(arguments.root), root_of(arguments.source)
    of, into = load(source), load(root)
    if of.catalogue is None:
        raise UsageError(f"{source} is no sound catalogue: see almanac check --root {source}")
    wanted = [_key(of.catalogue, given) for given in arguments.ids]
    told = origin_of(of.catalogue)
    day = arguments.today or today()
    try:
        found = bring(of, into.names, wanted, Origin(told, day))
    except NotBrought as problem:
        raise UsageError(f"nothing was brought: {problem}") from None
    _refuse_overwriting(root, found)
    if not arguments.dry_run:
        write_all(root, found.files)
    for file in found.files:
        print(f"{file}  from {told}")
    for file in found.stays:
        print(f"{file}  is here already, and stays as it is")
    what = "would come" if arguments.dry_run else "came"
    came = counted(len(found.files), "entry", "entries")
    print(f"{came} {what}; read them, sign them, then: almanac check")
    return FINE


def origin_of(catalogue: Catalogue) -> str:
    """A catalogue in words: its club, and the address of its site where that is said."""
    club = catalogue.club
    return f"{club.title}, {club.site.address}" if club.site.address else club.title


def _key(catalogue: Catalogue, given: str) -> Key:
    kind, _, id = given.rpartition("/")
    kinds = [own for own in BROUGHT if (own, id) in catalogue.entries and kind in ("", own)]
    if len(kinds) > 1:
        choices = " or ".join(f"{own}/{id}" for own in kinds)
        raise UsageError(f"'{id}' is more than one entry there: write {choices}")
    if kinds:
        return kinds[0], id
    other = [own for own in KIND if own not in BROUGHT and (own, id) in catalogue.entries]
    if other:
        raise UsageError(
            f"'{id}' is a {other[0]}, which is of one club's squads and lanes: bring its sets, and "
            f"write one of your own"
        )
    near = nearest(id, [own for _, own in catalogue.entries])
    raise UsageError(f"nothing there is called '{given}'" + (f"; is it '{near}'?" if near else ""))


def _refuse_overwriting(root: Path, found: Bringing) -> None:
    there = [file for file in found.files if (root / file).exists()]
    if there:
        raise UsageError(f"nothing was brought: {there[0]} stands here already")


def write_all(root: Path, files: Mapping[str, str]) -> None:
    """Write new files, all or none. Raises OSError."""
    written: list[Path] = []
    try:
        for file, text in files.items():
            path = root / file
            path.parent.mkdir(parents=True, exist_ok=True)
            with naming(path), path.open("x", encoding="utf-8") as new:
                written.append(path)
                new.write(text)
    except BaseException:
        for path in written:
            path.unlink(missing_ok=True)
        raise
