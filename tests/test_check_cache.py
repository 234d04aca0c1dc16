"""``check`` answers from what it found before, and never otherwise than without it."""

from __future__ import annotations

import json
import random
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from example_cases import BASE
from git_world import committed, git
from saves import SAVES
from shared import CATALOGUE, DAY, copied, examples, is_long

from almanac import cache
from almanac.cache import SWITCH
from almanac.commands.check import check_root
from almanac.commands.main import main
from almanac.findings import Findings
from almanac.report.findings_shown import as_json
from almanac.source.document_store import DocumentStore
from almanac.source.snapshot import snapshot


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A cache folder of its own, in use."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.delenv(SWITCH, raising=False)
    return tmp_path / "cache"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return copied(BASE, tmp_path / "club")


def told(root: Path, today: date = DAY) -> str:
    return as_json(*_both(check_root(root, today)))


def anew(root: Path, today: date = DAY) -> str:
    """What is found where nothing is remembered."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(SWITCH, "1")
        return told(root, today)


def _both(findings: Findings) -> tuple[list, int]:
    return list(findings.found), findings.entries


def stored(home: Path) -> list[Path]:
    return sorted(path for path in home.rglob("*") if path.is_file())


@pytest.mark.parametrize("seed", range(examples(2, 40)))
def test_after_any_saves_the_findings_are_those_of_a_run_without_a_store(
    home: Path, tmp_path: Path, seed: int
) -> None:
    chance = random.Random(seed)
    root = copied(CATALOGUE if is_long() else BASE, tmp_path / "saved")
    assert told(root) == anew(root)
    for number in range(examples(12, 30)):
        save = chance.choice(SAVES)
        save(root, chance)
        assert told(root) == anew(root), f"after save {number}, {save.__name__}"
    assert len(stored(home)) > 2


def test_a_day_later_is_another_run(home: Path, root: Path) -> None:
    later = DAY + timedelta(days=4000)  # reviews are overdue by then
    assert told(root) != told(root, later) == anew(root, later)


def test_the_second_run_works_nothing_out(
    home: Path, root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = told(root)

    def fails(*_: object, **__: object) -> None:
        raise AssertionError("worked out again")

    monkeypatch.setattr("almanac.commands.shared.load_and_check", fails)
    assert told(root) == found
    with pytest.raises(AssertionError, match="worked out again"):
        anew(root)


def test_with_one_file_changed_the_others_are_not_read_again(
    home: Path, root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told(root)
    read: list[str] = []
    from almanac.model import reading

    plainly = reading.read
    monkeypatch.setattr(
        reading, "read", lambda raw, file: (read.append(file), plainly(raw, file))[1]
    )
    changed = root / "plans/sets/six-fifties.yml"
    changed.write_text(changed.read_text("utf-8") + "# seen\n", "utf-8")
    told(root)
    assert read == ["plans/sets/six-fifties.yml"]


def test_a_word_that_is_gone_is_told_in_files_that_did_not_change(home: Path, root: Path) -> None:
    told(root)
    (root / "drills/gear/fins.yml").unlink()
    assert "'fins'" in told(root)
    assert told(root) == anew(root)


def test_two_clubs_share_a_store_and_no_finding(home: Path, root: Path, tmp_path: Path) -> None:
    other = copied(BASE, tmp_path / "other")
    (other / "plans/club.yml").unlink()
    for _ in range(2):
        assert told(root) == anew(root)
        assert told(other) == anew(other) != told(root)


def test_what_the_last_commit_called_a_file_is_not_said_after_the_next(
    home: Path, root: Path
) -> None:
    """A file of another name and title is known for what it was while that is in the last commit
    alone, and ``--fix`` with it.
    """

    committed(root)
    fins = root / "drills/gear/fins.yml"
    text = re.sub("^title: .*", "title: Blades", fins.read_text("utf-8"))
    fins.with_name("blades.yml").write_text(text, "utf-8")
    fins.unlink()
    assert "write blades (drills/gear/blades.yml)" in told(root) == anew(root)
    git(root, "add", ".")
    git(root, "commit", "-m", "after")
    assert "almanac new gear fins" in told(root) == anew(root)


def test_what_lies_in_a_folder_that_belongs_nowhere_is_looked_at_again(
    home: Path, root: Path
) -> None:
    entry = root / "drills/skills/kicking/back-float.yml"
    stray = entry.parent / "old" / entry.name
    stray.parent.mkdir()
    entry.rename(stray)
    before = told(root)
    assert "stray-folder" in before and "unknown-reference" not in before
    stray.rename(stray.with_name("other.yml"))
    assert "no drill 'back-float'" in told(root) == anew(root)


def cut(path: Path) -> None:
    path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])


def emptied(path: Path) -> None:
    path.write_bytes(b"")


def other_json(path: Path) -> None:
    path.write_text(json.dumps({"version": 1, "findings": []}), "utf-8")


def one_bit(path: Path) -> None:
    content = bytearray(path.read_bytes())
    content[-2] ^= 4
    path.write_bytes(bytes(content))


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def not_for_us(path: Path) -> None:
    path.chmod(0)


def a_link_to_itself(path: Path) -> None:
    path.unlink()
    path.symlink_to(path)


def of_another(path: Path) -> None:
    stores = path.parent.parent.rglob("*")
    other = next(p for p in sorted(stores) if p.is_file() and p.parent != path.parent)
    path.write_bytes(other.read_bytes())


@pytest.mark.parametrize(
    "spoil",
    [cut, emptied, other_json, one_bit, a_folder, not_for_us, a_link_to_itself, of_another],
    ids=lambda spoil: spoil.__name__,
)
@pytest.mark.parametrize("which", ["findings", "documents", "harmless-texts"])
def test_a_spoilt_store_is_as_none(
    home: Path, root: Path, spoil: Callable[[Path], None], which: str
) -> None:
    (root / "plans/sets/one-more.yml").write_text("title: [", "utf-8")
    found = told(root)
    (path,) = (path for path in stored(home) if path.parent.name == which)
    spoil(path)
    for number in range(2):
        assert told(root) == found
        changed = root / "plans/sets/six-fifties.yml"
        changed.write_text(changed.read_text("utf-8") + f"# {number}\n", "utf-8")
        assert told(root) == found == anew(root)


def test_another_program_or_library_asks_anew(
    home: Path, root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = told(root)
    before = stored(home)
    monkeypatch.setattr(cache, "program_digest", lambda: b"another")
    assert told(root) == found
    assert len(stored(home)) == 2 * len(before)


@pytest.mark.parametrize("how", ["a file in the way", "nowhere to write"])
def test_a_home_that_cannot_be_written_to_is_as_none(
    tmp_path: Path, root: Path, monkeypatch: pytest.MonkeyPatch, how: str
) -> None:
    monkeypatch.delenv(SWITCH, raising=False)
    if how == "a file in the way":
        (tmp_path / "cache").write_text("in the way", "utf-8")
        monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    else:  # where even root may not write
        monkeypatch.setenv("XDG_CACHE_HOME", "/proc/1/almanac")
    assert told(root) == told(root) == anew(root)


def test_checks_at_once_say_the_same(home: Path, root: Path) -> None:
    command = [sys.executable, "-m", "almanac", "check", "--root", str(root), "--today", str(DAY)]
    runs = [
        subprocess.Popen([*command, "--format", "json"], stdout=subprocess.PIPE, text=True)
        for _ in range(3)
    ]
    assert {run.communicate()[0] for run in runs} == {anew(root) + "\n"}
    assert told(root) == anew(root)


def test_no_cache_leaves_the_store_alone(
    home: Path, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", "--root", str(root), "--no-cache"]) == 0
    assert stored(home) == []
    assert main(["check", "--root", str(root)]) == 0
    first, second = capsys.readouterr().out.splitlines()
    assert first == second
    assert len(stored(home)) == 3


def test_a_save_during_a_check_is_not_stored_under_what_was_there_before(
    home: Path, root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from almanac.commands import shared

    plainly = shared.load_and_check

    def saves_meanwhile(*arguments, **named):  # type: ignore[no-untyped-def]
        (root / "plans/club.yml").rename(root / "plans/club.bak")
        return plainly(*arguments, **named)

    before = anew(root)
    monkeypatch.setattr(shared, "load_and_check", saves_meanwhile)
    told(root)
    monkeypatch.undo()
    (root / "plans/club.bak").rename(root / "plans/club.yml")
    assert told(root) == before


def test_a_file_that_was_read_is_remembered_by_its_bytes(home: Path, root: Path) -> None:
    told(root)
    store = DocumentStore(root)
    contents = snapshot(root).contents
    raw = contents["drills/gear/fins.yml"]
    found = store.find("gear", raw)
    assert found is not None and found.data["title"]
    assert store.find("gear", raw + b"# seen") is None
    assert store.find("drill", raw) is None


LIGHT = ("yaml", "jsonschema", "cattrs", "almanac.model", "almanac.checks")
NEVER = ("mkdocs", "jinja2", "markupsafe", "segno", "icalendar", "almanac.site", "almanac.drawing",
         "almanac.publish", "almanac.report")  # fmt: skip
SHOWN = {"almanac.report", "almanac.report.findings_shown"}  # all that it needs of the reports
_IMPORTED = """
import json, sys
from almanac.commands.main import main
main(sys.argv[1:])
print(json.dumps(sorted(sys.modules)))
"""


def imported(root: Path) -> list[str]:
    command = [sys.executable, "-c", _IMPORTED, "check", "--root", str(root)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    found: list[str] = json.loads(done.stdout.splitlines()[-1])
    return found


def test_check_imports_what_it_needs_alone(home: Path, root: Path) -> None:
    first, second = ({*imported(root)} - SHOWN for _ in range(2))
    assert set(LIGHT) <= first
    assert not {name for name in first if name.startswith(NEVER)}
    assert not {name for name in second if name.startswith((*LIGHT, *NEVER))}
