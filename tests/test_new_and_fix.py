"""``almanac new`` for every kind, what it refuses, its questions; and ``check --fix``, which
changes nothing else.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml
from example_cases import BASE
from git_world import committed
from jsonschema import Draft202012Validator
from plans_world import club, codes
from shared import CATALOGUE, DAY, copied

from almanac.checks.unwritten import _is_like
from almanac.commands import asking
from almanac.commands.main import main
from almanac.commands.shared import load_and_check
from almanac.findings import Finding
from almanac.model.load import Loaded, load
from almanac.resources import STARTERS
from almanac.source import published_schemas, schemas
from almanac.source.edits.style import fixed
from almanac.source.reader import read
from almanac.source.scalars import scalar
from almanac.source.starters import WITH_STARTER, sentences


@pytest.fixture
def catalogue(tmp_path: Path) -> Path:
    return copied(CATALOGUE, tmp_path)


def test_every_kind_of_page_has_a_starter() -> None:
    assert set(WITH_STARTER) == {
        "drill",
        "fault",
        "gear",
        "benchmark",
        "progression",
        "source",
        "need",
        "set",
        "practice",
        "log",
        "block",
        "meet",
        "timetable",
        "season",
    }


def test_of_a_starter_only_what_a_coach_must_write_is_amiss(catalogue: Path) -> None:
    """Its own sentences, and the review of somebody who has read it through; its shape is right."""
    before = all_findings(catalogue)
    for kind in WITH_STARTER:
        assert main(["new", kind, f"a-new-{kind}", "--root", str(catalogue)]) == 0
    written = list(catalogue.rglob("a-new-*.yml"))
    assert len(written) == len(WITH_STARTER)
    assert all("#" in file.read_text("utf-8") for file in written)
    assert "\nreview:" not in "".join(file.read_text("utf-8") for file in written)
    loaded = load(catalogue)
    after = [finding for finding in loaded.findings if finding.is_error]
    assert {(it.code, "'review'" in it.message) for it in after} == {("missing-key", True)}
    for (kind, id), document in loaded.documents.items():
        if id.startswith("a-new-"):
            signed = {"review": {"by": "head-coach", "on": "2026-11-01", "again": "2027-11-01"}}
            Draft202012Validator(published_schemas.published(kind, loaded.names.words)).validate(
                {**document.data, **(signed if "review" in schemas.fields(kind) else {})}
            )
    unsigned = {it for it in all_findings(catalogue) - before if it.code == "starter-text"}
    for file in written:
        text = file.read_text("utf-8")
        file.write_text(re.sub("(?m)^# (review: )", r"\1", text), "utf-8")
    left = [it for it in all_findings(catalogue) - before if it.code == "starter-text"]
    assert {finding.place.file for finding in left} == {
        file.relative_to(catalogue).as_posix() for file in written
    }
    assert {*left} == unsigned  # nobody signs first, to be told only then what is to be written


@pytest.mark.parametrize("instead", ["reviwe:", "    review:"])
def test_a_review_by_another_name_or_in_the_wrong_place_is_told_and_stops_no_check(
    tmp_path: Path, instead: str
) -> None:
    """One finding stands there, as where nobody has signed, and yet the entry has not its shape."""
    root, file = copied(CATALOGUE, tmp_path / "club"), "drills/benchmarks/back-kick-50.yml"
    text = (root / file).read_text("utf-8")
    (root / file).write_text(re.sub("(?m)^review:", instead, text), "utf-8")
    told = [it for it in all_findings(root) if it.is_error and it.place.file == file]
    assert [it.code for it in told] == ["unknown-key"]


def all_findings(root: Path) -> set[Finding]:
    """Every finding on the day of the small catalogue."""
    return set(load_and_check(root, DAY).findings)


def test_a_starters_sentence_is_known_with_a_word_changed() -> None:
    """Every sentence of every starter, as it stands, in capitals, and with its longest word left
    out or another; none of those that a club has written.
    """
    for kind in WITH_STARTER:
        for names, texts in sentences(kind).items():
            for text in texts:
                assert _is_like(text.upper().rstrip("."), texts), (kind, names)
                longest = max(text.split(), key=len)
                if len(text.split()) >= 12:
                    assert _is_like(text.replace(longest, "kicks", 1), texts), text
                if len(text.split()) >= 8:
                    assert _is_like(
                        text.replace("swimmer", "swimmers").replace("coach", "coaches"), texts
                    )
                assert not _is_like("Toes point, knees stay under the surface.", texts)


@pytest.mark.parametrize(
    ("id", "says"),
    [
        ("back-streamline-kick", "exists already"),
        ("Back-Streamline-Kick", "is no id"),
        ("con", "device"),
        ("lpt1", "device"),
        ("two--hyphens", "is no id"),
        ("../escape", "is no id"),
        ("zwölf", "is no id"),
        ("a" * 61, "characters"),
        ("", "is no id"),
    ],
)
def test_a_bad_id_is_refused_and_nothing_is_written(
    catalogue: Path, capsys: pytest.CaptureFixture[str], id: str, says: str
) -> None:
    files = sorted(catalogue.rglob("*"))
    assert main(["new", "drill", id, "--root", str(catalogue)]) == 2
    assert says in capsys.readouterr().err
    assert sorted(catalogue.rglob("*")) == files


def test_a_name_nearly_taken_is_told(catalogue: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "drill", "back-streamline-kicks", "--root", str(catalogue)]) == 0
    assert "already a drill 'back-streamline-kick'" in capsys.readouterr().out


def test_a_block_without_practices_says_what_comes_first(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = club(tmp_path)
    (root / "plans/practices/tuesday.yml").unlink()
    (root / "plans/blocks/autumn.yml").unlink()
    assert main(["new", "block", "winter", "--root", str(root)]) == 2
    assert "names a practice" in capsys.readouterr().err


def test_questions_are_asked_again_until_the_answer_will_do(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    given = iter(["x", "Knees: under", "too short", "A line that is long enough.", "9999", "", ""])
    monkeypatch.setattr("builtins.input", lambda _: next(given, ""))
    answers = asking.ask("fault", load(CATALOGUE), {"title": "Knees", "stroke": "backstroke"})
    assert answers == {
        "title": "Knees: under",
        "summary": "A line that is long enough.",
        "stroke": "backstroke",  # Enter takes the default, and leaves the rest for later
    }
    said = capsys.readouterr().out
    assert "it needs at least" in said
    assert "On the back, arms by turns" in said, "each word with what it means"


def test_answers_stand_in_the_starter_whatever_they_hold(
    catalogue: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Colons, '#' and quotation marks; a text in place of several lines; several words of a
    list.
    """
    why = (
        'Says: "why" # and when, with a colon: for all who drop the hips when they breathe in, '
        "and more."
    )
    given = iter(["", "A line: one # two, and three", "", "", "", "", "", why, "2, walls", "", ""])
    monkeypatch.setattr("builtins.input", lambda _: next(given, ""))
    for name in ("stdin", "stdout"):
        monkeypatch.setattr(f"sys.{name}.isatty", lambda: True)
    assert main(["new", "drill", "butterfly-legs", "--root", str(catalogue)]) == 0
    (file,) = catalogue.rglob("butterfly-legs.yml")
    document, findings = read(file.read_bytes(), "x.yml")
    assert not findings and document is not None
    data = document.data
    assert (data["title"], data["summary"], data["purpose"]) == (
        "Butterfly legs",
        "A line: one # two, and three",
        why,
    )
    assert data["goals"][1] == "walls" and data["stroke"] == "butterfly"
    assert "Its folder below drills/skills" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("id", "family", "words"),
    [
        ("freestyle-with-one-arm", "freestyle", {"stroke": "freestyle", "kick": "flutter"}),
        ("vertical-dolphin", "dolphin", {"kick": "dolphin", "position": "vertical"}),
        ("butterfly-legs-on-back", "dolphin", {"stroke": "butterfly", "kick": "dolphin"}),
        ("slow-turns", "walls", {"mode": "wall"}),
        ("long-and-quiet", "flutter-on-back", {"mode": "kick", "kick": "flutter"}),
        ("plank-on-land", "land", {"mode": "land", "position": "on-land"}),
    ],
)
def test_a_drill_stands_in_the_family_that_its_words_say(
    catalogue: Path, id: str, family: str, words: dict[str, str]
) -> None:
    assert main(["new", "drill", id, "--root", str(catalogue)]) == 0
    (file,) = catalogue.rglob(f"{id}.yml")
    document, _ = read(file.read_bytes(), "x.yml")
    assert document is not None and document.data.items() >= words.items()
    assert file.parent.name == family


