"""Run every check on everything and print all findings.

Exit code 0 where nothing is an error, 1 where something is.
"""

from __future__ import annotations

import argparse

from almanac.commands.fixing import fix
from almanac.commands.shared import load_and_check, root_of
from almanac.findings import FORMATS
from almanac.model.load import load

NAME = "check"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--format",
        choices=sorted(FORMATS),
        default="text",
        help="how findings are printed (default: text)",
    )
    fix_help = "first mend what has one right answer: key order, quoted times, list order"
    parser.add_argument("--fix", action="store_true", help=fix_help)


def run(arguments: argparse.Namespace) -> int:
    if arguments.fix:
        root = root_of(arguments.root)
        for file in fix(root, load(root)):
            print(f"mended {file}")
    checked = load_and_check(arguments.root)
    print(FORMATS[arguments.format](checked.findings, checked.loaded.count))
    return checked.exit_code
