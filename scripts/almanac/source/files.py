"""Which files are entries, by where they stand. Follows no link and opens no file."""

from __future__ import annotations

import os
import stat
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from almanac.findings import Finding, Place, error, warning
from almanac.kinds import KIND, KINDS, TOP_FOLDERS, Kind
from almanac.source import paths, schemas
from almanac.source.lent import lent
from almanac.source.suggest import listed

_HIDDEN = (".", "~$")  # the latter beside a file that is open in an office program
LITTER = ("Thumbs.db", "desktop.ini", "Icon\r")
"""What computers leave in folders that they show, beside what begins with a dot."""


@dataclass(frozen=True)
class EntryFile:
    """One entry's file: its kind, its id (the file's name) and its path below the root. One that is
    ``lent`` stands below the program's own.
    """

    kind: str
    id: str
    file: str
    lent: bool = False


def entry_files(root: Path) -> tuple[list[EntryFile], list[Finding]]:
    """Every entry file below ``root``, in the order of KINDS and then by name, and what is amiss
    with names.
    """
    found: list[EntryFile] = []
    findings: list[Finding] = []
    borrowed = lent(root)
    for kind in KINDS:
        for item in _single(root, kind) if kind.single else _walk(root, kind.files, kind.deep):
            if isinstance(item, Finding):
                findings.append(item)
            else:
                found.append(EntryFile(kind.key, Path(item).stem, item))
        own = [file for file in borrowed if file.startswith(kind.files)]
        found += [EntryFile(kind.key, Path(file).stem, file, lent=True) for file in own]
    findings = [finding for finding in findings if finding.place.file not in borrowed]
    findings += _missing_vocabularies(root, found)
    findings += _strays(root)
    findings += [
        finding for entry in found if (finding := paths.bad_name(entry.id, entry.file, "file"))
    ]
    return found, findings + list(_twice(found))


def missing_file(file: str) -> Finding:
    """A file that all else stands on is not there."""
    return error(
        "missing-file",
        Place(file),
        "this file is missing",
        f"write {file}: the entries cannot be checked without it",
    )


def _missing_vocabularies(root: Path, found: list[EntryFile]) -> Iterator[Finding]:
    """Each vocabulary that a schema takes words from and that is not here; where none is, the
    folder alone.
    """
    here = {entry.id for entry in found if entry.kind == "vocabulary"}
    folder = KIND["vocabulary"].files
    # os.path answers where Path raises: in a folder that may not be entered
    if not here and not os.path.exists(root / folder):  # noqa: PTH110
        yield error(
            "missing-file",
            Place(folder),
            "the folder of the vocabularies is missing",
            "put it back",
        )
        return
    for name in sorted(schemas.vocabularies() - here - schemas.WHERE_USED):
        # _walk has told of a link
        if not os.path.islink(root / folder / f"{name}.yml"):  # noqa: PTH114
            yield missing_file(f"{folder}/{name}.yml")


def _single(root: Path, kind: Kind) -> Iterator[str | Finding]:
    """The one file of a kind, or what is amiss with it."""
    file = kind.files
    try:
        yield paths.by_mode(file, (root / file).lstat().st_mode) or file
    except (FileNotFoundError, NotADirectoryError):
        folder, _, name = file.rpartition("/")
        other = next((own for own in _names_in(root / folder) if own.lower() == name), "")
        yield _with_capitals(f"{folder}/{other}") if other else missing_file(file)
    except OSError as problem:
        yield paths.unreadable(file, "file", problem.strerror)


def _walk(root: Path, folder: str, deep: bool) -> Iterator[str | Finding]:
    """Paths of entry files below ``folder``, and findings on what else stands there."""
    try:
        if stat.S_ISLNK((root / folder).lstat().st_mode):
            yield paths.link(folder)
            return
        with os.scandir(root / folder) as listing:
            items = sorted(listing, key=lambda item: item.name)
    except FileNotFoundError:
        return
    except NotADirectoryError:
        yield paths.no_folder(folder)
        return
    except OSError as problem:
        yield paths.unreadable(folder, "folder", problem.strerror)
        return
    for item in items:
        if not item.name.startswith(_HIDDEN) and item.name not in LITTER:
            yield from _item(root, folder, item, deep)


def _item(root: Path, folder: str, item: os.DirEntry[str], deep: bool) -> Iterator[str | Finding]:
    path = f"{folder}/{item.name}"
    if not item.name.isprintable():
        yield paths.unprintable(folder, item.name)
    elif item.is_symlink():
        yield paths.link(path)
    elif item.is_dir(follow_symlinks=False):
        yield from _folder(root, path, item.name, deep)
    elif not item.name.endswith(".yml"):
        yield paths.stray_file(path)
    elif not item.is_file(follow_symlinks=False):
        yield paths.no_file(path)
    elif deep:
        yield paths.no_family(path, folder)
        yield path
    else:
        yield path


def _folder(root: Path, path: str, name: str, deep: bool) -> Iterator[str | Finding]:
    if name.endswith((".yml", ".yaml")):
        yield paths.folder_as_entry(path)
    elif deep:
        yield from filter(None, [paths.bad_name(name, path, "folder")])
        yield from _walk(root, path, deep=False)
    else:
        yield error(
            "stray-folder", Place(path), "no folder belongs here", "move its entries one level up"
        )


def _strays(root: Path) -> Iterator[Finding]:
    known = {kind.files for kind in KINDS}
    folders = [f"{kind.files}/" for kind in KINDS if not kind.single]
    for top in TOP_FOLDERS:
        homes = listed(folder for folder in folders if folder.startswith(top))
        for name in _names_in(root / top):
            path = f"{top}/{name}"
            if not name.isprintable():
                yield paths.unprintable(top, name)
            elif path not in known and (home := _home_meant(root, path, known)):
                message = "nothing reads this folder, for it has another name than that of its kind"
                is_there = os.path.exists(root / home)  # noqa: PTH110
                mend = f"move its entries to {home}/" if is_there else f"rename it {home}"
                yield error("stray-folder", Place(path), message, mend)
            elif path.lower() in known and path not in known and name.endswith(".yml"):
                continue  # told where the file is missing
            elif path not in known and not name.startswith(_HIDDEN) and name not in LITTER:
                # an entry that is not read is missed; anything else is only in the way
                yield (error if name.endswith(".yml") else warning)(
                    "stray-file",
                    Place(path),
                    "nothing reads this",
                    f"move it to the folder of its kind: {homes}",
                )


def _with_capitals(path: str) -> Finding:
    """The file that all else stands on is there, under a name with capitals."""
    message = "nothing reads this, for its name has capitals"
    return error("missing-file", Place(path), message, f"rename it {path.lower()}")


def _home_meant(root: Path, path: str, known: Collection[str]) -> str:
    """The folder of a kind that one was meant to be, by its name but for capitals or an s."""
    said = path.lower().removesuffix("s")
    home = next((own for own in known if own.removesuffix("s") == said), "")
    return home if home and (root / path).is_dir() else ""


def _names_in(folder: Path) -> list[str]:
    try:
        return sorted(item.name for item in folder.iterdir())
    except OSError:  # what stands in it is missing, and that is told
        return []


def _twice(entries: list[EntryFile]) -> Iterator[Finding]:
    first: dict[tuple[str, str], EntryFile] = {}
    for entry in entries:
        earlier = first.setdefault((entry.kind, entry.id), entry)
        if earlier is not entry:
            message = f"the {entry.kind} '{entry.id}' stands twice, also as {earlier.file}"
            yield error("duplicate-id", Place(entry.file), message, "rename one of the two files")
