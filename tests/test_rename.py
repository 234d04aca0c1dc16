"""``almanac rename``: every place that names an entry, nothing else, and all of it or nothing."""

from __future__ import annotations

import json
import os
import re
from pathlib import Path
from typing import Any

import pytest
from failing_disk import failing_writes
from shared import CATALOGUE, DAY, copied

from almanac.commands.main import main
from almanac.commands.shared import load_and_check
from almanac.model.load import load
from almanac.publish import together
from almanac.report.compose.address import opens
from almanac.site.moved import moved_pages
from almanac.source.edits.rewrite import uses

OLD, NEW = "back-streamline-kick", "long-line-back-kick"


@pytest.fixture
def catalogue(tmp_path: Path) -> Path:
    return copied(CATALOGUE, tmp_path)


def texts(root: Path) -> dict[str, bytes]:
    return {str(file.relative_to(root)): file.read_bytes() for file in root.rglob("*.yml")}


def test_every_place_is_changed_and_no_other_byte(catalogue: Path) -> None:
    before, findings = texts(catalogue), load_and_check(catalogue, DAY).findings
    named = sum(
        (use.kind, use.id) == ("drill", OLD)
        for (kind, _), document in load(catalogue).documents.items()
        for use in uses(document, kind)
    )
    assert named > 10
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 0
    after = texts(catalogue)
    home = "drills/skills/flutter-on-back"
    assert after[f"{home}/{OLD}.yml"] == f"moved_to: {NEW}\n".encode()
    assert after.pop(f"{home}/{NEW}.yml") == before.pop(f"{home}/{OLD}.yml")
    del after[f"{home}/{OLD}.yml"]
    assert {
        file: text.replace(NEW.encode(), OLD.encode()) for file, text in after.items()
    } == before
    checked = load_and_check(catalogue, DAY)
    assert len(checked.findings) == len(findings)
    assert not any(it.code == "moved-reference" for it in checked.findings)
    assert checked.loaded.names.moved["drill", OLD] == NEW


def test_a_byte_order_mark_and_the_ends_of_lines_stay(catalogue: Path) -> None:
    file = catalogue / "drills/progressions/float-to-streamline-kick.yml"
    text = file.read_bytes().replace(b"\n", b"\r\n")
    assert OLD.encode() in text
    file.write_bytes(b"\xef\xbb\xbf" + text)
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 0
    assert file.read_bytes() == b"\xef\xbb\xbf" + text.replace(OLD.encode(), NEW.encode())


def test_the_entrys_own_file_keeps_its_byte_order_mark(catalogue: Path) -> None:
    home = catalogue / "drills/skills/flutter-on-back"
    text = (home / f"{OLD}.yml").read_bytes()
    (home / f"{OLD}.yml").write_bytes(b"\xef\xbb\xbf" + text)
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 0
    assert (home / f"{NEW}.yml").read_bytes() == b"\xef\xbb\xbf" + text


def test_there_and_back_is_as_before_but_for_the_way(catalogue: Path) -> None:
    before = texts(catalogue)
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 0
    assert main(["rename", NEW, OLD, "--root", str(catalogue)]) == 0
    after = texts(catalogue)
    assert after.pop(f"drills/skills/flutter-on-back/{NEW}.yml") == f"moved_to: {OLD}\n".encode()
    assert after == before


def test_a_key_and_an_entry_without_a_page_are_renamed_too(catalogue: Path) -> None:
    assert main(["rename", "fins", "short-blades", "--root", str(catalogue)]) == 0
    assert "short-blades: " in (catalogue / "plans/club.yml").read_text("utf-8")
    log = "2026-11-02-kick-and-go"
    assert main(["rename", log, "2026-11-02-monday", "--root", str(catalogue)]) == 0
    assert not (catalogue / f"plans/logs/{log}.yml").exists()


_NAMES = load(CATALOGUE).names


