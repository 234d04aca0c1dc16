"""``almanac check`` measured: with nothing kept, with nothing changed and with one entry changed,
each beside its goal: seconds for this catalogue, a share of what a general schema checker takes for
a large one.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from bench_lines import Report

WARM_S, ONE_CHANGED_S = 1.0, 1.2
COLD_SHARE, WARM_SHARE = 0.25, 0.05


@dataclass(frozen=True)
class Check:
    """Seconds of ``almanac check``: the first, one more, and one after a save."""

    cold_s: float
    warm_s: float
    changed_s: float


def measure(root: Path, kept: Path, runs: int) -> Check:
    """The medians of so many runs, with the cache in the folder ``kept``."""
    path = next((root / "plans" / "sets").glob("*.yml"))
    cold, warm, changed = [], [], []
    for run in range(runs):
        own = kept / str(run)
        cold.append(_check_s(root, own))
        warm.append(_check_s(root, own))
        path.write_text(f"{path.read_text('utf-8')}# {run}\n", "utf-8")
        changed.append(_check_s(root, own))
    return Check(median(cold), median(warm), median(changed))


def _check_s(root: Path, kept: Path) -> float:
    left_out = {"PYTHONDONTWRITEBYTECODE", "ALMANAC_NO_CACHE"}
    inherited = {name: value for name, value in os.environ.items() if name not in left_out}
    start = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-m", "almanac", "check", "--root", root],
        env={**inherited, "XDG_CACHE_HOME": str(kept)}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    if done.returncode:
        sys.exit(f"almanac check ended with {done.returncode}:\n{done.stdout}{done.stderr}")
    return time.perf_counter() - start


def report_own(report: Report, entries: int, found: Check) -> None:
    """The rows of this catalogue, in seconds."""
    print(f"     check of {entries:,}, nothing kept: {found.cold_s:.2f} s")
    report.line(f"check of {entries:,}, nothing changed", found.warm_s, WARM_S, "s", digits=2)
    report.line(f"check of {entries:,}, one changed", found.changed_s, ONE_CHANGED_S, "s", digits=2)


def report_grown(
    report: Report, entries: int, found: Check, checker_s: Callable[[], float] | None
) -> None:
    """The rows of a grown catalogue: in seconds, and as a share of a general checker where one is
    given.
    """
    print(
        f"     check of {entries:,}: nothing kept {found.cold_s:.2f} s, nothing changed "
        f"{found.warm_s:.2f} s, one changed {found.changed_s:.2f} s"
    )
    if checker_s is not None:
        other_s = checker_s()
        more = f" of the {other_s:.1f} s of a general checker"
        for what, value_s, goal in (("nothing kept", found.cold_s, COLD_SHARE),
                                    ("nothing changed", found.warm_s, WARM_SHARE)):  # fmt: skip
            row = f"check of {entries:,}, {what}"
            report.line(row, value_s / other_s, goal, "×", more, digits=3)
