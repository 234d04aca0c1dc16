"""The program installed from a wheel, away from any checkout: it is whole, and makes the same
site.
"""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY, built_once, copied

from almanac.commands.main import command_first
from almanac.resources import HOME


def run(python: Path, folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """The installed program, called in a folder, where no variable leads to a checkout or to
    Node.
    """
    kept = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith(("PYTHON", "NODE", "ALMANAC"))
    }
    command = [str(python), "-m", "almanac", *words]
    return subprocess.run(
        command,
        cwd=folder,
        env={**kept, "PATH": "/nowhere"},
        capture_output=True,
        text=True,
        check=False,
    )


def files(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file()
    }


def test_a_wheel_makes_the_site_of_the_checkout(
    installed: Path, tmp_path_factory: pytest.TempPathFactory, tmp_path: Path
) -> None:
    done = run(installed, copied(CATALOGUE, tmp_path), "build", "--today", DAY.isoformat())
    assert done.returncode == 0, done.stdout + done.stderr
    theirs, ours = (
        files(tmp_path / "site"),
        files(built_once(tmp_path_factory, "small", CATALOGUE) / "site"),
    )
    assert theirs.keys() == ours.keys()
    assert [file for file in ours if theirs[file] != ours[file]] == []


def test_the_wheel_has_the_number_that_the_changes_say(installed: Path, tmp_path: Path) -> None:
    changes = (HOME / ".github/CHANGELOG.md").read_text("utf-8")
    number = changes.partition("\n## ")[2].split(",")[0].split()[0]
    assert run(installed, tmp_path, "--version").stdout.split() == ["almanac", number]
    told = "from importlib.metadata import version; print(version('deck-almanac'))"
    done = subprocess.run(
        [str(installed), "-c", told], cwd="/", capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == number


def test_an_installed_program_starts_a_club(installed: Path, tmp_path: Path) -> None:
    done = run(installed, tmp_path, "start", "ours", "--today", "2027-06-01")
    assert done.returncode == 0, done.stdout + done.stderr
    assert (tmp_path / "ours/plans/practices/first-building.yml").is_file()


def test_what_is_installed_lies_in_the_environment_alone(installed: Path) -> None:
    told = (
        "from almanac import resources as r; print(*(r.HOME, r.SITE_SOURCE, r.SETTINGS, "
        "r.SCHEMAS, r.BUNDLES), sep='\\n')"
    )
    done = subprocess.run(
        [str(installed), "-c", told], cwd="/", capture_output=True, text=True, check=True
    )
    for path in map(Path, done.stdout.split("\n")[:-1]):
        assert path.exists()
        assert path.is_relative_to(installed.parents[1].resolve())


def test_what_every_command_takes_stands_before_it_or_behind_it() -> None:
    same = ["check", "--root", "x", "--today=2026-11-25", "--no-cache", "--all"]
    assert (
        command_first(["--root", "x", "--today=2026-11-25", "--no-cache", "check", "--all"]) == same
    )
    assert command_first(same) == same
    for words in (["--root", "x"], ["--root"], [], ["--version"], ["--root", "x", "swim"]):
        assert command_first(words) == words


def test_the_root_before_the_command(capfd: pytest.CaptureFixture[str]) -> None:
    from almanac.commands.main import main

    assert main(["--root", str(CATALOGUE), "--today", DAY.isoformat(), "check"]) == 0
    assert "0 errors" in capfd.readouterr().out
