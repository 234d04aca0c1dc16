"""The clock of a run, which is worked out in the browser: its own tests, in JavaScript, run by Node."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from almanac.publish.node import NodeError, search_path

TESTS = Path(__file__).resolve().parent / "run"


@pytest.mark.parametrize("path", sorted(TESTS.glob("*.test.js")), ids=lambda path: path.name)
def test_engine(path: Path) -> None:
    try:
        environment = {**os.environ, "PATH": search_path()}
    except NodeError:
        if "CI" in os.environ:
            raise
        pytest.skip("no Node: bash scripts/test fetches it")
    done = subprocess.run(
        ["node", "--test", str(path)], capture_output=True, text=True, env=environment, check=False
    )
    assert done.returncode == 0, done.stdout[-6000:]
