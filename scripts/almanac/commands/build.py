"""Check, compute, write the pages and build the site.

Stops before writing anything where a finding is an error. The new site replaces the old one only
when all of it has been built.
"""

from __future__ import annotations

import argparse
import shutil
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING

from almanac.commands.outcome import (
    ERRORS,
    FINE,
    MachineError,
    UsageError,
    demand_explanations,
    root_of,
    today,
)
from almanac.commands.rubbish import rubbish_left
from almanac.progress import Progress, shown_on, unseen
from almanac.report.findings_shown import as_text
from almanac.source.document_store import DocumentStore
from almanac.source.read_ahead import begin_reading
from almanac.source.snapshot import snapshot

if TYPE_CHECKING:
    from almanac.commands.shared import CheckedCatalogue

NAME = "build"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--out", type=Path, metavar="DIR", help="where the site goes (default: site/ in the root)"
    )


def run(arguments: argparse.Namespace) -> int:
    demand_explanations()
    started = time.perf_counter()
    root, day = root_of(arguments.root), arguments.today or today()
    store, seen = DocumentStore(root), snapshot(root)
    ahead = begin_reading(root, store, seen.contents)
    # To import what checks and builds takes as long as to read: both are done at once.
    import almanac.publish.build  # noqa: F401
    from almanac.commands.shared import load_and_check

    with shown_on(sys.stderr) as told:
        checked = load_and_check(root, day, store, seen, told=told, ahead=ahead)
        store.save()
    print(as_text(checked.findings, checked.loaded.count))
    out = arguments.out or root / "site"
    with shown_on(sys.stderr) as told, rubbish_left():
        built = build_checked(checked, root, out, told)
    if not built:
        return ERRORS
    where = "" if root == Path() else f" --root {root}"
    print(
        f"built {out} in {time.perf_counter() - started:.1f} s; look at it with: {typed()} "
        f"serve{where}, or open {out / 'index.html'}"
    )
    return FINE


def typed() -> str:
    """How to type this program here: by its name, or by its path where no name would find it."""
    path = Path(sys.argv[0])
    return str(path) if path.name == "almanac" and not shutil.which("almanac") else "almanac"


def build_checked(
    checked: CheckedCatalogue, root: Path, out: Path, told: Progress = unseen
) -> bool:
    """Build the site of a checked catalogue into ``out``; False, with the reason printed, where it
    cannot be. Raises UsageError where ``out`` holds something else, and MachineError.
    """
    from almanac.publish.build import build_site
    from almanac.publish.errors import DiskError, PlaceError, SiteError

    if checked.exit_code or checked.analysis is None:
        print("nothing was built: mend the errors first", file=sys.stderr)
        return False
    try:
        build_site(checked.analysis, checked.loaded.names, root, out, told, say_who_builds)
    except PlaceError as problem:
        raise UsageError(f"nothing was built: {problem}") from problem
    except DiskError as problem:
        raise MachineError(f"nothing was built: {problem}") from problem
    except SiteError as problem:
        print(f"nothing was built: {problem}", file=sys.stderr)
        return False
    return True


def say_who_builds(who: str) -> None:
    """Say for whom this build waits."""
    print(f"{who} builds here; this build waits until it is done", file=sys.stderr, flush=True)
