"""``almanac sum PRACTICE`` as it is on the night, on the smallest catalogue: heron-1 is four heads
in one lane.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from example_cases import BASE

from almanac.commands.main import main


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A copy of the smallest catalogue, whose practice has fins in its first part."""
    shutil.copytree(BASE, tmp_path / "club")
    file = tmp_path / "club/plans/practices/tuesday.yml"
    text = file.read_text("utf-8").replace("effort: easy}]}", "effort: easy, gear: [fins]}]}", 1)
    file.write_text(text.replace("parts:\n", "adults: 2\nparts:\n"), "utf-8")
    return tmp_path / "club"


def night(capsys: pytest.CaptureFixture[str], root: Path, *argv: str) -> tuple[int, dict[str, Any]]:
    code = main(["sum", "tuesday", "--root", str(root), "--today", "2026-10-01", "--json", *argv])
    return code, json.loads(capsys.readouterr().out)


def test_without_a_change_it_is_as_written(capsys, root) -> None:
    code, data = night(capsys, root)
    assert code == 0 and data["slot_s"] == 3600
    assert data["adults"] == {
        "needed": 1, "there": 2, "jobs": {"coach": 1}, "must_be_adults": {"coach": 1},
    }  # fmt: skip
    assert data["gear"] == [{"gear": "fins", "needed": 4, "owned": 4}]
    assert len(data["sheet"]) == 2


def test_heads_adults_and_minutes_change_what_follows(capsys, root) -> None:
    change = ("--heads", "heron-1=6", "--adults", "2", "--minutes", "11")
    code, data = night(capsys, root, *change)
    assert data["gear"] == [{"gear": "fins", "needed": 6, "owned": 4}]
    assert data["adults"]["there"] == 2 and data["slot_s"] == 660
    assert data["slack_s"] == pytest.approx(660 - data["ends_s"], abs=0.1)
    codes = {finding["code"] for finding in data["findings"]}
    assert {"gear-short", "practice-overruns"} <= codes and code == 0


def test_a_coach_who_is_alone_tonight_is_told(capsys, root) -> None:
    code, data = night(capsys, root, "--adults", "1")
    assert code == 1
    assert "coach-alone" in {finding["code"] for finding in data["findings"]}


def test_lanes_change_what_follows(capsys, root) -> None:
    _, data = night(capsys, root, "--lanes", "heron-1=2,3")
    assert [row["groups"]["heron-1"]["lanes"] for row in data["sheet"]] == [[2, 3], [2, 3]]
    code, data = night(capsys, root, "--without-lane", "1")
    assert code == 1  # nobody can swim without a lane
    assert {finding["code"] for finding in data["findings"]} == {"lane-not-there"}


def test_a_later_part_may_come_next(capsys, root) -> None:
    _, data = night(capsys, root, "--from-part", "2")
    assert [row["set"] for row in data["sheet"]] == ["six-fifties"]


@pytest.mark.parametrize(
    ("argv", "said"),
    [
        (["--heads", "heron-1"], "GROUP=NUMBER"),
        (["--heads", "heron-1=4", "--heads", "heron-1=5"], "names heron-1 twice"),
        (["--heads", f"heron-1={'9' * 5000}"], "no whole number from 1 to 200"),
        (["--heads", "heron-1=none"], "'none' is no whole number"),
        (["--heads", "osprey-1=4"], "is not for osprey-1; it is for heron-1"),
        (["--lanes", "heron-1=1,,2"], "is no whole number"),
        (["--adults", "0"], "--adults is a whole number from 1 on"),
        (["--from-part", "3"], "has 2 parts"),
    ],
)
def test_what_cannot_be_is_said(capsys, root, argv, said) -> None:
    assert main(["sum", "tuesday", "--root", str(root), *argv]) == 2
    assert said in capsys.readouterr().err


def test_it_is_for_a_practice_alone(capsys, root) -> None:
    assert main(["sum", "six-fifties", "--root", str(root), "--adults", "2"]) == 2
    assert "for a practice" in capsys.readouterr().err
