"""What was kept of a day, from its file to every place that shows it; what a note may not hold. Its
figures are worked by hand in `test_arithmetic_kept.py`.
"""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from plans_world import TODAY, analysis, club, codes, write

from almanac.analysis.figures import by_name
from almanac.analysis.figures.blocks import weeks_of
from almanac.arithmetic.kept import kept_sessions
from almanac.arithmetic.session_load import planned_load
from almanac.model.load import load
from almanac.report.block.json import block_json
from almanac.report.block.text import block_text
from almanac.report.shown import shown
from almanac.site.calendar import block_table
from almanac.site.data_files import data_files
from almanac.site.kept_rows import kept_rows, logs_of

LOG = """\
title: The first Monday
practice: tuesday
on: 2026-09-07
minutes: 25
metres: 450
heads: 8
rating: 6
changed: [The last 50 was left out.]
note: The lane was shared until six.
"""


def kept(root: Path, **texts: str) -> Path:
    """The small club with what was kept, by id."""
    club(root)
    for id, text in texts.items():
        write(root, f"plans/logs/{id.replace('_', '-')}.yml", text)
    return root


def test_a_reported_rating_takes_the_place_of_the_planned_one(tmp_path: Path) -> None:
    world = analysis(kept(tmp_path, monday=LOG))
    summary = world.blocks["autumn"]["heron-1"]
    planned = planned_load(world.practices["tuesday"], "heron-1").value
    monday, _, wednesday, *_ = summary.weeks[0].days
    assert monday.load == 6 * 25 and wednesday.load == pytest.approx(planned)
    assert summary.weeks[0].load.total == pytest.approx(150 + planned + 120)
    (own,) = kept_sessions(summary)
    figures = by_name("block", "kept", own)
    assert figures["kept load"].value == 150
    assert figures["planned load"].value == pytest.approx(planned)
    assert (figures["planned metres"].value, figures["kept metres"].value) == (500, 450)
    week = by_name("block", "week", weeks_of(summary)[0])
    assert shown(week["kept load"]) == "150 (1 of 3 sessions)"
    assert shown(week["kept distance"]) == "450 (1 of 3 sessions)"
    assert by_name("block", "week", weeks_of(summary)[1])["kept load"].value is None


def test_planned_stands_beside_done_wherever_a_block_is_shown(tmp_path: Path) -> None:
    world = analysis(kept(tmp_path, monday=LOG))
    groups = world.blocks["autumn"]
    (row,) = kept_rows(world.catalogue, groups["heron-1"])
    assert row["heads"] == 8 and "450" in row["cells"] and "500" in row["cells"]
    assert row["told"] == ["The last 50 was left out.", "The lane was shared until six."]
    (of_practice,) = logs_of(world, world.catalogue.practices["tuesday"])
    assert of_practice["cells"] == [25, 450, 8, 6]
    assert "metres 450 (planned 500)" in block_text(world.catalogue, groups)
    (told,) = block_json(groups)["kept"]["heron-1"]
    assert (told["kept_load"], told["planned_metres"], told["heads"]) == (150, 500, 8)
    first, second, third, *_ = csv.DictReader(io.StringIO(block_table(groups)))
    assert (first["metres_heron-1"], first["metres_done_heron-1"]) == ("500.0", "450")
    assert float(first["load_done_heron-1"]) == 150 and float(second["load_heron-1"]) == 0
    assert (third["metres_done_heron-1"], third["load_done_heron-1"]) == ("", "")
    files = dict(data_files(world, load(tmp_path).names, ""))
    (line,) = csv.DictReader(io.StringIO(files["data/v1/logs.csv"]))
    assert (line["id"], line["on"], line["rating"]) == ("monday", "2026-09-07", "6.0")
    assert '"metres":450' in files["data/v1/log/monday.json"]


@pytest.mark.parametrize(
    ("text", "is_told"),
    [
        ("The lane was held together by Anna.", True),
        ("Anna Brook led the second lane.", True),
        ("Ask a.brook@club.example.", True),
        ("Ring 07700 900123 before.", True),
        ("The lane was led by Dr Brook.", True),
        ("Heron led, and Tuesday was full.", False),  # a squad, a day
        ("4 × 50 on 1:00, then 100 200 400 easy.", False),
        ("The coach on deck, a swimmer and I.", False),
        ("It was cold. Nobody stayed in the water.", False),
        ("The AM lane.", False),
    ],
)
def test_names_of_people_in_a_note(tmp_path: Path, text: str, is_told: bool) -> None:
    note = LOG.replace("The lane was shared until six.", f'"{text}"')
    assert ("name-in-log" in codes(kept(tmp_path, monday=note))) is is_told


def test_a_day_that_is_not_over_can_be_kept_and_one_that_has_not_begun_cannot(
    tmp_path: Path,
) -> None:
    today = LOG.replace("2026-09-07", str(TODAY))
    assert "log-ahead" not in codes(kept(tmp_path / "today", monday=today))
    later = LOG.replace("2026-09-07", str(TODAY.replace(day=2)))
    assert "log-ahead" in codes(kept(tmp_path / "later", monday=later))


def test_other_work_is_kept_beside_the_plan(tmp_path: Path) -> None:
    """Land work of 30 minutes at 4 was planned; 45 minutes were done, and rated 5 by the
    swimmers.
    """
    log = LOG.replace("practice: tuesday", "other: Land work\nsquad: heron").replace(
        "09-07", "09-11"
    )
    log = log.replace("minutes: 25", "minutes: 45").replace("metres: 450", "metres: 0")
    world = analysis(kept(tmp_path, friday=log.replace("rating: 6", "rating: 5")))
    summary = world.blocks["autumn"]["heron-1"]
    assert summary.weeks[0].days[4].load == 45 * 5
    (own,) = kept_sessions(summary)
    figures = by_name("block", "kept", own)
    told = {name: figure.value for name, figure in figures.items()}
    assert (told["planned minutes"], told["kept minutes"]) == (30, 45)
    assert (told["planned rating"], told["kept rating"]) == (4, 5)
    assert (told["planned load"], told["kept load"]) == (120, 225)
    assert told["planned metres"] is None
    (row,) = kept_rows(world.catalogue, summary)
    assert (row["entry"], row["what"]) == (None, "Land work")
    assert "kept 2026-09-11 Land work: minutes 45 (planned 30)" in block_text(
        world.catalogue, world.blocks["autumn"]
    )
    assert block_json(world.blocks["autumn"])["kept"]["heron-1"][0]["other"] == "Land work"


@pytest.mark.parametrize(
    ("find", "put"),
    [("09-11", "09-12"), ("Land work", "Some other work"), ("squad: heron", "squad: heron")],
)
def test_other_work_that_no_block_has_is_told(tmp_path: Path, find: str, put: str) -> None:
    log = LOG.replace("practice: tuesday", "other: Land work\nsquad: heron").replace(
        "09-07", "09-11"
    )
    found = codes(kept(tmp_path, friday=log.replace(find, put)))
    assert ("log-not-planned" in found) is (find != put)
