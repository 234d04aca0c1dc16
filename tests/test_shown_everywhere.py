"""No shown text of the small catalogue holds a negative rest, a density over 100 % or an id where a
title exists; not even where send-offs are far too short. ``test_content.py`` asks the same of the
club's own.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hand_worked_cases import read_all
from shared import CATALOGUE, DAY, copied, is_long
from shown_checks import Shown, shown_of, slips_in_data, slips_in_json, slips_in_texts

from almanac.analysis.analysis import Analysis
from almanac.commands.main import main
from almanac.model.load import Loaded, load


def slips_in_none(analysis: Analysis, shown: Shown) -> None:
    assert len(shown.texts) > 100 and len(shown.data) > 100
    assert slips_in_texts(analysis.catalogue, shown.texts) == []
    assert slips_in_data(shown.data) == []


def test_nothing_is_shown_that_cannot_be(analysis: Analysis, loaded: Loaded) -> None:
    slips_in_none(analysis, shown_of(analysis, loaded.names))


@pytest.fixture(scope="module")
def hurried_root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small catalogue with every send-off of a minute or more at 0:20, which nobody makes."""
    root = copied(CATALOGUE, tmp_path_factory.mktemp("hurried") / "club")
    for path in (root / "plans").rglob("*.yml"):
        text = path.read_text("utf-8")
        lines = [
            re.sub(r"\b\d+:\d\d\b", "0:20", line) if "sendoff:" in line else line
            for line in text.splitlines(keepends=True)
        ]
        path.write_text("".join(lines), "utf-8")
    return root


@pytest.fixture(scope="module")
def hurried(hurried_root: Path) -> Loaded:
    return load(hurried_root)


def test_nor_where_send_offs_are_far_too_short(hurried: Loaded) -> None:
    assert hurried.catalogue is not None, hurried.findings
    analysis = Analysis(hurried.catalogue, DAY)
    clocks = [clock for id in analysis.computable for clock in analysis.summary(id).clocks.values()]
    unfit = [clock for clock in clocks if clock.unfit]
    assert len(unfit) > len(clocks) / 3
    assert all((clock.rest, clock.density, clock.work) == (None,) * 3 for clock in unfit)
    shown = shown_of(analysis, hurried.names)
    slips_in_none(analysis, shown)
    told = [file for file, text in shown.texts if "does not fit" in text]
    # the board of a page, its card (the second time), a practice's sheet, and the terminal
    assert {file.partition("/")[0].partition(" ")[0] for file in told} >= {
        "sets",
        "practices",
        "sum",
    }
    page = dict(shown.texts)["sets/kick-and-go.md"]
    board, _, rest = page.partition('<article class="clocks"')
    card = rest.partition('class="card-board')[2]
    assert "does not fit: " in board and "does not fit: " in card


def test_nor_of_sets_with_every_construct(tmp_path_factory: pytest.TempPathFactory) -> None:
    every = read_all(tmp_path_factory, moved=is_long())
    assert every.catalogue is not None
    analysis = Analysis(every.catalogue, DAY)
    slips_in_none(analysis, shown_of(analysis, every.names))


def test_nor_does_explain_give_a_number(
    hurried_root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["explain", "kick-and-go", "rest", "--root", str(hurried_root)])
    said = capsys.readouterr().out
    assert said.startswith("no number, because the set does not fit: ")
    assert "the nearest send-off that fits is " in said


@pytest.mark.parametrize(
    ("value", "slips"),
    [
        ({"rest_s": -0.1}, 1),
        ({"groups": {"one": {"density": 1.01}}}, 1),
        ({"sheet": [{"waits_s": -5.0}, {"ends_s": 599.999}]}, 2),
        ([{"known_days": 6, "monotony": 1.2}, {"known_days": 7, "monotony": 1.2}], 1),
        ({"share": 0.30000000000000004}, 1),
        ({"slack_s": -60.0, "density": 1.0, "rest_s": 0.0}, 0),
    ],
)
def test_slips_in_json_are_found(value: object, slips: int) -> None:
    assert len([*slips_in_json(value)]) == slips


@pytest.mark.parametrize(
    ("shown", "slips"),
    [
        ("rest -0:21", 1),
        ("Rest −8:21", 1),
        ("<dd>-4.5 s</dd>", 1),
        ("clock 36:00 − 44:21 work", 0),
        ("599.99999 s of 600", 1),
        ("1.0667 min", 0),
        ("Density 123 %", 1),
        ("Density</dt><dd>75 %</dd>", 0),
        ("reed-1 until 16:46", 1),
        ("Reed (reed-1)", 0),
        ('<a id="reed-1" href="../reed-1.html">Reed</a>', 0),
    ],
)
def test_slips_in_texts_are_found(analysis: Analysis, shown: str, slips: int) -> None:
    assert len(slips_in_texts(analysis.catalogue, [("page", shown)])) == slips
