"""What lets the site be kept on a phone: the list of its files, the service worker, and the web app
manifest.
"""

from __future__ import annotations

import base64
import hashlib
import json
import zlib
from collections.abc import Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path
from typing import Any

VERSION = 1
LIST, SIZE, WORKER, MANIFEST = "precache.json", "offline.json", "worker.js", "app.webmanifest"
ICONS = ((192, "any"), (512, "any"), (512, "maskable"))
# Not kept: tables for other programs, what a browser never asks for, and the files that say what is
# kept.
_LEFT_OUT = {
    LIST,
    SIZE,
    WORKER,
    "sitemap.xml",
    "search/search_index.js",
    "scripts/licences.txt",
}
_FOLDERS_LEFT_OUT = ("data/",)
_HASH_LETTERS = 16


def app_manifest(name: str, description: str) -> str:
    """The web app manifest, with which a browser offers to install the site. Paths in it are
    relative.
    """
    icons: list[dict[str, str]] = [
        {"src": "images/icon.svg", "type": "image/svg+xml", "sizes": "any"}
    ]
    for size, purpose in ICONS:
        file = f"images/icon-{size}{'-maskable' if purpose == 'maskable' else ''}.png"
        icons.append(
            {"src": file, "type": "image/png", "sizes": f"{size}x{size}", "purpose": purpose}
        )
    manifest = {
        "name": name,
        "short_name": name,
        "description": description,
        "start_url": "index.html",
        "scope": "./",
        "display": "standalone",
        "background_color": "#ffffff",
        "theme_color": "#0d4a66",
        "icons": icons,
    }
    return json.dumps(manifest, ensure_ascii=False, indent=1) + "\n"


def kept_files(site: Path) -> KeptFiles:
    """What a phone keeps of a site on disk."""
    kept = KeptFiles()
    for path in site.rglob("*"):
        if path.is_file():
            kept.add(path.relative_to(site).as_posix(), path.read_bytes())
    return kept


class KeptFiles:
    """The files that a phone keeps, gathered one by one."""

    def __init__(self) -> None:
        self._known: dict[str, tuple[str, int, Future[int]]] = {}
        # Beside everything else: to compress takes no part of the interpreter.
        self._compressing = ThreadPoolExecutor(1, "compressing")

    def add(self, file: str, content: bytes) -> None:
        """Take note of a file of the site, in place of what it was, where a phone keeps it."""
        if file not in _LEFT_OUT and not file.startswith(_FOLDERS_LEFT_OUT):
            digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).decode()
            compressed = self._compressing.submit(_compressed, file, content)
            self._known[file] = (digest[:_HASH_LETTERS], len(content), compressed)

    def drop(self, file: str) -> None:
        """Forget a file."""
        self._known.pop(file, None)

    @property
    def files(self) -> dict[str, tuple[str, int]]:
        """By path from the root, folder by folder: the start of a file's SHA-256 in base64 for
        URLs, and its bytes.
        """
        in_order = sorted(self._known, key=lambda file: file.split("/"))
        return {file: self._known[file][:2] for file in in_order}

    def told(self, worker: str) -> Iterator[tuple[str, str]]:
        """The files that say what is kept, by path from the root: the list, the sum for the button,
        and the worker that is tied to exactly this list.
        """
        files = self.files
        version = hashlib.sha256(
            json.dumps(files, sort_keys=True).encode() + worker.encode()
        ).hexdigest()[:_HASH_LETTERS]
        shared = {"format": VERSION, "version": version}
        size = sum(size for _, size in files.values())
        fetched = sum(compressed.result() for _, _, compressed in self._known.values())
        yield LIST, _json({**shared, "bytes": size, "files": files})
        yield SIZE, _json({**shared, "bytes": size, "fetched": fetched, "files": len(files)})
        yield WORKER, worker.replace("@version@", version)


def _compressed(file: str, content: bytes) -> int:
    """Bytes that a host sends for a file, where it compresses text as most do: gzip, at zlib's own
    level.
    """
    return len(content) if file.endswith(".png") else len(zlib.compress(content))


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n"
