"""Run every check on everything and print all findings.

Exit code 0 where nothing is an error, 1 where something is.
"""

from __future__ import annotations

import argparse

from almanac.commands.shared import load_and_check
from almanac.findings import FORMATS

NAME = "check"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--format", choices=sorted(FORMATS), default="text", help="how findings are printed (default: text)")


def run(arguments: argparse.Namespace) -> int:
    checked = load_and_check(arguments.root)
    print(FORMATS[arguments.format](checked.findings, checked.loaded.count))
    return checked.exit_code
