"""What is worked out once and kept: small stores in the user's cache folder, never needed and never
wrong.

A stored value is answered only where its key, the parts that its store was opened with, the
program, Python and the libraries are those that it was stored under, and its bytes are whole;
anything else is as if it had never been stored. ``almanac --no-cache`` and the environment variable
``ALMANAC_NO_CACHE`` (any text) leave every store unread and unwritten.
"""

from __future__ import annotations

import contextlib
import functools
import hashlib
import os
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from platformdirs import user_cache_dir

SWITCH = "ALMANAC_NO_CACHE"
_APPLICATION = "deck-almanac"
_MOST_BYTES = 64_000_000  # of one store; the oldest values go first
_DIGEST_BYTES = hashlib.sha256().digest_size
_PACKAGE = Path(__file__).parent
_PROGRAM_SUFFIXES = {".py", ".json", ".yml", ".tsv"}


class Cache:
    """One store of bytes by key. Stores of different ``key_parts`` share no value."""

    def __init__(
        self,
        name: str,
        key_parts: Sequence[str | bytes] = (),
        *,
        folder: Path | None = None,
        most_bytes: int = _MOST_BYTES,
    ) -> None:
        """Open the store ``name``; ``folder`` stands in for the user's cache folder."""
        self._folder = (folder or Path(user_cache_dir(_APPLICATION))) / name
        self._opened_with = digest(program_digest(), *key_parts)
        self._most_bytes = most_bytes
        self._is_on = not os.environ.get(SWITCH)

    def get(self, key: str | bytes) -> bytes | None:
        """What was stored under a key; None where nothing is, or where it is not whole."""
        if not self._is_on:
            return None
        try:
            stored = self._path(key).read_bytes()
        except OSError:
            return None
        mark, value = stored[:_DIGEST_BYTES], stored[_DIGEST_BYTES:]
        # The key is in the mark too: a value that lies under another name is none.
        return value if mark == self._mark(key, value) else None

    def put(self, key: str | bytes, value: bytes) -> None:
        """Store a value, whole or not at all. A store that cannot be written to stays as it is."""
        if not self._is_on:
            return
        with contextlib.suppress(OSError):
            self._folder.mkdir(parents=True, exist_ok=True)
            handle, written = tempfile.mkstemp(dir=self._folder, prefix=".")
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(self._mark(key, value) + value)
                Path(written).replace(self._path(key))
            except BaseException:
                Path(written).unlink(missing_ok=True)
                raise

    def trim(self) -> None:
        """Drop the values stored longest ago until the store keeps to its bound. To be called after
        the last ``put`` of a piece of work.
        """
        if not self._is_on:
            return
        with contextlib.suppress(OSError), os.scandir(self._folder) as entries:
            kept = sorted((found.stat().st_mtime_ns, found.stat().st_size, found.path)
                          for found in entries)  # fmt: skip
            size = sum(bytes_ for _, bytes_, _ in kept)
            for _, bytes_, path in kept:
                if size <= self._most_bytes:
                    break
                Path(path).unlink(missing_ok=True)
                size -= bytes_

    def _path(self, key: str | bytes) -> Path:
        return self._folder / digest(self._opened_with, key).hex()

    def _mark(self, key: str | bytes, value: bytes) -> bytes:
        return digest(self._opened_with, key, value)


def digest(*parts: str | bytes) -> bytes:
    """SHA-256 of a row of parts; no other row of parts gives the same bytes in a row."""
    hashed = hashlib.sha256()
    for part in parts:
        content = part.encode() if isinstance(part, str) else part
        hashed.update(len(content).to_bytes(8, "big"))
        hashed.update(content)
    return hashed.digest()


@functools.cache
def program_digest() -> bytes:
    """What the program's results may hang on beside their input: its own bytes, those of its
    schemas and starters, Python, and the versions of everything installed beside it.
    """
    files = sorted(path for path in _PACKAGE.rglob("*") if path.suffix in _PROGRAM_SUFFIXES)
    own = [part for path in files for part in (str(path.relative_to(_PACKAGE)), path.read_bytes())]
    return digest(sys.version, *_installed(), *own)


def _installed() -> list[str]:
    """Name and version of every package beside the program, as their folders are named: to ask each
    of them would take longer than a check.
    """
    found = []
    for folder in sys.path:
        with contextlib.suppress(OSError):
            names = [path.name for path in Path(folder or ".").iterdir()]
            found += [name for name in names if name.endswith((".dist-info", ".egg-info"))]
    return sorted(found)
