"""The code passes the linter, the formatter and the type checker: pyproject.toml says how strict
each is.
"""

from __future__ import annotations

import subprocess
import sys

import pytest

from almanac.resources import HOME


@pytest.mark.parametrize(
    "checker",
    [
        ("ruff", "check", "scripts", "tests"),
        ("ruff", "format", "--check", "scripts", "tests"),
        ("mypy",),
    ],
    ids=" ".join,
)
def test_the_code_passes(checker: tuple[str, ...]) -> None:
    done = subprocess.run(
        [sys.executable, "-m", *checker], cwd=HOME, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
