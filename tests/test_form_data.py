"""What the form of "Add an entry" reads: notes that point into the published schemas, words and
ids, the repository's address.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from example_cases import BASE
from node_scripts import run_by_node
from shared import CATALOGUE, DAY, copied

from almanac.analysis.analysis import Analysis
from almanac.model.club import Site
from almanac.model.load import load
from almanac.report.whiteboard import board
from almanac.site.form_data import FILE, form_file
from almanac.site.settings import settings_of
from almanac.source import published_schemas, schemas

KINDS = (
    "drill",
    "fault",
    "gear",
    "benchmark",
    "progression",
    "source",
    "need",
    "set",
    "practice",
    "block",
    "meet",
    "timetable",
    "season",
    "log",
)


def pointed(schema: Any, pointer: str) -> Any:
    """The piece of a schema at a JSON Pointer (RFC 6901; no key here holds / or ~)."""
    for step in pointer.split("/")[1:]:
        schema = schema[step]
    return schema


@pytest.fixture(scope="module")
def form() -> dict[str, Any]:
    loaded = load(BASE)
    assert loaded.catalogue is not None
    file, text = form_file(loaded.catalogue, loaded.names, "https://host.example/club/almanac")
    assert file == FILE
    data: dict[str, Any] = json.loads(text)
    return data


@pytest.mark.parametrize("kind", KINDS)
def test_notes_point_at_the_pieces_that_they_are_about(form: dict[str, Any], kind: str) -> None:
    names = load(BASE).names
    published = published_schemas.published(kind, names.words)
    for pointer, note in form["kinds"][kind]["notes"].items():
        piece = pointed(published, pointer)
        for keyword in ("vocabulary", "reference"):
            if keyword in note:
                assert piece["enum"] == list(names.of(keyword, note[keyword]))
        if "clock" in note:
            assert "pattern" in piece
    assert {"/$defs/title"} <= form["kinds"][kind]["notes"].keys()


@pytest.mark.parametrize("kind", KINDS)
def test_notes_give_back_what_publishing_takes_away(kind: str) -> None:
    """Laid over the published schema they make the schema as it was written, but for what plain
    keywords say as well and what is for reviews alone.
    """
    whole = published_schemas.published(kind, {})
    for pointer, note in published_schemas.notes(kind).items():
        pointed(whole, pointer).update(note)

    def plain(piece: Any) -> Any:
        if isinstance(piece, list):
            return [plain(item) for item in piece]
        if not isinstance(piece, dict):
            return piece
        left_out = {"dependentSchemas", "not_with", "looser", "tells"} | (
            {"enum"} if {"vocabulary", "reference"} & piece.keys() else set()
        )
        return {key: plain(value) for key, value in piece.items() if key not in left_out}

    assert plain(whole) == plain(schemas.bundled(kind))


def test_every_word_and_id_is_there_with_its_title(form: dict[str, Any]) -> None:
    assert ["back-kick", "Back kick", "drills/skills/kicking/back-kick.yml"] in form["reference"][
        "drill"
    ]
    assert form["families"] == ["kicking", "swimming"]
    assert all(
        title and means for words in form["vocabulary"].values() for _, title, means in words
    )
    assert {id for id, _, _ in form["reference"]["lane_group"]} == set(
        load(BASE).names.of("reference", "lane_group")
    )
    assert form["kinds"]["drill"]["folder"] == "drills/skills"
    assert [kind for kind in KINDS if form["kinds"][kind]["in_families"]] == ["drill"]
    assert form["repository"] == "https://host.example/club/almanac"


@pytest.mark.parametrize("end", ["", "/", ".git", ".git/"])
def test_the_repository_is_the_clubs(analysis: Analysis, end: str) -> None:
    club = replace(
        analysis.catalogue.club, site=Site(repository=f"https://github.com/club/almanac{end}")
    )
    entries = {**analysis.catalogue.entries, ("club", "club"): club}
    assert (
        settings_of(replace(analysis.catalogue, entries=entries)).repository
        == "https://github.com/club/almanac"
    )


CHANGES = (
    "last: {reps: 1, effort: strong}",
    "2: {distance: 50}",
    "2: {do: backstroke-swim, effort: steady}",
    "3: {reps: 3, do: backstroke-swim}",
    (
        "last: {reps: 1, parts: [{distance: 25, do: back-streamline-kick, effort: strong}, "
        "{distance: "
        "50, do: backstroke-swim, effort: easy}]}"
    ),
    "last: {gear: [], effort: easy}",
)


def titled(words: Mapping[str, Any]) -> list[list[str]]:
    return [[id, word.title] for id, word in words.items()]


def test_the_board_of_a_set_in_the_form_says_what_is_another_in_a_round_as_its_page_does(
    tmp_path: Path,
) -> None:
    """Against the program's own board, for changes of number, distance, drill and parts."""
    root = copied(CATALOGUE, tmp_path / "club")
    file = root / "plans/sets/legs-before-arms.yml"
    text, cases = file.read_text("utf-8"), []
    effort = "            effort: {rotate: [strong, fast]}\n"
    assert effort in text
    for change in CHANGES:
        file.write_text(
            text.replace(effort, f"{effort}            by_round: {{{change}}}\n"), "utf-8"
        )
        catalogue = load(root).catalogue
        assert catalogue is not None
        lines = board(catalogue, catalogue.sets["legs-before-arms"])
        said = [line.what for line in lines if line.what.startswith(("Last round", "Round "))]
        assert len(said) == 1
        names = {
            "vocabulary": {"efforts": titled(catalogue.efforts)},
            "reference": {"drill": titled(catalogue.drills)},
        }
        data = catalogue.documents[catalogue.sets["legs-before-arms"].key].data["items"]
        cases.append({"items": data, "names": names, "said": said})
    path = tmp_path / "cases.json"
    path.write_text(json.dumps(cases), "utf-8")
    run_by_node(Path(__file__).parent / "add/board.test.js", CASES=str(path))


def test_what_a_set_in_the_form_comes_to_is_what_the_program_adds_up(tmp_path: Path) -> None:
    """For each lane group, changes by group and by round too. What goes by time has no distance in
    the form: the program's is estimated.
    """
    root, cases = copied(CATALOGUE, tmp_path / "club"), list[dict[str, Any]]()
    file = root / "plans/sets/legs-before-arms.yml"
    text, effort = file.read_text("utf-8"), "            effort: {rotate: [strong, fast]}\n"
    of_group = "{heron-1: {reps: 1}, heron-2: {reps: 5}}"
    for change in ("", *(f"by_round: {{{own}}}" for own in CHANGES), f"by_group: {of_group}"):
        file.write_text(text.replace(effort, f"{effort}            {change}\n"), "utf-8")
        catalogue = load(root).catalogue
        assert catalogue is not None
        analysis = Analysis(catalogue, DAY)
        for id, swim_set in catalogue.sets.items():
            if id == "legs-before-arms" or not change:
                swum = analysis.summary(id).swum
                far = {it: float(own.distance.value - own.estimated) for it, own in swum.items()}
                items = catalogue.documents[swim_set.key].data["items"]
                cases.append({"id": f"{id} {change}", "items": items, "far": far})
    assert len(cases) > 10 and any(len({*own["far"].values()}) > 1 for own in cases)
    path = tmp_path / "cases.json"
    path.write_text(json.dumps(cases), "utf-8")
    run_by_node(Path(__file__).parent / "add/total.test.js", CASES=str(path))
