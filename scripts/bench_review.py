"""``almanac review`` measured: changes of each kind that clubs make, each with nothing kept and
with its base kept from an earlier review; beside the goals in seconds and in rows of one screen.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from bench_lines import Report

ROOT = Path(__file__).resolve().parents[1]
NOTHING_KEPT_S, KEPT_S, ROWS = 5.0, 3.0, 30


@dataclass(frozen=True)
class Change:
    """A change of one file: the first match of ``before`` in it becomes ``after``."""

    what: str
    files: str
    before: str
    after: str


CHANGES = (
    Change("a factor", "drills/vocabulary/efforts.yml", r"of_best: 0\.89", "of_best: 0.91"),
    Change("a danger removed", "plans/sets/*.yml", r"\n  - hazard: \S+\n    own: .*\n", "\n"),
    Change("rounds", "plans/sets/*.yml", r"rounds: 3", "rounds: 2"),
    Change("a pace", "plans/club.yml", r"time: 0:5\d\.\d", "time: 0:50.5"),
    Change("a squad", "plans/club.yml", r"heads: 12", "heads: 10"),
    Change("a timetable", "plans/timetables/*.yml", r'begins: "16:30"', 'begins: "16:45"'),
)  # fmt: skip


def main() -> int:
    report = Report()
    with tempfile.TemporaryDirectory() as scratch:
        root = Path(scratch) / "club"
        _git(ROOT, "clone", "--quiet", "--no-local", str(ROOT), str(root))
        for number, change in enumerate(CHANGES):
            _make(root, change)
            _measure(report, root, change.what, Path(scratch) / f"kept-{number}")
        _new_drill(root)
        _measure(report, root, "a new drill", Path(scratch) / "kept-drill")
        _almanac(root, Path(scratch) / "kept", "rename", "back-streamline-kick", "long-line")
        _measure(report, root, "a rename", Path(scratch) / "kept-rename")
    return report.exit_code


def _measure(report: Report, root: Path, what: str, kept: Path) -> None:
    """Review the files as they stand, and again after a save more; then have them as they were."""
    first_s, rows = _review(root, kept)
    club = root / "plans/club.yml"
    club.write_text(f"{club.read_text('utf-8')}# a save more\n", "utf-8")
    again_s, _ = _review(root, kept)
    report.line(f"{what}, nothing kept", first_s, NOTHING_KEPT_S, "s", digits=2)
    report.line(f"{what}, base kept", again_s, KEPT_S, "s", digits=2)
    report.line(f"{what}, rows", rows, ROWS)
    _git(root, "checkout", "--quiet", ".")
    _git(root, "clean", "--quiet", "--force", "-d", "drills", "plans")


def _review(root: Path, kept: Path) -> tuple[float, int]:
    start = time.perf_counter()
    said = _almanac(root, kept, "review", "HEAD")
    return time.perf_counter() - start, said.count("\n")


def _make(root: Path, change: Change) -> None:
    for path in sorted(root.glob(change.files)):
        text, made = re.subn(change.before, change.after, path.read_text("utf-8"), count=1)
        if made:
            path.write_text(text, "utf-8")
            return
    sys.exit(f"nothing to change for {change.what}: {change.before} is nowhere in {change.files}")


def _new_drill(root: Path) -> None:
    like = next(iter(sorted(root.glob("drills/skills/*/*.yml"))))
    text = re.sub(r"\Atitle: .*", "title: Quite another drill", like.read_text("utf-8"))
    (like.parent / "quite-another-drill.yml").write_text(text, "utf-8")


def _almanac(root: Path, kept: Path, *words: str) -> str:
    inherited = {name: it for name, it in os.environ.items() if name != "ALMANAC_NO_CACHE"}
    done = subprocess.run(
        [sys.executable, "-m", "almanac", *words, "--root", str(root)],
        env={**inherited, "XDG_CACHE_HOME": str(kept)}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    if done.returncode not in (0, 1):
        sys.exit(f"almanac {words[0]} ended with {done.returncode}:\n{done.stdout}{done.stderr}")
    return done.stdout


def _git(root: Path, *words: str) -> None:
    subprocess.run(["git", "-C", str(root), *words], check=True)


if __name__ == "__main__":
    sys.exit(main())
