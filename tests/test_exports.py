"""Tables for a spreadsheet, on the command line and on the site; and that all data say their
version.
"""

from __future__ import annotations

import csv
import html
import io
import json
import re
import zipfile
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from shared import CATALOGUE, DAY, built_once, copied

from almanac.analysis.analysis import Analysis
from almanac.commands.main import main
from almanac.kinds import KIND
from almanac.model.load import Loaded, load
from almanac.report.practice_json import practice_json
from almanac.resources import SITE_SOURCE
from almanac.site.practice_table import practice_table
from almanac.site.site_pages import SitePages
from almanac.site.spreadsheet_files import spreadsheets
from almanac.site.templates import Templates


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff"))))


def said(capsys: pytest.CaptureFixture[str], *words: object) -> str:
    assert main([*map(str, words), "--root", str(CATALOGUE), "--today", str(DAY)]) == 0
    return capsys.readouterr().out


def test_a_run_sheet_says_what_the_contract_says(analysis: Analysis) -> None:
    for id, summary in analysis.practices.items():
        told = rows(practice_table(analysis, id))
        assert {row["practice"] for row in told} == {id}
        known = practice_json(summary)
        assert known["version"] == 1
        dangers = [row["what"] for row in told if row["title"].startswith("Danger: ")]
        assert dangers == [own["title"] for own in known["brief"]]
        sheet = [row for row in told if row["part"]]
        for number, part in enumerate(known["sheet"], 1):
            own = [row for row in sheet if row["part"] == str(number)]
            assert len({row["lane_group"] for row in own}) == len(part["groups"])
            assert {float(row["talk_s"]) for row in own} == {part["talk_s"]}
            waits = {row["waits_s"] and float(row["waits_s"]) for row in own}
            assert waits <= {
                "" if cell["waits_s"] is None else round(cell["waits_s"], 1)
                for cell in part["groups"].values()
            }
        assert any(row["target"] for row in sheet)


def test_reps_and_their_distance_add_up_to_the_part(analysis: Analysis) -> None:
    checked = 0
    for id in analysis.practices:
        told = rows(practice_table(analysis, id))
        for part, group in {(row["part"], row["lane_group"]) for row in told if row["part"]}:
            own = [row for row in told if (row["part"], row["lane_group"]) == (part, group)]
            reps = [row for row in own if row["reps"]]
            if reps and all(row["each"] for row in reps):
                found = sum(int(row["reps"]) * float(row["each"]) for row in reps)
                assert found == pytest.approx(float(own[0]["distance"]))
                checked += 1
    assert checked > 5


def test_the_command_prints_a_practice_and_writes_a_block(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, analysis: Analysis
) -> None:
    practice, block = next(iter(analysis.practices)), next(iter(analysis.blocks))
    assert rows(said(capsys, "export", practice))[-1]["practice"] == practice
    out = tmp_path / "a.csv"
    said(capsys, "export", block, "--out", out)
    assert out.read_text("utf-8").startswith("\ufeffweek,")
    assert main(["export", practice, "--out", str(out), "--root", str(CATALOGUE)]) == 2
    assert "is there already" in capsys.readouterr().err


def test_everything_in_one_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, analysis: Analysis
) -> None:
    out = tmp_path / "all.zip"
    assert "tables" in said(capsys, "export", "--out", out)
    _, made = spreadsheets(analysis)
    assert out.read_bytes() == made  # the same bytes each time
    with zipfile.ZipFile(out) as archive:
        tables = {name: archive.read(name).decode("utf-8") for name in archive.namelist()}
    assert all(text.startswith("\ufeff") for text in tables.values())
    for kind in KIND.values():
        ids = {id for own, id in analysis.catalogue.entries if own == kind.key}
        if not kind.single and kind.key != "vocabulary":
            assert {row["id"] for row in rows(tables[f"{kind.key}.csv"])} == ids
    drills = rows(tables["drill.csv"])
    assert all(row["safety"] and row["title"] for row in drills)  # dangers stand in data
    assert {row["practice"] for row in rows(tables["run-sheets.csv"])} == set(analysis.practices)
    times = {row["time_s"] for row in rows(tables["tests.csv"])}
    groups = analysis.catalogue.lane_groups.values()
    assert times == {f"{test.time:.1f}" for own in groups for test in own.tests}


