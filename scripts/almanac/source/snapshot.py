"""All that a run reads of a folder, taken at once: names, kinds and bytes, and one digest of them.

Two snapshots with one digest give the same findings on the same day, since nothing else below the
root is looked at; but for those that hang on the last commit (``Loaded.looked_back``).
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from almanac.cache import digest
from almanac.kinds import TOP_FOLDERS

MOST_BYTES = 64 * 1024  # of one entry
_DEEPEST = 4  # drills/skills/FAMILY/STRAY/entry.yml: no folder below is opened
_ENTRY = ".yml"


@dataclass(frozen=True)
class Snapshot:
    """``contents`` are the bytes of every entry file by its path below the root, as far as one may
    be read (one byte past the most that an entry may have); ``listing`` is all else that a run can
    see: every other name, what it is, and what the machine said where it could not be read.
    """

    contents: Mapping[str, bytes]
    listing: tuple[str, ...]

    @cached_property
    def digest(self) -> bytes:
        """A digest of everything in it."""
        files = [part for file, raw in self.contents.items() for part in (os.fsencode(file), raw)]
        return digest(*map(os.fsencode, self.listing), b"", *files)


def snapshot(root: Path) -> Snapshot:
    """Read everything below ``root`` that a run looks at. Follows links as ``entry_files`` does:
    those of the root and of ``drills`` and ``plans`` alone.
    """
    contents: dict[str, bytes] = {}
    listing: list[str] = []
    for top in TOP_FOLDERS:
        for path, what in _walk(root, top, 0):
            if what == "file" and path.endswith(_ENTRY):
                try:
                    contents[path] = read_at_most(root / path)
                except OSError as problem:
                    listing.append(f"unreadable {problem.strerror} {path}")
            else:
                listing.append(f"{what} {path}")
    return Snapshot(contents, tuple(listing))


def read_at_most(path: Path) -> bytes:
    """A file's bytes, as far as an entry may go and one further. Raises OSError."""
    with path.open("rb", buffering=0) as stream:
        return stream.read(MOST_BYTES + 1) or b""


def _walk(root: Path, folder: str, depth: int) -> Iterator[tuple[str, str]]:
    """Every path below a folder, in order, with what it is; hidden names stay out, as nothing reads
    them.
    """
    try:
        with os.scandir(root / folder) as listed:
            items = sorted(listed, key=lambda item: item.name)
    except OSError as problem:
        yield folder, f"unlisted {problem.strerror}"
        return
    yield folder, "folder"
    for item in items:
        path = f"{folder}/{item.name}"
        if item.name.startswith("."):
            continue
        if item.is_symlink():
            leads_on = os.path.exists(root / path)  # noqa: PTH110 (Path raises where none may enter)
            yield path, f"link {leads_on}"
        elif not item.is_dir(follow_symlinks=False):
            yield path, "file" if item.is_file(follow_symlinks=False) else "other"
        elif depth + 1 < _DEEPEST:
            yield from _walk(root, path, depth + 1)
        else:
            yield path, "folder"
