"""Show what a change does: entries, every computed figure that moves, findings that appear and go.

Compares BASE with HEAD, or with the files as they stand now. Revisions are read from git's objects:
no file is checked out, no attribute heeded. Prints what fits a screen, or all of it, Markdown for a
pull request, or JSON. Exit code 1 where the change brings new errors.
"""

from __future__ import annotations

import argparse
import json
import shlex
import shutil
import sys

from almanac.analysis.comparison import review
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of, today
from almanac.commands.review_sides import Sides
from almanac.commands.rubbish import rubbish_left
from almanac.kinds import TOP_FOLDERS
from almanac.report.review.json import review_json
from almanac.report.review.markdown import review_markdown
from almanac.report.review.text import ROWS, WIDTH, review_text, review_whole
from almanac.source.git.objects import RevisionError, changed_files
from almanac.source.git.revision import resolve

NAME = "review"
_LEAST_ROWS, _LEAST_WIDTH = 20, 60  # of a terminal: one that says less does not know


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
    how = parser.add_mutually_exclusive_group()
    how.add_argument("--all", action="store_true", help="every line, not only what fits a screen")
    how.add_argument("--markdown", action="store_true", help="Markdown for a pull request")
    how.add_argument("--json", action="store_true", help="print JSON, version 1")
    parser.add_argument(
        "--links",
        default="",
        metavar="URL",
        help="where files can be looked at: Markdown then links them by line",
    )


@rubbish_left()
def run(arguments: argparse.Namespace) -> int:
    root, day = root_of(arguments.root), arguments.today or today()
    try:
        base = resolve(root, arguments.base)
        head = resolve(root, arguments.head) if arguments.head else ""
        sides = Sides(root, day)
        files = changed_files(root, base, head) if head else []
        before = sides.at(base)
        if head and not any(file.is_below(TOP_FOLDERS) for file in files):
            after = before
        elif head:
            after = sides.at(head, before)
        else:
            after = sides.here(before)
        sides.keep()
    except RevisionError as problem:
        raise UsageError(str(problem)) from None
    result = review(before, after, files)
    if arguments.json:
        print(json.dumps(review_json(result, base), ensure_ascii=False, indent=1))
    elif arguments.markdown or arguments.links:
        print(review_markdown(result, arguments.base, arguments.links), end="")
    elif arguments.all:
        print(review_whole(result, arguments.base), end="")
    else:
        print(review_text(result, arguments.base, _all_of(arguments), *_screen()), end="")
    return ERRORS if result.new_errors else FINE


def _screen() -> tuple[int, int]:
    """Rows and characters of the terminal that it is read on; the usual ones where it is none."""
    if not sys.stdout.isatty():
        return ROWS, WIDTH
    columns, rows = shutil.get_terminal_size((WIDTH, ROWS))
    return max(rows - 1, _LEAST_ROWS), min(max(columns, _LEAST_WIDTH), WIDTH)  # one is the prompt's


def _all_of(arguments: argparse.Namespace) -> str:
    """The command that shows every line."""
    said = ["almanac", NAME, arguments.base, *([arguments.head] if arguments.head else []), "--all"]
    is_elsewhere = arguments.root and str(arguments.root) != "."
    return shlex.join([*said, *(["--root", str(arguments.root)] if is_elsewhere else [])])
