"""Entries of one catalogue taken into another: all that they need comes, nothing dangles, nothing
is lost.
"""

from __future__ import annotations

import re
from datetime import timedelta
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from shared import CATALOGUE, DAY, copied

from almanac.commands.main import main
from almanac.commands.shared import load_and_check
from almanac.model.bringing import BROUGHT
from almanac.model.load import Loaded
from almanac.publish import together
from almanac.source.edits.taken_out import without, without_items

CLUB = """title: Our Club
pools: {home: {title: Pool, course: 25m, lanes: 4, depth_m: {from: 1.0, to: 2.0}, flags: true}}
squads: {one: {title: One, level: foundation, sessions_a_week: 2}}
lane_groups: {one-1: {title: One, squad: one, lanes: 2, heads: 8, gap: 0:10}}
gear_owned: {}
"""


@pytest.fixture
def own(tmp_path: Path) -> Path:
    """A club that has nothing yet but the words of the small catalogue."""
    copied(CATALOGUE, tmp_path / "other")
    root = tmp_path / "own"
    (root / "plans").mkdir(parents=True)
    (tmp_path / "other/drills/vocabulary").rename(root / "drills-words")
    (root / "drills").mkdir()
    (root / "drills-words").rename(root / "drills/vocabulary")
    (root / "plans/club.yml").write_text(CLUB, "utf-8")
    (root / "plans/policy.yml").write_text(
        (CATALOGUE / "plans/policy.yml").read_text("utf-8"), "utf-8"
    )
    return root


def brought(root: Path, *ids: str) -> int:
    words = [
        "bring",
        *ids,
        "--from",
        str(CATALOGUE),
        "--root",
        str(root),
        "--today",
        DAY.isoformat(),
    ]
    return main(words)


def files(root: Path) -> dict[str, bytes]:
    return {str(path.relative_to(root)): path.read_bytes() for path in root.rglob("*.yml")}


def test_whatever_is_brought_nothing_dangles(
    own: Path, loaded: Loaded, capsys: pytest.CaptureFixture[str]
) -> None:
    assert loaded.catalogue is not None
    wanted = [f"{kind}/{id}" for kind, id in loaded.catalogue.entries if kind in BROUGHT]
    for one in wanted[::3]:
        assert brought(own, one) == 0, one
    errors = [
        one for one in load_and_check(own, DAY).findings
        if one.is_error and one.code in ("unknown-reference", "unknown-word", "missing-key",
                                         "unknown-key")
        and one.place.file.startswith(("drills/", "plans/sets/"))
    ]  # fmt: skip
    assert errors == []
    first = {
        (own / file).read_text("utf-8").split("\n")[0]
        for file in files(own)
        if "/vocabulary/" not in file and "plans/club" not in file and "policy" not in file
    }
    assert first == {"# From Quillwater Swimming Club, https://quillwater.example/."}


def test_of_drills_only_what_comes_before_one_comes_with_it(own: Path, loaded: Loaded) -> None:
    """What is easier or harder is no need: else one drill would bring half a catalogue."""
    needed, todo = set[str](), ["back-streamline-kick"]
    while todo:
        data = loaded.documents["drill", todo.pop()].data
        todo += [id for id in data.get("needs_first", ()) if id not in needed]
        needed |= {*data.get("needs_first", ())}
    assert loaded.documents["drill", "back-streamline-kick"].data["harder"]
    assert brought(own, "back-streamline-kick") == 0
    came = {path.stem for path in (own / "drills/skills").rglob("*.yml")}
    assert came == {"back-streamline-kick", *needed}
    text = next(own.rglob("back-streamline-kick.yml")).read_text("utf-8")
    assert "\nharder:" not in text and "\nneeds_first:" in text


