"""Make a practice: what its page knows beforehand, and its scripts, in JavaScript, run by Node."""

from __future__ import annotations

import json
import random
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest
from compose_requests import drawn
from compose_runs import runs_as_entries
from compose_sizes import every_size
from node_scripts import run_by_node
from opened_practices import does_the_same, findings_of_saved, opened_by_page
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.report.compose.answer import Proposals, answered
from almanac.report.compose.json import table_json
from almanac.report.compose.table import compose_table
from almanac.site.make_page import make_data

TESTS = Path(__file__).parent / "make"
SQUADS = ("heron", "osprey")
HELD_BY_PARTS = {"keep", "leave_out"}  # of a request: what the page asks by a practice's parts
POOLS, REQUESTS = ("home", "home", "long-course", "yards-meet"), 24


def analysed(root: Path) -> Analysis:
    catalogue = load(root).catalogue
    assert catalogue is not None
    return Analysis(catalogue, DAY)


def test_the_page_knows_squads_their_usual_slot_and_what_is_planned() -> None:
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    data = make_data(Analysis(catalogue, DAY))
    squads = {id: rest for id, *rest in data["squads"]}
    assert list(squads) == list(catalogue.club.squads)
    groups = [[id, own.title] for id, own in catalogue.lane_groups.items() if own.squad == "heron"]
    practice = catalogue.practices["heron-kick-and-go"]
    slot = practice.slot
    assert squads["heron"] == ["Heron", groups, practice.pool, slot.start, slot.minutes]
    planned = [own for own in data["planned"] if own[1] == "heron"]
    assert planned and planned[0][2:] == [slot.start, slot.minutes, practice.pool]
    kept = [[log.on.isoformat(), log.practice] for log in catalogue.logs.values()]
    assert kept and sorted(kept) == data["kept"]
    assert data["parts"]["w"] == catalogue.words("practice-parts")["warm-up"].title
    assert set(data["parts"]) == set("wsmnoec")


@pytest.mark.parametrize("name", ["apply", "asked", "link", "often", "swim", "words"])
def test_scripts(name: str) -> None:
    run_by_node(TESTS / f"{name}.test.js")


def test_the_answer_is_there_before_it_is_asked_for(tmp_path: Path) -> None:
    analysis = analysed(CATALOGUE)
    made = compose_table(analysis, "heron")
    requests = []
    for seed in range(REQUESTS):
        request = drawn(made.table, random.Random(seed), "home")
        if answered(analysis, made, request).proposals:
            whole = asdict(request)
            requests.append({key: own for key, own in whole.items() if key not in HELD_BY_PARTS})
    assert len(requests) >= REQUESTS / 2
    path = tmp_path / "requests.json"
    path.write_text(json.dumps({"data": table_json(analysis, made), "requests": requests}), "utf-8")
    run_by_node(TESTS / "answer.test.js", REQUESTS=str(path))


def asked() -> list[tuple[Proposals, dict[str, Any]]]:
    """Requests for whole squads by chance, in pools of every length, with their answers."""
    analysis = analysed(CATALOGUE)
    tables = {squad: compose_table(analysis, squad) for squad in SQUADS}
    found = []
    for seed in range(REQUESTS):
        chance = random.Random(seed)
        made = tables[chance.choice(SQUADS)]
        pool = chance.choice(POOLS)
        request = drawn(made.table, chance, pool)
        if not request.groups:
            found.append((answered(analysis, made, request), asdict(request)))
    return found


def test_every_size_of_every_piece_is_run_as_the_program_runs_it(tmp_path: Path) -> None:
    """In every pool, each lane group its own: send-off by send-off, to the tenth, line by line."""
    path = tmp_path / "sizes.json"
    path.write_text(json.dumps(every_size(analysed(CATALOGUE))), "utf-8")
    run_by_node(TESTS / "sizes.test.js", SIZES=str(path))


def test_every_practice_opens_on_its_own_clock_and_is_run_changed_and_saved_word_for_word(
    tmp_path: Path,
) -> None:
    """Stations, a part that only some do, a set: what cannot be composed is held, and the program
    does what the page does.
    """
    analysis = analysed(CATALOGUE)
    steps = opened_by_page(analysis, tmp_path)
    assert {own["id"] for own in steps} == set(analysis.catalogue.practices)
    assert any(own["piece"].startswith("held/") for own in steps[0]["practice"]["parts"])
    does_the_same(analysis, steps)
    saved, told = findings_of_saved(CATALOGUE, tmp_path, steps)
    assert saved > len(analysis.catalogue.practices)
    assert told == []


def test_a_composed_practice_is_run_as_the_build_runs_it_once_it_is_an_entry(
    tmp_path: Path,
) -> None:
    """Every proposal is written as an entry beside the others: that the build makes the same run of
    it as the page does, send-off by send-off, and that no rule of check but that of likeness has
    anything to say of it.
    """
    written = runs_as_entries(CATALOGUE, asked(), tmp_path)
    run_by_node(TESTS / "lay.test.js", CASES=str(written))
