"""``almanac new block ID --from OLD``: the weeks of an earlier block under new dates, byte for
byte.
"""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY

from almanac.commands.main import main
from almanac.model.load import load
from almanac.source.edits.copied import copied
from almanac.source.reader import read

OLD = "heron-legs-in-three-weeks"


def run(root: Path, *argv: str) -> int:
    return main(["new", "--root", str(root), "--today", str(DAY), *argv])


def test_only_dates_differ_and_what_was_of_its_time_is_gone(tmp_path, capsys) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    assert run(root, "block", "heron-again", "--from", OLD, "--starts", "2027-11-01") == 0
    said = capsys.readouterr().out
    assert "change its title, summary and purpose, then: almanac check" in said
    assert "not copied: its review, and the words that it is found by" in said
    blocks = load(root).catalogue.blocks
    old, new = blocks[OLD], blocks["heron-again"]
    assert (old.starts, new.starts) == (date(2026, 11, 2), date(2027, 11, 1))
    assert new.weeks == old.weeks and new.goals == old.goals and new.balance == old.balance
    assert new.meet is None and new.also_called == () and new.asked_as == ()
    before = (root / f"plans/blocks/{OLD}.yml").read_text("utf-8").splitlines()
    after = (root / "plans/blocks/heron-again.yml").read_text("utf-8").splitlines()
    assert {line for line in after if line not in before} == {"starts: 2027-11-01"}
    gone = [line for line in before if line not in after and line != "starts: 2026-11-02"]
    assert all(line.startswith(("review:", "asked_as:", "also_called:", " ")) for line in gone)


def test_the_meet_that_was_left_out_is_to_be_named(tmp_path, capsys) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    path = root / f"plans/blocks/{OLD}.yml"
    path.write_text(path.read_text("utf-8") + "meet: spring-meet\n", "utf-8")
    assert run(root, "block", "heron-again", "--from", OLD, "--starts", "2027-11-01") == 0
    assert "name the meet that it leads to in place of 'spring-meet'" in capsys.readouterr().out
    assert load(root).catalogue.blocks["heron-again"].meet is None


def test_a_taper_and_a_race_move_with_the_block(tmp_path) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    path = root / f"plans/blocks/{OLD}.yml"
    text = path.read_text("utf-8").replace("    taper: true\n", "") + (
        "taper: {from: 2026-11-16, to: 2026-11-20}\nrace_day: 2026-11-21\n"
    )
    path.write_text(text, "utf-8")
    assert run(root, "block", "heron-again", "--from", OLD, "--starts", "2027-11-01") == 0
    new = load(root).catalogue.blocks["heron-again"]
    assert new.taper is not None
    assert (new.taper.first, new.taper.last, new.race_day) == (
        date(2027, 11, 15), date(2027, 11, 19), date(2027, 11, 20),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("argv", "told"),
    [
        (["block", "x-y", "--from", "spring", "--starts", "2027-11-01"],
         "there is no block 'spring'"),
        (["block", "x-y", "--from", OLD],
         f"say when it begins: --starts DATE; '{OLD}' began on 2026-11-02"),
        (["block", "x-y", "--from", OLD, "--starts", "2027-11-02"], "2027-11-02 is no Monday"),
        (["block", "x-y", "--starts", "2027-11-01"], "go together"),
        (["set", "x-y", "--from", OLD, "--starts", "2027-11-01"], "are for a new block"),
        (["block", OLD, "--from", OLD, "--starts", "2027-11-01"], "exists already"),
    ],
)  # fmt: skip
def test_what_cannot_be_copied_gets_a_sentence(argv: list[str], told: str, capsys) -> None:
    assert run(CATALOGUE, *argv) == 2
    assert told in capsys.readouterr().err


def test_a_copy_that_would_read_otherwise_is_refused() -> None:
    document, _ = read(b"a: one\nb:\n- 2\nc: 3\n", "x.yml")
    assert document is not None
    assert copied(document, {}, ["b"]) == "a: one\nc: 3\n"
    assert copied(document, {(("a",), False): "two"}, ["c"]) == "a: two\nb:\n- 2\n"
    quoted, _ = read(b'a: 1\nb: "x\nc: 2"\nd: 3\n', "x.yml")
    assert quoted is None or copied(quoted, {}, ["c"]) is None
