"""Tests of the pages' scripts, written in JavaScript and run by Node."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from almanac.publish.node import NodeError, search_path


def run_by_node(path: Path, **environment: str) -> None:
    """Run the tests of a file, and fail with what Node printed where one does. Without Node they
    are left out, but not in CI.
    """
    try:
        found = {**os.environ, "PATH": search_path(), **environment}
    except NodeError:
        if "CI" in os.environ:
            raise
        pytest.skip("no Node: bash scripts/test fetches it")
    done = subprocess.run(
        ["node", "--test", str(path)], capture_output=True, text=True, env=found, check=False
    )
    assert done.returncode == 0, done.stdout[-6000:]