@pytest.mark.parametrize(
    ("kind", "old"),
    [(kind, next(iter(_NAMES.of("reference", kind)))) for kind in ("squad", "lane_group", "pool")],
)
def test_what_the_club_lists_is_renamed_wherever_it_is_named(
    catalogue: Path, capsys: pytest.CaptureFixture[str], kind: str, old: str
) -> None:
    """A squad, a lane group and a pool: keys and values, in every kind of entry, and nothing
    else.
    """
    before, findings = texts(catalogue), load_and_check(catalogue, DAY).findings
    assert main(["rename", old, "zander-9", "--kind", kind, "--root", str(catalogue)]) == 0
    said = capsys.readouterr().out
    named = sum(
        (use.kind, use.id) == (kind, "zander-9")
        for (own, _), document in load(catalogue).documents.items()
        for use in uses(document, own)
    )
    assert named > 1 and f"named in {named} places" in said and "its title stays '" in said
    after = texts(catalogue)
    assert {file: text.replace(b"zander-9", old.encode()) for file, text in after.items()} == before
    assert load(catalogue).names.of("reference", kind).keys() >= {"zander-9"}
    checked = load_and_check(catalogue, DAY)
    assert [it.code for it in checked.findings] == [it.code for it in findings]
    assert main(["rename", "zander-9", old, "--kind", kind, "--root", str(catalogue)]) == 0
    assert texts(catalogue) == before


def test_a_squad_does_not_take_anothers_name(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    one, other = list(load(catalogue).names.of("reference", "squad"))[:2]
    assert main(["rename", one, other, "--root", str(catalogue)]) == 2
    assert f"there is a squad '{other}' already" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("back-streamline-kik", "x", "the nearest: back-streamline-kick"),
        (OLD, "Not An Id", "is no id"),
        (OLD, "backstroke-swim", "already"),
    ],
)
def test_what_cannot_be_is_refused_and_changes_nothing(
    catalogue: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, says: str
) -> None:
    before = texts(catalogue)
    assert main(["rename", old, new, "--root", str(catalogue)]) == 2
    assert says in capsys.readouterr().err and texts(catalogue) == before


