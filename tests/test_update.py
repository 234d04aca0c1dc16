"""``almanac update``: what is of an older form, nothing else, and all of it or nothing."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from example_cases import BASE
from failing_disk import failing_writes
from shared import CATALOGUE, DAY, copied

from almanac.commands import update
from almanac.commands.main import main
from almanac.commands.shared import load_and_check
from almanac.model.citations import cited_by
from almanac.model.load import load
from almanac.source.old_shapes import old_shapes
from almanac.source.reader import Document, read
from almanac.source.said.hazards import HazardsMeant
from almanac.source.to_present_form import Choices, Cited, to_present_form

OLD_GEAR = """\
# Fins of form 1.
title: Fins
summary: Short blades that make each beat move more water.
acts_on: [feet]
effect: supports
what_it_changes: The foot feels the water and the line stays up at a low rate.
hazards:
  # the gravest first
  - hazard: >-
      On the back the head reaches the wall before the swimmer knows,
      for the way from the flags is shorter.
    # in fins
    control: Count anew.
  - {control: Leave ten seconds apart., hazard: "A blade meets a face."}
not_for:
  # for a coach to judge
  - Sore ankles,
    or sore calves.

  - Timed tests.
# how long it takes
change_s: 30
pace_factor: 0.8
care: Rinse and dry out of the sun.
evidence:
  - claim: Pointing of the foot held back by tape made trained swimmers slower.
    basis: published
    source: Coloretti et al. 2025, J Strength Cond Res 39:e701-5  # read in part
  - claim: A blade of another length wants another factor.
    basis: published
    source: Kuhn and Legerlotz 2022, Front Sports Act Living 4:948034
  - {claim: Fins ride high and hide a weak recovery., source: "Nobody, 1998", basis: published}
review: {by: head-coach, on: 2026-09-01, again: 2027-09-01}
"""
NEW_GEAR = """\
# Fins of form 1.
title: Fins
summary: Short blades that make each beat move more water.
acts_on: [feet]
effect: supports
what_it_changes: The foot feels the water and the line stays up at a low rate.
hazards:
  # the gravest first
  - hazard: head-into-wall
    own: >-
      On the back the head reaches the wall before the swimmer knows,
      for the way from the flags is shorter.
    # in fins
    control: Count anew.
  - {control: Leave ten seconds apart., hazard: foot-strikes, own: "A blade meets a face."}
not_for:
  # for a coach to judge
  people:
    - Sore ankles,
      or sore calves.

    - Timed tests.
# how long it takes
change_s: 30
pace_factor: 0.8
care: Rinse and dry out of the sun.
evidence:
  - claim: Pointing of the foot held back by tape made trained swimmers slower.
    basis: published
    sources: [coloretti-2025]  # read in part
  - claim: A blade of another length wants another factor.
    basis: common-practice
    # No entry of this publication yet: Kuhn and Legerlotz 2022, Front Sports Act Living 4:948034
  - {claim: Fins ride high and hide a weak recovery., basis: common-practice}
    # No entry of this publication yet: Nobody, 1998
review: {by: head-coach, on: 2026-09-01, again: 2027-09-01}
"""
FINS = "drills/gear/fins.yml"
MARK = b"\xef\xbb\xbf"


@pytest.fixture
def older(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A club with one entry of form 1. Of the sources that come with the program, it has the words
    for one and not, with dolphin, for another.
    """
    monkeypatch.setattr(update, "HOME", CATALOGUE)
    root = copied(BASE, tmp_path)
    (root / FINS).write_text(OLD_GEAR, "utf-8")
    return root


def texts(root: Path) -> dict[str, bytes]:
    return {str(file.relative_to(root)): file.read_bytes() for file in root.rglob("*.yml")}


