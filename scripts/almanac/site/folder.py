"""A folder that is filled anew, where most of it comes out as it stands there already."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path


class Folder:
    """Files put one by one into a folder. What stands there with the same bytes is left as it is:
    to write a file, or to remove it first, takes longer than to read it.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self._there = dict(_sizes(path))
        self._files: set[str] = set()
        self._folders: set[str] = set()

    @property
    def files(self) -> frozenset[str]:
        """What has been put, by its path from the folder."""
        return frozenset(self._files)

    def put(self, file: str, content: bytes) -> None:
        """Have a file hold these bytes, and nothing else. Raises OSError."""
        self._files.add(file)
        if self._there.get(file) == len(content) and self._holds(file, content):
            return
        path = f"{self._path}/{file}"
        with naming(path):
            folder = file.rpartition("/")[0]
            if folder not in self._folders:
                (self._path / folder).mkdir(parents=True, exist_ok=True)
                self._folders.add(folder)
            with open(path, "wb") as written:  # noqa: PTH123 (in half the time)
                written.write(content)

    def _holds(self, file: str, content: bytes) -> bool:
        return (self._path / file).read_bytes() == content

    def take(self, files: Iterable[str]) -> None:
        """Know of files that somebody else has put."""
        self._files.update(files)

    def drop_others(self) -> None:
        """Remove every file that has not been put, and the folders that are then empty."""
        for file in self._there.keys() - self._files:
            (self._path / file).unlink()
        for folder, _, files in os.walk(self._path, topdown=False):
            if not files and folder != str(self._path) and not os.listdir(folder):  # noqa: PTH208
                Path(folder).rmdir()


@contextmanager
def naming(path: Path | str) -> Iterator[None]:
    """Have an OSError name a path: one that comes of writing names none."""
    try:
        yield
    except OSError as problem:
        problem.filename = problem.filename or str(path)
        raise


_NO_FOLDER = (FileNotFoundError, NotADirectoryError, PermissionError)


def _sizes(folder: Path | str, within: str = "") -> Iterator[tuple[str, int]]:
    """The size of each file below a folder, by its path from there."""
    with suppress(*_NO_FOLDER), os.scandir(folder) as found:
        for entry in found:
            if entry.is_dir(follow_symlinks=False):
                yield from _sizes(f"{folder}/{entry.name}", f"{within}{entry.name}/")
            elif entry.is_file():
                yield f"{within}{entry.name}", entry.stat().st_size
