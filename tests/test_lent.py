"""What the program lends a club that has none of its own: lists of words, and limits."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
import yaml
from example_cases import BASE
from shared import CATALOGUE, DAY, copied

from almanac.commands.main import main
from almanac.commands.shared import load_and_check
from almanac.model.load import load
from almanac.resources import HOME
from almanac.source.document_store import DocumentStore
from almanac.source.lent import digest_of_lent, lent

LISTS = "drills/vocabulary"


def told(root: Path) -> list[str]:
    return [f"{one.place} {one.code}" for one in load_and_check(root, DAY).findings if one.is_error]


def test_a_club_without_lists_and_limits_has_the_programs(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    shutil.rmtree(root / LISTS)
    (root / "plans/policy.yml").unlink()
    assert told(root) == []
    catalogue = load_and_check(root, DAY).loaded.catalogue
    assert catalogue is not None
    assert set(catalogue.words("levels")) == {"foundation", "building", "performing"}
    assert catalogue.policy.rest.keys() == catalogue.efforts.keys()
    assert catalogue.policy.gaps == ()  # what this club has no drills for is its own to say
    assert load_and_check(root, DAY).loaded.count == 12 - 1  # its own entries


def test_only_what_is_missing_is_lent(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    (root / f"{LISTS}/goals.yml").unlink()
    assert lent(root) == [
        f"{LISTS}/goals.yml"
    ]  # no starts, which name hazards that this club has not


def test_a_lent_list_fits_the_words_of_the_club(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)  # whose levels are two of the program's three
    (root / f"{LISTS}/efforts.yml").unlink()
    (root / "plans/policy.yml").unlink()
    catalogue = load_and_check(root, DAY).loaded.catalogue
    assert catalogue is not None
    assert any(word.by_level for word in catalogue.efforts.values())
    assert all(
        set(word.by_level) <= set(catalogue.words("levels")) for word in catalogue.efforts.values()
    )


def test_a_gravity_that_the_programs_hazards_need_is_named(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    (root / f"{LISTS}/hazards.yml").unlink()
    (found,) = load_and_check(root, DAY).findings
    assert found.is_error and found.place.file == f"{LISTS}/gravities.yml"
    assert "nothing here stands for can-injure of the program's gravities" in found.message
    assert f"first in {LISTS}/hazards.yml:" in found.message


def test_a_word_that_the_program_needs_is_named_where_it_is_missing(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    path = root / f"{LISTS}/kicks.yml"
    path.write_text(path.read_text("utf-8").replace("  none:", "  still:"), "utf-8")
    found = [one for one in load_and_check(root, DAY).findings if one.code == "word-missing"]
    assert ["'none' is missing" in one.message for one in found] == [True]


def test_what_stands_there_is_never_passed_over(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    (root / "plans/policy.yml").write_text("limits: [\n", "utf-8")
    assert [line.split(":")[0] for line in told(root)] == ["plans/policy.yml"]


def test_a_check_is_not_remembered_when_what_is_lent_changes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    root, home = copied(BASE, tmp_path / "club"), tmp_path / "home"
    (root / f"{LISTS}/goals.yml").unlink()
    shutil.copytree(HOME / LISTS, home / LISTS)
    monkeypatch.setattr("almanac.source.lent.HOME", home)
    monkeypatch.setattr("almanac.model.reading.HOME", home)
    words = ("check", "--root", str(root), "--today", DAY.isoformat())
    assert main(words) == 0, capsys.readouterr().out
    (home / f"{LISTS}/goals.yml").write_text(
        "title: Goals\nabout: None is left.\nwords: {a: {title: A, means: Nothing.}}\n", "utf-8"
    )
    assert main(words) == 1


def test_what_a_clubs_own_list_is_held_against_is_part_of_what_is_remembered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Lent limits of an effort follow the program's efforts, though the club has its own."""
    home = tmp_path / "home"
    shutil.copytree(HOME / LISTS, home / LISTS)
    monkeypatch.setattr("almanac.source.lent.HOME", home)
    root = copied(BASE, tmp_path / "club")
    (root / f"{LISTS}/goals.yml").unlink()
    before = digest_of_lent(root)
    assert digest_of_lent(root) == before
    efforts = home / f"{LISTS}/efforts.yml"
    efforts.write_text(efforts.read_text("utf-8").replace("to: 3", "to: 4"), "utf-8")
    assert lent(root) == [f"{LISTS}/goals.yml"]
    assert digest_of_lent(root) != before