@pytest.mark.parametrize("kind", WITH_STARTER)
def test_a_starter_puts_its_texts_in_quotation_marks(kind: str) -> None:
    """So that a colon, a comma or a '#' in what takes their place does no harm."""
    text = (STARTERS / f"{kind}.yml").read_text("utf-8")
    texts = [own for of_place in sentences(kind).values() for own in of_place]
    folded = {own for own in texts if f'"{own}"' not in text}
    assert len(folded) == text.count(">-")


def test_a_starter_names_what_fits_its_squad_and_its_pool(catalogue: Path) -> None:
    """A block a practice of its squad; a set the course of the club's first pool."""
    assert main(["new", "block", "spring-block", "--root", str(catalogue)]) == 0
    block = (catalogue / "plans/blocks/spring-block.yml").read_text("utf-8")
    squad = re.search(r"(?m)^squad: (\S+)", block)
    practice = re.search(r"practice: ([a-z0-9-]+)", block)
    assert squad and practice
    own = (catalogue / f"plans/practices/{practice[1]}.yml").read_text("utf-8")
    assert f"squad: {squad[1]}\n" in own
    club = catalogue / "plans/club.yml"
    club.write_text(club.read_text("utf-8").replace("course: 25m", "course: 25yd", 1), "utf-8")
    assert main(["new", "set", "six-fifties-more", "--root", str(catalogue)]) == 0
    assert "course: 25yd" in (catalogue / "plans/sets/six-fifties-more.yml").read_text("utf-8")


