"""What a coach is told of a beginner's slips: each file of ``tests/slips`` holds some, each made in
the smallest catalogue, and beside it stands what ``almanac check`` says of each.

To write what is said anew: ``REWRITE_EXPECTED=1 pytest tests/test_slips.py``; then read each line
of the difference as the coach who will get it.
"""

from __future__ import annotations

import os
import re
import shutil
from datetime import date
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
import yaml
from example_cases import BASE
from shared import CATALOGUE
from test_examples import checked

from almanac.commands.check import mend
from almanac.findings import Place, error
from almanac.model.called import called, looked_for
from almanac.model.load import load
from almanac.source.explain.hints import FIXED
from almanac.source.meant import moved_in
from almanac.source.names import Names
from almanac.source.reader import read
from almanac.source.suggest import one_letter_off
from almanac.source.syntax.lined_up import lined_up
from almanac.source.syntax.tried import Trial

SLIPS = Path(__file__).parent / "slips"
REWRITE = "REWRITE_EXPECTED" in os.environ


def made(slip: dict[str, Any], root: Path) -> None:
    """Lay the smallest catalogue out below ``root``, with one slip in it."""
    shutil.copytree(BASE, root)
    if "move" in slip:
        target = root / slip["to"]
        target.parent.mkdir(exist_ok=True)
        (root / slip["move"]).rename(target)
        for file, text in slip.get("and", {}).items():
            (root / file).write_text(text, "utf-8")
        return
    for step in filter(None, [slip.get("where"), slip]):
        file = root / step["in"]
        text = file.read_bytes().decode("utf-8")
        assert step["find"] in text, slip
        file.write_bytes(text.replace(step["find"], step["with"]).encode())


def said(slips: list[dict[str, Any]], folder: Path) -> str:
    """Each slip with what is said of it, its findings set in."""
    pieces = []
    for number, slip in enumerate(slips):
        made(slip, folder / str(number))
        lines = checked(folder / str(number)).splitlines()[:-1] or [
            "(nothing: it is read as meant)"
        ]
        pieces.append("".join(f"{line}\n" for line in [slip["slip"], *(f"  {it}" for it in lines)]))
    return "\n".join(pieces)


@pytest.mark.parametrize("name", sorted(file.stem for file in SLIPS.glob("*.yml")))
def test_a_slip_is_told_in_words_a_coach_knows(name: str, tmp_path: Path) -> None:
    found = said(yaml.safe_load((SLIPS / f"{name}.yml").read_text("utf-8")), tmp_path)
    expected = SLIPS / f"{name}.txt"
    if REWRITE:
        expected.write_text(found, "utf-8")
    assert found == expected.read_text("utf-8")


def test_what_fix_is_said_to_do_it_does(tmp_path: Path) -> None:
    """Of each sort of mend one slip: a list, fields, a time, a day, a word ..., by what is said."""
    one_of_each: dict[tuple[str, str], str] = {}
    for file in sorted(SLIPS.glob("*.txt")):
        for slip, *lines in (it.splitlines() for it in file.read_text("utf-8").split("\n\n")):
            for told, mended in pairwise(lines):
                sort = re.sub("[a-z]+", "a", re.sub("[0-9]+", "1", mended))
                if FIXED in mended:
                    one_of_each.setdefault((told.split()[2], sort[:20]), slip)
    slips = [own for file in SLIPS.glob("*.yml") for own in yaml.safe_load(file.read_text("utf-8"))]
    tried = [own for own in slips if own["slip"] in one_of_each.values()]
    assert 15 < len(tried) < 60
    for number, slip in enumerate(tried):
        root = tmp_path / str(number)
        made(slip, root)
        mend(root, date(2026, 10, 1))
        again = load(root)
        assert not any(one.is_error or FIXED in one.hint for one in again.findings), slip["slip"]