def test_a_folder_without_a_club_is_told_so(tmp_path: Path) -> None:
    (tmp_path / "drills").mkdir()
    assert told(tmp_path) == ["plans/club.yml missing-file"]


EFFORTS = """title: Efforts
about: The club's own scale.
words:
  smooth: {title: Smooth, means: Could go on for long., rating: {from: 0, to: 4},
    share_of_best: 0.86,
    reference_m: 400, counts_as: gentle, also: [easy, steady]}
  working: {title: Working, means: Breath is deep., rating: {from: 4, to: 7}, share_of_best: 0.92,
    reference_m: 100, also: [strong]}
  racing: {title: Racing, means: As fast as can be., rating: {from: 7, to: 10}, share_of_best: 1.0,
    counts_as: fast%s}
"""


@pytest.mark.parametrize(("also", "easiest"), [(", also: [fast, all-out]", "steady"), ("", "easy")])
def test_a_scale_of_efforts_of_the_clubs_own_is_lent_rests(
    tmp_path: Path, also: str, easiest: str
) -> None:
    """By the names that stand for the program's words, else by their places; and the words of what
    came with the program are mended by these names.
    """
    root = tmp_path / "ours"
    assert main(["start", str(root), "--today", DAY.isoformat()]) == 0
    (root / LISTS).mkdir(parents=True)
    efforts = EFFORTS if also else EFFORTS.replace(", also: [easy, steady]", "")
    efforts = efforts if also else efforts.replace(", also: [strong]", "")
    (root / f"{LISTS}/efforts.yml").write_text(efforts % also, "utf-8")
    if also:
        assert main(["check", "--fix", "--root", str(root), "--today", DAY.isoformat()]) == 0
    here, there = load(root).catalogue, load(HOME).catalogue
    assert here is not None and there is not None
    theirs = there.policy.rest
    assert dict(here.policy.rest) == {
        "smooth": theirs[easiest],
        "working": theirs["strong"],
        "racing": theirs["all-out"],
    }
    store = DocumentStore(root)
    load(root, store)
    (root / f"{LISTS}/efforts.yml").unlink()
    back = load(root, store).catalogue
    assert back is not None and back.policy.rest == theirs, "remembered as read, not as fitted"


def test_a_limit_of_an_effort_goes_as_far_as_the_clubs_word_for_it(tmp_path: Path) -> None:
    """Beginners go up to strong on land, 7 of 10 on the program's scale, and on the back without
    flags easy, 3 of 10: here these words reach 8 and 2.
    """
    root = tmp_path / "ours"
    assert main(["start", str(root), "--today", DAY.isoformat()]) == 0
    (root / LISTS).mkdir(parents=True)
    efforts = EFFORTS.replace("4}", "2}").replace("{from: 4, to: 7}", "{from: 2, to: 8}")
    efforts = efforts.replace("7, to: 10", "8, to: 10").replace("[strong]", "[steady, strong]")
    efforts = efforts.replace("[easy, steady]", "[easy]")
    (root / f"{LISTS}/efforts.yml").write_text(efforts % ", also: [fast, all-out]", "utf-8")
    assert main(["check", "--fix", "--root", str(root), "--today", DAY.isoformat()]) == 0
    catalogue = load(root).catalogue
    assert catalogue is not None
    assert catalogue.policy.of_level("foundation").limit("land_effort_most") == 8
    assert catalogue.policy.limit("back_without_flags_most") == 2
    (root / f"{LISTS}/efforts.yml").unlink()
    theirs = load(HOME).catalogue
    assert theirs is not None
    assert theirs.policy.of_level("foundation").limit("land_effort_most") == 7