def test_a_list_that_the_program_has_not_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = copied(CATALOGUE, tmp_path)
    assert main(["new", "vocabulary", "hazard", "--root", str(root)]) == 2
    assert "there is no list of the program's 'hazard'" in capsys.readouterr().err
    assert main(["new", "vocabulary", "terms", "--from", "b", "--root", str(root)]) == 2
    assert "are for a new block" in capsys.readouterr().err
    assert main(["new", "vocabulary", "terms", "--family", "b", "--root", str(root)]) == 2
    assert "--family is for drills" in capsys.readouterr().err


def test_a_practice_begins_with_the_adults_that_its_squad_takes(catalogue: Path) -> None:
    """Where nobody can stand everywhere: so that the starter itself is not refused."""
    club = catalogue / "plans/club.yml"
    text = re.sub("heads: [0-9]+", "heads: 40", club.read_text("utf-8"))
    club.write_text(text, "utf-8")
    assert main(["new", "practice", "more-heads", "--root", str(catalogue)]) == 0
    own = read((catalogue / "plans/practices/more-heads.yml").read_bytes(), "more-heads.yml")[0]
    assert own is not None and own.data["adults"] > 2
    told = {one.code for one in load_and_check(catalogue, DAY).findings if one.is_error
            and "more-heads" in one.place.file}  # fmt: skip
    assert "deep-unwatched" not in told


@pytest.mark.parametrize(
    "text",
    [
        "plain words",
        "yes",
        "true",
        "1:15",
        "- a",
        "# b",
        "a: b",
        'quo"te',
        "back\\slash",
        "émigré ☃",
        "Kick #2",
    ],
)
def test_quoted_text_reads_back_the_same(text: str) -> None:
    document, findings = read(f"title: {scalar(text)}\n".encode(), "x.yml")
    assert not findings and document is not None and document.data["title"] == text


UNTIDY = """\
# Six fifties, as they stand on the board.
title: "Six fifties"   # never more
goals: [kick-technique]
# why
purpose: The line holds while the legs tire.
course: 25m
level: foundation
items:
  - reps: 6
    distance: 50
    do: back-kick
    effort: easy
    sendoff: "1:45"     # not 1:40
"""

TIDY = """\
# Six fifties, as they stand on the board.
title: "Six fifties"   # never more
# why
purpose: The line holds while the legs tire.
goals: [kick-technique]
level: foundation
course: 25m
items:
  - reps: 6
    distance: 50
    do: back-kick
    effort: easy
    sendoff: 1:45     # not 1:40
"""


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_fix_mends_order_and_quotes_and_leaves_every_other_byte(tmp_path: Path, ends: str) -> None:
    root = club(tmp_path)
    file = root / "plans/sets/six-fifties.yml"
    file.write_bytes(UNTIDY.replace("\n", ends).encode())
    assert {"key-order", "quoted-time"} <= codes(root)
    assert main(["check", "--fix", "--root", str(root)]) in (0, 1)
    assert file.read_bytes() == TIDY.replace("\n", ends).encode()
    assert not {"key-order", "quoted-time"} & codes(root)


def test_fix_leaves_what_is_in_order_alone(tmp_path: Path) -> None:
    root = club(tmp_path)
    before = {path: path.read_bytes() for path in root.rglob("*.yml")}
    main(["check", "--fix", "--root", str(root)])
    assert {path: path.read_bytes() for path in root.rglob("*.yml")} == before