@pytest.mark.parametrize(
    ("file", "find", "with_"),
    [
        ("drills/skills/kicking/back-kick.yml", "mends: [bent-knees]", "mends: knees"),
        ("drills/skills/kicking/back-kick.yml", "easier: [back-float]", "easier: float"),
        ("drills/skills/kicking/back-kick.yml", "{from: easy, to: fast}", "fst to easy"),
        ("drills/skills/kicking/back-kick.yml", "title: Back kick", "title: 1.30"),
        ("drills/skills/kicking/back-kick.yml", "rest: 0:05", 'rest: "1,5"'),
        ("drills/skills/kicking/back-kick.yml", "on: 2026-09-01", "on: 3-4-2026"),
        ("drills/skills/kicking/back-kick.yml", "distance: 50", "distance: twice"),
        ("plans/club.yml", "title: Example Club\n", "title: A\nsite: {address: none}\n"),
        ("plans/sets/six-fifties.yml", "sendoff: 1:45", "sendoff: 1.8 m"),
        ("plans/sets/six-fifties.yml", "sendoff: 1:45", "sendoff: 1:5"),
        ("plans/sets/six-fifties.yml", "do: back-kick", "do: bark-wick"),
        ("plans/sets/six-fifties.yml", "do: back-kick", "do: back-land"),  # a word of another list
        ("plans/sets/six-fifties.yml", "reps: 6", "times: 6"),  # no time of six seconds
        ("drills/skills/kicking/back-kick.yml", "again: 2027-09-01", "again: 2027-W35"),
        ("plans/club.yml", "  heron: {title", "  herron: {title"),  # its places are right
        ("drills/vocabulary/goals.yml", "  kick-technique:", "  kick-tecnique:"),
    ],
)
def test_what_is_only_near_or_has_two_meanings_is_never_written(
    file: str, find: str, with_: str, tmp_path: Path
) -> None:
    made({"in": file, "find": find, "with": with_}, tmp_path / "club")
    before = (tmp_path / "club" / file).read_bytes()
    assert any(own.is_error and own.hint for own in load(tmp_path / "club").findings)
    assert not any(FIXED in own.hint for own in load(tmp_path / "club").findings)
    assert not mend(tmp_path / "club", date(2026, 10, 1))
    assert (tmp_path / "club" / file).read_bytes() == before


@pytest.mark.parametrize(
    ("word", "choices", "meant"),
    [
        ("bent-nees", ["bent-knees", "low-hips"], "bent-knees"),
        ("bakc-kick", ["back-kick", "back-float"], "back-kick"),
        ("backkick", ["back-kick", "back-float"], "back-kick"),
        ("stong", ["strong", "easy"], "strong"),
        ("stong", ["strong", "song"], ""),  # two are as near
        ("ankle-hand", ["ankle-band", "hand-paddle"], ""),  # a word of another's
        ("back-kick-2", ["back-kick-1"], ""),  # a number tells things apart
        ("fst", ["fast"], ""),  # too short to be sure of
        ("bcak-kikc", ["back-kick"], ""),  # two slips
        ("group-b", ["group-a"], ""),  # a group that is not there yet
        ("breath-in", ["breath-on"], ""),
        ("10-m-kick", ["10-k-kick"], ""),
        ("group1", ["group-1"], "group-1"),  # a hyphen is no letter
    ],
)
def test_one_letter_is_sure_where_nothing_else_can_be_meant(
    word: str, choices: list[str], meant: str
) -> None:
    assert one_letter_off(word, choices) == meant


def test_a_comma_behind_a_field_that_is_none_is_told_as_well(tmp_path: Path) -> None:
    kick = "drills/skills/kicking/back-kick.yml"
    made({"in": kick, "find": "{distance: 50,", "with": "{metres: 1,000,"}, tmp_path / "club")
    found = {own.message: own.hint for own in load(tmp_path / "club").findings if own.is_error}
    assert "there is no field 'metres' here" in found
    assert "1.000" not in found["there is no field '000' here"]