def test_an_entry_is_written_anew_and_no_other_byte(
    older: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = texts(older)
    assert main(["update", "--root", str(older)]) == 0
    after = texts(older)
    source = after.pop("drills/sources/coloretti-2025.yml").decode()
    assert source.startswith("# From ")  # where it came from
    assert after.pop(FINS).decode() == NEW_GEAR
    assert after.pop("plans/club.yml") == b"form: 2\n" + before.pop("plans/club.yml")
    assert after.items() <= before.items()
    said = capsys.readouterr().out
    assert "2 dangers named by a word, the sentence under 'own'" in said
    assert "1 list of whom gear" in said
    assert "1 claim of 3 with" in said and "1 entry written anew" in said
    assert "drills/sources/coloretti-2025.yml came along" in said
    assert not [it for it in load_and_check(older, DAY).findings if it.is_error]


def test_what_is_written_anew_is_sound_and_once_is_enough(
    older: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["update", "--root", str(older)]) == 0
    after = texts(older)
    assert main(["update", "--root", str(older)]) == 0
    assert "nothing to do" in capsys.readouterr().out and texts(older) == after


def test_marks_and_ends_of_lines_stay(older: Path) -> None:
    for file, text in ((FINS, OLD_GEAR), ("plans/club.yml", "")):
        raw = (text.encode() or (older / file).read_bytes()).replace(b"\n", b"\r\n")
        (older / file).write_bytes(MARK + raw)
    assert main(["update", "--root", str(older)]) == 0
    assert (older / FINS).read_bytes() == MARK + NEW_GEAR.encode().replace(b"\n", b"\r\n")
    assert (older / "plans/club.yml").read_bytes().startswith(MARK + b"form: 2\r\ntitle: ")


def test_a_guess_is_marked(older: Path, capsys: pytest.CaptureFixture[str]) -> None:
    sentence = "Something happens to somebody."
    text = OLD_GEAR.replace(
        "On the back the head reaches the wall before the swimmer knows,", sentence
    )
    (older / FINS).write_text(
        text.replace("for the way from the flags is shorter.", "").replace("Count anew.", "Ask."),
        "utf-8",
    )
    assert main(["update", "--root", str(older)]) == 0
    assert "1 of these by a guess" in capsys.readouterr().out
    line = next(it for it in (older / FINS).read_text("utf-8").split("\n") if "a guess" in it)
    assert "  # a guess of almanac update; or " in line


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (
            "figure: {marks: [flags], speed: [still, fast], speed_over: flags to flags}",
            "figure: {marks: [flags], from_still: true, speed: [fast], speed_over: flags to flags}",
        ),
        (
            "figure:\n  # at rest\n  speed:\n    - still\n    - fast  # x\n  speed_over: it",
            "figure:\n  # at rest\n  from_still: true\n  speed:\n    - fast  # x\n  speed_over: it",
        ),
    ],
    ids=["in brackets", "in lines"],
)
def test_a_drawing_that_begins_at_rest_says_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], old: str, new: str
) -> None:
    root = copied(BASE, tmp_path)
    (root / "plans/club.yml").write_text(
        "form: 2\n" + (root / "plans/club.yml").read_text("utf-8"), "utf-8"
    )
    drill = root / "drills/skills/kicking/back-kick.yml"
    text = drill.read_text("utf-8").partition("\nfigure:")[0].rstrip() + "\n"
    drill.write_text(f"{text}{old}\n", "utf-8")
    assert main(["check", "--root", str(root), "--today", DAY.isoformat()]) == 1
    assert "almanac update writes them anew" in capsys.readouterr().out
    assert main(["update", "--root", str(root)]) == 0
    assert "1 drawing with 'from_still'" in capsys.readouterr().out
    assert drill.read_text("utf-8") == f"{text}{new}\n"
    main(["check", "--root", str(root), "--today", DAY.isoformat()])
    assert "unknown-word" not in capsys.readouterr().out
    # what a club calls so itself means what it says
    words = (CATALOGUE / "drills/vocabulary/efforts.yml").read_text("utf-8")
    (root / "drills/vocabulary/efforts.yml").write_text(
        words.replace("  easy: ", "  still: ").replace("[easy", "[still"), "utf-8"
    )
    drill.write_text(f"{text}{old}\n", "utf-8")
    assert main(["update", "--root", str(root)]) == 0
    assert drill.read_text("utf-8") == f"{text}{old}\n"


