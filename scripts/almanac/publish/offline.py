"""What lets the site be kept on a phone: the list of its files, the service worker, and the web app
manifest.
"""

from __future__ import annotations

import base64
import hashlib
import json
import zlib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from almanac.cache import digest
from almanac.publish.packs import FOLDER, RUNS, is_packed, packed, packs_of
from almanac.second_process import shared
from almanac.site.settings import SiteSettings
from almanac.site.spreadsheet_files import FILE as SPREADSHEETS

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
    "scripts/licences.txt",
    SPREADSHEETS,
}
_FOLDERS_LEFT_OUT = ("data/", FOLDER)
_KEPT_DATA = (RUNS, "data/v1/compose/")  # what pages read
_HASH_LETTERS = 16


# What older sites also held.
_NOW_AND_BEFORE = {"sitemap.xml.gz", "search/search_index.json", "search/search_index.js"}
_OWN_FOLDERS = ("data/v1/", FOLDER)


def is_unlisted(file: str) -> bool:
    """Whether a build puts this file into a site without a line of its own in the list."""
    return file in _LEFT_OUT | _NOW_AND_BEFORE or (
        file.startswith(_OWN_FOLDERS) and file.endswith((".json", ".csv", ".ics", ".xml"))
    )


def app_manifest(settings: SiteSettings) -> str:
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
        "name": settings.name,
        "short_name": settings.name,
        "description": settings.description,
        "start_url": "index.html",
        "scope": "./",
        "display": "standalone",
        "background_color": "#ffffff",
        "theme_color": settings.colours.light,
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


Fingerprint = tuple[str, int]  # the start of a file's SHA-256 in base64 for URLs, and its bytes


@dataclass(frozen=True)
class _Pack:
    """A pack as it was last told: what it was made from, its hash, and its bytes on the wire."""

    key: bytes
    hash: str
    compressed: int


class KeptFiles:
    """The files that a phone keeps, gathered one by one."""

    def __init__(self) -> None:
        self._known: dict[str, Fingerprint] = {}
        self._apart: dict[str, int] = {}  # what each file weighs that comes in no pack
        self._unweighed: dict[str, bytes] = {}
        self._told: dict[str, _Pack] = {}

    def add(self, file: str, content: bytes) -> None:
        """Take note of a file of the site, in place of what it was, where a phone keeps it."""
        if file not in _LEFT_OUT and (
            file.startswith(_KEPT_DATA) or not file.startswith(_FOLDERS_LEFT_OUT)
        ):
            self._known[file] = (file_hash(content), len(content))
            if not is_packed(file):
                self._unweighed[file] = content

    def drop(self, file: str) -> None:
        """Forget a file."""
        self._known.pop(file, None)
        self._apart.pop(file, None)
        self._unweighed.pop(file, None)

    @property
    def pages(self) -> dict[str, Fingerprint]:
        """Of each page that comes in a pack its fingerprint."""
        return {file: own for file, own in self._known.items() if is_packed(file)}

    def take(self, pages: Mapping[str, Fingerprint]) -> None:
        """Know of pages that somebody else has taken note of."""
        self._known.update(pages)

    @property
    def files(self) -> dict[str, Fingerprint]:
        """The fingerprint of each file, by path from the root, folder by folder."""
        in_order = sorted(self._known, key=lambda file: file.split("/"))
        return {file: self._known[file] for file in in_order}

    @property
    def packs(self) -> dict[str, list[str]]:
        """The packs that the pages are fetched in, by path from the root: the pages of each."""
        return packs_of(self._known)

    def told(self, worker: str, read: Callable[[str], bytes]) -> Iterator[tuple[str, bytes]]:
        """The files that say what is kept, by path from the root: the packs that are not as they
        were when last told, the list, the sum for the button, and the worker that is tied to
        exactly this list. ``read`` gives what a page holds.
        """
        files, packs = self.files, self.packs
        keys = {
            address: digest(*(part for file in inside for part in (file, files[file][0])))
            for address, inside in packs.items()
        }
        old = {address for address, own in self._told.items() if own.key == keys.get(address)}

        def made(name: str) -> tuple[bytes, int]:
            """A pack's bytes, and what it weighs on the wire, or another file."""
            if name not in packs:
                return b"", _compressed(name, self._unweighed[name])
            pack = packed({file: read(file).decode() for file in packs[name]}).encode()
            return pack, _compressed(name, pack)

        new = [address for address in packs if address not in old]
        weight_of = {address: sum(files[file][1] for file in packs[address]) for address in new}
        # The heaviest first, so that both processes end at one time.
        found = shared(
            [*sorted(new, key=weight_of.__getitem__, reverse=True), *self._unweighed], made
        )
        for address in new:
            pack, weight = found[address]
            self._told[address] = _Pack(keys[address], file_hash(pack), weight)
            yield address, pack
        self._apart |= {file: found[file][1] for file in self._unweighed}
        self._unweighed.clear()
        listed = [[address, self._told[address].hash, inside] for address, inside in packs.items()]
        version = file_hash(json.dumps([files, listed], sort_keys=True).encode() + worker.encode())
        common = {"format": VERSION, "version": version}
        size = sum(size for _, size in files.values())
        together = (self._told[address].compressed for address in packs)
        fetched = sum((*self._apart.values(), *together))
        yield LIST, _json({**common, "bytes": size, "files": files, "packs": listed})
        yield SIZE, _json({**common, "bytes": size, "fetched": fetched, "files": len(files)})
        yield WORKER, worker.replace("@version@", version).encode()


def file_hash(content: bytes) -> str:
    """The start of a SHA-256 in base64 for URLs."""
    return base64.urlsafe_b64encode(hashlib.sha256(content).digest()).decode()[:_HASH_LETTERS]


def _compressed(file: str, content: bytes) -> int:
    """Bytes that a host sends for a file, where it compresses text as most do: gzip, at zlib's own
    level.
    """
    return len(content) if file.endswith(".png") else len(zlib.compress(content))


def _json(value: Any) -> bytes:
    return (json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n").encode()
