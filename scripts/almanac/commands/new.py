"""Write a starter for a new entry: commented, and of the right shape.

In a terminal it asks for the title, the summary and every word that is chosen from a vocabulary,
and warns where an entry of that name or nearly so exists. Elsewhere it writes the starter and asks
nothing. A block may begin as a copy of an earlier one under new dates (--from, --starts).
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from almanac.commands.asking import ask
from almanac.commands.given import day_of
from almanac.commands.new_file import refuse_bad_id, write_new
from almanac.commands.new_from import block_from
from almanac.commands.outcome import FINE, UsageError, root_of, today
from almanac.kinds import KIND
from almanac.model.load import Loaded, load
from almanac.source.paths import bad_name
from almanac.source.starters import WITH_STARTER, NothingToName, starter
from almanac.source.suggest import nearest

NAME = "new"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "kind", metavar="KIND", choices=WITH_STARTER, help=f"one of {', '.join(WITH_STARTER)}"
    )
    parser.add_argument(
        "id",
        metavar="ID",
        help="lower-case letters, digits and single hyphens; it becomes the file's name",
    )
    parser.add_argument(
        "--family",
        metavar="F",
        help="for a drill: its family's folder below drills/skills (default: other)",
    )
    parser.add_argument("--from", dest="old", metavar="B", help="a block whose weeks are copied")
    parser.add_argument(
        "--starts", metavar="DATE", type=day_of, help="the Monday that the copy starts on"
    )


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    loaded = load(root)
    file = _file(root, arguments.kind, arguments.id, arguments.family)
    refuse_bad_id(loaded, arguments.kind, arguments.id, file)
    near = _near(loaded, arguments.kind, arguments.id)
    if near:
        print(f"note: there is already a {arguments.kind} '{near}'; look at it before you go on")
    if arguments.old or arguments.starts:
        return _copy(root, loaded, arguments, file)
    answers = ask(arguments.kind, loaded) if sys.stdin.isatty() and sys.stdout.isatty() else {}
    try:
        text = starter(
            arguments.kind, arguments.id, loaded.names, arguments.today or today(), answers
        )
    except NothingToName as problem:
        raise UsageError(str(problem)) from None
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    write_new(path, text)
    print(f"wrote {path}; change every line of it, then: almanac check")
    return FINE


def _copy(root: Path, loaded: Loaded, arguments: argparse.Namespace, file: str) -> int:
    if arguments.kind != "block" or not arguments.old:
        raise UsageError("--from BLOCK and --starts DATE are for a new block, and go together")
    text = block_from(loaded, arguments.old, arguments.starts)
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    write_new(path, text)
    print(f"wrote {path}; change its title, summary, purpose and meet, then: almanac check")
    return FINE


def _file(root: Path, kind: str, id: str, family: str | None) -> str:
    folder = KIND[kind].files
    if family is not None and not KIND[kind].deep:
        raise UsageError(f"--family is for drills, and '{id}' is to be a {kind}")
    if not KIND[kind].deep:
        return f"{folder}/{id}.yml"
    families = (
        sorted(path.name for path in (root / folder).iterdir() if path.is_dir())
        if (root / folder).is_dir()
        else []
    )
    chosen = family or (families[0] if families else "other")
    if bad_name(chosen, f"{folder}/{chosen}", "folder"):
        raise UsageError(
            f"'{chosen}' is no name for a family: lower-case letters, digits and single hyphens"
        )
    return f"{folder}/{chosen}/{id}.yml"


def _near(loaded: Loaded, kind: str, id: str) -> str | None:
    """An id of the kind that is spelt nearly the same."""
    return nearest(id, loaded.names.of("reference", kind), cutoff=0.8)