def test_a_dry_run_and_a_file_that_cannot_be_read_change_nothing(
    older: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = texts(older)
    assert main(["update", "--dry-run", "--root", str(older)]) == 0
    said = capsys.readouterr().out
    assert "nothing is written" in said and "would come along" in said and texts(older) == before
    (older / "plans/sets/broken.yml").write_text("a: [\n", "utf-8")
    before = texts(older)
    assert main(["update", "--root", str(older)]) == 2
    assert "nothing was changed: plans/sets/broken.yml cannot be read" in capsys.readouterr().err
    assert texts(older) == before


def test_more_dangers_than_words_are_named_again_for_check_to_tell(
    older: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    hazards = older / "drills/vocabulary/hazards.yml"
    data = yaml.safe_load(hazards.read_text("utf-8"))
    data["words"] = {"head-into-wall": data["words"]["head-into-wall"]}
    hazards.write_text(yaml.safe_dump(data), "utf-8")
    assert main(["update", "--root", str(older)]) == 0
    assert (older / FINS).read_text("utf-8").count("hazard: head-into-wall") == 2
    codes = {it.code for it in load_and_check(older, DAY).findings if it.place.file == FINS}
    assert "hazard-twice" in codes
    for words in ({}, None):
        (older / FINS).write_text(OLD_GEAR, "utf-8")
        hazards.write_text(yaml.safe_dump({**data, "words": words}), "utf-8")
        before = texts(older)
        assert main(["update", "--root", str(older)]) == 2
        assert "hazards.yml" in capsys.readouterr().err and texts(older) == before


def test_a_newer_form_is_left_alone(older: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (older / "plans/club.yml").write_text("form: 99\ntitle: x\n", "utf-8")
    assert main(["update", "--root", str(older)]) == 1
    assert "install the newer program" in capsys.readouterr().out
    assert (older / FINS).read_text("utf-8") == OLD_GEAR


@pytest.mark.parametrize("written", [0, 1, 2, 5])
def test_a_kill_is_finished_by_the_next_command(
    older: Path, monkeypatch: pytest.MonkeyPatch, written: int
) -> None:
    before = texts(older)
    with monkeypatch.context() as patched:
        failing_writes(patched, written, KeyboardInterrupt())
        assert main(["update", "--root", str(older)]) == 130
    main(["check", "--root", str(older)])
    if written == 0:  # not even the note of it was there
        assert texts(older) == before
    else:
        assert (older / FINS).read_text("utf-8") == NEW_GEAR
        assert (older / "plans/club.yml").read_text("utf-8").startswith("form: 2\n")


def test_a_club_of_the_present_shapes_gets_one_line(tmp_path: Path) -> None:
    root = copied(CATALOGUE, tmp_path)
    before = texts(root)
    assert main(["update", "--root", str(root)]) == 0
    after = texts(root)
    changed = {file for file, text in after.items() if before.get(file) != text}
    assert changed == {"plans/club.yml"} and after.keys() == before.keys()


def test_a_word_of_a_vocabulary_names_its_hazards_too() -> None:
    document = _document("words:\n  dive:\n    safety:\n      - {hazard: A slip on the edge.}\n")
    (shape,) = old_shapes(document)
    text = to_present_form(document, Choices({shape.path: ["slip-on-deck"]}, {}))
    assert text and "- {hazard: slip-on-deck, own: A slip on the edge.}" in text


def _document(text: str) -> Document:
    document, findings = read(text.encode(), "x.yml")
    assert document is not None and findings == []
    return document


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("not_for: [a b, c]\n", "not_for: {people: [a b, c]}\n"),
        ("not_for:\n- a\n- b", "not_for:\n  people:\n    - a\n    - b"),
        ("not_for:\n    - a\n", "not_for:\n  people:\n    - a\n"),
        (
            "evidence:\n- source: >-\n    Nobody\n    1999\n\n  claim: x\n",
            "evidence:\n- # No entry of this publication yet: Nobody 1999\n\n  claim: x\n",
        ),
        (
            "evidence: [{source: A 1999, claim: x}]  # why\ntitle: y\n",
            (
                "evidence: [{claim: x}]  # why\n           # No entry of this publication yet: A "
                "1999\ntitle: y\n"
            ),
        ),
        ("evidence:\n  - {source: Nobody 1999}", None),
        (
            "evidence:\n  - {source: a, sources: [b]}\n",
            "evidence:\n  - {source: a, sources: [b]}\n",
        ),
        ("safety:\n  - {hazard: a b, own: c}\n", "safety:\n  - {hazard: a b, own: c}\n"),
        ("safety:\n  - hazard: a\nnot_for: none\n", "safety:\n  - hazard: a\nnot_for: none\n"),
    ],
)
def test_each_way_of_writing_it(old: str, new: str | None) -> None:
    document = _document(old)
    cited = {it.path: Cited() for it in old_shapes(document) if it.sort == "source"}
    text = to_present_form(document, Choices({}, cited))
    assert text == new or (new is None and text is not None and yaml.safe_load(text))


def test_a_citation_names_its_sources() -> None:
    sources = {
        ("source", f"{key}"): _document(
            f"by: [{by}]\nyear: {year}\npublished_in: {where}\nsort: {sort}\n"
        )
        for key, by, year, where, sort in [
            ("gonjo-a", "Gonjo T", 2020, "'Front 8:570657'", "study"),
            ("gonjo-b", "Gonjo T", 2020, "'J Biomech 101:109452'", "study"),
            ("loebbecke", "von Loebbecke A", 2009, "'HMS 28:99-112'", "study"),
            ("news", "The Daily Swim", 2009, "page 3", "news"),
        ]
    }
    assert cited_by("Gonjo et al. 2020, article 109452", sources) == Cited(("gonjo-b",), True, True)
    assert cited_by("Gonjo et al. 2020", sources) == Cited()  # either
    assert cited_by("Von Loebbecke and others 2009; X 1999", sources) == Cited(
        ("loebbecke",), False, True
    )
    assert cited_by("von Loebbecke 2008", sources) == Cited()
    assert cited_by("The Daily Swim 2009", sources) == Cited(("news",), True, False)


def test_a_hazard_is_known_by_its_words_and_named_once_an_entry() -> None:
    hazards = load(CATALOGUE).documents["vocabulary", "hazards"].data["words"]
    meant = HazardsMeant(hazards)
    for word, about in hazards.items():
        assert meant.near(about["means"])[0].word == word
    first = next(iter(hazards))
    said = hazards[first]["means"]
    both = meant.each([(said, ""), (said, "")], ())
    assert both[0] == [first] and both[1][0] != first and len(both[1]) > 1
    assert meant.each([(said, "")], {first})[0][0] != first