def test_one_fix_does_however_many_there_are(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Of each entry only so many are tried at a time, each of which reads it anew."""
    monkeypatch.setattr("almanac.source.validate._MOST_TRIED", 1)
    items = "".join(
        f"  - {{reps: 1, distance: 25, do: back-kick, effort: easy, rest: {rest}s}}\n"
        for rest in range(10, 17)
    )
    made(
        {"in": "plans/sets/six-fifties.yml", "find": "items:\n", "with": f"items:\n{items}"},
        tmp_path / "club",
    )
    mend(tmp_path / "club", date(2026, 10, 1))
    assert not any(one.code == "bad-time" for one in load(tmp_path / "club").findings)


def test_what_a_word_is_only_looked_up_by_is_offered_and_never_written(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("almanac.source.names.lent_words", lambda list_of: frozenset({"building"}))
    levels = "title: Levels\nwords:\n  building: {title: Building, also: [middle group]}\n"
    document, _ = read(levels.encode(), "drills/vocabulary/levels.yml")
    assert document is not None
    documents = {("vocabulary", "levels"): document}
    names = Names(
        {("vocabulary", "levels"): {"building": document.file}},
        called=called(documents),
        looked_for=looked_for(documents),
    )
    assert names.certain("vocabulary", "levels", "Building") == "building"
    assert names.certain("vocabulary", "levels", "middle group") == ""
    assert names.likely("levels", "middle group") == "building"


def test_of_all_slips_a_few_are_read_as_meant_and_hardly_any_is_told_twice() -> None:
    told = [
        (slip, sum(": error " in line for line in lines), len(lines))
        for file in SLIPS.glob("*.txt")
        for slip, *lines in (it.splitlines() for it in file.read_text("utf-8").split("\n\n"))
    ]
    assert len(told) >= 76
    assert {slip for slip, errors, _ in told if not errors} == {
        "saved with Windows line endings",
        "put a tab after the colon",
        "ended each line of a list with a comma",
        "put a tab before a comment at the end",
        "saved with a BOM",
        "wrote an hour clock in a rest",  # and is asked about
        "wrote an hour clock in a send-off",
        "left the colon of a send-off out",
        "wrote minutes of a pause as a number",
        "left the colon of a lane group's send-off out",
        "wrote a send-off with the hours of a spreadsheet",
        "wrote whole minutes with the hours of a spreadsheet",
        "ended a title with a comma",
        "ended a text in one quotation mark",
        "ended what is said in a comma",
        "ended a length in inches in a comma",
        "forgot the dash of a text that then goes on with the one above",
    }
    assert {slip for slip, errors, _ in told if errors > 1} == {
        "renamed the file but not what names it",  # each place that names it is mended
        "copied an entry and kept the old id in it",  # and is no whole entry
    }
    assert all(lines >= 2 for _, errors, lines in told if errors), "each is told with its mend"


def test_what_many_files_have_is_no_slip_of_lines(monkeypatch: pytest.MonkeyPatch) -> None:
    """To look for one takes a while: a word changed in all files is not looked at in each."""
    looked = list[int]()
    monkeypatch.setattr(moved_in, "lined_up", lambda *it, **_: looked.append(it[0]))
    document, _ = read(b"title: A\n", "plans/sets/a.yml")
    assert document is not None
    amiss = list[str]()
    for _ in range(100):
        found = [error("unknown-key", Place(document.file, 1, 1), "amiss", "")]
        assert moved_in.moved_lines(document, found, amiss) is None
    assert 0 < len(looked) <= 20


def test_a_move_that_would_hide_fields_in_a_text_is_no_mend() -> None:
    """Causes without drills could be moved into the text above them, where nothing misses these,
    and the drills of the last then stand at the first.
    """
    text = (CATALOGUE / "drills/faults/crossing-legs.yml").read_text("utf-8")
    lines, drills = text.split("\n"), "    mended_by:"
    places = [number for number, line in enumerate(lines) if line.startswith(drills)]
    without = [line for number, line in enumerate(lines) if number not in places[:-1]]
    causes = [number for number, line in enumerate(without) if line.startswith("  - cause:")]
    assert len(causes) > len([line for line in without if line.startswith(drills)]) == 1
    for number in causes:
        trial = Trial.of(without, "drills/faults/crossing-legs.yml")
        assert trial is not None
        assert lined_up(number, trial) is None


@pytest.mark.parametrize("name", ["back-kick-arms-at-sides (1).yml", "Copy of arms at sides.yml"])
def test_a_copy_under_a_name_that_is_no_id_is_told_once(tmp_path: Path, name: str) -> None:
    """And not besides as a drill that no fault names, or as one that says what another does."""
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    (drill,) = root.glob("drills/skills/*/back-kick-arms-at-sides.yml")
    shutil.copy(drill, drill.with_name(name))
    before, found = (checked(own).splitlines() for own in (CATALOGUE, root))
    (told,) = (own for own in found[:-1] if own not in before and not own.startswith("    "))
    assert f"{name}: error bad-id: " in told
