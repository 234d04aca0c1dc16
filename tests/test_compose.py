"""``almanac compose practice`` on the small catalogue: what it says, what it writes, what it
refuses.
"""

from __future__ import annotations

import json
import re
import shutil
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs

import pytest
from example_cases import BASE
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.asked import ADULTS, GEAR, LATELY, LEFT_OUT, NOT_FOR, ROOM
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.pieces import UNKNOWN
from almanac.arithmetic.composing.request import Request, wishes_of
from almanac.arithmetic.composing.unmet import (
    EFFORT,
    GOAL,
    HARDER,
    MINUTES,
    NO_RELIEF,
    NO_SKILL,
    TAUGHT,
    Unmet,
)
from almanac.checks import check
from almanac.commands import compose_practice
from almanac.commands.main import main
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.model.load import load
from almanac.report.compose.address import opens
from almanac.report.compose.board import before_words
from almanac.report.compose.entry import as_yaml, practice_entry
from almanac.report.compose.table import compose_table
from almanac.report.compose.words import unmet_words
from almanac.site.practice_page import practice_page

WISHES = ("--squad", "heron", "--minutes", "60", "--goals", "kick-into-stroke")


def run(root: Path, *argv: str) -> int:
    return main(["compose", "practice", "--root", str(root), "--today", str(DAY), *argv])