def test_a_word_of_the_program_that_a_clubs_own_list_has_not_is_told_with_what_lets_fix_write_it(
    tmp_path: Path,
) -> None:
    root = copied(BASE, tmp_path)
    (root / f"{LISTS}/goals.yml").unlink()  # so that something is lent
    swim_set = root / "plans/sets/six-fifties.yml"
    swim_set.write_text(swim_set.read_text("utf-8").replace("easy", "steady"), "utf-8")
    (hint,) = (one.hint for one in load(root).findings if "'steady'" in one.message)
    assert "where one of them stands for steady, write also: [steady] in it" in hint


def test_words_of_the_program_without_a_counterpart_are_told_once_at_the_clubs_list(
    tmp_path: Path,
) -> None:
    root = tmp_path / "ours"
    assert main(["start", str(root), "--today", DAY.isoformat()]) == 0
    (root / LISTS).mkdir(parents=True)
    own = root / f"{LISTS}/efforts.yml"
    own.write_text(re.sub(r", also: \[[a-z, ]*\]", "", EFFORTS) % "", "utf-8")
    found = [one for one in load(root).findings if one.is_error]
    assert [str(one.place) for one in found] == [f"{LISTS}/efforts.yml:3:1"]
    (one,) = found
    places = re.search(r"named in (\d+) places", one.message)
    assert places and int(places[1]) > 50 and "stands for easy, " in one.message
    assert "write also: [easy] in the word that stands for it" in one.hint
    own.write_text(EFFORTS % ", also: [fast, all-out]", "utf-8")
    assert main(["check", "--fix", "--root", str(root), "--today", DAY.isoformat()]) == 0


@pytest.mark.parametrize("name", ["hazards", "efforts", "levels", "terms", "viewpoints"])
def test_a_list_of_the_program_becomes_the_clubs_own(tmp_path: Path, name: str) -> None:
    root = copied(BASE, tmp_path)
    shutil.rmtree(root / LISTS)
    (root / "plans/policy.yml").unlink()
    assert main(["new", "vocabulary", name, "--root", str(root)]) == 0
    own = root / f"{LISTS}/{name}.yml"
    assert own.read_text("utf-8").startswith("# The program's, and this club's own from now on")
    assert told(root) == []
    assert load(root).names.of("vocabulary", "starts"), "which is lent beside the program's alone"
    assert main(["new", "vocabulary", name, "--root", str(root)]) == 2  # it is there already


def test_a_word_that_a_lent_list_has_not_is_told_with_how_to_add_it(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    (root / f"{LISTS}/goals.yml").unlink()
    drill = root / "drills/skills/kicking/back-kick.yml"
    text = drill.read_text("utf-8").replace("goals: [kick-technique]", "goals: [joy]")
    drill.write_text(text, "utf-8")
    (hint,) = (one.hint for one in load(root).findings if "'joy'" in one.message)
    assert hint.endswith("; for one of your own: almanac new vocabulary goals")


@pytest.mark.parametrize(("also", "word"), [(True, "cryf"), (False, "cyson")])
def test_a_starter_uses_the_word_that_stands_for_its_own(
    tmp_path: Path, also: bool, word: str
) -> None:
    """Where none is said to, one of the middle: the last of efforts is nothing to begin with. Its
    lane groups are the club's.
    """
    catalogue = copied(CATALOGUE, tmp_path)
    shares = {"araf": ("easy", 0.8), "cryf": ("strong", 0.92), "cyson": ("steady", 0.89)}
    words = {
        id: {"title": id, "means": f"What {id} means.", "rating": {"from": 1, "to": 2}}
        | {"share_of_best": share, **({"also": [stands_for]} if also else {})}
        for id, (stands_for, share) in (*shares.items(), ("llawn", ("all-out", 1.0)))
    }
    own = {"title": "Efforts", "about": "How hard, in words of our own.", "words": words}
    (catalogue / "drills/vocabulary/efforts.yml").write_text(yaml.safe_dump(own), "utf-8")
    assert main(["new", "set", "ours-2026-27", "--root", str(catalogue)]) == 0
    text = (catalogue / "plans/sets/ours-2026-27.yml").read_text("utf-8")
    assert f"descend: [araf, {word}]" in text
    first = next(iter(yaml.safe_load((catalogue / "plans/club.yml").read_text())["lane_groups"]))
    assert f"one a lane group: {{{first}: 1:10}}" in text
    assert '\ntitle: "Ours 2026-27"\n' in text
