"""The build measured: how long it takes beside a fixed corpus of plain MkDocs pages, and what comes
of it weighs; each beside its goal.
"""

from __future__ import annotations

import argparse
import gzip
import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from bench_corpus import write_corpus
from bench_lines import Report

ROOT = Path(__file__).resolve().parents[1]
# What the first version took for its whole build, as a multiple of the corpus in the same run:
# `scripts/bench build --reference` on two quiet cores, 2026-11-26: 5.55, and 5.63 again (it kept
# nothing between builds, and worked in one process).
REFERENCE_COMMIT = "c1cb5e6"
REFERENCE, REFERENCE_ENTRIES = 5.55, 318
SHARE = 1 / 3
SET_PAGE_BYTES, SITE_BYTES = 15_000, 4_000_000


@dataclass(frozen=True)
class Took:
    """How long a command took on the clock, and of the processor's time."""

    seconds: float
    processor: float

    def over(self, other: Took) -> Took:
        """As multiples of another."""
        return Took(self.seconds / other.seconds, self.processor / other.processor)


def took(command: Sequence[str | Path], **environment: str) -> Took:
    """Run a command. Ends the benchmark, with what it printed, where it fails."""
    inherited = {name: value for name, value in os.environ.items() if name not in _UNSET}
    before, start = _processor(), time.perf_counter()
    done = subprocess.run(
        [str(part) for part in command],
        env={**inherited, **environment}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    seconds = time.perf_counter() - start
    if done.returncode:
        sys.exit(f"{command[0]} ended with {done.returncode}:\n{done.stdout}{done.stderr}")
    return Took(seconds, _processor() - before)


# Left out of every run: without byte code every start compiles the whole program.
_UNSET = ("PYTHONDONTWRITEBYTECODE", "ALMANAC_NO_CACHE")


def _processor() -> float:
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime


def build_command(root: Path) -> list[str | Path]:
    """A whole build of the entries below ``root``."""
    return [sys.executable, "-m", "almanac", "build", "--root", root]


def measure(program: Path, work: Path, runs: int) -> tuple[list[Took], list[Took], Path]:
    """By run the multiples of the corpus that a first build takes, with nothing kept from earlier
    ones, and that one more takes; and the site.
    """
    settings = write_corpus(work / "corpus")
    first, again = [], []
    for run in range(-1, runs):  # the one before the first is not counted: it warms the machine
        root = work / f"root-{run}"
        for name in ("drills", "plans"):
            shutil.copytree(program / name, root / name)
        own = {"PYTHONPATH": str(program / "scripts"), "XDG_CACHE_HOME": str(root / "kept")}
        plain = took([sys.executable, "-m", "mkdocs", "build", "--quiet", "-f", settings])
        pair = [took(build_command(root), **own).over(plain) for _ in range(2)]
        if run >= 0:
            first.append(pair[0])
            again.append(pair[1])
    return first, again, root / "site"


def middle(ratios: list[Took]) -> Took:
    """The median of each."""
    return Took(median(r.seconds for r in ratios), median(r.processor for r in ratios))


def weigh(site: Path, report: Report) -> None:
    """What a set's page and the whole site weigh on the wire."""
    pages = [path for path in (site / "sets").glob("*.html") if "data-clocks" in path.read_text()]
    heaviest = max(pages, key=_compressed)
    report.line("heaviest page of a set, compressed", _compressed(heaviest), SET_PAGE_BYTES, "B")
    told = json.loads((site / "offline.json").read_text("utf-8"))
    more = f", {told['bytes'] / 1e6:.1f} MB on the device in {told['files']} files"
    report.line("the site kept on a phone, to fetch", told["fetched"], SITE_BYTES, "B", more)


def _compressed(path: Path) -> int:
    return len(gzip.compress(path.read_bytes(), 6, mtime=0))


def main() -> int:
    """Measure and print. Returns 1 where a goal is missed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--runs", type=int, default=3, help="how many pairs (default: 3)")
    parser.add_argument(
        "--reference", action="store_true",
        help=f"measure the first version, {REFERENCE_COMMIT}, in place of this one",
    )  # fmt: skip
    arguments = parser.parse_args()
    report = Report()
    with tempfile.TemporaryDirectory(prefix="almanac-bench-") as name:
        work = Path(name)
        if arguments.reference:
            clone = work / "first-version"
            took(["git", "clone", "--quiet", ROOT, clone])
            took(["git", "-C", clone, "checkout", "--quiet", REFERENCE_COMMIT])
            first, again, _ = measure(clone, work, arguments.runs)
            print(f"{REFERENCE_COMMIT}: first {middle(first)}, again {middle(again)}")
            return 0
        first, again, site = measure(ROOT, work, arguments.runs)
        for what, ratios in (("first build", first), ("build again", again)):
            found = middle(ratios)
            more = f"; of the processor {found.processor:.2f}"
            goal = REFERENCE * SHARE
            report.line(f"{what}, × the corpus", found.seconds, goal, "×", more, digits=2)
        weigh(site, report)
    return report.exit_code


if __name__ == "__main__":
    sys.exit(main())