def test_no_text_is_taken_for_a_formula(tmp_path: Path) -> None:
    root = copied(CATALOGUE, tmp_path)
    attack = '=HYPERLINK("https://club.example")'
    for file in (*root.glob("plans/practices/*.yml"), *root.glob("plans/sets/*.yml")):
        lines = file.read_text("utf-8").split("\n")
        if lines[0].startswith("title: "):
            lines[0] = f"title: '{attack}'"
        file.write_text("\n".join(lines), "utf-8")
    catalogue = load(root).catalogue
    assert catalogue is not None
    _, made = spreadsheets(Analysis(catalogue, DAY))
    with zipfile.ZipFile(io.BytesIO(made)) as archive:
        texts = [archive.read(name).decode("utf-8") for name in archive.namelist()]
    cells = [cell for text in texts for row in rows(text) for cell in row.values()]
    assert f"'{attack}" in cells
    assert not [cell for cell in cells if cell.lstrip()[:1] in tuple("=+-@")]


def test_a_club_that_is_broken_exports_nothing(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    root = copied(CATALOGUE, tmp_path)
    file = next(root.glob("plans/sets/*.yml"))
    file.write_text(file.read_text("utf-8").replace("reps:", "rep:", 1), "utf-8")
    out = tmp_path / "all.zip"
    assert main(["export", "--out", str(out), "--root", str(root), "--today", str(DAY)]) == 1
    assert "1 error" in capsys.readouterr().out and not out.exists()


def test_pages_lead_to_them(loaded: Loaded, analysis: Analysis) -> None:
    pages = SitePages(analysis, loaded.names, (), Templates(SITE_SOURCE / "templates"))
    for kind, file in (("practice", "practice/{}.csv"), ("block", "spreadsheets.zip")):
        entry = next(own for (key, _), own in analysis.catalogue.entries.items() if key == kind)
        made = dict(pages.of_entry(entry))
        page = next(text for name, text in made.items() if name.endswith(f"{entry.id}.md"))
        assert f"data/v1/{file.format(entry.id)}" in page
        if kind == "practice":
            assert made[f"data/v1/practice/{entry.id}.csv"].startswith("\ufeffpractice,")


def test_every_data_file_says_its_version(loaded: Loaded, analysis: Analysis) -> None:
    pages = SitePages(analysis, loaded.names, (), Templates(SITE_SOURCE / "templates"))
    practice = next(iter(analysis.catalogue.practices.values()))
    found = [*pages.data(), *pages.of_entry(practice)]
    told = {file: json.loads(text) for file, text in found if file.endswith(".json")}
    assert len(told) > 50
    for file, data in told.items():
        if "/schema/" in file:
            assert data["$schema"].endswith("2020-12/schema"), file
        elif "/run/" in file or "/compose/" in file or file.endswith("vectors.json"):
            assert isinstance(data["form"], int), file
        else:
            assert data["version"] == 1, file
    assert told["data/v1/catalogue.json"]["form"] == 2


@pytest.mark.parametrize("words", ["check --format json", "calc points base=46 time=52 --json"])
def test_every_answer_for_programs_says_its_version(
    capsys: pytest.CaptureFixture[str], words: str
) -> None:
    """So do those of ``sum``, ``compose`` and ``review``, told beside what else these say."""
    told: dict[str, Any] = json.loads(said(capsys, *words.split()))
    assert told["version"] == 1


def test_what_a_spreadsheet_opens_stands_on_the_page(
    tmp_path_factory: pytest.TempPathFactory, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Distances of sets and the clock of a practice's parts, as a reader of the site sees them."""
    site = built_once(tmp_path_factory, "small", CATALOGUE) / "site"
    out = tmp_path / "all.zip"
    there = ["--root", str(CATALOGUE), "--today", DAY.isoformat(), "--out", str(out)]
    assert main(["export", *there]) == 0
    with zipfile.ZipFile(out) as archive:
        tables = {
            name: rows(archive.read(name).decode("utf-8-sig"))
            for name in ("set-totals.csv", "run-sheets.csv")
        }
    compared = 0
    for row in tables["set-totals.csv"]:
        told = f"{int(float(row['distance'])):,} {row['unit']}"
        if float(row["distance"]):
            assert told in seen(site / f"sets/{row['id']}.html"), row
            compared += 1
    for row in tables["run-sheets.csv"]:
        for field in ("starts", "go", "target"):
            if row[field]:
                assert row[field] in seen(site / f"practices/{row['practice']}.html"), row
                compared += 1
    assert compared >= 20


@cache
def seen(page: Path) -> str:
    """What of a page is text, each blank as one."""
    text = re.sub(
        r"<(script|style)\b.*?</\1>|<[^>]+>", " ", page.read_text("utf-8"), flags=re.DOTALL
    )
    return " ".join(html.unescape(text).split())
