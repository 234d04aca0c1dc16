"""The scripts of the pages, by the type checker and by eslint."""

from __future__ import annotations

import os

import pytest

from almanac.publish.node import NodeError, run_tool, search_path
from almanac.resources import SITE_SOURCE

CHECKS = {
    "types of the pages": ("tsc", "--project", "tsconfig.json", "--pretty", "false"),
    "types of the workers": ("tsc", "--project", "tsconfig.workers.json", "--pretty", "false"),
    "eslint": ("eslint", "--max-warnings", "0", "."),
}


def run(*command: str) -> str:
    """What a tool of the libraries prints; skipped without Node, and never in CI."""
    try:
        search_path()
    except NodeError:
        if "CI" not in os.environ:
            pytest.skip("no Node: bash scripts/test fetches it")
    tool, *arguments = command
    return run_tool(SITE_SOURCE, tool, *arguments, for_tests=True)


@pytest.mark.parametrize("command", CHECKS.values(), ids=CHECKS)
def test_nothing_is_found(command: tuple[str, ...]) -> None:
    try:
        assert run(*command) == ""
    except NodeError as problem:
        pytest.fail(str(problem))


def test_every_script_is_typed() -> None:
    """No file leaves itself out, and the two projects hold every script."""
    folders = ("scripts", "offline", "serve")
    scripts = {path for name in folders for path in (SITE_SOURCE / name).rglob("*.js")}
    listed = {
        line
        for name in ("tsconfig.json", "tsconfig.workers.json")
        for line in run("tsc", "--project", name, "--listFilesOnly").splitlines()
    }
    assert {str(path) for path in scripts} <= listed
    for path in scripts:
        text = path.read_text("utf-8")
        assert "@ts-" not in text, path
        assert "eslint-disable" not in text, path
