"""Lanes and slots of a club that ``start`` begins: whatever it says of itself, nothing is amiss
with what is written for it, but that nobody has said what is done in an emergency.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pytest
import yaml
from shared import examples

from almanac.commands.main import main
from almanac.commands.shared import load_and_check
from almanac.model.new_club import LEVELS

DAY = date(2027, 6, 1)
GEAR = ("-", "kickboard=20", "fins=12 snorkel=3", "pull-buoy=2 hand-paddles=8", "tempo-beeper=1")
DEPTHS = ("0.6-0.9", "0.9-1.2", "1.0-1.9", "1.8-2", "2-5", "4-7ft", "3-12ft", "1.1")

DEEP = ("1.8-2", "2-5")  # where nobody can stand a practice cannot have the adults for more


def begun(root: Path, *options: str) -> set[str]:
    """What is amiss with a club that has just begun, by code."""
    assert main(["start", str(root), *options, "--today", DAY.isoformat()]) == 0
    return {one.code for one in load_and_check(root, DAY).findings} - {"emergency-unsaid"}


def drawn(seed: int) -> Sequence[str]:
    """Options of a club by chance: pools, a hall, squads, lane groups, some of them too full."""
    by = random.Random(seed)
    lanes = by.choice([1, 2, 3, 4, 6, 8, 10])
    pools = [
        f"{name} {by.choice(['25m', '25yd', '50m'])} {lanes} {by.choice(DEPTHS)}"
        for name in ("Home", "Summer", "Third")[: by.randint(1, 3)]
    ] + ["Hall land"] * by.randint(0, 1)
    options = ["--gear", by.choice(GEAR), "--pool", " / ".join(pools)]
    for number in range(by.randint(1, 3)):
        level, left, groups = by.choice(LEVELS), lanes, list[str]()
        while left and len(groups) < 3:
            own = by.randint(1, left)
            left -= own
            most = 45 if any(own in pools[0] for own in DEEP) else 200
            heads = by.choice([1, 4 * own, 8 * own, 15 * own, min(200, 25 * own)])
            groups.append(f"{own} {min(heads, most)} {by.choice(['-', '-', '4:40', '6:55'])}")
        squad = f"squad-{number} {level} {by.randint(1, 12)} {' / '.join(groups)}"
        options += ["--squad", squad]
    return options


@pytest.mark.parametrize("seed", range(examples(3, 80)))
def test_nothing_is_amiss_with_a_club_whatever_it_says_of_itself(seed: int, tmp_path: Path) -> None:
    assert begun(tmp_path / "own", *drawn(seed)) == set()


SMALL = ("--pool", "Home 25yd 2 1.0-1.9")


def items(root: Path, name: str) -> str:
    return (root / f"plans/{name}.yml").read_text("utf-8")


def test_a_lane_with_room_for_all_has_no_waves(tmp_path: Path) -> None:
    assert begun(tmp_path / "own", *SMALL, "--squad", "Reds building 3 2 6 -") == set()
    own = [file.read_text("utf-8") for file in (tmp_path / "own/plans/sets").glob("*building.yml")]
    assert len(own) == 2 and not any("waves" in text for text in own)
    assert "minutes: 60}" in items(tmp_path / "own", "practices/first-building")


def test_a_full_lane_goes_in_waves_for_which_the_slot_is_longer(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert begun(tmp_path / "own", *SMALL, "--squad", "Reds performing 3 2 14 -") == set()
    said = capsys.readouterr().out
    assert "note: lanes are full: in 3 of the sets and practices swimmers go in waves" in said
    assert "fewer rounds" not in said
    main_set = yaml.safe_load(items(tmp_path / "own", "sets/first-set-performing"))
    at_once = {it["waves"]["swimmers"] for it in main_set["items"][0]["items"]}
    assert at_once <= {4, 5, 6, 7}  # of nine in a lane, two waves
    practice = yaml.safe_load(items(tmp_path / "own", "practices/first-performing"))
    assert 60 < practice["slot"]["minutes"] <= 90


def test_where_no_slot_is_long_enough_there_are_fewer_rounds_in_a_practice(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert begun(tmp_path / "own", *SMALL, "--squad", "Reds foundation 3 2 30 -") == set()
    assert "first-foundation.yml has fewer rounds or reps" in capsys.readouterr().out
    practice = yaml.safe_load(items(tmp_path / "own", "practices/first-foundation"))
    assert practice["slot"]["minutes"] == 75 and practice["parts"][1]["rounds"] == 1
    assert "rounds: 2\n" in items(tmp_path / "own", "sets/first-set-foundation")


def test_for_far_too_many_in_a_lane_there_is_no_practice_and_that_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert begun(tmp_path / "own", *SMALL, "--squad", "Reds performing 3 1 40 -") == set()
    assert "note: Reds: no practice yet, for so many in a lane none fits" in capsys.readouterr().out
    assert not (tmp_path / "own/plans/practices/first-performing.yml").exists()


def test_with_its_emergency_plan_a_club_begins_without_a_word(tmp_path: Path) -> None:
    plan = "112 / Mill Lane 3 / By the clock. / In the hall. / By the door. / The yellow gate."
    assert begun(tmp_path / "own", *SMALL, "--emergency", plan) == set()
    assert load_and_check(tmp_path / "own", DAY).findings == []
    club = yaml.safe_load(items(tmp_path / "own", "club"))
    assert club["pools"]["home"]["emergency"]["call"] == "112"
    assert club["pools"]["home"]["emergency"]["way_in"] == "The yellow gate."


def test_a_hall_stands_beside_a_pool_in_one_line(tmp_path: Path) -> None:
    assert begun(tmp_path / "own", "--pool", "Home 25m 6 1.0-1.9 / Gym land") == set()
    club = yaml.safe_load(items(tmp_path / "own", "club"))
    assert {own: pool["course"] for own, pool in club["pools"].items()} == {
        "home": "25m",
        "gym": "land",
    }


def test_a_squad_for_which_no_practice_has_the_adults_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    options = ("--pool", "Deep 25m 8 1.8-2", "--squad", "Reds foundation 2 8 170 -")
    assert main(["start", str(tmp_path / "own"), *options, "--today", DAY.isoformat()]) == 2
    said = capsys.readouterr().err
    assert "Reds: 170 swimmers need 34 adults there, and a practice has 30 at most" in said


PLAN = "112 / Mill Lane / By the clock / In the hall / By the door / The yellow gate"


@pytest.mark.parametrize(
    ("level", "pool"),
    [
        ("foundation", "Home 25m 6 1.0-1.9"),
        ("building", "Lake 50m 8 1-2"),
        ("performing", "Hut 25yd 6 4ft"),
    ],
)
def test_a_block_that_is_begun_in_a_new_club_is_warned_of_nothing(
    level: str, pool: str, tmp_path: Path
) -> None:
    """Nothing in its practice comes before what it needs first."""
    root = tmp_path / "own"
    options = ("--pool", pool, "--squad", f"Reds {level} 2 2 9 -", "--emergency", PLAN)
    assert main(["start", str(root), *options, "--today", DAY.isoformat()]) == 0
    assert main(["new", "block", "june", "--root", str(root), "--today", DAY.isoformat()]) == 0
    said = {one.code for one in load_and_check(root, DAY).findings}
    assert said == {"starter-text"}, "which is what a coach is to write"
