"""Composing answers from what a check has found and read before, and never otherwise than without:
held by what is read and checked, not by a clock.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY, copied

from almanac.cache import SWITCH
from almanac.commands import shared
from almanac.commands.as_checked import load_as_checked
from almanac.commands.check import check_root
from almanac.commands.main import main
from almanac.model import reading

ASKED = ["compose", "practice", "--squad", "heron", "--minutes", "60", "--goals", "kick-endurance"]


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A club, and a cache folder of its own, in use."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.delenv(SWITCH, raising=False)
    return copied(CATALOGUE, tmp_path / "club")


@pytest.fixture
def work(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What is checked and which files are read, as they are."""
    told: list[str] = []
    for module, name in ((shared, "check"), (reading, "read")):
        monkeypatch.setattr(module, name, _noted(getattr(module, name), name, told))
    return told


def _noted(work: Callable[..., object], name: str, told: list[str]) -> Callable[..., object]:
    def noted(*given: object, **more: object) -> object:
        told.append(str(given[1]) if name == "read" else name)
        return work(*given, **more)

    return noted


def composed(root: Path, capsys: pytest.CaptureFixture[str], *more: str) -> str:
    words = [*ASKED, "--root", str(root), "--today", DAY.isoformat(), *more]
    assert main(words) == 0
    return capsys.readouterr().out


def test_nothing_is_read_or_checked_twice(
    root: Path, work: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    first = composed(root, capsys)
    assert "check" in work and len(work) > 100
    work.clear()
    assert composed(root, capsys) == first
    assert work == []
    assert composed(root, capsys, "--no-cache") == first


def test_what_a_check_has_found_is_not_looked_for_again(root: Path, work: list[str]) -> None:
    found = check_root(root, DAY)
    work.clear()
    assert load_as_checked(root, DAY).findings == list(found.found)
    assert work == []


def test_a_changed_file_alone_is_read_anew_and_all_is_checked(
    root: Path, work: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    parts = json.loads(composed(root, capsys, "--json"))["proposals"][0]["parts"]
    piece = next(own["piece"] for own in parts if own["as"] == "m")
    (path,) = root.rglob(f"{piece.split('/')[1]}.yml")
    path.write_text(path.read_text("utf-8") + "unknown: 1\n", "utf-8")
    work.clear()
    after = composed(root, capsys, "--json")
    assert work == [path.relative_to(root).as_posix(), "check"]
    assert piece not in after, "what is broken is not composed"
    assert after == composed(root, capsys, "--json", "--no-cache")
