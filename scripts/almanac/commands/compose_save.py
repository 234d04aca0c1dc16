"""Writes a proposal as a practice, once it has passed every check."""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.wishes import Wishes
from almanac.commands.new_file import refuse_bad_id, write_new
from almanac.commands.outcome import ERRORS, FINE, root_of, today
from almanac.commands.shared import CheckedCatalogue, checked
from almanac.kinds import KIND
from almanac.model.load import with_file
from almanac.report.compose.address import address
from almanac.report.compose.answer import Proposals
from almanac.report.compose.entry import as_yaml, practice_entry
from almanac.report.compose.usual import usual_start
from almanac.report.findings_shown import as_text

_KIND = "practice"


def save(
    everything: CheckedCatalogue, answer: Proposals, number: int, arguments: argparse.Namespace
) -> int:
    """Write the proposal of a number; nothing where a check has anything to say of it."""
    told = sys.stderr if arguments.json else sys.stdout  # JSON is alone where it is read
    root = root_of(arguments.root)
    alone = alone_words(answer)
    if alone:
        print(alone, file=told)
    file = _file(arguments.save)
    entry = practice_entry(
        answer.table,
        answer.made.candidates,
        answer.asked.wishes,
        answer.proposals[number - 1],
        arguments.start or usual_start(answer.analysis.catalogue, answer.table.squad.id),
        lanes_of(answer.table, answer.asked.wishes),
    )
    text = as_yaml(entry)
    with tempfile.TemporaryDirectory() as folder:
        draft = Path(folder) / f"{arguments.save}.yml"
        draft.write_text(text, "utf-8")
        tried = checked(
            with_file(everything.loaded, draft, _KIND),
            arguments.today or today(),
            everything.analysis,
        )
        found = [
            replace(own, place=replace(own.place, file=file))
            for own in tried.findings
            if own.place.file == str(draft)
        ]
    if found:
        print(as_text(found, 1), file=told)
        print(f"nothing was written: as {arguments.save} it would have these findings", file=told)
        return ERRORS
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    write_new(path, text)
    print(f"wrote {path}; read it through, then: almanac sum {arguments.save}", file=told)
    where = address(answer.analysis.catalogue, entry["composed"])
    print(f"to change it in Make a practice: {where}", file=told)
    return FINE


def _file(id: str) -> str:
    return f"{KIND[_KIND].files}/{id}.yml"


def refuse_taken(everything: CheckedCatalogue, id: str) -> None:
    """Raises UsageError for an id that cannot be one, or is a practice's already."""
    refuse_bad_id(everything.loaded, _KIND, id, _file(id))


def alone_words(answer: Proposals) -> str:
    """What to know beforehand of what is composed for some of a squad's lane groups: as an entry it
    is for all of them. "" where it is for all.
    """
    squad, groups = answer.table.squad, answer.asked.wishes.groups
    if len(groups) == len(squad.groups):
        return ""
    titles = " and ".join(squad.groups[group].title for group in groups)
    return (
        f"For {titles} alone. As an entry a practice is for all of {squad.title}, so that --save "
        "writes it only where\nthe others may swim it as well: to save one, leave out --groups."
    )


def lanes_of(table: ComposeTable, wishes: Wishes) -> Mapping[str, list[int]]:
    """The lanes of each lane group by number, from the first on, where they are not the usual."""
    usual = tuple(group.lanes for group in table.squad.groups)
    if wishes.lanes == usual:
        return {}
    found, taken = {}, 0
    for group, lanes in zip(table.squad.groups, wishes.lanes, strict=True):
        found[group.id] = list(range(taken + 1, taken + lanes + 1))
        taken += lanes
    return found
