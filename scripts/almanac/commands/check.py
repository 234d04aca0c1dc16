"""Run every check on everything and print all findings.

Exit code 0 where nothing is an error, 1 where something is.
"""

from __future__ import annotations

import argparse
import sys
from datetime import date
from pathlib import Path

from almanac.commands.found_before import FoundBefore
from almanac.commands.outcome import ERRORS, FINE, root_of, today
from almanac.commands.rubbish import rubbish_left
from almanac.findings import Findings
from almanac.progress import shown_on
from almanac.report.findings_shown import FORMATS
from almanac.source.snapshot import Snapshot, snapshot

NAME = "check"
_MOST_ROUNDS = 40  # of mends, each of which may lay another bare


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--format",
        choices=sorted(FORMATS),
        default="text",
        help="how findings are printed (default: text)",
    )
    parser.add_argument(
        "--all", action="store_true", help="print every finding, not only the first 20 of a file"
    )
    fix_help = (
        "first mend what has one right answer: ids that have moved, stand in another style or have "
        "one letter wrong, "
        "words and fields in capitals, days and times in another form, key order, quoted times, "
        "list order, what a set is expected to add up to"
    )
    parser.add_argument("--fix", action="store_true", help=fix_help)


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root)
    if arguments.fix:
        for line in mend(root, arguments.today or today()):
            print(line)
    findings = check_root(root, arguments.today or today())
    print(FORMATS[arguments.format](findings.found, findings.entries, arguments.all))
    return ERRORS if findings.has_errors else FINE


def check_root(root: Path, today: date) -> Findings:
    """Every finding below ``root``: as an earlier run found it where nothing has changed since,
    else worked out.
    """
    before, seen = FoundBefore(root, today), snapshot(root)
    findings = before.on(seen)
    return _check(root, today, seen, before) if findings is None else findings


@rubbish_left()  # until all that was worked out has gone again
def _check(root: Path, today: date, seen: Snapshot, before: FoundBefore) -> Findings:
    # What works out a catalogue takes longer to import than a catalogue without a change to check.
    from almanac.source.document_store import DocumentStore
    from almanac.source.read_ahead import begin_reading

    store = DocumentStore(root)
    ahead = begin_reading(root, store, seen.contents)
    from almanac.commands.shared import load_and_check  # which takes as long as to read

    with shown_on(sys.stderr) as told:
        checked = load_and_check(root, today, store, seen, told=told, ahead=ahead)
    store.save()
    return before.keep(seen, checked)


def mend(root: Path, today: date) -> list[str]:
    """Write what has one right answer into the entries below ``root``. Returns a line for each file
    that was changed.
    """
    from almanac.commands.fixing import fix, mend_expectations, mend_values, mend_words
    from almanac.model.load import load

    loaded, changed = load(root), list[str]()
    for _ in range(_MOST_ROUNDS):  # below a field that is spelt right now more may be mended
        files = mend_words(root, loaded)
        loaded = load(root) if files else loaded
        values = mend_values(root, loaded)
        loaded = load(root) if values else loaded
        changed += [*files, *values]
        if not files and not values:
            break
    tidied = fix(root, loaded)
    figures = mend_expectations(root, load(root) if tidied else loaded, today)
    return [f"mended {line}" for line in (*dict.fromkeys([*changed, *tidied]), *figures)]
