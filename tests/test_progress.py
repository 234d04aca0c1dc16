"""Long work says on a terminal how far it is, and nowhere else."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY

from almanac.commands.build import typed
from almanac.commands.shared import load_and_check
from almanac.progress import shown_on


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_shows_what_how_far_and_how_long_and_then_nothing() -> None:
    terminal, now = Terminal(), [100.0]
    with shown_on(terminal, lambda: now[0]) as told:
        told("rendering pages", 1, 2000)
        now[0] += 0.05
        told("rendering pages", 2, 2000)  # too soon to be seen
        now[0] += 61
        told("rendering pages", 1500, 2000)
        told("working out lists")
        shown = terminal.getvalue()
    lines = [line.replace("\x1b[K", "") for line in shown.split("\r")]
    assert lines == [
        "",
        "rendering pages 1 of 2,000, 0 s",
        "rendering pages 1,500 of 2,000, 61 s",
        "working out lists, 61 s",
    ]
    assert terminal.getvalue() == shown + "\r\x1b[K"


def test_a_file_or_a_pipe_gets_nothing() -> None:
    pipe = io.StringIO()
    with shown_on(pipe) as told:
        told("rendering pages", 1, 2)
    assert pipe.getvalue() == ""


def test_the_line_is_cleared_where_the_work_fails() -> None:
    terminal = Terminal()
    try:
        with shown_on(terminal) as told:
            told("rendering pages", 1, 2)
            raise KeyboardInterrupt
    except KeyboardInterrupt:
        pass
    assert terminal.getvalue().endswith("\r\x1b[K")


def test_a_check_says_how_far_it_is() -> None:
    heard: list[tuple[str, int, int]] = []

    def told(what: str, done: int = 0, of: int = 0, /) -> None:
        heard.append((what, done, of))

    load_and_check(CATALOGUE, DAY, told=told)
    first, *rules, last = heard
    assert (first, last) == (("reading the entries", 0, 0), ("reading the texts", 0, 0))
    assert rules == [("checking by rules", n + 1, len(rules)) for n in range(len(rules))] != []


def test_a_build_says_the_next_command_as_it_can_be_typed(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """In a checkout the program is found by its path alone, until its environment is activated."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr("sys.argv", [".venv/bin/almanac", "build"])
    assert typed() == ".venv/bin/almanac"
    (tmp_path / "almanac").write_text("#!/bin/sh\n", "utf-8")
    (tmp_path / "almanac").chmod(0o755)
    assert typed() == "almanac"
    monkeypatch.setenv("PATH", "")
    monkeypatch.setattr("sys.argv", ["-m", "build"])
    assert typed() == "almanac"
