"""Files that a reader sees whole: as they were, or as they are."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path


def replace_file(path: Path, content: bytes) -> None:
    """Write a file beside its place and put it there by a rename. Raises OSError that names the
    file; then the place is as it was.
    """
    put_in_place(path, written_beside(path, content))


def written_beside(path: Path, content: bytes) -> Path:
    """Write what is to stand in a file beside it, and return where. Raises OSError that names the
    file; then nothing stands there.
    """
    with _named(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=".", suffix=".tmp")
        written = Path(name)
        with _swept(written):
            with os.fdopen(handle, "wb") as file:
                file.write(content)
            written.chmod(0o644)  # what a server may read
        return written


def put_in_place(path: Path, written: Path) -> None:
    """Have what was written beside a file stand in it. Raises OSError that names the file; then the
    place is as it was.
    """
    with _named(path), _swept(written):
        written.replace(path)


@contextlib.contextmanager
def _named(path: Path) -> Iterator[None]:
    """Have an OSError name a file: it names what was written beside it, which nobody knows."""
    try:
        yield
    except OSError as problem:
        problem.filename, problem.filename2 = str(path), None
        raise


@contextlib.contextmanager
def _swept(written: Path) -> Iterator[None]:
    """Have nothing left beside a file that could not be written."""
    try:
        yield
    except BaseException:
        written.unlink(missing_ok=True)
        raise
