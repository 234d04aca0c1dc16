"""Write what a spreadsheet can open: a practice with its run sheet or the days of a block as CSV,
or without NAME everything, as one zip of CSV.

What is computed stands in it as on the site. No text of an entry is taken for a formula.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from almanac.commands.find_entry import find_entry
from almanac.commands.outcome import ERRORS, FINE, UsageError, today
from almanac.commands.shared import load_and_check
from almanac.findings import counted
from almanac.publish.atomic import replace_file
from almanac.report.findings_shown import as_text
from almanac.site.calendar import block_table
from almanac.site.practice_table import practice_table
from almanac.site.spreadsheet_files import tables, zipped
from almanac.site.spreadsheets import MARK

NAME = "export"
_KINDS = ("practice", "block")
_ALL = Path("spreadsheets.zip")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "name", metavar="NAME", nargs="?", help="a practice or a block (default: everything)"
    )
    parser.add_argument(
        "--out",
        type=Path,
        metavar="FILE",
        help=f"where it goes (default: what is printed; of everything, {_ALL})",
    )


def run(arguments: argparse.Namespace) -> int:
    out = arguments.out if arguments.name else arguments.out or _ALL
    if out and out.exists():  # it may be somebody's own
        raise UsageError(f"{out} is there already: name another file with --out")
    return _one(arguments, out) if arguments.name else _everything(arguments, out)


def _one(arguments: argparse.Namespace, out: Path | None) -> int:
    found = find_entry(arguments.root, arguments.name, arguments.today or today(), _KINDS)
    if found.analysis is None or not found.computable:
        print(as_text(*found.reasons))
        return ERRORS
    analysis = found.analysis
    if found.kind == "block":
        table = block_table(analysis.blocks[found.id])
    else:
        table = practice_table(analysis, found.id)
    if out:
        replace_file(out, f"{MARK}{table}".encode())
    else:
        sys.stdout.write(table)
    return FINE


def _everything(arguments: argparse.Namespace, out: Path) -> int:
    checked = load_and_check(arguments.root, arguments.today or today())
    if checked.analysis is None or checked.exit_code:
        errors = [finding for finding in checked.findings if finding.is_error]
        print(as_text(errors, checked.loaded.count))
        return ERRORS
    made = list(tables(checked.analysis))
    replace_file(out, zipped(made))
    print(f"{out} holds {counted(len(made), 'table')}")
    return FINE
