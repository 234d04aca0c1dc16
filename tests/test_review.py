"""``almanac review`` on repositories made on the fly: what moves, with the right numbers; and what
cannot be read.
"""

from __future__ import annotations

import json
import re
from datetime import date
from pathlib import Path

import pytest
from git_world import committed, git
from plans_world import club, write
from shared import examples

from almanac.analysis.analysis import Analysis
from almanac.commands import review_sides
from almanac.commands.main import main
from almanac.commands.shared import CheckedCatalogue
from almanac.model.load import Loaded


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    return committed(club(tmp_path / "club"))


def edit(root: Path, file: str, find: str, put: str) -> None:
    text = (root / file).read_text("utf-8")
    assert find in text
    write(root, file, text.replace(find, put))


def reviewed(
    root: Path, capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 0
) -> dict:
    assert main(["review", *arguments, "--json", "--root", str(root)]) == code
    return json.loads(capsys.readouterr().out)


KICK = "drills/skills/kicking/back-kick.yml"


def test_the_headline_counts_in_words(repository: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(repository, KICK, "level: foundation", "level: foundaton")
    assert main(["review", "HEAD", "--root", str(repository)]) == 1
    told = "0 figures move in 0 entries. 1 new error, 0 new warnings, 1 finding gone."
    assert told in capsys.readouterr().out


def test_a_pace_factor_moves_every_clock_near_and_far(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(repository, KICK, "factor: 1.0", "factor: 1.1")
    result = reviewed(repository, capsys, "HEAD")
    (entry,) = result["entries"]
    assert (entry["what"], entry["kind"], entry["id"]) == ("changed", "drill", "back-kick")
    assert entry["fields"] == [{"path": "pace.factor", "before": 1.0, "after": 1.1}]
    moved = {(move["kind"], move["id"], move["figure"]): move for move in result["figures"]}
    assert {(kind, id) for kind, id, _ in moved} == {
        ("set", "six-fifties"),
        ("practice", "tuesday"),
        ("block", "autumn"),
    }
    work = moved["set", "six-fifties", "work"]
    # 6 × 50 at easy (0.75 of best): 60 s ÷ 0.75 = 80 s each, then 1.1 times that
    assert (work["before"], work["after"]) == (pytest.approx(480), pytest.approx(528))
    assert ("set", "six-fifties", "clock") not in moved  # its send-offs hold the clock
    # warm-up of 2 × 50 with 10 s rest: from 90 to 100 s each; the cool-down is swum, not kicked
    assert (
        moved["practice", "tuesday", "part 1 clock"]["after"]
        - moved["practice", "tuesday", "part 1 clock"]["before"]
        == 18  # the second until the last of four in the lane is home: + 80 + 30, then 88 + 30
    )
    assert all(not move["near"] for move in result["figures"])


def test_what_differs_for_one_lane_group_moves_its_figures_alone(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    # another lane group first, so that the set is meant for two; then 4 of the 6 × 50 for one
    own = "plans/sets/six-fifties.yml"
    text = (repository / "plans/club.yml").read_text("utf-8")
    group = text[text.index("  heron-1:\n") : text.index("gear_owned:")]
    two = group + group.replace("heron-1", "heron-2").replace("lane 1", "lane 2")
    edit(repository, "plans/club.yml", group, two)
    git(repository, "commit", "--quiet", "--all", "--message", "two lane groups")
    edit(repository, own, "sendoff: 1:45", "sendoff: 1:45\n    by_group: {heron-2: {reps: 4}}")
    result = reviewed(repository, capsys, "HEAD")
    moved = {
        (move["group"], move["figure"]): (move["before"], move["after"])
        for move in result["figures"]
        if move["id"] == "six-fifties"
    }
    assert moved["heron-2", "distance"] == (300, 200) and moved["heron-2", "reps"] == (6, 4)
    assert ("heron-1", "distance") not in moved and ("", "distance") not in moved
    main(["review", "HEAD", "--markdown", "--root", str(repository)])
    assert "distance, Heron, lane 2" in capsys.readouterr().out


def test_entries_added_removed_and_moved(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(
        repository,
        "plans/sets/six-more.yml",
        (repository / "plans/sets/six-fifties.yml").read_text().replace("Six fifties", "Six more"),
    )
    (repository / "plans/blocks/autumn.yml").unlink()
    swim = repository / "drills/skills/swimming/back-swim.yml"
    (repository / "drills/skills/stroke").mkdir()
    swim.rename(repository / "drills/skills/stroke/back-swim.yml")
    result = reviewed(repository, capsys, "HEAD")
    assert [(entry["what"], entry["id"]) for entry in result["entries"]] == [
        ("removed", "autumn"), ("moved", "back-swim"), ("added", "six-more"),
    ]  # fmt: skip
    shares = {frozenset(pair["ids"]): pair["share"] for pair in result["alike"]}
    assert shares[frozenset(("six-more", "six-fifties"))] > 0.5
    assert {"kind": "practice", "id": "tuesday"} in result["unused"]


@pytest.mark.parametrize("put", ["titel:", "title: [", "title: 7\nno-such-field:"])
def test_what_a_broken_entry_uses_is_not_said_to_be_unused(
    repository: Path, capsys: pytest.CaptureFixture[str], put: str
) -> None:
    edit(repository, "plans/blocks/autumn.yml", "title:", put)
    result = reviewed(repository, capsys, "HEAD", code=1)
    assert result["findings"]["appeared"] and result["unused"] == []


def test_lists_are_told_by_item(repository: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(
        repository,
        KICK,
        "cues: [Toes make the water boil]",
        "cues: [Toes make the water boil, Knees stay under]",
    )
    (entry,) = reviewed(repository, capsys, "HEAD")["entries"]
    assert entry["fields"] == [{"path": "cues[1]", "before": None, "after": "Knees stay under"}]


def test_new_errors_are_told_and_decide_the_exit_code(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(repository, "plans/sets/six-fifties.yml", "distance: 50", "distance: 55")
    result = reviewed(repository, capsys, "HEAD", code=1)
    assert "rep-ends-mid-pool" in [finding["code"] for finding in result["findings"]["appeared"]]
    git(repository, "commit", "--quiet", "--all", "--message", "broken")
    assert reviewed(repository, capsys, "HEAD")["findings"] == {"appeared": [], "gone": []}
    edit(repository, "plans/sets/six-fifties.yml", "distance: 55", "distance: 50")
    assert [
        finding["code"] for finding in reviewed(repository, capsys, "HEAD")["findings"]["gone"]
    ] == ["rep-ends-mid-pool"]


def test_markdown_is_safe_and_short(repository: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(
        repository,
        KICK,
        "Push off on the back in streamline.",
        "Push `off` <b>on</b> @everyone [x](javascript:1).",
    )
    assert (
        main(
            [
                "review",
                "HEAD",
                "--root",
                str(repository),
                "--links",
                "https://host.example/blob/abc",
            ]
        )
        == 0
    )
    text = capsys.readouterr().out
    assert text.startswith("<!-- deck-almanac-review -->")
    assert "https://host.example/blob/abc/drills/skills/kicking/back-kick.yml" in text
    assert "<b>" not in text.replace("`` Push `off` <b>on</b> @everyone [x](javascript:1). ``", "")
    assert len(text) < 65_536


def test_a_very_large_change_still_fits_a_comment(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (repository / "plans/sets/six-fifties.yml").read_text()
    for number in range(examples(700, 1500)):
        write(
            repository, f"plans/sets/set-{number}.yml", text.replace("Six fifties", f"Set {number}")
        )
    main(["review", "HEAD", "--markdown", "--root", str(repository)])
    assert len(capsys.readouterr().out) < 65_536
    main(["review", "HEAD", "--root", str(repository)])
    screen = capsys.readouterr().out.splitlines()
    assert len(screen) <= 30 and screen[-1].startswith("All of it: almanac review HEAD --all")


def test_a_broken_base_is_compared_as_far_as_it_goes(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(repository, "plans/policy.yml", "title:", "titel:")
    git(repository, "commit", "--quiet", "--all", "--message", "broken policy")
    edit(repository, "plans/policy.yml", "titel:", "title:")
    result = reviewed(repository, capsys, "HEAD")
    assert result["figures"] == [] and result["findings"]["gone"]


@pytest.mark.parametrize("revision", ["nowhere", "main~9", "--output=x", "HEAD:drills"])
def test_an_unknown_revision_is_wrong_usage(
    repository: Path, capsys: pytest.CaptureFixture[str], revision: str
) -> None:
    assert main(["review", "--root", str(repository), "--", revision]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_no_repository_and_no_commit_are_wrong_usage(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = club(tmp_path / "bare")
    assert main(["review", "HEAD", "--root", str(root)]) == 2
    git(root, "init", "--quiet")
    assert main(["review", "HEAD", "--root", str(root)]) == 2
    assert "no commit yet" in capsys.readouterr().err


def test_a_shallow_clone_says_what_to_fetch(
    repository: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    first = git(repository, "rev-parse", "HEAD")
    edit(repository, KICK, "factor: 1.0", "factor: 1.1")
    git(repository, "commit", "--quiet", "--all", "--message", "slower")
    git(tmp_path, "clone", "--quiet", "--depth", "1", f"file://{repository}", "shallow")
    assert main(["review", first, "--root", str(tmp_path / "shallow")]) == 2
    assert "--unshallow" in capsys.readouterr().err


def test_binary_files_submodules_and_a_root_below_the_repository(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = club(tmp_path / "other")
    git(other, "init", "--quiet")
    git(other, "add", "--all")
    git(other, "commit", "--quiet", "--message", "other")
    top = tmp_path / "top"
    root = club(top / "below")
    git(top, "init", "--quiet")
    git(top, "submodule", "--quiet", "add", f"file://{other}", "below/drills/skills/borrowed")
    (root / "plans/sets/picture.yml").write_bytes(bytes(range(256)))
    git(top, "add", "--all")
    git(top, "commit", "--quiet", "--message", "odd")
    (root / "plans/sets/picture.yml").unlink()
    result = reviewed(root, capsys, "HEAD", "HEAD")
    assert result["entries"] == []
    assert main(["review", "HEAD", "--root", str(root), "--json"]) in (0, 1)


@pytest.mark.parametrize(
    ("file", "find", "put", "first"),
    [
        (KICK, "factor: 1.0", "factor: 1.1", "rest|planned load|whole practice"),
        ("plans/sets/six-fifties.yml", "reps: 6", "reps: 8", "clock"),
        ("plans/club.yml", "time: 1:00.0", "time: 0:55.0", "rest|planned load|whole practice"),
    ],
)
def test_a_review_fits_a_screen_and_begins_with_what_is_seen(
    repository: Path, capsys: pytest.CaptureFixture[str], file: str, find: str, put: str, first: str
) -> None:
    edit(repository, file, find, put)
    main(["review", "HEAD", "--markdown", "--root", str(repository)])
    said = capsys.readouterr().out
    unfolded = re.sub(r"(?s)<details>.*?</details>\n", "", said)
    assert len(unfolded.splitlines()) <= 30
    seen = unfolded.partition("### What coaches will see\n\n- ")[2]
    assert re.match(first, seen)
    assert "kick flutter" not in unfolded and "<summary>Figures that move: " in said
    main(["review", "HEAD", "--root", str(repository)])
    screen = capsys.readouterr().out.splitlines()
    assert len(screen) <= 30 and max(map(len, screen[:-1])) <= 100
    assert re.match(first, screen[screen.index("What coaches will see") + 1].removeprefix("- "))
    assert screen[-1].startswith("All of it: almanac review HEAD --all --root ")
    main(["review", "HEAD", "--all", "--root", str(repository)])
    whole = capsys.readouterr().out
    assert "Figures that move" in whole and len(whole.splitlines()) > len(screen)


def test_what_cannot_be_read_is_said_first(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    own = "plans/sets/fresh.yml"
    write(repository, own, "title: [a\nlevel: foundation\n")
    (entry,) = reviewed(repository, capsys, "HEAD", code=1)["entries"]
    assert (entry["what"], entry["kind"], entry["id"]) == ("unreadable", "set", "fresh")
    assert main(["review", "HEAD", "--root", str(repository)]) == 1
    said = capsys.readouterr().out
    assert "no entry changed" not in said
    assert f"Read this first\n- Cannot be read. {own}: nothing" in said
    git(repository, "add", "--all")
    git(repository, "commit", "--quiet", "--message", "broken")  # it is no change any more
    assert reviewed(repository, capsys, "HEAD")["entries"] == []


def test_a_new_entry_is_told_by_its_dangers_and_its_clock(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drill = (repository / KICK).read_text("utf-8").replace("back-kick", "other-kick")
    write(repository, "drills/skills/kicking/other-kick.yml", drill)
    own = (repository / "plans/sets/six-fifties.yml").read_text("utf-8")
    write(repository, "plans/sets/six-more.yml", own)
    main(["review", "HEAD", "--root", str(repository)])
    said = capsys.readouterr().out
    first = " ".join(said.partition("Read this first\n")[2].partition("\n\n")[0].split())
    assert "New drill. other-kick: title “Back kick”; level foundation" in first
    assert "1 danger told: head-into-wall." in first
    assert "- clock: 10:30 in set six-more" in said  # six send-offs of 1:45
    assert "More work" not in said


def test_a_renamed_set_is_compared_with_what_it_was(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["rename", "six-fifties", "seven-fifties", "--root", str(repository)]) == 0
    edit(repository, "plans/sets/seven-fifties.yml", "reps: 6", "reps: 7")
    capsys.readouterr()
    moved = {
        (move["id"], move["figure"]): (move["before"], move["after"])
        for move in reviewed(repository, capsys, "HEAD")["figures"]
    }
    assert moved["seven-fifties", "distance"] == (300, 350)


def test_a_terminal_gets_no_command_from_a_proposal(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(repository, KICK, "Push off on the back in streamline.", r'"Push \e[31m `off` **on**."')
    main(["review", "HEAD", "--root", str(repository)])
    said = capsys.readouterr().out
    assert "\x1b" not in said and r"Push \x1b[31m `off` **on**." in said


def screen(root: Path, capsys: pytest.CaptureFixture[str], code: int = 0) -> str:
    assert main(["review", "HEAD", "--root", str(root)]) == code
    return " ".join(capsys.readouterr().out.split())


def test_what_only_names_a_new_id_is_no_change(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    own = "drills/skills/kicking/other-kick.yml"
    drill = (repository / KICK).read_text("utf-8").replace("Back kick", "Other kick")
    write(repository, own, drill.replace("needs_first: [back-float]", "needs_first: [back-kick]"))
    git(repository, "add", "--all")
    git(repository, "commit", "--quiet", "--message", "another")
    assert main(["rename", "back-kick", "kick-on-back", "--root", str(repository)]) == 0
    capsys.readouterr()
    said = screen(repository, capsys)
    assert "1 moved. 0 figures move in 0 entries. 0 new errors, 0 new warnings, 0" in said
    assert "moved drill kick-on-back from back-kick - a new id is named in" in said
    assert "Guard gone" not in said  # it needs the same drill first as before
    edit(repository, own, "needs_first: [kick-on-back]", "needs_first: [back-swim]")
    assert "Guard gone. Drill other-kick no longer says" in screen(repository, capsys)


def test_a_lane_group_and_a_squad_under_another_id_change_nothing(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for old, new in (("heron-1", "egret-1"), ("heron", "egret")):
        assert main(["rename", old, new, "--root", str(repository)]) == 0
    capsys.readouterr()
    said = screen(repository, capsys)
    assert "2 moved. 0 figures move in 0 entries. 0 new errors, 0 new warnings, 0" in said
    assert "moved lane group egret-1 from heron-1" in said and "squad egret from heron" in said
    edit(repository, "plans/club.yml", "time: 1:00.0", "time: 0:55.0")
    assert "egret-1.tests[0] from 1:00.0 to 0:55.0" in screen(repository, capsys)


def test_a_retired_entry_is_told_by_its_own_name_with_the_dangers_that_its_place_does_not_tell(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = "drills/skills/kicking/other-kick.yml"
    drill = (repository / KICK).read_text("utf-8").replace("head-into-wall", "foot-strikes")
    write(repository, other, drill)
    git(repository, "add", "--all")
    git(repository, "commit", "--quiet", "--message", "another")
    stub = "moved_to: other-kick\nretired: 2026-11-01\ntitle: Back kick\n"
    write(repository, KICK, stub)
    said = screen(repository, capsys)
    assert "1 out of use." in said
    assert "retired drill back-kick: other-kick takes its place" in said
    assert "Danger gone. Drill back-kick: other-kick, which takes its place, does not" in said


def test_dangers_that_go_are_never_folded(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drill = (repository / KICK).read_text("utf-8")
    many = [f"kick-{number}" for number in range(110)]
    for name in many:
        write(repository, f"drills/skills/kicking/{name}.yml", drill)
    git(repository, "add", "--all")
    git(repository, "commit", "--quiet", "--message", "many")
    for name in many:
        text = re.sub(r"(?ms)^safety:.*?(?=^\w)", "", drill)
        write(repository, f"drills/skills/kicking/{name}.yml", text)
    for how in ([], ["--markdown"]):
        main(["review", "HEAD", *how, "--root", str(repository)])
        unfolded = capsys.readouterr().out.partition("<details>")[0].replace("`", "")
        for name in many:
            assert f"Drill {name} no longer tells: head-into-wall (can-kill)." in unfolded


def test_what_one_check_finds_in_a_file_is_one_line_of_the_screen(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    own = "plans/sets/six-fifties.yml"
    more = "expect: {distance: 300, lengths: 12}\n"
    write(repository, own, (repository / own).read_text("utf-8") + more)
    git(repository, "commit", "--quiet", "--all", "--message", "expected")
    edit(repository, own, "reps: 6", "reps: 7")
    said = screen(repository, capsys, code=1)
    assert "believed to be 300, and the set adds up to 350" in said
    assert said.count("expect-differs") == 1 and "and 1 other in this file like it" in said
    main(["review", "HEAD", "--all", "--root", str(repository)])
    assert capsys.readouterr().out.count("expect-differs") == 2


def test_an_item_of_a_list_is_told_by_what_people_know_it_by(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    club_file = (repository / "plans/club.yml").read_text("utf-8")
    found = re.search(r"benchmark: (\S+), time: (\S+),", club_file)
    assert found
    edit(repository, "plans/club.yml", found[0], f"benchmark: {found[1]}, time: 9:59.0,")
    main(["review", "HEAD", "--root", str(repository)])
    said = " ".join(capsys.readouterr().out.split())
    assert re.search(rf"tests\[0\]\.time \({found[1]}\): {found[2]} → 9:59\.0", said)


def test_what_is_kept_of_a_side_changes_no_review(
    repository: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Most reviews compare with the same base: it is worked out once, and never believed where it
    is another now.
    """
    worked_out = list[date]()
    really = review_sides.checked

    def counting(loaded: Loaded, day: date, before: Analysis | None = None) -> CheckedCatalogue:
        worked_out.append(day)
        return really(loaded, day, before)

    monkeypatch.setattr(review_sides, "checked", counting)
    monkeypatch.setenv("XDG_CACHE_HOME", str(repository.parent / "cache"))
    edit(repository, KICK, "factor: 1.0", "factor: 1.1")
    first = reviewed(repository, capsys, "HEAD")
    assert first["figures"] and first["entries"] and len(worked_out) == 2
    assert reviewed(repository, capsys, "HEAD") == first and len(worked_out) == 2
    assert reviewed(repository, capsys, "HEAD", "--no-cache") == first and len(worked_out) == 4
    edit(repository, KICK, "factor: 1.1", "factor: 1.2")
    second = reviewed(repository, capsys, "HEAD")
    assert len(worked_out) == 5 and second["figures"] != first["figures"]
    assert reviewed(repository, capsys, "HEAD", "--no-cache") == second
    reviewed(repository, capsys, "HEAD", "--today", "2027-02-01")
    assert worked_out[-2:] == [date(2027, 2, 1)] * 2, "another day is another review"


MANY = [f"kick-{number}" for number in range(12)]


def with_many_drills(repository: Path) -> str:
    drill = (repository / KICK).read_text("utf-8")
    assert re.search(r"most: \d+", drill)
    for name in MANY:
        own = re.sub(r"most: \d+", "most: 10", drill.replace("Back kick", name.capitalize()))
        write(repository, f"drills/skills/kicking/{name}.yml", own)
    git(repository, "add", "--all")
    git(repository, "commit", "--quiet", "--message", "many")
    return drill


def test_the_dose_that_grows_most_heads_those_of_many_drills(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with_many_drills(repository)
    for name in MANY:
        most = "most: 60" if name == MANY[7] else "most: 11"
        edit(repository, f"drills/skills/kicking/{name}.yml", "most: 10", most)
    said = screen(repository, capsys, code=1)
    first = f"Dose raised. 12 drills: dose.most goes from 10 to 60 in {MANY[7]}, from 10 to 11 in"
    assert first in said and said.count("Dose raised") == 1
    main(["review", "HEAD", "--all", "--root", str(repository)])
    assert capsys.readouterr().out.count("Dose raised") == len(MANY)


def test_a_word_that_goes_is_one_line_with_all_that_it_said(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    own = "drills/vocabulary/efforts.yml"
    text = (repository / own).read_text("utf-8")
    (line,) = re.findall(r"(?m)^  strong:.*\n(?:    .*\n)*", text)
    write(repository, own, text.replace(line, ""))
    said = screen(repository, capsys, code=1)
    assert "Guard gone. Vocabulary efforts no longer says under words.strong: rating" in said
    assert said.count("Guard gone") == 1
    assert "of the words strong no longer stands there; what is allowed" in said


def test_a_practice_is_told_by_the_time_that_its_page_and_the_check_have(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """From the first word of its first talk to the last hand on the wall, not from the first start;
    and a slot that shrinks by what is left of it.
    """
    (file,) = sorted((repository / "plans/practices").glob("*.yml"))[:1]
    own, text = f"plans/practices/{file.name}", file.read_text("utf-8")
    (talk,) = re.findall(r"talk: ([\d:]+)", text)[:1]
    edit(repository, own, f"talk: {talk}", "talk: 9:00")
    said = reviewed(repository, capsys, "HEAD", code=0)
    moved = {move["figure"]: move for move in said["figures"] if move["id"] == file.stem}
    assert "time" in moved and "minutes" not in moved  # the first talk is no swimming
    assert "whole practice: " in screen(repository, capsys)
    git(repository, "commit", "--quiet", "--all", "--message", "talk")
    text = (repository / own).read_text("utf-8")
    write(repository, own, re.sub(r"minutes: \d+", "minutes: 10", text))
    assert re.search(r"to spare in its slot: \S+ → \S+ too long", screen(repository, capsys))


@pytest.mark.parametrize(("columns", "rows"), [(80, 24), (80, 40), (120, 30)])
def test_a_review_fits_the_terminal_that_it_is_read_on(
    repository: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    columns: int,
    rows: int,
) -> None:
    edit(repository, "plans/sets/six-fifties.yml", "reps: 6", "reps: 60")
    monkeypatch.setattr("sys.stdout.isatty", lambda: True)
    monkeypatch.setenv("COLUMNS", str(columns))
    monkeypatch.setenv("LINES", str(rows))
    main(["review", "HEAD", "--root", str(repository)])
    told = capsys.readouterr().out.splitlines()
    assert len(told) < rows  # the prompt has the last
    assert max(map(len, told[:-1])) <= min(columns, 100)
    found = told[told.index("Findings that appear") + 1 :]
    assert any(line.startswith("- error ") for line in found)  # none is only counted
    assert any(line.startswith("- clock: ") for line in told)