@pytest.fixture(autouse=True)
def read_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The small catalogue is read and checked once for all of these tests."""
    monkeypatch.setattr(
        compose_practice,
        "load_as_checked",
        lambda root, day: _read_small() if root == CATALOGUE else load_and_check(root, day),
    )


@cache
def _read_small() -> CheckedCatalogue:
    return load_and_check(CATALOGUE, DAY)


def copied(tmp_path: Path) -> Path:
    shutil.copytree(CATALOGUE, tmp_path / "club")
    return tmp_path / "club"


def in_seconds(text: str) -> int:
    return sum(int(own) * 60**place for place, own in enumerate(reversed(text.split(":"))))


def assert_begins_add_up(said: str) -> None:
    """Each piece begins when the one before it is over and what is told to go before it, up to the
    second that each is rounded up by.
    """
    row = re.compile(r"  after +([\d:]+)  .*\(([\d:]+), \d+ m(.*)\)")
    for proposal in said.split(" left, ")[1:]:
        rows = row.findall(proposal)
        assert len(rows) >= 3
        ends = 0
        for begins, lasts, before in rows:
            lead = sum(
                map(in_seconds, re.findall(r"([\d:]+) (?:talk|to change gear) before", before))
            )
            assert abs(in_seconds(begins) - ends - lead) <= 2
            ends = in_seconds(begins) + in_seconds(lasts)


def test_each_piece_stands_on_the_whiteboard_with_its_reason(capsys) -> None:
    assert run(CATALOGUE, *WISHES) == 0
    said = capsys.readouterr().out
    assert said.startswith(
        "Heron, Quillwater Baths, 60 minutes: kick into stroke\n\nHeron: kick into stroke – ladder "
        "on the back\n1 of "
    )
    assert "Main set: Kick and go (" in said
    assert "4 × 75 as 25 Back streamline kick (strong), then 50 Backstroke" in said
    assert "why: serves kick into stroke" in said
    assert "There is no skill in it: take more minutes." in said


@pytest.mark.parametrize("goal", ["kick-into-stroke", "kick-endurance", "kick-technique"])
def test_when_a_piece_begins_adds_up_with_the_talk_before_it(capsys, goal: str) -> None:
    assert run(CATALOGUE, "--squad", "heron", "--minutes", "60", "--goals", goal) == 0
    said = capsys.readouterr().out
    assert_begins_add_up(said)
    assert " talk before it" in said


def test_what_a_change_of_gear_takes_beyond_the_talk_is_told() -> None:
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    table = compose_table(Analysis(catalogue, DAY), "heron").table
    (first, *_) = compose(table, wishes_of(table, Request("home", 60, ["kick-into-stroke"])))
    one = next(own for own in first.order if own.own.piece.talk == own.lead == 1200)
    assert [*before_words(one)] == ["2:00 talk before it"]
    longer = replace(one, lead=1500)
    assert [*before_words(longer)] == ["2:00 talk before it", "0:30 to change gear before it"]


def test_json_is_a_contract(capsys) -> None:
    assert run(CATALOGUE, *WISHES, "--done", "set/kick-and-go=9", "--json") == 0
    data: dict[str, Any] = json.loads(capsys.readouterr().out)
    assert list(data) == [
        "version", "squad", "groups", "pool", "unit", "minutes", "goals", "proposals", "hinders",
    ]  # fmt: skip
    assert data["version"] == 1 and data["hinders"] == []
    for own in data["proposals"]:
        assert list(own) == [
            "title",
            "focus",
            "cost",
            "takes_s",
            "left_s",
            "distance",
            "adults",
            "parts",
            "unmet",
        ]
        parts = sum(one["talk_s"] + one["takes_s"] for one in own["parts"])
        assert own["takes_s"] == pytest.approx(parts)
        assert own["takes_s"] + own["left_s"] == pytest.approx(3600)
        for one in own["parts"]:
            assert list(one) == [
                "role", "as", "piece", "title", "number", "of", "talk_s", "takes_s", "distance",
                "serves", "days_since", "gear", "why",
            ]  # fmt: skip
    days = {one["piece"]: one["days_since"] for own in data["proposals"] for one in own["parts"]}
    assert days.get("set/kick-and-go", 9) == 9


def test_what_was_done_in_a_block_is_not_a_main_set_again(capsys) -> None:
    block = ("--block", "heron-legs-in-three-weeks", "--until", "2026-11-19", "--json")
    assert run(CATALOGUE, *WISHES, *block) == 0
    data = json.loads(capsys.readouterr().out)
    mains = [one for own in data["proposals"] for one in own["parts"] if "Main" in one["role"]]
    assert all(one["days_since"] is None or one["days_since"] >= 7 for one in mains)


@pytest.mark.parametrize(
    ("until", "has"), [("2026-11-06", False), ("2026-11-30", True), ("2026-11-02", True)]
)
def test_what_was_kept_as_done_is_not_a_main_set_again(until: str, has: bool, capsys) -> None:
    # the small catalogue keeps one session of kick-and-go, of 2 November
    assert run(CATALOGUE, *WISHES, "--kept", "--until", until, "--json") == 0
    data = json.loads(capsys.readouterr().out)
    parts = [one for own in data["proposals"] for one in own["parts"]]
    mains = [one["piece"] for one in parts if "Main" in one["role"]]
    assert ("set/kick-and-go" in mains) is has
    days = {one["days_since"] for one in parts if one["piece"] == "set/kick-and-go"}
    assert days <= {{"2026-11-06": 4, "2026-11-30": 28, "2026-11-02": None}[until]}


def test_a_proposal_is_saved_as_an_entry_that_check_has_nothing_to_say_of(capsys, tmp_path) -> None:
    root = copied(tmp_path)
    assert run(root, *WISHES, "--save", "heron-tonight", "--start", "18:15") == 0
    path = root / "plans/practices/heron-tonight.yml"
    assert 'slot: {start: "18:15", minutes: 60}' in path.read_text("utf-8")
    words = re.search(
        r'^composed: "(squad=heron&.*&parts=w\..*)"$', path.read_text("utf-8"), re.MULTILINE
    )
    assert words and capsys.readouterr().out.endswith(f"make.html#{words[1]}\n")
    assert main(["check", "--root", str(root), "--today", str(DAY)]) == 0
    assert "heron-tonight" not in capsys.readouterr().out
    before = path.read_bytes()
    assert run(root, *WISHES, "--save", "heron-tonight") == 2
    assert "exists already" in capsys.readouterr().err
    assert path.read_bytes() == before


def test_a_composed_practice_opens_in_make_a_practice_while_all_of_it_is_there(tmp_path) -> None:
    root = copied(tmp_path)
    assert run(root, *WISHES, "--save", "heron-tonight") == 0
    catalogue = load(root).catalogue
    assert catalogue is not None
    words = catalogue.practices["heron-tonight"].composed
    assert opens(catalogue, words) and not opens(catalogue, "")
    main = words.partition("m.set/")[2].partition(":")[0]
    assert main in catalogue.sets and not opens(catalogue, words.replace(main, "no-such-set"))
    for word, gone in (
        ("squad=heron", "squad=sharks"),
        ("pool=", "pool=no-"),
        ("goals=", "goals=no-"),
    ):
        assert word in words and not opens(catalogue, words.replace(word, gone))
    analysis = Analysis(catalogue, DAY)
    page = practice_page(analysis, analysis.practices["heron-tonight"], ())
    opened, composed = (parse_qs(own) for own in (page.context["change"].address, words))
    assert opened["goals"] == composed["goals"] and opened["from"] == ["heron-tonight"]
    roles = [own.partition(".")[0] for own in composed["parts"][0].split(",")]
    assert opened["roles"] == ["".join(roles)]


def test_a_proposal_with_findings_is_not_written(capsys, tmp_path) -> None:
    root = copied(tmp_path)
    assert run(root, *WISHES, "--save", "heron-tonight", "--start", "23:30") == 1
    said = capsys.readouterr().out
    assert "nothing was written" in said
    assert said.startswith("plans/practices/heron-tonight.yml:")
    assert not (root / "plans/practices/heron-tonight.yml").exists()


@pytest.mark.parametrize(
    ("name", "value", "sentence"),
    [
        ("--start", "25:00", "'25:00' is no time of day: write HH:MM, say 17:30"),
        ("--start", "7", "'7' is no time of day"),
        ("--minutes", "sixty", "'sixty' is no whole number"),
    ],
)
def test_a_value_of_no_such_kind_is_refused(capsys, name: str, value: str, sentence: str) -> None:
    assert run(CATALOGUE, *WISHES, name, value) == 2
    assert sentence in capsys.readouterr().err


def test_what_is_for_some_lane_groups_says_beforehand_that_an_entry_is_for_all(
    capsys, tmp_path
) -> None:
    root = copied(tmp_path)
    alone = "For Heron, lanes 1 to 3 alone. As an entry a practice is for all of Heron, "
    assert run(root, *WISHES, "--groups", "heron-1") == 0
    said = capsys.readouterr().out
    assert said.startswith(alone) and "to save one, leave out --groups.\n\nHeron, " in said
    run(root, *WISHES, "--groups", "heron-1", "--save", "heron-tonight")
    assert capsys.readouterr().out.startswith(alone)
    assert run(root, *WISHES) == 0
    assert "alone. As an entry" not in capsys.readouterr().out


def test_json_stands_alone_where_a_practice_is_written(capsys, tmp_path) -> None:
    root = copied(tmp_path)
    assert (
        run(root, *WISHES, "--json", "--save", "heron-tonight", "--heads", "heron-1=9,heron-2=9")
        == 0
    )
    said = capsys.readouterr()
    assert json.loads(said.out)["version"] == 1 and "proposals" in json.loads(said.out)
    path = root / "plans/practices/heron-tonight.yml"
    assert path.is_file() and f"wrote {path}" in said.err


def test_what_is_composed_breaks_no_rule(tmp_path) -> None:
    """Every proposal for some wishes as an entry beside the others; that they are alike is no
    wonder.
    """
    root = copied(tmp_path)
    catalogue = load(root).catalogue
    assert catalogue is not None
    written = 0
    for squad in ("heron", "reed"):
        made = compose_table(Analysis(catalogue, DAY), squad)
        goals = {goal for own in made.table.pieces if "m" in own.roles for goal in own.goals}
        for goal in sorted(goals):
            for minutes in (40, 60, 75):
                request = Request("home", minutes, [made.table.goals[goal].id])
                wishes = wishes_of(made.table, request)
                for own in compose(made.table, wishes):
                    data = practice_entry(made.table, made.candidates, wishes, own, "17:30", {})
                    file = root / f"plans/practices/composed-{written}.yml"
                    file.write_text(as_yaml(data), "utf-8")
                    written += 1
    loaded = load(root)
    assert loaded.catalogue is not None
    found = [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]
    told = [own for own in found if "composed-" in own.place.file]
    assert written >= 10
    assert [own for own in told if own.code != "near-duplicate"] == []


def test_where_nothing_fits_the_wish_that_hinders_is_named(capsys) -> None:
    assert run(CATALOGUE, "--squad", "heron", "--minutes", "25", "--goals", "kick-into-stroke") == 0
    said = capsys.readouterr().out
    title = "Heron: kick into stroke – legs before arms"
    assert f"Nothing fits.\nIn 45 minutes there would be one: “{title}”.\n" in said


def test_where_nothing_fits_nothing_is_written_and_the_wish_is_named(capsys, tmp_path) -> None:
    wishes = ("--squad", "heron", "--minutes", "25", "--goals", "kick-into-stroke")
    assert run(copied(tmp_path), *wishes, "--save", "tonight") == 2
    said = capsys.readouterr().err
    assert "nothing fits, and nothing was written: In 45 minutes there would be one: “" in said


def test_what_is_not_met_stands_before_the_pieces_and_once_where_none_of_them_meets_it(
    capsys,
) -> None:
    wishes = ("--squad", "heron", "--minutes", "60", "--goals", "kick-technique,rotation")
    assert run(CATALOGUE, *wishes, "--effort", "all-out") == 0
    head, *boards = capsys.readouterr().out.rstrip().split("\n\n")
    assert re.search(
        r"^(Both|All three): No main set is all-out, as .*: drop the effort", head, re.MULTILINE
    )
    for board in boards:
        assert "is all-out" not in board
        lines = [line.strip() for line in board.splitlines()]
        told = [k for k, line in enumerate(lines) if line.endswith((" a goal.", " minutes."))]
        first = next(k for k, line in enumerate(lines) if line.startswith("after "))
        assert all(k < first for k in told)


def test_what_there_is_no_piece_for_at_all_is_named(capsys) -> None:
    assert main([*["compose", "practice", "--squad", "heron", "--minutes", "60", "--goals",
                   "kick-technique"],
                 "--root", str(BASE), "--today", "2026-10-01", "--json"]) == 0  # fmt: skip
    (own,) = json.loads(capsys.readouterr().out)["hinders"]
    assert own["wish"] == "piece" and own["which"] == "cool-down"
    assert own["words"].startswith("There is no cool-down for them in this pool:")


def test_of_a_goal_that_is_missed_the_wish_in_the_way_is_named(capsys) -> None:
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    table = compose_table(Analysis(catalogue, DAY), "heron").table
    goal = next(place for place, own in enumerate(table.goals) if own.id == "rotation")
    serve = [own.key for own in table.pieces if goal in own.goals]
    wishes = ("--squad", "heron", "--minutes", "60", "--goals", "kick-technique,rotation")
    assert run(CATALOGUE, *wishes, *(f"--leave-out={key}" for key in serve), "--json") == 0
    (first, *_) = json.loads(capsys.readouterr().out)["proposals"]
    (missed,) = (own for own in first["unmet"] if own["wish"] == "goals")
    assert (missed["which"], missed["because"]) == ("rotation", "leave_out")
    assert missed["words"] == (
        "Rotation is not in it, as it is left out: take it in again, or ask for another goal."
    )
    for because in (NOT_FOR, GEAR, ROOM, ADULTS, LATELY, LEFT_OUT, MINUTES, TAUGHT):
        said = unmet_words(table, Unmet(GOAL, goal, because), 2)
        assert said.startswith("Rotation is not in it, as ") and said.endswith(".")


def test_of_a_single_goal_nobody_is_told_to_leave_one_out() -> None:
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    table = compose_table(Analysis(catalogue, DAY), "heron").table
    for own in (
        Unmet(NO_SKILL, UNKNOWN, MINUTES),
        Unmet(EFFORT, 0, "goals"),
        Unmet(EFFORT, 0, HARDER),
        Unmet(GOAL, 0, MINUTES),
    ):
        one, two = unmet_words(table, own, 1), unmet_words(table, own, 2)
        assert "a goal" in two and "a goal" not in one
    relief = Unmet(NO_RELIEF, UNKNOWN, MINUTES)  # which one goal less seldom makes room for
    for goals in (1, 2):
        assert unmet_words(table, relief, goals).endswith("stroke: take more minutes.")


@pytest.mark.parametrize(
    ("argv", "sentence"),
    [
        (
            ("--squad", "heron", "--minutes", "0", "--goals", "walls"),
            "0 min: from 20 to 120 minutes",
        ),
        (("--minutes", "60", "--goals", "walls"), "say whose it is: --squad heron or osprey"),
        (
            ("--squad", "sharks", "--minutes", "60", "--goals", "walls"),
            "there is no squad 'sharks'",
        ),
        (("--groups", "sharks", "--minutes", "60", "--goals", "walls"), "no lane group 'sharks'"),
        (("--squad", "reed", "--minutes", "60", "--goals", "underwater"), "serves under water"),
        ((*WISHES, "--gear", "fins=900"), "900 of fins: the club owns"),
        ((*WISHES, "--adults", "-1"), "--adults -1: write how many adults are there"),
        ((*WISHES, "--lanes", "heron-1=0"), "0 lanes for Heron"),
        ((*WISHES, "--done", "kick"), "--done is written NAME=VALUE, say --done set/kick-and-go=3"),
        ((*WISHES, "--taught", "x=lots"), "--taught x: 'lots' is no whole number"),
        ((*WISHES, "--block", "no-such"), "there is no block of Heron 'no-such'"),
        (
            (*WISHES, "--block", "heron-legs-in-three-weeks", "--until", "2027-03-01"),
            "2027-03-01 is no day by which 'heron-legs-in-three-weeks' has had anything done",
        ),
        ((*WISHES, "--until", "2031-01-01"), "--until 2031-01-01: that is more than a year from"),
        ((*WISHES, "--save", "tonight", "--proposal", "9"), "there is no proposal 9"),
        ((*WISHES, "--save", "To Night"), "To Night"),
        ((*WISHES, "--pool", "sea"), "there is no pool 'sea'"),
        ((*WISHES, "--goals", "wals"), "there is no goal 'wals'; did you mean 'walls'?"),
        ((*WISHES, "--without", "finz"), "there is no gear 'finz'; did you mean 'fins'?"),
        (
            (*WISHES, "--change", "jump=m"),
            "there is no change 'jump'; there are swap, keep, free, up, down, out",
        ),
        (
            (*WISHES, "--change", "swap=q"),
            "there is no role 'q'; there are w, s, m, n, o, e, c; warm-up, skill, main set",
        ),
        (
            (*WISHES, "--keep", "set/kick-and-go=o"),
            "main set is kept where it stands: --change keep=o",
        ),
        ((*WISHES, "--change", "swap=m,out=e"), "one change each, --change swap=m --change out=e"),
        ((*WISHES, "--proposal", "0"), "there is no proposal 0"),
        ((*WISHES, "--save", ""), "almanac: --save: its value has to follow it"),
        ((*WISHES, "--minutes", "sixty"), "almanac: --minutes: 'sixty' is no whole number"),
        ((*WISHES, "--start", "25:99"), "almanac: --start: '25:99' is no time of day"),
        ((*WISHES, "--until", "2026-13-01"), "almanac: --until: '2026-13-01' is no day"),
        (
            (*WISHES, "--without", "fins", "--gear", "fins=4"),
            "--gear fins=4 and --without fins: leave out one of them",
        ),
        ((*WISHES, "--without", "sock"), "no gear 'sock'; did you mean 'drag-socks'?"),
        (
            (*WISHES, "--goals", "kick"),
            "no goal 'kick'; did you mean 'kick-technique', 'kick-speed', 'kick-tempo', 'kick-end",
        ),
        ((*WISHES, "--goals", "starts"), "there is no goal 'starts'; did you mean 'walls'?"),
        ((*WISHES, "--effort", "hard"), "there is no effort 'hard'; did you mean 'strong'?"),
        (
            (*WISHES, "--groups", "osprey-1"),
            "'osprey-1' is a lane group of osprey; those of heron are heron-1 and heron-2",
        ),
        ((*WISHES, "--squad", "heron,osprey"), "compose one for heron and one for osprey"),
        ((*WISHES, "--done", "nothing=3"), "as --json has them"),
        ((*WISHES, "--goal", "walls", "rotation"), "'rotation' stands alone: names in a row"),
        ((*WISHES, "--banana"), "there is no option --banana; almanac compose practice --help"),
        ((*WISHES, "--gaols", "walls"), "there is no option --gaols; did you mean --goals?"),
        ((*WISHES, "--heads", "heron-3=4"), "'heron-3'; did you mean 'heron-1' or 'heron-2'?"),
        ((*WISHES, "--minutes"), "--minutes: its value has to follow it"),
        (
            (*WISHES, "--minutes", "25", "--change", "out=e"),
            "nothing can be changed: In 45 minutes",
        ),
        (("--squad", "heron"), "say --minutes and --goals: almanac compose practice --squad heron"),
        ((*WISHES, "--until", "2027-02-29"), "'2027-02-29' is no day: the calendar has none such"),
        ((*WISHES, "--goals", "walls,walls"), "--goals: 'walls' stands there twice"),
        (
            ("--squad", "reed", "--minutes", "60", "--goals", "underwater"),
            "serves under water; there is something for ",
        ),
    ],
)
def test_a_bad_wish_gets_one_sentence(capsys, argv: tuple[str, ...], sentence: str) -> None:
    assert run(CATALOGUE, *argv) == 2
    said = capsys.readouterr()
    assert sentence in said.err and said.err.count("\n") == 1 and not said.out


@pytest.mark.parametrize(
    ("other", "usual"),
    [
        (("--goals", "Kick into stroke"), ("--goals", "kick-into-stroke")),
        (("--goals", "ROTATIONS"), ("--goals", "rotation")),
        (("--without", "Flippers"), ("--without", "fins")),
        (("--without", "drag sock"), ("--without", "drag-socks")),
        (("--squad", "Heron"), ("--squad", "heron")),
        (("--pool", "Quillwater Baths"), ("--pool", "home")),
        # A comma parts names in a list, and so is left out of a title.
        (("--groups", "heron lanes 1 to 3"), ("--groups", "heron-1")),
        (("--lanes", "Heron lanes 1 to 3=2"), ("--lanes", "heron-1=2")),
        (("--effort", "Strong"), ("--effort", "strong")),
        (("--done", "Kick and go=3"), ("--done", "set/kick-and-go=3")),
        (("--leave-out", "kick-and-go"), ("--leave-out", "set/kick-and-go")),
        (("--change", "swap=main set"), ("--change", "swap=m")),
    ],
)
def test_a_title_in_any_case_and_number_is_as_good_as_an_id(
    capsys, other: tuple[str, ...], usual: tuple[str, ...]
) -> None:
    answers = []
    for own in (other, usual):
        assert run(CATALOGUE, *WISHES, *own) == 0
        answers.append(capsys.readouterr().out)
    assert answers[0] == answers[1]


@pytest.mark.parametrize("what", ["practice", "block"])
def test_the_help_begins_with_an_example_that_names_no_option_unknown(capsys, what: str) -> None:
    assert main(["compose", what, "--help"]) == 0
    said = capsys.readouterr().out
    assert said.startswith(f"usage: almanac compose {what} --squad heron ")
    example = re.findall(r"--[a-z-]+", said.partition("\n\n")[0])
    assert example and {*example} <= {*re.findall(r"^  (--[a-z-]+)", said, re.MULTILINE)}
