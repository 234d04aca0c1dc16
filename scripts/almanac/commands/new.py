"""Write a starter for a new entry: commented, and of the right shape.

In a terminal it asks for the title, the summary and every word that is chosen from a vocabulary,
each with its meanings and a default, and warns where an entry of that name or nearly so exists.
Elsewhere it writes the starter and asks nothing. A drill stands in the family that its words say,
and words that its id names (butterfly, vertical) are taken from there. A block may begin as a copy
of an earlier one under new dates (--from, --starts). A list of words begins as the program's own.
"""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from almanac.commands.asking import as_yaml, ask, choose, is_word
from almanac.commands.given import day_of
from almanac.commands.new_file import refuse_bad_id, write_new
from almanac.commands.new_from import block_from
from almanac.commands.new_list import copy_list
from almanac.commands.new_named import named
from almanac.commands.new_words import families, family_of, words_said
from almanac.commands.outcome import FINE, UsageError, in_terminal, root_of, today
from almanac.kinds import KIND
from almanac.model.load import Loaded, load
from almanac.model.vocabularies import LAND
from almanac.source.paths import bad_name
from almanac.source.starters import WITH_STARTER, NothingToName, read_plainly, sentences, starter
from almanac.source.suggest import nearest
from almanac.units import ON_LAND

NAME = "new"
_LIST = "vocabulary"
_FOR_BLOCKS = "--from BLOCK and --starts DATE are for a new block, and go together"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "kind",
        metavar="KIND",
        choices=(*WITH_STARTER, _LIST),
        help=f"one of {', '.join(WITH_STARTER)}; or {_LIST}, for a list of the program's words as "
        "one of your own",
    )
    parser.add_argument(
        "id",
        metavar="ID",
        help="lower-case letters, digits and single hyphens; it becomes the file's name",
    )
    parser.add_argument(
        "--family",
        metavar="F",
        help="for a drill: its family's folder below drills/skills (default: that of the drills "
        "that are most like it by its words)",
    )
    parser.add_argument("--from", dest="old", metavar="B", help="a block whose weeks are copied")
    parser.add_argument(
        "--starts", metavar="DATE", type=day_of, help="the Monday that the copy starts on"
    )


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    file = _file(arguments.kind, arguments.id, arguments.family)
    if arguments.kind != "block" and (arguments.old or arguments.starts):
        raise UsageError(_FOR_BLOCKS)
    if arguments.kind == _LIST:
        return copy_list(root, arguments.id)
    loaded = load(root)
    refuse_bad_id(loaded, arguments.kind, arguments.id, file)
    near = _near(loaded, arguments.kind, arguments.id)
    if near:
        print(f"note: there is already a {arguments.kind} '{near}'; look at it before you go on")
    if arguments.old or arguments.starts:
        return _copy(root, loaded, arguments, file)
    text, family = _written(arguments, loaded)
    path = root / _file(arguments.kind, arguments.id, family or None)
    path.parent.mkdir(parents=True, exist_ok=True)
    write_new(path, text)
    print(f"wrote {path}; change every line of it, then: almanac check")
    return FINE


def _written(arguments: argparse.Namespace, loaded: Loaded) -> tuple[str, str]:
    """The text of a new entry, and of a drill its family: as they are asked for in a terminal, else
    by the words of the id.
    """
    kind, id, day = arguments.kind, arguments.id, arguments.today or today()
    said: dict[str, Any] = dict(words_said(kind, id, loaded))
    try:
        first = named(kind, {}, loaded)
        if first["course"] == ON_LAND and said.get("mode") != LAND:
            said = {}  # a club without water means no stroke by the words of an id
        usual = read_plainly(starter(kind, id, loaded.names, day, {}, first))
        if in_terminal():
            said = ask(kind, loaded, {**_defaults(kind, usual), **said})
        own = named(kind, said, loaded)
        answers = {name: as_yaml(it, is_word(kind, name)) for name, it in said.items()}
        text = starter(kind, id, loaded.names, day, answers, own)
    except NothingToName as problem:
        raise UsageError(str(problem)) from None
    family = str(arguments.family or "")
    if KIND[kind].deep and not family:
        family = family_of({**usual, **said}, id, loaded)
        if in_terminal():
            family = _asked_family(family, loaded)
    return text, family


def _asked_family(usual: str, loaded: Loaded) -> str:
    """The family of a drill, asked for until it will do."""
    while True:
        family = choose("family", "Its folder below drills/skills.", families(loaded), usual)
        try:
            _file("drill", "any", family)
        except UsageError as problem:
            print(f"  {problem}")
        else:
            return family


def _defaults(kind: str, usual: Mapping[str, Any]) -> dict[str, Any]:
    """What of a starter may stand: everything but the sentences that a coach is to write."""
    own = sentences(kind)
    return {name: it for name, it in usual.items() if it not in own.get((name,), ())}


def _copy(root: Path, loaded: Loaded, arguments: argparse.Namespace, file: str) -> int:
    if not arguments.old:
        raise UsageError(_FOR_BLOCKS)
    text = block_from(loaded, arguments.old, arguments.starts)
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    write_new(path, text)
    blocks = loaded.catalogue.blocks if loaded.catalogue else {}
    meet = (
        f", name the meet that it leads to in place of '{own}'"
        if (own := blocks[arguments.old].meet)
        else ""
    )
    print(f"wrote {path}; change its title, summary and purpose{meet}, then: almanac check")
    print("not copied: its review, and the words that it is found by")
    return FINE


def _file(kind: str, id: str, family: str | None) -> str:
    """Where a new entry is to stand; of a drill whose family is not known yet, in any."""
    folder = KIND[kind].files
    if family is not None and not KIND[kind].deep:
        raise UsageError(f"--family is for drills, and '{id}' is to be a {kind}")
    if not KIND[kind].deep:
        return f"{folder}/{id}.yml"
    chosen = family or "other"
    if bad_name(chosen, f"{folder}/{chosen}", "folder"):
        raise UsageError(
            f"'{chosen}' is no name for a family: lower-case letters, digits and single hyphens"
        )
    return f"{folder}/{chosen}/{id}.yml"


def _near(loaded: Loaded, kind: str, id: str) -> str | None:
    """An id of the kind that is spelt nearly the same."""
    return nearest(id, loaded.names.of("reference", kind), cutoff=0.8)
