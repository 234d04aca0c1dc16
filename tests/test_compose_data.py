"""What practices are composed of, held to its schema, to the catalogue and to the run sheet."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator
from run_laid import laid
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import UNKNOWN, Size
from almanac.arithmetic.composing.table import ComposeTable
from almanac.model.load import load
from almanac.report.compose.laid import Layer
from almanac.report.compose.runs import run_of
from almanac.report.compose.sizes import sizes_of
from almanac.report.compose.table import compose_table
from almanac.resources import SITE_SOURCE
from almanac.site.compose_data import compose_files

SCHEMA_OF_RUNS = Draft202012Validator(
    json.loads((SITE_SOURCE / "schemas/compose_runs.json").read_text("utf-8"))
)
SCHEMA = Draft202012Validator(json.loads((SITE_SOURCE / "schemas/compose.json").read_text("utf-8")))


@cache
def analysed() -> Analysis:
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    return Analysis(catalogue, DAY)


@cache
def table(squad: str) -> ComposeTable:
    return compose_table(analysed(), squad).table


def files() -> dict[str, Any]:
    squads = analysed().catalogue.club.squads
    found = (own for squad in squads for own in compose_files(analysed(), squad))
    return {file: json.loads(text) for file, text in found if file.count("/") == 3}


def run_files() -> dict[tuple[str, str], Any]:
    """By squad and pool what pieces are run by."""
    squads = analysed().catalogue.club.squads
    found = (own for squad in squads for own in compose_files(analysed(), squad))
    return {
        (file.split("/")[-2], file.split("/")[-1].removesuffix(".json")): json.loads(text)
        for file, text in found
        if "/runs/" in file
    }


def test_there_is_a_file_for_each_squad_in_the_form_that_its_schema_tells() -> None:
    found = files()
    assert sorted(found) == [f"data/v1/compose/{id}.json" for id in ("heron", "osprey", "reed")]
    for data in found.values():
        SCHEMA.validate(data)
        assert not _floats(data), "a number that two machines may round differently"


def _floats(data: Any) -> bool:
    if isinstance(data, dict):
        return any(map(_floats, data.values()))
    return any(map(_floats, data)) if isinstance(data, list) else isinstance(data, float)


def test_a_set_takes_what_its_part_of_the_run_sheet_takes() -> None:
    own = table("heron")
    practice = analysed().practices["heron-kick-and-go"]
    found = 0
    for row in practice.sheet:
        doing = row.run.doing
        if doing.set and f"set/{doing.set}" in own.piece_of:
            place = own.piece_of[f"set/{doing.set}"]
            offer = next(
                one for one in own.squad.offers[practice.practice.pool] if one.piece == place
            )
            number = doing.rounds or doing.reps or own.pieces[place].written
            size = next(one for one in offer.sizes if one.number == number)
            for time, group in zip(size.times, practice.groups, strict=True):
                takes = row.run.takes(group)
                assert takes is not None and time is not None
                assert 0 <= time - 10 * takes.value < 1
                found += 1
    assert found


RUN = json.loads((SITE_SOURCE / "schemas/run.json").read_text("utf-8"))["$defs"]


def of_run(name: str) -> Draft202012Validator:
    """What holds for a part of a run's data."""
    return Draft202012Validator({"$ref": f"#/$defs/{name}", "$defs": RUN})


def test_a_piece_is_run_in_the_form_of_a_run_and_takes_what_its_size_takes() -> None:
    found = set()
    for squad in ("heron", "osprey", "reed"):
        own = compose_table(analysed(), squad)
        for pool, offers in own.table.squad.offers.items():
            layer = Layer(analysed(), squad, pool)
            for offer in offers:
                piece = own.table.pieces[offer.piece]
                for size in offer.sizes:
                    laid_so = layer.lay(own.candidates[piece.key], size.number)
                    assert laid_so
                    run = run_of(layer, laid_so)
                    assert all(of_run("item").is_valid(item) for item in run["items"])
                    for group, time in zip(own.table.squad.groups, size.times, strict=True):
                        if group.id in run["crews"] and time is not None:
                            blocks = run["crews"][group.id]["blocks"]
                            of_run("blocks").validate(blocks)
                            over = time - 10 * laid(blocks).over_s
                            assert -1 <= over <= 1 + size.number, "rounded up each time"
                            found.add((piece.of, layer.course.shown))
    assert len(found) == 9, "drills, sets and parts in pools of three lengths"


