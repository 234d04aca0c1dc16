"""The program measured as a catalogue grows: check and build, each beside a general tool in the
same run, and beside its budget.
"""

from __future__ import annotations

import argparse
import json
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from almanac.analysis.askings import Readings
from almanac.model.load import load
from almanac.source import published_schemas
from almanac.source.files import EntryFile, entry_files
from almanac.wording.reading import asked_for
from bench_build import Took, build_command, took
from bench_check import measure, report_grown, report_own
from bench_lines import Report

ROOT = Path(__file__).resolve().parents[1]
FEW, MANY = 1_000, 10_000
# The kinds that are copied, in the proportions that they stand in.
GROWN = {"drill", "fault", "gear", "benchmark", "progression", "set", "practice"}
_LETTERS = str.maketrans("01234567", "bdfklmpt")
BUDGETS = {"mkdocs": 1.25, "growth": 10.5}
_PROSE = re.compile(
    r"(?m)^(?!.*[\[\]{}]|\s*[\w-]+(?:, [\w-]+)*,?$).*$"
)  # lines that hold sentences
_MENDS = re.compile(r"(?m)^mends:(?: \[[^\]]*\]\n|\n(?:  - .*\n)+)")
_WORD = re.compile(
    r"(?<=[a-z,;.] )(?:([a-z]{2,})[a-z]{3}|the|and|for|from|with|that|this)(?=[ ,.;?!]|$)"
)


def grown(root: Path, entries: int) -> Path:
    """A catalogue below ``root`` with about ``entries`` entries: the repository's own, and copies
    that say other words.
    """
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, root / name)
    files, _ = entry_files(root)
    copied = [file for file in files if file.kind in GROWN]
    for number in range(entries - len(files)):
        _copy(root, copied[number % len(copied)], f"{number:05o}".translate(_LETTERS)[-5:])
    _take_back(root)
    return root


def _copy(root: Path, entry: EntryFile, ending: str) -> None:
    """One more entry like another. The words of its texts get another ending, so that no two
    entries say the same.
    """
    path = root / entry.file
    text = re.sub(
        r'(?m)^title: *"?(.*?)"?$', rf'title: "\1 {ending}"', path.read_text("utf-8"), count=1
    )
    text = _MENDS.sub("", text)  # the faults name the first alone
    text = _PROSE.sub(lambda line: _reworded(line[0], ending[-3:]), text)
    path.with_name(f"{path.stem}-{ending}.yml").write_text(text, "utf-8")


def _take_back(root: Path) -> None:
    """Give copies that in other words ask for what is dangerous the words that they were copied
    from.
    """
    catalogue = load(root).catalogue
    assert catalogue is not None
    for file in {asked.entry.file for asked in Readings(catalogue).askings}:
        path = root / file
        written = path.with_name(f"{path.stem.rpartition('-')[0]}.yml").read_text("utf-8")
        path.write_text(_MENDS.sub("", written), "utf-8")


def _reworded(line: str, ending: str) -> str:
    """A line in other words; as it is where it speaks of what is dangerous, for in other words it
    could ask for it.
    """
    other = _WORD.sub(lambda word: f"{word[1] or ''}{ending}", line)
    return line if asked_for(other) else other


def seconds(command: Sequence[str | Path]) -> float:
    """How long a command takes. Ends the benchmark, with what it printed, where it fails."""
    start = time.perf_counter()
    done = subprocess.run(
        [str(part) for part in command], capture_output=True, text=True, check=False
    )
    if done.returncode:
        sys.exit(
            f"{' '.join(map(str, command[:4]))} ended with "
            f"{done.returncode}:\n{(done.stdout + done.stderr)[-2000:]}"
        )
    return time.perf_counter() - start


def build(root: Path, kept: Path) -> Took:
    """What ``almanac build`` takes with nothing kept from earlier ones; ``kept`` is a new folder
    for what it keeps.
    """
    return took(build_command(root), XDG_CACHE_HOME=str(kept))


def checker_s(root: Path, work: Path) -> float:
    """Seconds of a general JSON Schema checker's command line on the same files, with the schemas
    as the site publishes them.
    """
    total, files, words = 0.0, entry_files(root)[0], load(root).names.words
    for kind in sorted({file.kind for file in files}):
        schema = work / f"{kind}.json"
        schema.write_text(json.dumps(published_schemas.published(kind, words)), "utf-8")
        named = [root / file.file for file in files if file.kind == kind]
        total += seconds([_tool("check-jsonschema"), "--schemafile", schema, *named])
    return total


def mkdocs_s(root: Path) -> float:
    """Seconds of plain MkDocs, without our hooks, with the pages that a build has left on disk."""
    config = root / "build" / "plain.yml"
    text = (root / "build" / "mkdocs.yml").read_text("utf-8")
    config.write_text(re.sub(r"(?m)^hooks: .*$", "hooks: []", text), "utf-8")
    return seconds(
        [_tool("mkdocs"), "build", "--quiet", "--config-file", config, "--site-dir", root / "plain"]
    )


def _tool(name: str) -> Path:
    return Path(sys.executable).with_name(name)


def main() -> int:
    """Measure and print. Returns 1 where a goal is missed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument(
        "--quick",
        action="store_true",
        help="leave out the build of 10,000 entries, which takes long",
    )
    parser.add_argument("--check", action="store_true", help="measure check alone")
    arguments = parser.parse_args()
    report = Report()
    with tempfile.TemporaryDirectory(prefix="almanac-bench-") as name:
        work = Path(name)
        own, few, many = (
            grown(work / "own", 0),
            grown(work / "few", FEW),
            grown(work / "many", MANY),
        )
        report_own(report, len(entry_files(own)[0]), measure(own, work / "kept-own", 3))
        report_grown(report, FEW, measure(few, work / "kept-few", 3), None)
        found = measure(many, work / "kept-many", 1)
        report_grown(report, MANY, found, lambda: checker_s(many, work))
        if arguments.check:
            return report.exit_code
        build_few, plain = build(few, work / "kept-few-pages"), mkdocs_s(few)
        more = f" ({build_few.seconds:,.1f} s)"
        what = f"build of {FEW:,}, × plain MkDocs on its pages"
        report.line(what, build_few.seconds / plain, BUDGETS["mkdocs"], "×", more, digits=2)
        if not arguments.quick:
            build_many = build(many, work / "kept-many-pages")
            grew, what = build_many.over(build_few), f"build of {MANY:,}, × that of {FEW:,}"
            # Told of the processor too: a machine that does other work beside spoils the clock.
            more = f"; of the processor {grew.processor:.2f} ({build_many.seconds:,.1f} s)"
            report.line(what, grew.seconds, BUDGETS["growth"], "×", more, digits=2)
    return report.exit_code


if __name__ == "__main__":
    sys.exit(main())
