"""The clock of a run, which is worked out in the browser: its own tests, in JavaScript, run by
Node.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from node_scripts import run_by_node

TESTS = Path(__file__).resolve().parent / "run"


@pytest.mark.parametrize("path", sorted(TESTS.glob("*.test.js")), ids=lambda path: path.name)
def test_engine(path: Path) -> None:
    run_by_node(path)