def test_what_pieces_are_run_by_has_the_form_that_its_schema_tells() -> None:
    found = run_files()
    pools = analysed().catalogue.club.waters
    assert sorted(found) == sorted(
        (id, pool) for id in ("heron", "osprey", "reed") for pool in pools
    )
    for (id, pool), data in found.items():
        SCHEMA_OF_RUNS.validate(data)
        offers = {table(id).pieces[own.piece].key: own for own in table(id).squad.offers[pool]}
        for key, own in data["pieces"].items():
            written = table(id).pieces[offers[key].piece].written
            first = own.get("from", written)
            numbers = {size.number for size in offers[key].sizes}
            assert len(numbers) == 1 or numbers == {first, *map(int, own["sizes"])}
            assert ("items" in own.get("as", {})) >= key.startswith("drill/")


def test_each_drill_that_is_a_piece_says_what_can_hurt() -> None:
    for data in files().values():
        drills = {piece["id"] for piece in data["pieces"] if piece["of"] == "drill"}
        assert drills == set(data["drill_hazards"])
        hazards = [one for own in data["drill_hazards"].values() for one in own]
        assert hazards and all(of_run("hazard").is_valid(one) for one in hazards)


def made(number: int, each: int = 600, dose: int = 90) -> Size:
    return Size(
        number,
        50 * number,
        (each * number,),
        0,
        0,
        0,
        0,
        UNKNOWN,
        UNKNOWN,
        ((3, dose * number, dose * number),),
    )


def test_sizes_that_grow_evenly_are_told_by_the_first_and_what_each_adds() -> None:
    (run,) = sizes_of(range(2, 11), made)
    assert [size.times for size in run.all] == [(600 * n,) for n in range(2, 11)]
    assert all(size.doses[0][1] >= 90 * size.number for size in run.all)


def test_a_size_beyond_a_drills_dose_is_not_offered() -> None:
    (run,) = sizes_of(range(2, 16), made)
    assert run.all[-1].doses[0][1] <= 1000 < 90 * 12
    assert sizes_of(range(12, 16), made) == ()


def test_of_what_does_not_grow_evenly_a_few_sizes_stand_each_by_itself() -> None:
    runs = sizes_of(range(2, 8), lambda n: made(n, 600 if n < 5 else 700, 1))
    assert [size.times for run in runs for size in run.all] == [
        ((600 if n < 5 else 700) * n,) for n in (2, 3, 5, 7)
    ]


def test_reps_that_end_at_the_other_end_of_the_pool_are_left_out() -> None:
    runs = sizes_of(range(3, 9), lambda n: None if n % 2 else made(n, dose=1))
    assert [size.number for run in runs for size in run.all] == [4, 6, 8]


def test_of_reps_that_cannot_be_done_so_often_all_up_to_the_last_that_can_are_offered() -> None:
    (run,) = sizes_of(range(2, 15), lambda n: made(n, dose=1) if n < 8 else None)
    assert [size.number for size in run.all] == [2, 3, 4, 5, 6, 7]


def test_reps_without_a_rest_are_no_more_than_one_go_of_their_drill() -> None:
    """Of easy swimming 4 × its dose of 100 m, gently, and as much more for each of two levels
    above.
    """
    own = table("osprey")
    place = own.piece_of["part/osprey-ladder/4"]
    for offers in own.squad.offers.values():
        (offer,) = (one for one in offers if one.piece == place)
        assert [(size.number, size.distance) for size in offer.sizes] == [
            (1, 200), (2, 400), (3, 600), (4, 800), (5, 1000), (6, 1200),
        ]  # fmt: skip
