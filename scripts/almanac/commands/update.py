"""Bring the entries of an older form to the present one. Comments and layout stay to the byte; all
files are changed or none.

A danger in a sentence gets its word, and the sentence stands under it; a publication in words is
named as an entry. Where a word is a guess, a comment says so, and what else it might be.
"""

from __future__ import annotations

import argparse

from almanac.commands.bring import origin_of
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.rename import make
from almanac.findings import counted
from almanac.model.bringing import NotBrought, Origin
from almanac.model.load import Loaded, load
from almanac.model.updating import NotUpdated, Updated, cites, updating
from almanac.report.findings_shown import as_text
from almanac.resources import HOME
from almanac.source.forms import FORM
from almanac.source.to_present_form import GUESS, UNWRITTEN

NAME = "update"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--dry-run", action="store_true", help="say what would change, and no more")


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    loaded = load(root)
    if newer := [one for one in loaded.findings if one.code == "newer-form"]:
        print(as_text(newer, loaded.count))
        return ERRORS
    shelf = load(HOME) if cites(loaded.documents) else None
    try:
        done = updating(loaded, shelf, Origin(_title(shelf), arguments.today or today()))
    except (NotUpdated, NotBrought) as problem:
        raise UsageError(f"nothing was changed: {problem}") from None
    if not arguments.dry_run:
        make(root, done.texts, loaded)
    print("\n".join(_said(done, not arguments.dry_run)))
    return FINE


def _title(shelf: Loaded | None) -> str:
    return origin_of(shelf.catalogue) if shelf and shelf.catalogue else ""


def _said(done: Updated, is_done: bool) -> list[str]:
    if not done.texts:
        return [f"every entry is in form {FORM} already: nothing to do"]
    lines = []
    if done.hazards:
        dangers = counted(done.hazards, "danger")
        lines.append(f"{dangers} named by a word, the sentence under 'own'")
    if done.guessed:
        lines.append(f"  {done.guessed:,} of these by a guess: look for '# {GUESS}'")
    if done.lists:
        lines.append(f"{counted(done.lists, 'list')} of whom gear is not for, put under 'people'")
    if done.speeds:
        drawings = counted(done.speeds, "drawing")
        lines.append(f"{drawings} with 'from_still' where 'still' stood among the speeds")
    if done.cited:
        claims = counted(done.cited - done.uncited, "claim")
        lines.append(f"{claims} of {done.cited:,} with a publication in words tied to its entry")
    if done.uncited:
        lines.append(f"  {done.uncited:,} name what is no entry yet: look for '# {UNWRITTEN}'")
    lines += [f"{file} {'came' if is_done else 'would come'} along" for file in done.brought]
    lines.append(
        f"{counted(done.entries, 'entry', 'entries')} written anew, the club in form {FORM}"
    )
    last = "now: almanac check" if is_done else "this is what it would do; nothing is written"
    return [*lines, last]
