"""What the form of "Add an entry" reads: notes that point into the published schemas, words and
ids, the repository's address.
"""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest
from example_cases import BASE

from almanac.analysis.analysis import Analysis
from almanac.model.club import Site
from almanac.model.load import load
from almanac.site.form_data import FILE, form_file
from almanac.site.settings import settings_of
from almanac.source import schemas

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
    published = schemas.published(kind, names.words)
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
    whole = schemas.published(kind, {})
    for pointer, note in schemas.notes(kind).items():
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
