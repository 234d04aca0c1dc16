"""What lets the site be kept on a phone: the list of its files, the service worker, and the web app
manifest.
"""

from __future__ import annotations

import base64
import hashlib
import json
import zlib
from collections.abc import Iterator
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


def write_app_manifest(site: Path, name: str, description: str) -> None:
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
    _write(site / MANIFEST, json.dumps(manifest, ensure_ascii=False, indent=1) + "\n")


def write_offline_files(site: Path, worker: str) -> None:
    """The list of files with hash and size, the sum for the button, and the worker that is tied to
    exactly this list.

    To be called last: a file that changes afterwards is one that no phone will take.
    """
    files = dict(kept_files(site))
    version = hashlib.sha256(
        json.dumps(files, sort_keys=True).encode() + worker.encode()
    ).hexdigest()[:_HASH_LETTERS]
    size = sum(size for _, size in files.values())
    fetched = sum(_compressed(site / file) for file in files)
    _write(
        site / LIST, _json({"format": VERSION, "version": version, "bytes": size, "files": files})
    )
    _write(
        site / SIZE,
        _json(
            {
                "format": VERSION,
                "version": version,
                "bytes": size,
                "fetched": fetched,
                "files": len(files),
            }
        ),
    )
    _write(site / WORKER, worker.replace("@version@", version))


def kept_files(site: Path) -> Iterator[tuple[str, tuple[str, int]]]:
    """Every file that a phone keeps, by its path from the root: the start of its SHA-256 in base64
    for URLs, and its bytes.
    """
    for path in sorted(site.rglob("*")):
        file = path.relative_to(site).as_posix()
        if path.is_file() and file not in _LEFT_OUT and not file.startswith(_FOLDERS_LEFT_OUT):
            content = path.read_bytes()
            digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).decode()
            yield file, (digest[:_HASH_LETTERS], len(content))


def _compressed(path: Path) -> int:
    """Bytes that a host which compresses sends for a file, or a little fewer: the quickest level is
    enough for a button.
    """
    content = path.read_bytes()
    return len(content) if path.suffix == ".png" else len(zlib.compress(content, 1))


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n"


def _write(path: Path, text: str) -> None:
    path.write_text(text, "utf-8")
