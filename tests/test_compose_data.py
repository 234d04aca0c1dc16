"""What practices are composed of, held to its schema, to the catalogue and to the run sheet."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator
from run_laid import laid
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_pieces import UNKNOWN, Size
from almanac.arithmetic.composing_table import ComposeTable
from almanac.model.load import load
from almanac.report.compose_sizes import sizes_of
from almanac.report.compose_table import compose_table
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


def pool_files() -> dict[str, Any]:
    """By squad what pieces are run by in pools of another length."""
    squads = analysed().catalogue.club.squads
    found = (own for squad in squads for own in compose_files(analysed(), squad))
    return {
        file.rpartition("/")[2].removesuffix(".json"): json.loads(text)
        for file, text in found
        if "/runs/" in file
    }


def test_there_is_a_file_for_each_squad_in_the_form_that_its_schema_tells() -> None:
    found = files()
    assert sorted(found) == [f"data/v1/compose/{id}.json" for id in ("heron", "osprey", "reed")]
    for data in found.values():
        SCHEMA.validate(data)
        chosen_by = data | {"drill_runs": None}
        assert not _floats(chosen_by), "a number that two machines may round differently"


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


def test_a_drill_is_run_in_the_form_of_a_run_and_takes_what_its_size_takes() -> None:
    found = 0
    for file, data in files().items():
        squad = table(file.rpartition("/")[2].removesuffix(".json")).squad
        runs = data["drill_runs"]
        for pool, drills in runs["pools"].items():
            for offer in squad.offers[pool]:
                piece = table(squad.id).pieces[offer.piece]
                if piece.of != "drill" or piece.id not in drills:
                    continue
                own = drills[piece.id]
                assert all(of_run("item").is_valid(item) for item in own["items"])
                assert all(of_run("hazard").is_valid(one) for one in runs["hazards"][piece.id])
                size = next(one for one in offer.sizes if one.number == piece.written)
                for group, time in zip(squad.groups, size.times, strict=True):
                    blocks = own["crews"][group.id]["blocks"]
                    of_run("blocks").validate(blocks)
                    assert time is not None and abs(10 * laid(blocks).over_s - time) <= 1
                    found += 1
    assert found


def test_a_piece_in_another_pool_is_run_in_the_form_of_a_run_and_takes_what_its_size_takes() -> (
    None
):
    found = set()
    for id, data in pool_files().items():
        SCHEMA_OF_RUNS.validate(data)
        squad = table(id).squad
        pools = analysed().catalogue.club.pools
        for pool, pieces in data["pools"].items():
            offers = {table(id).pieces[own.piece].key: own for own in squad.offers[pool]}
            for key, own in pieces.items():
                piece = table(id).pieces[offers[key].piece]
                assert piece.of != "drill"
                assert all(of_run("item").is_valid(item) for item in own["items"])
                size = next(one for one in offers[key].sizes if one.number == piece.written)
                for group, time in zip(squad.groups, size.times, strict=True):
                    if group.id in own["crews"] and time is not None:
                        blocks = own["crews"][group.id]["blocks"]
                        of_run("blocks").validate(blocks)
                        assert abs(10 * laid(blocks).over_s - time) <= 1
                        found.add(pools[pool].course.shown)
    assert len(found) > 1, "pools of more than one length"


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
