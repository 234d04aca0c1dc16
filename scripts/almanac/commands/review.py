"""Show what a change does: entries, every computed figure that moves, findings that appear and go.

Compares BASE with HEAD, or with the files as they stand now. Prints Markdown for a pull request, or
JSON. Exit code 1 where the change brings new errors.
"""

from __future__ import annotations

import argparse
import json
import tempfile
from datetime import date
from pathlib import Path

from almanac.analysis.comparison import Side, review
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.shared import checked
from almanac.model.load import load
from almanac.report.review_json import review_json
from almanac.report.review_markdown import review_markdown
from almanac.source.revision import RevisionError, export, resolve

NAME = "review"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "base", metavar="BASE", help="the revision to compare with: a branch, a tag or a commit"
    )
    parser.add_argument(
        "head",
        metavar="HEAD",
        nargs="?",
        help="the revision to look at (default: the files as they stand)",
    )
    parser.add_argument("--json", action="store_true", help="print JSON, version 1")
    parser.add_argument(
        "--links",
        default="",
        metavar="URL",
        help="where files can be looked at, to link them by line",
    )


def run(arguments: argparse.Namespace) -> int:
    root, day = root_of(arguments.root), arguments.today or today()
    try:
        base = resolve(root, arguments.base)
        result = review(
            _side_at(root, base, day),
            _side_at(root, arguments.head, day) if arguments.head else _side(root, day),
        )
    except RevisionError as problem:
        raise UsageError(str(problem)) from None
    if arguments.json:
        print(json.dumps(review_json(result, base), ensure_ascii=False, indent=1))
    else:
        print(review_markdown(result, arguments.base, arguments.links), end="")
    return ERRORS if result.new_errors else FINE


def _side_at(root: Path, revision: str, today: date) -> Side:
    with tempfile.TemporaryDirectory(prefix="almanac-") as folder:
        export(root, revision, Path(folder))
        return _side(Path(folder), today)


def _side(root: Path, today: date) -> Side:
    loaded = load(root)
    result = checked(loaded, today)
    return Side(loaded.documents, result.analysis, result.findings)
