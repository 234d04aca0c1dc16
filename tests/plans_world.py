"""A small club on disk with a practice and a block whose figures can be worked by hand."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.findings import Finding
from almanac.model.load import load

BASE = Path(__file__).parent / "examples" / "base"
TODAY = date(2026, 10, 1)
TESTED = date(2026, 9, 5)

PRACTICE = """\
title: Tuesday
summary: Kicking on the back, from start to end.
squad: heron
pool: home
slot: {start: "18:00", minutes: 30}
focus: Toes make the water boil.
parts:
  - {part: warm-up, talk: 2:00,
     items: [{reps: 2, distance: 50, do: back-kick, effort: easy, rest: 0:10}]}
  - {part: main, set: six-fifties, talk: 1:30}
  - {part: main,
     items: [{reps: 2, distance: 25, do: back-kick, effort: fast, gear: [fins], sendoff: 1:00}]}
  - {part: main, items: [{reps: 1, distance: 50, do: back-swim, effort: easy}]}
"""

BLOCK = """\
title: Autumn
summary: Three weeks of kicking on the back, the last one eased.
squad: heron
goals: [kick-technique]
starts: 2026-09-07
purpose: The fifty on the back gets two seconds quicker.
weeks:
  - focus: Line first.
    days: {mon: {practice: tuesday}, tue: {rest: true}, wed: {practice: tuesday}, thu: {rest: true},
           fri: {other: Land work, minutes: 30, rating: 4}, sat: {rest: true}, sun: {rest: true}}
    benchmarks: [back-kick-50]
  - focus: Then speed.
    days: {mon: {practice: tuesday}, wed: {practice: tuesday}, fri: {practice: tuesday},
      sun: {rest: true},
           tue: {rest: true}, thu: {rest: true}, sat: {rest: true}}
  - focus: Ease.
    taper: true
    days: {mon: {practice: tuesday}, sun: {rest: true},
           tue: {rest: true}, wed: {rest: true}, thu: {rest: true}, fri: {rest: true},
             sat: {rest: true}}
    benchmarks: [back-kick-50]
"""
# A slower lane group of the squad, between its first and the gear.
SECOND_GROUP = """\
  heron-2:
    title: Heron, lane 2
    squad: heron
    lanes: 1
    heads: 3
    gap: 0:10
    tests:
      - {benchmark: back-kick-50, time: 1:10.0, course: 25m, on: 2026-09-01}
gear_owned:
"""


def write(root: Path, file: str, text: str) -> None:
    """Put a file below the root."""
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")


def club(root: Path, practice: str = PRACTICE, block: str = BLOCK) -> Path:
    """The base catalogue with the practice and the block of this module; its tests were swum before
    the block.
    """
    shutil.copytree(BASE, root, dirs_exist_ok=True)
    own = root / "plans" / "club.yml"
    own.write_text(own.read_text("utf-8").replace("on: 2026-09-15", f"on: {TESTED}"), "utf-8")
    write(root, "plans/practices/tuesday.yml", practice)
    write(root, "plans/blocks/autumn.yml", block)
    return root


def analysis(root: Path, today: date = TODAY) -> Analysis:
    """The analysis of a sound folder."""
    loaded = load(root)
    assert loaded.catalogue is not None, loaded.findings
    return Analysis(loaded.catalogue, today)


def codes(root: Path) -> set[str]:
    """The codes of everything that loading and checking say."""
    loaded = load(root)
    findings: list[Finding] = list(loaded.findings)
    if loaded.catalogue:
        findings += check(Analysis(loaded.catalogue, TODAY))
    return {finding.code for finding in findings}
