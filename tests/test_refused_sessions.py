"""Sessions that a careless coach might write are refused by their structure; sound ones are not.

The list is our own: what must be refused follows from reference figures of federations and coaches'
bodies as ``plans/policy.yml`` names them beside each limit.
"""

from __future__ import annotations

import shutil
from collections import defaultdict
from pathlib import Path
from typing import Any

import pytest
import yaml
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.checks import RULES, check
from almanac.model.load import load

SESSIONS = Path(__file__).parent / "sessions"
SETS: list[dict[str, Any]]
PRACTICES: list[dict[str, Any]]
SETS, PRACTICES = (
    yaml.load((SESSIONS / f"{name}.yml").read_text("utf-8"), yaml.BaseLoader)
    for name in ("sets", "practices")
)
REFUSALS = {rule.code for rule in RULES if rule.is_refusal}
PUSH_OFF = "drills/skills/dolphin/dolphin-on-back-push-off.yml"
DRILLS = {  # beside those of the small catalogue: from its push-off, a change or two
    "dolphin-all-under": [("under_water: 5\n", ""), ("most: 6", "most: 20")],
    "long-walls": [("under_water: 5", "under_water: 9"), ("mode: underwater", "mode: wall"),
                   ("distance: 10", "distance: 25")],
    "kick-with-long-walls": [("under_water: 5", "under_water: 10"),
                             ("mode: underwater", "mode: kick"), ("distance: 10", "distance: 100"),
                             ("most: 6", "most: 100"), ("level: building", "level: performing")],
    "walls-of-seven": [("under_water: 5", "under_water: 7"), ("mode: underwater", "mode: wall"),
                       ("distance: 10", "distance: 25"), ("most: 6", "most: 8"),
                       ("rest: 1:00", "rest: 0:45")],
    "submarine": [("under_water: 5\n", ""), ("mode: underwater", "mode: submarine"),
                  ("distance: 10", "distance: 25"), ("most: 6", "most: 20")],
    "otter": [("under_water: 5\n", ""), ("mode: underwater", "mode: otter"),
              ("distance: 10", "distance: 25")],
    "side-stroke": [("under_water: 5\n", ""), ("mode: underwater", "mode: side-stroke"),
                    ("distance: 10", "distance: 25")],
    "push-and-glide": [("mode: underwater", "mode: wall"), ("level: building", "level: foundation"),
                       ("most: 6", "most: 12"), ("rest: 1:00", "rest: 0:20")],
    "short-walls": [("mode: underwater", "mode: wall"), ("distance: 10", "distance: 25")],
}  # fmt: skip
MODES = """\
  submarine: {title: Submarine, means: "Wholly beneath the waves, long and quick."}
  otter: {title: Otter, means: "On and off below the waves.", done: under-water}
  side-stroke: {title: On the side, means: "Lying on one side.", done: at-the-surface}
"""
HEAD = {"purpose": "It stands here to be looked at by the checks alone.", "goals": ["walls"]}


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, set[str]]:
    """By file, the codes of the errors of the small catalogue with every session laid into it."""
    root = tmp_path_factory.mktemp("sessions") / "club"
    shutil.copytree(CATALOGUE, root)
    text = (root / PUSH_OFF).read_text("utf-8")
    for name, changes in DRILLS.items():
        own = text
        for before, after in changes:
            assert before in own
            own = own.replace(before, after)
        (root / PUSH_OFF).with_name(f"{name}.yml").write_text(own, "utf-8")
    with (root / "drills/vocabulary/modes.yml").open("a", encoding="utf-8") as modes:
        modes.write(MODES)
    for number, case in enumerate(SETS):
        data = {"title": f"Session {number}", **HEAD, "level": case["level"], "course": "25m"}
        data |= {key: case[key] for key in ("variants", "items") if key in case}
        (root / file_of(number)).write_text(_written(data), "utf-8")
    for number, case in enumerate(PRACTICES):
        frame = {"squad": case["squad"], "pool": "home", "slot": {"start": "18:00", "minutes": 75}}
        data = {
            "title": f"Practice {number}",
            "summary": "It is here for the checks alone.",
            **frame,
        }
        data |= {"focus": "What the checks say.", "adults": 3, "parts": case["parts"]}
        text = _written(data).replace("18:00", '"18:00"')
        (root / f"plans/practices/session-{number}.yml").write_text(text, "utf-8")
    (root / "plans/blocks/session.yml").write_text(BLOCK, "utf-8")
    loaded = load(root)
    assert loaded.catalogue is not None
    assert {f"session-{number}" for number in range(len(PRACTICES))} <= {
        *loaded.catalogue.practices
    }
    found = defaultdict[str, set[str]](set)
    for finding in [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]:
        if finding.is_error:
            found[finding.place.file].add(finding.code)
    return found


# The last practice holds 40 m under water in one set: three of it a week are one too many for its
# level.
BLOCK = """title: A week too many
summary: It is here for what the checks say of its days.
squad: heron
goals: [walls]
starts: 2026-11-02
purpose: Nothing is gained by it, it is here for the checks.
weeks:
  - focus: Push-offs, and push-offs.
    days:
      mon: {sessions: [{practice: session-9, start: "06:00"},
        {practice: session-9, start: "18:00"}]}
      tue: {rest: true}
      wed: {practice: session-9}
      thu: {rest: true}
      fri: {practice: session-8}
      sat: {rest: true}
      sun: {rest: true}
race_day: 2026-11-14
"""


def file_of(number: int) -> str:
    return f"plans/sets/session-{number}.yml"


def _written(data: Any) -> str:
    """Data as strict YAML in flow form, its texts as they were read: no quotes come or go."""

    def flow(value: Any) -> str:
        if isinstance(value, dict):
            return "{" + ", ".join(f"{key}: {flow(own)}" for key, own in value.items()) + "}"
        if isinstance(value, list):
            return "[" + ", ".join(map(flow, value)) + "]"
        return str(value)

    return "\n".join(f"{key}: {flow(value)}" for key, value in data.items()) + "\n"


def test_there_are_forty_and_twenty() -> None:
    unsafe = [case for case in SETS if "codes" in case]
    assert len(unsafe) >= 40 and len(SETS) - len(unsafe) >= 20


@pytest.mark.parametrize("number", range(len(SETS)), ids=lambda number: SETS[number]["what"])
def test_a_session(number: int, told: dict[str, set[str]]) -> None:
    codes = told[file_of(number)]
    if "codes" in SETS[number]:
        assert codes & {*SETS[number]["codes"]} & REFUSALS, codes
    else:
        assert not codes


@pytest.mark.parametrize(
    "number", range(len(PRACTICES)), ids=lambda number: PRACTICES[number]["what"]
)
def test_a_practice(number: int, told: dict[str, set[str]]) -> None:
    codes = told[f"plans/practices/session-{number}.yml"]
    if "codes" in PRACTICES[number]:
        assert codes & {*PRACTICES[number]["codes"]} & REFUSALS, codes
    else:
        assert not codes


def test_days_of_a_block(told: dict[str, set[str]]) -> None:
    codes = told["plans/blocks/session.yml"]
    assert codes >= {"under-water-practice", "resisted-in-days", "resisted-before-meet"}