def test_a_dry_run_and_a_file_that_cannot_be_read_change_nothing(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = texts(catalogue)
    assert main(["rename", OLD, NEW, "--dry-run", "--root", str(catalogue)]) == 0
    assert "would be" in capsys.readouterr().out and texts(catalogue) == before
    (catalogue / "plans/sets/broken.yml").write_text("a: [\n", "utf-8")
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 2
    assert "broken.yml cannot be read" in capsys.readouterr().err
    twice = "title: A\nitems: []\ntitle: B\n"  # the first of the two could name it
    (catalogue / "plans/sets/broken.yml").write_text(twice, "utf-8")
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 2
    assert "broken.yml:3:1: 'title' is given twice" in capsys.readouterr().err


def test_a_disk_that_is_full_from_some_file_on_changes_nothing(
    catalogue: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """There is then no room to go back, either: no file may be another before all are written."""
    before = texts(catalogue)
    really, count = together.written_beside, [0]

    def write(path: Path, content: bytes) -> Path:
        count[0] += 1
        if count[0] > 4:
            raise OSError(28, os.strerror(28), str(path))
        return really(path, content)

    monkeypatch.setattr(together, "written_beside", write)
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 4
    assert texts(catalogue) == before and not together.journal_of(catalogue).exists()
    assert not list(catalogue.rglob("*.tmp"))


@pytest.mark.parametrize("written", [0, 1, 2, 20])
def test_a_kill_is_finished_by_the_next_command_and_a_full_disk_undone(
    catalogue: Path, monkeypatch: pytest.MonkeyPatch, written: int
) -> None:
    """Killed, or refused, at each kind of write: the journal, what is written beside the files, and
    their renames.
    """
    before = texts(catalogue)
    with monkeypatch.context() as patched:
        failing_writes(patched, written, OSError(28, os.strerror(28)))
        assert main(["rename", OLD, NEW, "--root", str(catalogue)]) != 0
    assert texts(catalogue) == before and not together.journal_of(catalogue).exists()
    assert not list(catalogue.rglob("*.tmp"))
    with monkeypatch.context() as patched:
        failing_writes(patched, written, KeyboardInterrupt())
        assert main(["rename", OLD, NEW, "--root", str(catalogue)]) != 0
    main(["check", "--root", str(catalogue)])
    assert not together.journal_of(catalogue).exists()
    codes = {it.code for it in load(catalogue).findings}
    assert not codes & {"unknown-reference", "moved-reference"}
    assert (texts(catalogue) == before) == (written == 0)


def test_a_file_that_can_never_be_written_leaves_every_other_as_it_was(
    catalogue: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """It refuses the undoing as well: those that were written before it go back all the same."""
    before, really, shut = texts(catalogue), Path.replace, "ladder-on-back.yml"

    def put(self: Path, target: Path) -> Path:
        if Path(target).name == shut:
            raise PermissionError(1, os.strerror(1), str(self), None, str(target))
        return really(self, target)

    monkeypatch.setattr(Path, "replace", put)
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 4
    assert f"{shut}: Operation not permitted" in capsys.readouterr().err
    assert texts(catalogue) == before and not together.journal_of(catalogue).exists()
    assert not list(catalogue.rglob("*.tmp"))


def test_what_was_written_meanwhile_is_never_written_over(
    catalogue: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """An editor saves, or another command is done, between reading and writing."""
    named = catalogue / "plans/sets/ladder-on-back.yml"
    really = together.turn

    def saved_first(*arguments: Any) -> Any:
        named.write_text(named.read_text("utf-8") + "# a note\n", "utf-8")
        return really(*arguments)

    monkeypatch.setattr(together, "turn", saved_first)
    before = texts(catalogue)
    assert main(["rename", OLD, NEW, "--root", str(catalogue)]) == 4
    assert "ladder-on-back.yml was written meanwhile" in capsys.readouterr().err
    assert {file for file, text in texts(catalogue).items() if text != before.get(file)} == {
        file for file in before if file.endswith("ladder-on-back.yml")
    }


@pytest.mark.parametrize(
    "journal",
    [
        "[]", "{}", '{"before": [], "after": []}', '{"before": {}, "after": {"plans/x.yml": 1}}',
        '{"before": {}, "after": {"mkdocs.yml": "a"}}',
        '{"before": {}, "after": {"drills/../x.yml": "a"}}',
        '{"before": {}, "after": {"drills/link/x.yml": "a"}}',
        '{"before": {}, "after": {"/tmp/x.yml": "a"}}',
        "[" * 100_000, "\udce4",
    ],
    ids=range(10),
)  # fmt: skip
def test_a_journal_that_is_none_changes_nothing_and_goes(
    catalogue: Path, tmp_path_factory: pytest.TempPathFactory, journal: str
) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (catalogue / "drills/link").symlink_to(outside)
    path = together.journal_of(catalogue)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(journal, "utf-8", "surrogatepass")
    before = texts(catalogue)
    together.finish(catalogue)
    assert texts(catalogue) == before and not path.exists()
    assert not list(outside.iterdir())


def test_a_journal_in_the_folder_is_nothing(catalogue: Path) -> None:
    """Whoever proposes a change can put one there."""
    said = {"before": {}, "after": {"drills/skills/x.yml": "a"}}
    (catalogue / ".almanac-change.json").write_text(json.dumps(said), "utf-8")
    main(["check", "--root", str(catalogue)])
    assert not (catalogue / "drills/skills/x.yml").exists()


def test_what_a_kill_leaves_of_a_file_is_swept_up(catalogue: Path) -> None:
    file = "plans/sets/ladder-on-back.yml"
    text = (catalogue / file).read_text("utf-8")
    left = catalogue / "plans/sets/.a1b2c3d4.tmp"
    left.write_text("half", "utf-8")
    path = together.journal_of(catalogue)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps({"before": {file: text}, "after": {file: text}}), "utf-8")
    together.finish(catalogue)
    assert not left.exists()


def test_a_retired_entry_says_what_took_its_place_and_who_still_names_it(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = ["retire", OLD, "--for", "back-kick-hands-up", "--root", str(catalogue)]
    before = texts(catalogue)
    assert main([*arguments, "--dry-run"]) == 0 and texts(catalogue) == before
    arguments += ["--anyway", "--today", "2026-11-27"]
    assert main(arguments) == 0
    assert "plans/sets/ladder-on-back.yml:" in capsys.readouterr().out
    checked = load_and_check(catalogue, DAY)
    told = [it for it in checked.findings if it.code == "moved-reference"]
    assert told and all("is retired" in it.message for it in told)
    assert not any(it.is_error and "retired" in it.place.file for it in checked.findings)
    assert not checked.loaded.meant, "which serves instead, a coach decides"
    assert checked.analysis is not None
    (page,) = (it for it in moved_pages(checked.analysis) if it.file.endswith(f"/{OLD}.md"))
    assert page.context["retired"] == "2026-11-27" and page.context["was"] == "Back streamline kick"
    assert main(["retire", OLD, "--for", OLD, "--root", str(catalogue)]) == 2


def test_what_takes_its_place_is_written_wherever_it_is_named(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = "back-kick-hands-up"
    arguments = ["retire", OLD, "--to", other, "--root", str(catalogue), "--today", "2026-11-27"]
    arguments.append("--anyway")
    before = texts(catalogue)
    assert main([*arguments, "--dry-run"]) == 0 and texts(catalogue) == before
    assert main(arguments) == 0
    said = capsys.readouterr().out
    assert f"names {OLD}: {other} is written there" in said and f"{other} is written in" in said
    found = load_and_check(catalogue, DAY).findings
    assert not any(it.code in {"moved-reference", "repeated-item", "circle"} for it in found)
    own = {key for key, document in load(catalogue).documents.items() if OLD in document.text}
    assert own <= {("drill", OLD)}, "a list that named both names the one"
    assert main(["retire", OLD, "--for", other, "--to", other, "--root", str(catalogue)]) == 2


def test_what_takes_its_place_is_not_told_to_name_itself(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = "back-kick-one-arm-up"
    file = catalogue / f"drills/skills/flutter-on-back/{other}.yml"
    before = file.read_text("utf-8")
    assert f" {OLD}," in before
    assert main(["retire", OLD, "--for", other, "--root", str(catalogue), "--anyway"]) == 0
    said = capsys.readouterr().out
    assert f": {other} names {OLD}: it is taken out there\n" in said
    assert OLD not in file.read_text("utf-8"), "one right answer: it is taken out"
    assert not any(it.code == "circle" for it in load_and_check(catalogue, DAY).findings)
    file.write_text(before, "utf-8")
    told = [it for it in load(catalogue).findings if it.code == "moved-reference"]
    own = [it for it in told if it.place.file.endswith(f"/{other}.yml")]
    assert own and all(it.hint.startswith("take it out here") for it in own)
    assert any(f"write {other}" in it.hint for it in told if it not in own)


def test_what_would_come_before_itself_takes_no_place(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Drill 1 needs 2, and 2 needs the one that goes: with 1 in its place, 2 would need 1."""
    home = catalogue / "drills/skills/flutter-on-back"
    needed = next(
        id
        for (kind, id), own in load(catalogue).documents.items()
        if kind == "drill" and OLD in own.data.get("needs_first", ()) and id != "back-kick-hands-up"
    )
    other = home / "back-kick-hands-up.yml"
    text = other.read_text("utf-8")
    assert "\nneeds_first: [" in text
    other.write_text(text.replace("\nneeds_first: [", f"\nneeds_first: [{needed}, "), "utf-8")
    assert not any(it.is_error for it in load_and_check(catalogue, DAY).findings)
    before = texts(catalogue)
    assert main(["retire", OLD, "--for", other.stem, "--root", str(catalogue)]) == 1
    said = capsys.readouterr().out
    assert "error circle: " in said and "nothing was written" in said
    assert texts(catalogue) == before


def test_what_a_successor_does_to_sets_is_told_at_once(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before, other = texts(catalogue), "back-kick-one-arm-up"
    arguments = [
        "retire",
        OLD,
        "--for",
        other,
        "--root",
        str(catalogue),
        "--today",
        DAY.isoformat(),
    ]
    assert main(arguments) == 1 and texts(catalogue) == before, "with errors no site is built"
    refused = capsys.readouterr().out
    assert "nothing was written" in refused and "--anyway" in refused
    own = sum(not document.lent for document in load(catalogue).documents.values())
    assert f" in {own:,} entries" in refused, "what the program lends is none of the club's"
    assert main([*arguments, "--dry-run"]) == 0 and texts(catalogue) == before
    assert "nothing is written without --anyway" in capsys.readouterr().out
    assert main([*arguments, "--anyway"]) == 0
    said = capsys.readouterr().out
    assert f"--to {other} writes it everywhere" in said
    said = said.partition("and check finds:\n")[2]
    found = [it for it in load_and_check(catalogue, DAY).findings if it.is_error]
    assert found and all(f"{it.place}: error {it.code}: {it.message}" in said for it in found)


@pytest.mark.parametrize("moved_to", ["[a]", "nothing", "5"])
def test_an_entry_that_leads_nowhere_is_told(
    catalogue: Path, capsys: pytest.CaptureFixture[str], moved_to: str
) -> None:
    (catalogue / "drills/gear/gone.yml").write_text(f"moved_to: {moved_to}\n", "utf-8")
    before = texts(catalogue)
    assert main(["rename", "gone", "other", "--root", str(catalogue)]) == 2
    assert "'gone' has moved already" in capsys.readouterr().err
    assert texts(catalogue) == before


@pytest.mark.parametrize("new", ["2026", "650", "no"])
def test_an_id_that_reads_as_no_text_is_put_in_quotes(
    catalogue: Path, capsys: pytest.CaptureFixture[str], new: str
) -> None:
    one = next(iter(load(catalogue).names.of("reference", "squad")))
    findings = load_and_check(catalogue, DAY).findings
    assert main(["rename", one, new, "--kind", "squad", "--root", str(catalogue)]) == 0
    assert f'"{new}":' in (catalogue / "plans/club.yml").read_text("utf-8")
    assert new in load(catalogue).names.of("reference", "squad")
    after = load_and_check(catalogue, DAY).findings
    assert [it.code for it in after] == [it.code for it in findings]


def test_what_is_not_there_is_told_by_its_kind(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["rename", "nothing", "x", "--kind", "pool", "--root", str(catalogue)]) == 2
    assert "there is no pool 'nothing'" in capsys.readouterr().err
    assert main(["rename", "kick-technique", "legs", "--root", str(catalogue)]) == 2
    assert "is a word of the goals: in a list of your own" in capsys.readouterr().err


COMPOSED = (
    "squad=heron&pool=home&groups=heron-1&minutes=60&goals=kick-technique&gear=fins:8&lanes=heron-1:2"
    "&heads=heron-1:9&parts=w.part/heron-kick-and-go/0:2,s.drill/back-streamline-kick:4,m.set/kick-and-go:3"
)


@pytest.mark.parametrize(
    ("kind", "old"),
    [("squad", "heron"), ("pool", "home"), ("lane_group", "heron-1"), ("gear", "fins"),
     ("practice", "heron-kick-and-go"),
     ("drill", OLD), ("set", "kick-and-go")],
)  # fmt: skip
def test_the_address_of_a_composed_practice_names_it_by_its_new_id(
    catalogue: Path, kind: str, old: str
) -> None:
    """And nobody else whose id has the same letters in it: heron-1 is not heron."""
    file = catalogue / "plans/practices/reed-kick-then-swim.yml"
    before = file.read_text("utf-8").replace("\nparts:", f'\ncomposed: "{COMPOSED}"\nparts:', 1)
    file.write_text(before, "utf-8")
    assert main(["rename", old, "another", "--kind", kind, "--root", str(catalogue)]) == 0
    loaded = load(catalogue)
    assert loaded.catalogue is not None
    words = loaded.catalogue.practices["reed-kick-then-swim"].composed
    assert words == re.sub(rf"(?<=[=/,]){old}(?=[&:/,])", "another", COMPOSED) != COMPOSED
    assert opens(loaded.catalogue, words) and not opens(loaded.catalogue, COMPOSED)


def test_where_the_catalogue_cannot_be_tried_nothing_is_retired(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    goals = catalogue / "drills/vocabulary/goals.yml"
    goals.write_text(goals.read_text("utf-8").replace("words:", "wards:"), "utf-8")
    before = {path: path.read_bytes() for path in catalogue.rglob("*.yml")}
    assert main(["retire", OLD, "--for", "back-kick-hands-up", "--root", str(catalogue)]) == 1
    out = capsys.readouterr().out
    assert "goals.yml:" in out and "nothing was written" in out
    assert {path: path.read_bytes() for path in catalogue.rglob("*.yml")} == before


ON_PHONES = "\nwhoever has chosen it on a phone"


@pytest.mark.parametrize(
    ("old", "end"),
    [
        (OLD, "places; its old address leads to the new one"),
        ("fins", "places; its old address leads to the new one"),
        ("2026-11-02-kick-and-go", "log 2026-11-02-kick-and-go is another, named in 0 places"),
        ("heron", f"{ON_PHONES}, or reads its calendar, chooses it once more"),
        ("long-course", f"{ON_PHONES} chooses it once more"),
    ],
)
def test_what_is_said_in_the_end_is_what_somebody_has_to_do(
    catalogue: Path, capsys: pytest.CaptureFixture[str], old: str, end: str
) -> None:
    """Phones keep a squad and a pool, by its id; as long as nothing is written, nobody chooses."""
    arguments = ["rename", old, "another", "--root", str(catalogue)]
    assert main([*arguments, "--dry-run"]) == 0
    assert ON_PHONES not in capsys.readouterr().out
    assert main(arguments) == 0
    assert capsys.readouterr().out.endswith(f"{end}\n")


def test_of_two_that_have_an_id_the_kind_that_is_asked_for_is_renamed(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    practices = catalogue / "plans/practices"
    text = (practices / "heron-kick-and-go.yml").read_text("utf-8")
    (practices / "kick-and-go.yml").write_text(text, "utf-8")
    arguments = ["rename", "kick-and-go", "another", "--root", str(catalogue)]
    assert main(arguments) == 2
    said = capsys.readouterr().err
    assert "is the name of a set and a practice: say which with --kind" in said
    assert main([*arguments, "--kind", "practice"]) == 0
    assert (practices / "another.yml").exists()
    assert (catalogue / "plans/sets/kick-and-go.yml").exists()
    assert not (catalogue / "plans/sets/another.yml").exists()


def test_a_word_of_a_list_is_none_that_retire_could_take(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["retire", "kick-technique", "--for", OLD, "--root", str(catalogue)]) == 2
    assert "there is no entry 'kick-technique'" in capsys.readouterr().err


def test_an_error_that_stood_there_before_is_none_of_the_retired_ones(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A circle of two other drills: it holds up the build, and not this."""
    after = next(
        id
        for (kind, id), own in load(catalogue).documents.items()
        if kind == "drill" and OLD in own.data.get("needs_first", ())
    )
    file = catalogue / f"drills/skills/flutter-on-back/{OLD}.yml"
    text = re.sub(r"(?m)^needs_first: .*\n", "", file.read_text("utf-8"))
    file.write_text(f"{text}needs_first: [{after}]\n", "utf-8")
    assert any(it.code == "circle" for it in load_and_check(catalogue, DAY).findings)
    arguments = ["retire", "feet-too-deep", "--for", "crossing-legs", "--root", str(catalogue)]
    assert main(arguments) == 0
    assert "circle" not in capsys.readouterr().out
    assert load(catalogue).names.moved["fault", "feet-too-deep"] == "crossing-legs"


def test_what_is_not_there_takes_no_place(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = texts(catalogue)
    for other, says in (
        ("back-kick-hands-upp", "there is no drill 'back-kick-hands-upp'; the nearest: back-kick"),
        ("fins", "there is no drill 'fins'"),
    ):
        assert main(["retire", OLD, "--for", other, "--root", str(catalogue)]) == 2
        assert says in capsys.readouterr().err and texts(catalogue) == before


def test_a_time_that_was_swum_in_a_retired_test_is_no_time_of_what_took_its_place(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    gone, other = "back-kick-25-in-parachute", "back-kick-25"
    club = (catalogue / "plans/club.yml").read_text("utf-8")
    count = club.count(f"benchmark: {gone},")
    assert count
    arguments = ["retire", gone, "--to", other, "--anyway", "--root", str(catalogue)]
    assert main(arguments) == 0
    said = capsys.readouterr().out
    assert (catalogue / "plans/club.yml").read_text("utf-8") == club
    assert said.count("take it out there: what was timed is no time of") == count
    checked = load_and_check(catalogue, DAY)
    told = [it for it in checked.findings if it.code == "moved-reference"]
    assert len(told) == count and all("counts no more" in it.hint for it in told)
    assert checked.loaded.catalogue is not None
    tests = [own for group in checked.loaded.catalogue.lane_groups.values() for own in group.tests]
    assert not any(own.benchmark == gone for own in tests)
    assert sum(own.benchmark == other for own in tests) == club.count(f"benchmark: {other},")


def test_a_time_of_a_test_that_has_another_id_now_counts_and_breaks_no_check(
    catalogue: Path,
) -> None:
    old, new = (catalogue / f"drills/benchmarks/{id}.yml" for id in ("back-kick-200", "kick-200"))
    new.write_text(old.read_text("utf-8"), "utf-8")
    old.write_text("moved_to: kick-200\n", "utf-8")  # by hand: nobody else names the new id yet
    checked = load_and_check(catalogue, DAY)
    assert not any(it.is_error for it in checked.findings)
    assert checked.loaded.catalogue is not None
    tests = [own for group in checked.loaded.catalogue.lane_groups.values() for own in group.tests]
    assert any(own.benchmark == "kick-200" for own in tests)


def test_what_nobody_names_is_retired_without_advice(
    catalogue: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = ["--for", "float-to-streamline-kick", "--root", str(catalogue)]
    assert main(["retire", "kick-into-stroke", *arguments]) == 0
    assert capsys.readouterr().out.rstrip().endswith(". No other entry names it")
