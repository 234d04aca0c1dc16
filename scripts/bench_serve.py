"""``almanac serve`` measured: from a save until the page in view is another, and until every page
that it touches is; each beside its goal. A browser then takes a third of a second to show a page.
That ``serve`` then looks at what is the same has no goal.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import urllib.request
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from bench_lines import Report

ROOT = Path(__file__).resolve().parents[1]
IN_VIEW_S, ALL_S = 1.0, 4.0
RUNS = 3
_WORD = "Anew "  # comes with one save and goes with the next


@dataclass(frozen=True)
class Save:
    """A kind of save: ``before`` and ``after`` by turns in a file; and the page looked at."""

    what: str
    file: str
    before: str
    after: str
    page: str


def saves(root: Path) -> list[Save]:
    """The kinds that are measured: words and a figure of a set, words of a drill, a vocabulary."""
    notes, pauses, summaries, words = (
        r"\n +note: (?=[A-Z])",
        r"pause_between: 0:45",
        r"\nsummary: >-\n  ",
        r"\n  kick-[a-z]+: {title: ",
    )
    set_file, note = _first(root, "plans/sets", notes)
    timed_file, pause = _first(root, "plans/sets", pauses)
    drill_file, summary = _first(root, "drills/skills", summaries)
    goals_file, title = _first(root, "drills/vocabulary", words)
    set_page, timed_page = (f"sets/{Path(file).stem}.html" for file in (set_file, timed_file))
    drill_page = f"drills/{Path(drill_file).stem}.html"
    return [
        Save("a set's note", set_file, note, f"{note}{_WORD}", set_page),
        Save("a set's pause", timed_file, pause, "pause_between: 0:50", timed_page),
        Save("a drill's summary", drill_file, summary, f"{summary}{_WORD}", drill_page),
        Save("a word's title", goals_file, title, f"{title}{_WORD}", "by/goal.html"),
    ]


def _first(root: Path, folder: str, pattern: str) -> tuple[str, str]:
    """The first file below a folder that holds a pattern, and what it holds there."""
    for path in sorted((root / folder).rglob("*.yml")):
        found = re.search(pattern, path.read_text("utf-8"))
        if found is not None and (folder != "drills/vocabulary" or path.stem == "goals"):
            return str(path.relative_to(root)), found[0]
    sys.exit(f"no entry in {folder} to be saved")


class Served:
    """``almanac serve`` on a copy of the catalogue."""

    def __init__(self, root: Path) -> None:
        for name in ("drills", "plans"):
            shutil.copytree(ROOT / name, root / name)
        self.root = root
        self._saved: set[Save] = set()  # those that stand in their file
        command = [sys.executable, "-m", "almanac", "serve", "--port", "0", "--root", str(root)]
        environment = {key: value for key, value in os.environ.items()
                       if key != "PYTHONDONTWRITEBYTECODE"}  # fmt: skip
        self._process = subprocess.Popen(
            command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
        )
        assert self._process.stdout is not None
        self._out: IO[str] = self._process.stdout
        self._address = self._until("serving ").split()[1]

    def _until(self, start: str) -> str:
        for line in self._out:
            if line.startswith(start):
                return line
        sys.exit("almanac serve has ended")

    def get(self, path: str) -> str:
        """What is served at a path."""
        with urllib.request.urlopen(self._address + path) as answer:
            text: str = answer.read().decode()
        return text

    def measure(self, save: Save) -> tuple[float, float]:
        """Seconds from a save until its page is another, and until the last page is."""
        version = re.search(r'data-version="(\d+)"', self.get(save.page))
        assert version is not None
        ask = f"_serve/changes?page={save.page}&since={version[1]}&told="
        told = json.loads(self.get(f"_serve/changes?page={save.page}&since=0&told="))["told"]
        path = self.root / save.file
        text, change = path.read_text("utf-8"), (save.before, save.after)
        if save in self._saved:
            change = change[::-1]
        self._saved ^= {save}
        start, start_ns = time.perf_counter(), time.time_ns()
        path.write_text(text.replace(*change, 1), "utf-8")
        while not (answer := json.loads(self.get(ask + told)))["reload"]:
            if answer["message"]:
                sys.exit(answer["message"])
        self.get(save.page)
        seen_s = time.perf_counter() - start
        self._until("built in")
        written = max(page.stat().st_mtime_ns for page in (self.root / "site").rglob("*.html"))
        return seen_s, (written - start_ns) / 1e9

    def stop(self) -> None:
        """End it."""
        self._process.terminate()
        self._process.wait()


def main() -> int:
    """Measure and print. Returns 1 where a goal is missed."""
    report = Report()
    with tempfile.TemporaryDirectory(prefix="almanac-bench-") as name:
        served = Served(Path(name))
        try:
            kinds = saves(served.root)
            served.measure(kinds[0])  # not counted: templates are compiled
            for save in kinds:
                taken = [served.measure(save) for _ in range(RUNS)]
                seen_s, all_s = (sorted(column)[RUNS // 2] for column in zip(*taken, strict=True))
                report.line(f"{save.what}: the page in view", seen_s, IN_VIEW_S, "s", digits=2)
                report.line(f"{save.what}: every page it touches", all_s, ALL_S, "s", digits=2)
        finally:
            served.stop()
    return report.exit_code


if __name__ == "__main__":
    sys.exit(main())
