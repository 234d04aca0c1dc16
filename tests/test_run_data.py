"""What is run on the deck comes to the very moments of the run sheet and the clock, from its data
alone.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from itertools import pairwise
from typing import Any

import pytest
from arithmetic_plans import QUICK, SLOW, club, part, practice_of, run, summarised, swim
from arithmetic_world import made, policy
from hand_worked_cases import CASES, read_all, summary
from jsonschema import Draft202012Validator
from run_laid import laid, of_rep, unrolled, whole
from shared import CATALOGUE, DAY
from test_arithmetic_run_sheet import of
from test_hand_worked import about

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.model.load import Loaded, load
from almanac.model.policy import LevelLimits, Vocabulary, Word
from almanac.model.practice import PracticePart
from almanac.model.reps import Reps
from almanac.report.run.json import practice_run, set_run, versioned
from almanac.report.run.line import MOST, cut, run_line
from almanac.resources import SITE_SOURCE
from almanac.site.run_data import run_files, shared_file

SCHEMA = Draft202012Validator(json.loads((SITE_SOURCE / "schemas/run.json").read_text("utf-8")))
A_TENTH = 0.1001  # each moment is rounded by itself


PARTS = made(Vocabulary, id="practice-parts", words={"main": Word("Main set", "The main thing.")})


@cache
def levels() -> Mapping[str, LevelLimits]:
    """The limits of the levels, as the small catalogue has them."""
    known = load(CATALOGUE).catalogue
    assert known is not None
    return known.policy.levels


def looked_at(catalogue: Catalogue) -> Analysis:
    """A catalogue made in code, with the limits that changes on the deck are held to."""
    own = policy(push_off_most=5, most_reps=1000, under_water_after_fast=60, dose_level_more=0)
    own = replace(own, levels=levels())
    words = {name: Word(name, "A level.") for name in ("building", "performing")}
    order = made(Vocabulary, id="levels", words=words)
    entries = {**catalogue.entries, ("policy", "policy"): own, ("vocabulary", "levels"): order}
    return Analysis(Catalogue(entries, {}, {}), DAY)


def runs_of(analysis: Analysis) -> dict[str, Any]:
    every = analysis.catalogue.entries.values()
    return {file: json.loads(text) for entry in every for file, text in run_files(analysis, entry)}


def differences(run_: dict[str, Any]) -> list[str]:
    """Where a run laid out from its data is at another moment than the run sheet."""
    found = []
    for own, key, done in whole(run_):
        crew = own["crews"][key]
        if not done.is_known or own.get("from"):
            assert crew.get("from", "ends_s" not in crew)
            continue
        pairs = [(done.starts_s, own["starts_s"]), (done.over_s, crew["ends_s"])]
        if "clock_over_s" in crew:
            pairs.append((done.clock_over_s, crew["clock_over_s"]))
        if "last_touch_s" in crew:
            pairs.append((done.home_s, crew["last_touch_s"]))
        most = A_TENTH * (own["stage"] + 1)  # each part begins when the one before it was over
        found += [f"{own['title']}, {key}: {a} and {b}" for a, b in pairs if abs(a - b) > most]
    return found


def test_every_practice_laid_end_to_end_is_its_run_sheet(analysis: Analysis) -> None:
    runs = runs_of(analysis)
    practices = [own for own in runs.values() if own["kind"] == "practice"]
    assert len(practices) == len(analysis.practices) > 1
    assert [told for own in practices for told in differences(own)] == []
    for own in practices:
        ends = analysis.practices[own["id"]].ends_s
        assert own["ends_s"] == pytest.approx(ends, abs=0.05)


@pytest.fixture(scope="module")
def hand_worked(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    return read_all(tmp_path_factory, moved=False)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
def test_a_set_laid_end_to_end_comes_to_what_was_worked_out_by_hand(
    case: Any, hand_worked: Loaded
) -> None:
    assert hand_worked.catalogue is not None
    found = summary(hand_worked, case.id, case.told.get("in_course"), case.told.get("asked", {}))
    own = set_run(Analysis(hand_worked.catalogue, DAY), found, ())
    crews = own["parts"][0]["crews"]
    for group, told in case.worked.get("groups", {}).items():
        blocks = crews[group]["blocks"] if group in crews else []
        done = laid(blocks)
        assert done.is_known == (told.get("clock") != "unknown") or "clock" not in told
        if told.get("clock", "unknown") != "unknown":
            assert done.clock_over_s == pytest.approx(about_number(told["clock"]), abs=A_TENTH)
        if told.get("last_touch", "unknown") != "unknown":
            assert done.home_s == pytest.approx(about_number(told["last_touch"]), abs=A_TENTH)
        if "targets" in told:
            worked = [None if text == "unknown" else about_number(text) for text in told["targets"]]
            assert [target for _, _, target, _ in done.goes] == [
                number if number is None else pytest.approx(number, abs=A_TENTH)
                for number in worked
            ]
        if "sendoffs" in told:
            each = [
                of_rep(block["every"], number)
                for block in unrolled(blocks)
                if "reps" in block
                for number in range(block["reps"])
            ]
            assert each == [about(text) for text in told["sendoffs"]]


def about_number(text: str) -> float:
    return float(about(text).expected)


def test_halves_that_are_apart_are_rows_of_their_own_all_evening() -> None:
    apart = PracticePart(
        "main",
        apart=(of("", swim(sendoff=120), half="first"), of("", swim(sendoff=200), half="second")),
    )
    practice = practice_of(part(swim(sendoff=100)), apart)
    catalogue = club(practice, PARTS)
    own = practice_run(looked_at(catalogue), summarised(practice, catalogue))
    keys = ["quick/first", "quick/second", "slow/first", "slow/second"]
    assert [crew["key"] for crew in own["crews"]] == keys
    assert [crew["heads"] for crew in own["crews"]] == [5, 5, 3, 3]
    assert [list(part_["crews"]) for part_ in own["parts"]] == [keys, keys[::2], keys[1::2]]
    assert [own["stage"] for own in own["parts"]] == [0, 1, 1]
    assert differences(own) == []


def test_what_has_no_length_waits_for_a_tap_and_later_moments_are_the_earliest() -> None:
    practice = practice_of(part(swim()), part(swim(sendoff=90)))
    known = club(practice, PARTS, groups={"quick": QUICK, "slow": replace(SLOW, tests=())})
    own = practice_run(looked_at(known), summarised(practice, known))
    quick, slow = (own["parts"][0]["crews"][key]["blocks"][0] for key in ("quick", "slow"))
    assert (quick["every"], quick["target"]) == (80, 80)
    assert (slow["every"], slow["target"], slow["marks"]) == (None, None, ["unknown"])
    assert own["parts"][1]["from"] is True and own["ends_s"] is None
    assert "from" not in own["parts"][0]


def test_what_is_rounded_is_not_lost_over_many_reps() -> None:
    """Thirty easy 25s straight on, each some hundredths beside the tenth."""
    own = practice_run(looked_at(club(PARTS)), run(part(swim(distance=25, effort="easy", reps=30))))
    crew = own["parts"][0]["crews"]["quick"]
    (block,) = crew["blocks"]
    each = set(block["every"])
    assert len(each) == 2, "a time that is whole tenths shows nothing"
    assert abs(30 * block["target"] - crew["clock_over_s"]) > 0.1
    assert laid([block]).clock_over_s == pytest.approx(crew["clock_over_s"], abs=1e-6)


def test_rounds_that_are_alike_stand_once(analysis: Analysis) -> None:
    rounds = [block for own in runs_of(analysis).values() for block in all_rounds(own)]
    assert any(own["times"] > 1 for block in rounds for own in block["rounds"])
    for block in rounds:
        texts = [json.dumps(own["blocks"]) for own in block["rounds"]]
        assert all(a != b for a, b in pairwise(texts))


def all_rounds(run_: dict[str, Any]) -> list[dict[str, Any]]:
    crews = [crew for own in run_["parts"] for crew in own["crews"].values()]
    return [block for crew in crews for block in crew["blocks"] if "rounds" in block]


def test_the_files_are_as_their_schema_says_and_a_phone_can_tell_two_apart(
    analysis: Analysis,
) -> None:
    SCHEMA.check_schema(SCHEMA.schema)
    shared = json.loads(shared_file(analysis.catalogue)[1])
    runs = runs_of(analysis)
    for name, own in [*runs.items(), ("shared", shared)]:
        assert [error.json_path for error in SCHEMA.iter_errors(own)] == [], name
    own = next(iter(runs.values()))
    without = {key: value for key, value in own.items() if key not in ("form", "version")}
    assert json.loads(versioned(without)) == own
    assert json.loads(versioned({**without, "minutes": 1}))["version"] != own["version"]
    for run_ in runs.values():
        named = {id for own in run_["parts"] for item in own["items"] for id in item["drills"]}
        assert named <= set(shared["drills"])
        assert {own["pool"]} <= {None, *shared["pools"]}


def test_a_line_is_read_across_the_pool(analysis: Analysis) -> None:
    lines = {
        item["line"]
        for own in runs_of(analysis).values()
        for part_ in own["parts"]
        for item in part_["items"]
    }
    assert max(map(len, lines)) <= MOST
    assert all(re.match(r"(\d+ × )?(\d|0:)", line) for line in lines)


def test_shares_that_are_alike_are_told_once(analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    item = next(
        own
        for swim_set in catalogue.sets.values()
        for own in swim_set.items
        if isinstance(own, Reps) and own.parts[0].distance
    )
    kick, swim_ = (
        replace(item.parts[0], do=do, distance=25)
        for do in ("back-streamline-kick", "backstroke-swim")
    )
    item = replace(
        item, reps=4, parts=(kick, kick, swim_, swim_), is_split=True, is_parted=False, stated=100
    )
    line = run_line(catalogue, item)
    assert re.fullmatch(r"(4 × )?100: Back[^+]+ \+ Back[^+]+", line)
    uneven = run_line(catalogue, replace(item, parts=(kick, swim_, swim_, swim_)))
    assert re.fullmatch(r"100: 25 Back[^+]+ \+ 75 Back[^+]+", uneven)


@pytest.mark.parametrize(
    ("text", "room", "short"),
    [
        ("Back kick with the board", 24, "Back kick with the board"),
        ("Back kick with the board", 20, "Back kick + board"),
        ("Back kick with the board", 12, "Back kick…"),
        ("Upside-down", 6, "Upsid…"),
    ],
)
def test_a_text_is_cut_after_a_whole_word(text: str, room: int, short: str) -> None:
    assert cut(text, room) == short
