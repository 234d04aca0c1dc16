"""What is no fault of the program: an output that takes nothing, streams that are closed, python
-OO, days at the ends of time. None of it may end with exit code 3 or a traceback.
"""

from __future__ import annotations

import re
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest
from example_cases import BASE
from shared import CATALOGUE, copied, is_long

from almanac.analysis.analysis import Analysis
from almanac.commands.main import main
from almanac.commands.outcome import UsageError, today
from almanac.commands.shared import checked, load_and_check
from almanac.model.load import load
from almanac.site.site_pages import SitePages

ALMANAC = f"{sys.executable} -m almanac"
NO_ROOM = "almanac: the output: No space left on device\n"


def shell(line: str) -> tuple[int, str]:
    """How a line of the shell ends, and what stands in the error output."""
    done = subprocess.run(
        ["bash", "-o", "pipefail", "-c", line], capture_output=True, text=True, check=False
    )
    return done.returncode, done.stderr


@pytest.mark.parametrize(
    "command", ["check", "sum six-fifties", "sum six-fifties --json", "explain six-fifties"]
)
def test_an_output_that_is_full_is_the_machines(command: str) -> None:
    assert shell(f"{ALMANAC} {command} --root {BASE} > /dev/full") == (4, NO_ROOM)


def test_an_error_output_that_is_full_as_well_changes_nothing() -> None:
    assert shell(f"{ALMANAC} check --root {BASE} > /dev/full 2> /dev/full") == (4, "")
    assert shell(f"{ALMANAC} sum nothing --root {BASE} 2> /dev/full") == (2, "")


@pytest.mark.parametrize("streams", [">&-", "2>&-", "<&-", "<&- >&- 2>&-", "| true"])
def test_streams_that_are_closed_are_no_fault(streams: str) -> None:
    assert shell(f"{ALMANAC} check --root {BASE} {streams}") == (0, "")


def test_without_its_docstrings_it_checks_and_builds_no_site(tmp_path: Path) -> None:
    """A page of checks without their explanations would be a page of nothing."""
    root = copied(BASE, tmp_path)
    assert shell(f"{sys.executable} -OO -m almanac check --root {root}") == (0, "")
    code, said = shell(f"{sys.executable} -OO -m almanac build --root {root}")
    assert code == 2 and said.startswith("almanac: python -OO takes the explanations out")
    assert not (root / "site").exists()


def test_a_log_that_nobody_can_write_is_no_second_fault(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("the pool is empty")

    monkeypatch.setattr("almanac.commands.shared.load_and_check", broken)
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "nowhere"))
    assert main(["check", "--root", str(BASE), "--no-cache"]) == 3
    said = "almanac: a fault of the program itself; please report RuntimeError: the pool is empty\n"
    assert capsys.readouterr().err == said


# ---- days at the ends of time


@pytest.mark.parametrize("day", ["0001-01-01", "1899-12-31", "2200-01-01", "9999-12-31"])
def test_a_day_out_of_reach_is_wrong_usage(
    day: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert main(["check", "--root", str(BASE), "--today", day]) == 2
    assert f"{day} is out of reach: name a day from 1900 to 2199" in capsys.readouterr().err
    seconds = (date.fromisoformat(day) - date(1970, 1, 1)).days * 86400
    monkeypatch.setenv("SOURCE_DATE_EPOCH", str(seconds))
    with pytest.raises(UsageError, match="out of reach"):
        today()


@pytest.mark.parametrize("epoch", ["9" * 30, "-" + "9" * 30, "9" * 5000, "1e9", "nan"])
def test_seconds_that_are_no_day_are_wrong_usage(
    epoch: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
    with pytest.raises(UsageError):
        today()


@pytest.mark.parametrize(
    "day", ["0001-01-01", "1899-12-31", "9999-12-31", "9999-12-27", "2200-01-01"]
)
def test_a_day_of_an_entry_out_of_reach_is_told(tmp_path: Path, day: str) -> None:
    root = moved_to(tmp_path, day)
    found = load_and_check(root, date(2026, 11, 25)).findings
    assert {finding.code for finding in found if finding.is_error} >= {"bad-date"}
    assert all("1900 to 2199" in finding.hint for finding in found if finding.code == "bad-date")


FIRST, LAST = "1900-01-01", "2199-12-31"
_FAR = [
    ("2199-12-30", LAST),
    (LAST, FIRST),
    (FIRST, LAST),
]  # the day of entries, and that of who reads them
_NEAR = [(FIRST, FIRST), (LAST, LAST), ("2199-12-30", FIRST)]


@pytest.mark.parametrize(("day", "seen_on"), [*_FAR, *(_NEAR if is_long() else ())])
def test_the_first_and_the_last_day_can_be_worked_with(
    tmp_path: Path, day: str, seen_on: str
) -> None:
    loaded = load(moved_to(tmp_path, day))
    seen = date.fromisoformat(seen_on)
    assert checked(loaded, seen).findings
    assert loaded.catalogue is not None
    pages = SitePages(Analysis(loaded.catalogue, seen), loaded.names)
    assert list(
        pages.of_entries(lambda entry: entry.kind in {"block", "log", "benchmark", "practice"})
    )
    assert dict(pages.data())


def moved_to(root: Path, day: str) -> Path:
    """A copy of the small catalogue in which every day that an entry names is another."""
    copied(CATALOGUE, root)
    for path in root.rglob("*.yml"):
        lines = path.read_text("utf-8").splitlines()
        path.write_text("\n".join(replaced(line, day) for line in lines) + "\n", "utf-8")
    return root


def replaced(line: str, day: str) -> str:
    return re.sub(r"\b20\d\d-\d\d-\d\d\b", day, line)