def test_fix_changes_no_data(loaded: Loaded) -> None:
    for (kind, _), document in loaded.documents.items():
        text = fixed(document, kind)
        again, findings = read(text.encode(), document.file)
        assert not findings and again is not None
        assert again.data == document.data, document.file
        assert fixed(again, kind) == text, "mending twice is mending once"


def test_fix_touches_no_broken_file(tmp_path: Path) -> None:
    root = club(tmp_path)
    file = root / "plans/sets/six-fifties.yml"
    broken = UNTIDY.replace("back-kick", "no-such-drill").encode()
    file.write_bytes(broken)
    assert main(["check", "--fix", "--root", str(root)]) == 1
    assert file.read_bytes() == broken


def test_fix_mends_each_word_with_one_right_answer_beside_other_errors(tmp_path: Path) -> None:
    root = club(tmp_path)
    file = root / "plans/sets/six-fifties.yml"
    text = file.read_text("utf-8")
    broken = text.replace("do: back-kick", "do: 'Back Kick' # as said").replace(
        "effort: easy", "effort: EASY\n    gear: [no-such-gear]"
    )
    file.write_text(broken, "utf-8")
    (root / "drills/skills/kicking/old-kick.yml").write_text("moved_to: back-kick\n", "utf-8")
    float_file = root / "drills/skills/kicking/back-float.yml"
    before = float_file.read_text("utf-8")
    float_file.write_text(before.replace("harder: [back-kick]", "harder: [old-kick]"), "utf-8")
    assert main(["check", "--fix", "--root", str(root)]) == 1
    assert file.read_text("utf-8") == broken.replace("Back Kick", "back-kick").replace(
        "EASY", "easy"
    )
    assert float_file.read_text("utf-8") == before
    assert {"unknown-reference"} == {it.code for it in load(root).findings if it.is_error}


