"""Practices as Make a practice opens, changes and saves them, held to the program."""

from __future__ import annotations

import json
import re
import shutil
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs

from jsonschema import Draft202012Validator
from node_scripts import run_by_node
from shared import DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.changes import Deed, change
from almanac.arithmetic.composing.chosen import Chosen, ChosenPractice, standing
from almanac.arithmetic.composing.order import whole
from almanac.arithmetic.composing.pieces import TENTHS
from almanac.arithmetic.composing.request import BadWish, Request, wishes_of
from almanac.arithmetic.composing.table import ComposeTable
from almanac.checks import check
from almanac.model.load import load
from almanac.report.compose.held import HeldParts
from almanac.report.compose.opened import limits_of
from almanac.report.compose.table import compose_table, places_of
from almanac.resources import SITE_SOURCE
from almanac.site.compose_data import compose_files
from almanac.site.make_link import change_link
from almanac.site.run_data import run_text

_SPEAKS_OF_WHAT_IS_GONE = ("gear-unsaid",)
SCRIPT = Path(__file__).parent / "make" / "opened.test.js"
_CLOCK_S = 6.0  # what sizes that grow evenly may be above the run sheet, as of what is composed
FOLDER = "data/v1/compose/practices/"
SCHEMA = SITE_SOURCE / "schemas/compose_practice.json"


def opened_by_page(analysis: Analysis, folder: Path) -> list[dict[str, Any]]:
    """Has Node open every practice, hold it to its run, and save it to the folder, as it is and
    changed; gives the deeds with what came of them.
    """
    schema = Draft202012Validator(json.loads(SCHEMA.read_text("utf-8")))
    data, cases = {}, []
    for squad in analysis.catalogue.club.squads:
        for file, text in compose_files(analysis, squad):
            name = file.rpartition("/")[2].removesuffix(".json")
            if file.startswith(FOLDER):
                schema.validate(json.loads(text))
                cases.append(_case(analysis, name, json.loads(text)))
            elif name == squad and "/runs/" not in file:
                data[squad] = json.loads(text)
    saved = folder / "saved"
    saved.mkdir()
    told = {"data": data, "cases": cases, "folder": str(saved)}
    (folder / "cases.json").write_text(json.dumps(told), "utf-8")
    steps = folder / "steps.json"
    run_by_node(SCRIPT, CASES=str(folder / "cases.json"), STEPS=str(steps))
    found: list[dict[str, Any]] = json.loads(steps.read_text("utf-8"))
    return found


def _case(analysis: Analysis, id: str, file: dict[str, Any]) -> dict[str, Any]:
    """A practice with its run, asked for as the link on its page does."""
    practice = analysis.catalogue.practices[id]
    link = change_link(analysis, practice)
    assert link.why_not == ""
    words = {name: own for name, (own,) in parse_qs(link.address.partition("#")[2]).items()}
    assert words["from"] == id
    request = {
        "pool": words["pool"],
        "minutes": int(words["minutes"]),
        "goals": words["goals"].split(",") if "goals" in words else [],
        "lanes": {
            own.partition(":")[0]: int(own.partition(":")[2])
            for own in words.get("lanes", "").split(",")
            if own
        },
    }
    run = json.loads(run_text(analysis, analysis.practices[id]))
    return {"file": file, "run": run, "request": request, "roles": words.get("roles", "")}


def findings_of_saved(
    root: Path, folder: Path, steps: Sequence[dict[str, Any]]
) -> tuple[int, list[str]]:
    """How many files were saved, and all that check says of them where they stand beside the
    others, those that were changed alike at once, and does not say of what they were made from;
    and where the build's clock of one is another than the page's.
    """
    clocks = {step["file"]: step["takes"] for step in steps if "file" in step}
    saved = sorted((folder / "saved").iterdir())
    by_deed: dict[str, list[Path]] = defaultdict(list)
    for file in saved:
        by_deed[file.stem.rpartition("-")[2]].append(file)
    told = []
    for deed, files in by_deed.items():
        here = folder / deed
        for name in ("drills", "plans"):
            shutil.copytree(root / name, here / name)
        for file in files:
            shutil.copy(file, here / "plans/practices" / file.name)
        loaded = load(here)
        findings = list(loaded.findings)
        assert loaded.catalogue is not None
        analysis = Analysis(loaded.catalogue, DAY)
        findings += check(analysis)
        said = {(Path(own.place.file).stem, own.message, own.code) for own in findings}
        for file in files:
            ends = analysis.practices[file.stem].ends_s if file.stem in analysis.practices else None
            if file.stem in clocks and (ends is None or abs(ends - clocks[file.stem]) > _CLOCK_S):
                told.append(f"{file.stem}: {ends} by the build, {clocks[file.stem]} by the page")
            old = file.stem.removesuffix("-as-it-is").removesuffix(f"-{deed}")
            accepted = _accepted(here / f"plans/practices/{old}.yml")
            told += [
                f"{name}: {message}"
                for name, message, code in said
                if name == file.stem and (old, message, code) not in said and code not in accepted
            ]
    return len(saved), told


def _accepted(file: Path) -> set[str]:
    """What an entry accepts of check: for what is new in a changed one nobody has. And what check
    says of a text that speaks of a part that was taken out, which a coach has to read again.
    """
    codes = re.findall(r"^ +- check: ([\w-]+)$", file.read_text("utf-8"), re.MULTILINE)
    return {*codes, *_SPEAKS_OF_WHAT_IS_GONE}


def does_the_same(analysis: Analysis, steps: Sequence[dict[str, Any]]) -> None:
    """That the program does each deed as the page did, or refuses it in the same words."""
    tables: dict[str, ComposeTable] = {}
    made = {squad: compose_table(analysis, squad).table for squad in analysis.catalogue.club.squads}
    for step in steps:
        practice = analysis.catalogue.practices[step["id"]]
        if step["id"] not in tables:
            tables[step["id"]] = with_parts(analysis, made[practice.squad], step["id"])
        table = tables[step["id"]]
        asked = Asked(table, wishes_of(table, Request(**step["request"])))
        before = _chosen(step["practice"])
        try:
            after = change(asked, before, Deed(**step["deed"]))
            stands = standing(asked, after)
        except BadWish as problem:
            assert str(problem) == step["refused"], step
        else:
            assert step["after"] is not None, step
            assert after == _chosen(step["after"])
            assert (whole(stands.order) / TENTHS, stands.cost) == (step["takes"], step["cost"])


def _chosen(told: dict[str, Any]) -> ChosenPractice:
    return ChosenPractice(tuple(Chosen(**own) for own in told["parts"]), tuple(told["out"]))


def with_parts(analysis: Analysis, table: ComposeTable, id: str) -> ComposeTable:
    """The table of a squad with the parts of one of its practices."""
    held = HeldParts(analysis, analysis.practices[id], table.squad, places_of(analysis.catalogue))
    practice, own = analysis.catalogue.practices[id], held.offers()
    pieces = tuple(held.piece(number) for number in range(len(practice.parts)))
    first = len(table.pieces)
    offers = {
        **table.squad.offers,
        practice.pool: (
            *table.squad.offers[practice.pool],
            *(replace(one, piece=first + one.piece) for one in own),
        ),
    }
    most = limits_of(table, practice.pool, pieces, own)
    taught = table.squad.taught | set(held.taught())
    here = replace(table.squad, offers=offers, limits=most, taught=taught)
    return replace(table, pieces=(*table.pieces, *pieces), squad=here)
