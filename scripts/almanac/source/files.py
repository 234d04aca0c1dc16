"""Which files are entries, by where they stand. Follows no link and opens no file."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from almanac.findings import Finding, Place, error, warning

MOST_ID = 60
_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
# Names that one common operating system keeps for devices: such a file cannot be checked out there.
_DEVICE = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")


@dataclass(frozen=True)
class Folder:
    """A folder that holds one kind of entry; ``deep`` where families stand below it."""

    kind: str
    path: str
    deep: bool = False


FOLDERS = (
    Folder("vocabulary", "drills/vocabulary"),
    Folder("drill", "drills/skills", deep=True),
    Folder("fault", "drills/faults"),
    Folder("gear", "drills/gear"),
    Folder("benchmark", "drills/benchmarks"),
    Folder("progression", "drills/progressions"),
    Folder("set", "plans/sets"),
    Folder("practice", "plans/practices"),
    Folder("block", "plans/blocks"),
)
SINGLE = {"club": "plans/club.yml", "policy": "plans/policy.yml"}


@dataclass(frozen=True)
class EntryFile:
    """One entry's file: its kind, its id (the file's name) and its path below the root."""

    kind: str
    id: str
    file: str


def entry_files(root: Path) -> tuple[list[EntryFile], list[Finding]]:
    """Every entry file below ``root``, in the order of FOLDERS and then by name, and what is amiss with names."""
    found: list[EntryFile] = []
    findings: list[Finding] = []
    for folder in FOLDERS:
        for item in _walk(root, folder.path, folder.deep):
            if isinstance(item, Finding):
                findings.append(item)
            else:
                found.append(EntryFile(folder.kind, Path(item).stem, item))
    for kind, file in SINGLE.items():
        if (root / file).is_file():
            found.append(EntryFile(kind, kind, file))
        else:
            findings.append(error("missing-file", Place(file), "this file is missing", f"write {file}"))
    findings += _strays(root)
    findings += [finding for entry in found if (finding := _name_finding(entry))]
    return found, findings + list(_twice(found))


def _walk(root: Path, folder: str, deep: bool) -> Iterator[str | Finding]:
    """Paths of entry files below ``folder``, and findings on what else stands there."""
    try:
        with os.scandir(root / folder) as listing:
            items = sorted(listing, key=lambda item: item.name)
    except FileNotFoundError:
        return
    except OSError as problem:
        yield error("cannot-read", Place(folder), f"the folder cannot be read: {problem.strerror}", "mend its rights")
        return
    for item in items:
        path = f"{folder}/{item.name}"
        if item.name.startswith("."):
            continue
        if item.is_symlink():
            yield error("link", Place(path), "this is a link; entries are plain files", "put the file itself here")
        elif item.is_dir(follow_symlinks=False):
            yield from _folder(root, path, item.name, deep)
        elif item.name.endswith(".yml"):
            yield path
        else:
            mend = f"rename it {item.name[:-5]}.yml" if item.name.endswith(".yaml") else "move it out of the catalogue"
            yield error("stray-file", Place(path), "an entry's file ends in .yml, and this one does not", mend)


def _folder(root: Path, path: str, name: str, deep: bool) -> Iterator[str | Finding]:
    if name.endswith((".yml", ".yaml")):
        yield error("folder-as-entry", Place(path), "this is a folder, named like an entry", "rename or remove it")
    elif deep:
        yield from _walk(root, path, deep=False)
    else:
        yield error("stray-folder", Place(path), "no folder belongs here", "move its entries one level up")


def _strays(root: Path) -> Iterator[Finding]:
    known = {folder.path for folder in FOLDERS} | set(SINGLE.values())
    for top in ("drills", "plans"):
        for item in sorted((root / top).iterdir()) if (root / top).is_dir() else []:
            path = f"{top}/{item.name}"
            if path not in known and not item.name.startswith("."):
                yield warning("stray-file", Place(path), "nothing reads this", "move it to the folder of its kind")


def _name_finding(entry: EntryFile) -> Finding | None:
    name = entry.id
    if not _ID.fullmatch(name):
        better = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") or "a-plain-name"
        message = f"'{name}' is no id: an id is lower-case letters, digits and single hyphens"
        return error("bad-id", Place(entry.file), message, f"rename the file {better}.yml")
    if _DEVICE.fullmatch(name):
        return error("bad-id", Place(entry.file), f"'{name}' is a device's name on some computers", "rename the file")
    if len(name) > MOST_ID:
        return error("bad-id", Place(entry.file), f"the id has {len(name)} characters, at most {MOST_ID}", "shorten it")
    return None


def _twice(entries: list[EntryFile]) -> Iterator[Finding]:
    first: dict[tuple[str, str], EntryFile] = {}
    for entry in entries:
        earlier = first.setdefault((entry.kind, entry.id), entry)
        if earlier is not entry:
            message = f"the {entry.kind} '{entry.id}' stands twice, also as {earlier.file}"
            yield error("duplicate-id", Place(entry.file), message, "rename one of the two files")
