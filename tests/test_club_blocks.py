"""Blocks composed for the club's own squads: every slot filled, nothing for check to say, the same
each time.
"""

from __future__ import annotations

import json
import random
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from shared import share

from almanac.commands import compose_block
from almanac.commands.main import main
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.report.block.wishes import LOAD_NEAR

ROOT = Path(__file__).parents[1]
DAY = date(2026, 11, 27)  # after this day the squads have slots, and no block
WISHES = {
    "heron": ["--starts", "2027-04-12", "--weeks", "8", "--test", "back-kick-50", "--kick", "20-35",
              "--strokes", "12"],
    "osprey": ["--starts", "2027-04-19", "--weeks", "8", "--test", "backstroke-200", "--meet",
               "long-course-in-june"],
    "reed": ["--starts", "2027-05-03", "--weeks", "6", "--test", "back-kick-50"],
}  # fmt: skip
GOALS = [
    "kick-technique",
    "kick-endurance",
    "kick-into-stroke",
    "stroke-technique",
    "aerobic-base",
    "line-and-balance",
]
UNLISTED = "and is not here"  # in the season: which blocks that names is the coach's to say


@cache
def read() -> CheckedCatalogue:
    return load_and_check(ROOT, DAY)


@pytest.mark.parametrize(
    ("squad", "seed"), share([(squad, seed) for squad in WISHES for seed in range(8)], 1, "blocks")
)
def test_a_block_is_composed_that_check_has_nothing_to_say_of(
    squad: str, seed: int, monkeypatch, capsys
) -> None:
    monkeypatch.setattr(compose_block, "load_as_checked", lambda root, day: read())
    chance = random.Random(seed)
    goals = [f"{goal}={chance.randint(1, 3)}" for goal in chance.sample(GOALS, 3)]
    argv = [
        "compose",
        "block",
        "--root",
        str(ROOT),
        "--today",
        str(DAY),
        "--squad",
        squad,
        *WISHES[squad],
    ]
    argv += ["--goals", ",".join(goals), "--no-solver", "--steps", "4000", "--json"]
    assert main(argv) == 0
    first = capsys.readouterr().out
    told: dict[str, Any] = json.loads(first)
    assert [message for message in told["findings"] if UNLISTED not in message] == []
    assert told["empty"] == []
    sessions = sum(len(each) for week in told["weeks"] for each in week["days"].values())
    assert sessions > 2 * len(told["weeks"]) - 1 and len(told["weeks"]) in (6, 8)
    assert [goal["goal"] for goal in told["goals"]] == [goal.partition("=")[0] for goal in goals]


def test_no_week_of_the_example_is_far_from_its_load_and_weeks_with_tests_are_lighter(
    monkeypatch, capsys
) -> None:
    """The command that README.md shows, by the usual loads."""
    monkeypatch.setattr(compose_block, "load_as_checked", lambda root, day: read())
    (row,) = (
        r
        for r in (ROOT / "README.md").read_text("utf-8").splitlines()
        if "| `compose block` |" in r
    )
    example = next(own for own in row.split("`") if own.startswith("--squad heron --starts "))
    argv = ["compose", "block", "--root", str(ROOT), "--today", str(DAY), *example.split()]
    assert main([*argv, "--no-solver", "--json"]) == 0
    told: dict[str, Any] = json.loads(capsys.readouterr().out)
    assert [week["wished"] for week in told["weeks"]] == [85, 95, 100, 80, 85, 95, 100, 80]
    assert all(abs(week["of_full"] - week["wished"]) <= LOAD_NEAR for week in told["weeks"])
    tested = [week["of_full"] for week in told["weeks"] if week["kind"] == "test"]
    loading = [week["of_full"] for week in told["weeks"] if week["wished"] >= 95]
    assert len(tested) == 3 and max(tested) < min(loading)