def test_what_is_here_is_never_written_over(own: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert brought(own, "back-streamline-kick") == 0
    assert "drills/skills" in capsys.readouterr().out
    before = files(own)
    assert brought(own, "back-streamline-kick") == 0
    assert "stays as it is" in capsys.readouterr().out
    assert files(own) == before


def test_what_was_renamed_here_is_here(own: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It stays, and what comes names it by the id that it has now."""
    assert brought(own, "back-streamline-kick") == 0
    assert main(["rename", "back-streamline-kick", "long-line", "--root", str(own)]) == 0
    capsys.readouterr()
    assert brought(own, "back-streamline-kick") == 0
    assert "long-line.yml  is here already" in capsys.readouterr().out
    before = files(own)
    assert brought(own, "ladder-on-back") == 0
    came = {file: text for file, text in files(own).items() if file not in before}
    assert "plans/sets/ladder-on-back.yml" in came
    assert b"do: long-line" in came["plans/sets/ladder-on-back.yml"]
    assert not any(b"back-streamline-kick\n" in text for text in came.values())
    assert files(own).items() >= before.items()
    codes = {it.code for it in load_and_check(own, DAY).findings}
    assert not codes & {"moved-reference", "unknown-reference"}


def test_words_of_the_clubs_own_take_the_place_of_those_that_they_stand_for(own: Path) -> None:
    """An effort under another name, none twice in a list, and a climb from a word to itself is
    it.
    """
    file = own / "drills/vocabulary/efforts.yml"
    text = file.read_text("utf-8")
    renamed = text.replace(
        "  steady: {title: Steady,", "  working: {title: Working, also: [steady],"
    )
    assert renamed != text
    file.write_text(renamed, "utf-8")
    assert brought(own, "ladder-on-back") == 0
    came = (own / "plans/sets/ladder-on-back.yml").read_text("utf-8")
    assert "working" in came and "steady" not in came
    assert not any(it.code == "unknown-word" for it in load_and_check(own, DAY).findings
                   if not it.place.file.endswith("policy.yml"))  # fmt: skip


def test_a_dry_run_writes_nothing(own: Path) -> None:
    before = files(own)
    words = ["bring", "kick-and-go", "--from", str(CATALOGUE), "--root", str(own), "--dry-run"]
    assert main(words) == 0
    assert files(own) == before


def test_send_offs_of_other_lanes_become_a_rest(own: Path) -> None:
    assert brought(own, "set/kick-and-go") == 0
    text = (own / "plans/sets/kick-and-go.yml").read_text("utf-8")
    assert "heron-1: " not in text.partition("expect:")[0]


def test_reviews_and_send_offs_in_lines_of_their_own_are_seen_too(
    own: Path, tmp_path: Path
) -> None:
    """What a set says in braces it may say in lines: both come alike."""
    file = "plans/sets/kick-and-go.yml"
    other = copied(CATALOGUE, tmp_path / "lines")
    text = (CATALOGUE / file).read_text("utf-8")
    lined = yaml.safe_load(text)
    lined["review"] = {"by": "head-coach", "on": "2026-11-01", "again": "2027-11-01"}
    (other / file).write_text(yaml.safe_dump(lined, default_flow_style=False), "utf-8")
    words = ["bring", "set/kick-and-go", "--root", str(own), "--today", DAY.isoformat()]
    assert main([*words, "--from", str(other)]) == 0
    came = yaml.safe_load((own / file).read_text("utf-8"))
    weeks_4 = (DAY + timedelta(weeks=4)).isoformat()
    assert str(came["review"]["again"]) == weeks_4
    (own / file).unlink()
    assert brought(own, "set/kick-and-go") == 0
    in_braces = yaml.safe_load((own / file).read_text("utf-8"))
    assert {**came, "review": 0} == {**in_braces, "review": 0}


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("back-streamline-kik", "is it 'back-streamline-kick'?"),
        ("the-year", "is a season, which is of one club alone"),
        (
            "heron-kick-and-go",
            "--as heron=one  for the squad Heron",
        ),
    ],
)
def test_what_cannot_be_brought(
    own: Path, capsys: pytest.CaptureFixture[str], given: str, said: str
) -> None:
    before = files(own)
    assert brought(own, given) == 2
    assert said in capsys.readouterr().err
    assert files(own) == before


def planned(root: Path, id: str, *words: str) -> int:
    where = ["--from", str(CATALOGUE), "--root", str(root), "--today", DAY.isoformat()]
    return main(["bring", id, *where, *words])


def building(root: Path) -> None:
    """The one squad is of the level of what is brought, and the pool is as deep."""
    path = root / "plans/club.yml"
    text = path.read_text("utf-8").replace("level: foundation", "level: building")
    path.write_text(text.replace("flags: true", "flags: true, water_c: 27"), "utf-8")


def test_a_practice_is_brought_for_the_squad_groups_and_pool_of_the_club(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Its squad is found by its level, its pool by its course; what it needs comes along, and
    nothing of it is refused.
    """
    path = own / "plans/club.yml"
    path.write_text(
        path.read_text("utf-8").replace("flags: true", "flags: true, water_c: 29"), "utf-8"
    )
    assert planned(own, "reed-kick-then-swim") == 0, capsys.readouterr().err
    assert "here for one, home" in capsys.readouterr().out
    text = (own / "plans/practices/reed-kick-then-swim.yml").read_text("utf-8")
    assert "squad: one\n" in text and "reed-1" not in text
    errors = [one for one in load_and_check(own, DAY).findings if one.is_error]
    assert [one for one in errors if one.place.file.startswith("plans/practices/")] == []


def test_all_that_a_plan_names_of_its_club_is_asked_for_at_once(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """With the words to write where but one answer is there; those words, given, are enough."""
    before = files(own)
    assert planned(own, "heron-kick-and-go") == 2
    asked = re.findall(r"--as (\S+=\S+)", capsys.readouterr().err)
    assert asked == ["heron=one", "heron-1=one-1", "heron-2=-"]
    assert files(own) == before
    assert planned(own, "heron-kick-and-go", *(f"--as={own}" for own in asked)) == 2
    said = capsys.readouterr().err
    assert "--as" not in said and "apart" in said  # the next thing that is in the way


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (["hreon=one"], "is called 'hreon'; is it 'heron'?"),
        (["nobody=one"], "is called 'nobody'; there are "),
        (["heron=one", "heron=two"], "'heron' stands for 'one' and for 'two'"),
    ],
)
def test_what_stands_for_nothing_of_theirs_or_for_two_is_refused(
    own: Path, capsys: pytest.CaptureFixture[str], given: list[str], said: str
) -> None:
    before = files(own)
    assert planned(own, "heron-kick-and-go", *(f"--as={one}" for one in given)) == 2
    assert said in capsys.readouterr().err
    assert files(own) == before


def test_a_lane_group_that_has_none_here_is_left_out_where_that_is_said(
    own: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = own / "plans/club.yml"
    path.write_text(path.read_text("utf-8").replace("true}", "true, water_c: 29}"), "utf-8")
    other, file = copied(CATALOGUE, tmp_path / "reps"), "plans/practices/reed-kick-then-swim.yml"
    text, item = (other / file).read_text("utf-8"), "gear: [fins]\n"
    of_each = f"{item}        by_group: {{reed-1: {{reps: 3}}, reed-2: {{reps: 2}}}}\n"
    (other / file).write_text(text.replace(item, of_each), "utf-8")
    words = ["bring", "reed-kick-then-swim", "--from", str(other), "--root", str(own)]
    words += ["--today", DAY.isoformat(), "--as=reed-1=one-1"]
    before = files(own)
    assert main([*words, "--as=reed-2=one-1"]) == 2
    said = capsys.readouterr().err
    assert "two of what it names would be one here: leave one out, as --as reed-2=-" in said
    assert main([*words, "--as=reed=-"]) == 2
    assert "squad 'reed': a lane group alone can be left out" in capsys.readouterr().err
    assert files(own) == before
    assert main([*words, "--as=reed-2=-"]) == 0, capsys.readouterr().err
    assert "by_group: {one-1: {reps: 3}}\n" in (own / file).read_text("utf-8")


def test_what_lane_groups_do_apart_is_not_brought_for_one_of_them(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = files(own)
    words = ("--as=heron=one", "--as=heron-1=one-1", "--as=heron-2=-")
    assert planned(own, "heron-kick-and-go", *words) == 2
    said = capsys.readouterr().err
    assert "its part 3 is for lane groups apart, and one of them alone is left; bring its" in said
    assert files(own) == before


def test_a_club_without_water_is_told_so(own: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = own / "plans/club.yml"
    path.write_text(
        "title: Our Club\npools: {hall: {title: Hall, course: land}}\n"
        "squads: {one: {title: One, level: building, sessions_a_week: 2}}\n"
        "lane_groups: {one-1: {title: One, squad: one, heads: 8}}\ngear_owned: {}\n",
        "utf-8",
    )
    assert planned(own, "heron-kick-and-go") == 2
    said = capsys.readouterr().err
    assert "there is no pool with water here for the pool" in said and "hall" not in said


def test_what_has_another_id_there_by_now_comes_under_that(
    own: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = copied(CATALOGUE, tmp_path / "renamed")
    assert main(["rename", "kick-and-go", "go-and-kick", "--root", str(other)]) == 0
    words = ["bring", "kick-and-go", "--from", str(other), "--root", str(own)]
    assert main([*words, "--today", DAY.isoformat()]) == 0
    assert "'kick-and-go' is 'go-and-kick' there now" in capsys.readouterr().out
    assert (own / "plans/sets/go-and-kick.yml").is_file()


def test_a_set_that_the_lanes_have_no_room_for_comes_in_waves(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Twelve in one lane, 10 s apart: the last leaves at 1:50, and nobody's fifty takes so long."""
    building(own)
    timed = {"back-kick-200": "3:30", "backstroke-100": "1:20", "freestyle-400": "5:40"}
    assert brought(own, *timed) == 0
    path = own / "plans/club.yml"
    times = ", ".join(f"{{benchmark: {it}, time: {own}}}" for it, own in timed.items())
    crowd = f"lanes: 1, heads: 12, assume: [{times}]"
    path.write_text(path.read_text("utf-8").replace("lanes: 2, heads: 8", crowd), "utf-8")
    assert brought(own, "set/kick-and-go") == 0
    assert "in waves here, since lanes are full" in capsys.readouterr().out
    assert "waves: {swimmers: " in (own / "plans/sets/kick-and-go.yml").read_text("utf-8")
    crowded = {"lane-crowded", "back-crowded"}
    assert not [one for one in load_and_check(own, DAY).findings if one.code in crowded]


def test_a_block_brings_its_practices_and_says_whom_it_cannot_place(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    building(own)
    before = files(own)
    code = planned(own, "heron-legs-in-three-weeks", "--as", "heron=nobody")
    said = capsys.readouterr()
    assert code == 2 and "no squad here is called 'nobody', but one" in said.err
    assert files(own) == before
    assert planned(own, "heron-legs-in-three-weeks", "--as", "x") == 2
    assert "'x' is no pair" in capsys.readouterr().err


def test_what_a_check_would_refuse_here_is_not_brought(
    own: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nobody knows how deep the ends of the pool are, and the races begin with dives."""
    building(own)
    other = copied(CATALOGUE, tmp_path / "dives")
    path = other / "plans/meets/spring-meet.yml"
    path.write_text(path.read_text("utf-8").replace(", from_water: true", ""), "utf-8")
    before = files(own)
    words = ["bring", "spring-meet", "--from", str(other), "--root", str(own)]
    theirs = ["--as=heron=one", "--as=osprey=one", "--as=yards-meet=home"]
    assert main([*words, *theirs, "--today", DAY.isoformat()]) == 2
    said = capsys.readouterr().err
    assert "nothing was brought: plans/meets/spring-meet.yml: 'event 1' needs 1." in said
    assert files(own) == before


def test_a_word_that_is_not_here_is_named(own: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = own / "drills/vocabulary/goals.yml"
    old, new = "  kick-technique: {title: Kick technique", "  leg-shape: {title: Leg shape"
    path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
    before = files(own)
    assert brought(own, "back-streamline-kick") == 2
    assert "'kick-technique'" in capsys.readouterr().err
    assert files(own) == before


@pytest.mark.parametrize("file", ["plans/club.yml", "drills/benchmarks/back-kick-200.yml"])
def test_what_is_amiss_there_does_not_come(
    own: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], file: str
) -> None:
    """A separator of lines in the club's title would end the comment that says where an entry came
    from.
    """
    other = copied(CATALOGUE, tmp_path / "amiss")
    text = (other / file).read_text("utf-8")
    title = next(row for row in text.split("\n") if row.startswith("title: "))
    (other / file).write_text(text.replace(title, 'title: "A\\u2028club: x"'), "utf-8")
    before = files(own)
    words = ["bring", "back-kick-200", "--from", str(other), "--root", str(own)]
    assert main(words) == 2
    assert f"nothing was brought: {file}:" in capsys.readouterr().err
    assert files(own) == before


LISTS = st.lists(st.sampled_from("abcdef"), min_size=1, max_size=6, unique=True)


@given(LISTS, st.booleans(), st.data())
def test_what_is_taken_out_is_gone_and_the_rest_stays(
    items: list[str], flow: bool, data: st.DataObject
) -> None:
    """Held against the same done to plain data."""
    written = (
        f"list: [{', '.join(items)}]\n"
        if flow
        else "list:\n" + "".join(f"  # of {one}\n  - {one}\n" for one in items)
    )
    text = f"before: 1\n{written}after: {{x: 2}}\n"
    gone = data.draw(st.sampled_from(items))
    line, column = next(
        (number, row.index(mark) + len(mark) - 1 + 1)
        for number, row in enumerate(text.split("\n"), 1)
        for mark in ((f"[{gone}", f", {gone}") if flow else (f"- {gone}",))
        if mark in row and not row.lstrip().startswith("#")
    )
    left = [one for one in items if one != gone]
    assert yaml.safe_load(without(text, [(line, column)])) == {
        "before": 1,
        **({"list": left} if left else {}),
        "after": {"x": 2},
    }


def test_a_mapping_that_says_nothing_more_goes_whole() -> None:
    text = (
        "adapt:\n  - need: a\n    fits: changed\n  - need: b\n    fits: yes\npace: {like: c, "
        "factor: 1}\nend: 1\n"
    )
    assert (
        without(text, [(2, 11)])
        == "adapt:\n  - need: b\n    fits: yes\npace: {like: c, factor: 1}\nend: 1\n"
    )
    assert without(text, [(6, 14)]) == text.replace("pace: {like: c, factor: 1}\n", "")
    assert without_items(text, [(4, 5)]) == text.replace("  - need: b\n    fits: yes\n", "")


def test_a_set_that_a_check_would_refuse_here_is_not_brought(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    policy = own / "plans/policy.yml"
    theirs = policy.read_text("utf-8")
    policy.write_text(
        theirs.replace("value: 400\n    unit: reps", "value: 4\n    unit: reps"), "utf-8"
    )
    before = files(own)
    assert brought(own, "ladder-on-back") == 2
    assert "nothing was brought: plans/sets/ladder-on-back.yml: " in capsys.readouterr().err
    assert files(own) == before
    policy.write_text(theirs, "utf-8")
    assert brought(own, "ladder-on-back") == 0


def test_a_link_that_leads_nowhere_hinders_nothing(own: Path) -> None:
    """Some editors leave one beside a file that is open."""
    (own / "drills/.#words.yml").symlink_to("somebody@somewhere.1")
    (own / "plans/round").symlink_to(own, target_is_directory=True)
    assert brought(own, "ladder-on-back") == 0


def test_a_kill_between_two_files_is_finished_by_the_next_command(
    own: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = files(own)
    with monkeypatch.context() as patched:
        really, stand = together.put_in_place, list[Path]()

        def put(path: Path, written: Path) -> None:
            if stand:
                raise KeyboardInterrupt
            really(path, written)
            stand.append(path)

        patched.setattr(together, "put_in_place", put)
        assert brought(own, "back-streamline-kick") != 0
    assert len(files(own)) == len(before) + 1
    main(["check", "--root", str(own)])
    came = files(own)
    assert brought(own, "back-streamline-kick") == 0 and files(own) == came
    assert (
        "drills/skills/flutter-on-back/back-streamline-kick.yml" in came
        and len(came) > len(before) + 1
    )