def test_fix_writes_what_a_set_adds_up_to(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """After a change of rounds every figure that its author expects of it, each with the old one;
    with a slip of its own the set is left alone.
    """
    root = club(tmp_path)
    file = root / "plans/sets/six-fifties.yml"
    expect = "expect: {distance: 300, reps: 6, by: {kick: {flutter: 300}}} # as believed\n"
    file.write_text(file.read_text("utf-8") + expect, "utf-8")
    assert not {"expect-differs"} & codes(root)
    more = file.read_text("utf-8").replace("reps: 6\n", "reps: 8\n")
    assert more != file.read_text("utf-8")
    file.write_text(more, "utf-8")
    assert main(["check", "--root", str(root)]) == 1
    assert "--fix writes it" in capsys.readouterr().out
    assert main(["check", "--fix", "--root", str(root), "--today", DAY.isoformat()]) == 0
    assert file.read_text("utf-8") == more.replace("distance: 300", "distance: 400").replace(
        "reps: 6,", "reps: 8,"
    ).replace("flutter: 300", "flutter: 400")
    assert "six-fifties.yml: expect distance 300 is 400" in capsys.readouterr().out
    broken = more.replace("effort: easy", "effort: hardly")
    file.write_text(broken, "utf-8")
    assert main(["check", "--fix", "--root", str(root)]) == 1
    assert file.read_text("utf-8") == broken


def test_a_renamed_file_is_known_by_the_last_commit(tmp_path: Path) -> None:
    root = committed(club(tmp_path))
    old = root / "drills/skills/kicking/back-float.yml"
    text = old.read_text("utf-8").replace("title: Back float", "title: Long on the back")
    (root / "drills/skills/kicking/long-back.yml").write_text(text, "utf-8")
    old.unlink()
    assert any("write long-back" in finding.hint for finding in load(root).findings)
    assert main(["check", "--fix", "--root", str(root)]) == 0
    assert not any("back-float" in file.read_text("utf-8") for file in root.rglob("*.yml"))


def test_fix_writes_no_figure_on_which_lane_groups_differ(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A total of all is written where all swim it; else each group's is told, and nothing is
    written, however often.
    """
    root = club(tmp_path)
    file = root / "plans/sets/six-fifties.yml"
    text = file.read_text("utf-8").replace(
        "reps: 6\n", "reps: 6\n    by_group: {heron-1: {reps: 4}}\n"
    )
    clubs = root / "plans/club.yml"
    one = re.search(r"  heron-1:\n(    .*\n)+", clubs.read_text("utf-8"))
    assert one
    other = one[0].replace("heron-1", "heron-2").replace("lane 1", "lane 2")
    clubs.write_text(clubs.read_text("utf-8").replace(one[0], one[0] + other), "utf-8")
    file.write_text(text + "expect: {distance: 350, by: {kick: {flutter: 300}}}\n", "utf-8")
    before = file.read_text("utf-8")
    for _ in range(2):
        assert main(["check", "--fix", "--root", str(root), "--today", DAY.isoformat()]) == 1
        said = capsys.readouterr().out
        assert file.read_text("utf-8") == before and "mended" not in said
        assert re.search(r"'distance' is believed to be 350, .* 200 for .*, 300 for ", said)
        assert "under by_group" in said and "--fix writes it" not in said


def test_fix_writes_a_clock_over_an_hour_that_then_stands(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = club(tmp_path)
    file = root / "plans/sets/six-fifties.yml"
    # 39 send-offs of 1:45 before the last rep: over an hour
    text = file.read_text("utf-8").replace("reps: 6\n", "reps: 40\n")
    assert text != file.read_text("utf-8")
    file.write_text(text + "expect: {clock: {heron-1: 59:59.5}}\n", "utf-8")
    fix = ["check", "--fix", "--root", str(root), "--today", DAY.isoformat()]
    main(fix)
    mended = file.read_text("utf-8")
    assert re.search(r"heron-1: 1:[01][0-9]:[0-5][0-9]", mended), mended
    assert "mended" in capsys.readouterr().out
    main(fix)
    assert file.read_text("utf-8") == mended and "mended" not in capsys.readouterr().out
    assert "expect-differs" not in codes(root)


def test_fix_mends_a_word_below_a_key_that_it_mends_too(catalogue: Path) -> None:
    """A list that then has its word twice keeps it once."""
    file = catalogue / "plans/seasons/the-year.yml"
    text = file.read_text("utf-8")
    last = "blocks: [heron-legs-in-three-weeks]"
    broken = text.replace("\n  heron:\n", "\n  Heron:\n").replace(
        "    tests: [back-kick-50]\n", "    tests: [back-kick-50, Back-Kick-50]\n"
    )
    assert last in text and broken.count("Heron:") == 1 and "Back-Kick-50" in broken
    file.write_text(broken, "utf-8")
    main(["check", "--fix", "--root", str(catalogue), "--today", DAY.isoformat()])
    assert file.read_text("utf-8") == text


@pytest.mark.parametrize("given", ["²", "٣", "1" * 5000])
def test_a_digit_that_is_no_number_of_a_choice_is_asked_again(
    monkeypatch: pytest.MonkeyPatch, given: str
) -> None:
    answers = iter([given, "1"])
    monkeypatch.setattr("builtins.input", lambda _: next(answers, ""))
    said = asking.ask(
        "fault", load(CATALOGUE), {"title": "Knees", "summary": "A line that is long enough."}
    )
    assert said["title"]


@pytest.mark.parametrize("listing", ["squads", "pools"])
@pytest.mark.parametrize("broken", [None, 5, ["a"], {"own": 5}, {"own": {"course": ["25m"]}}])
def test_a_starter_comes_beside_a_club_that_is_not_whole(
    catalogue: Path, listing: str, broken: object
) -> None:
    file = catalogue / "plans/club.yml"
    data = yaml.safe_load(file.read_text("utf-8"))
    file.write_text(yaml.safe_dump({**data, listing: broken}), "utf-8")
    for kind in ("drill", "set", "practice", "block"):
        assert main(["new", kind, f"own-{kind}", "--root", str(catalogue)]) in {0, 2}
    assert main(["new", "drill", "back-kick-own", "--root", str(catalogue)]) == 0


def test_a_club_on_land_without_a_drill_is_told_what_comes_first(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = copied(BASE, tmp_path)
    file = root / "plans/club.yml"
    data = yaml.safe_load(file.read_text("utf-8"))
    data["pools"] = {"hall": {"title": "Hall", "course": "land"}}
    file.write_text(yaml.safe_dump(data), "utf-8")
    assert main(["new", "set", "first-set", "--root", str(root)]) == 2
    assert "names a drill on land, and there is none yet" in capsys.readouterr().err
    assert main(["new", "drill", "first-stand", "--root", str(root)]) == 0


def test_a_drill_with_a_list_for_a_word_keeps_no_starter_away(catalogue: Path) -> None:
    for file in (catalogue / "drills/skills").rglob("*.yml"):
        text = file.read_text("utf-8")
        file.write_text(re.sub(r"(?m)^arms: .*$", "arms: [a, b]", text), "utf-8")
    assert main(["new", "drill", "back-kick-own", "--root", str(catalogue)]) == 0
