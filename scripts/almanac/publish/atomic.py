"""Files that a reader sees whole: as they were, or as they are."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def replace_file(path: Path, content: bytes) -> None:
    """Write a file beside its place and put it there by a rename. Raises OSError that names the
    file; then the place is as it was.
    """
    try:
        _replaced(path, content)
    except OSError as problem:  # it names what was written beside it, which nobody knows
        problem.filename, problem.filename2 = str(path), None
        raise


def _replaced(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, written = tempfile.mkstemp(dir=path.parent, prefix=".", suffix=".tmp")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        Path(written).chmod(0o644)  # what a server may read
        Path(written).replace(path)
    except BaseException:
        Path(written).unlink(missing_ok=True)
        raise
