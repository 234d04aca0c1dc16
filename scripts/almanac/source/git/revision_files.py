"""The entries of a revision written out elsewhere, to be read like any other folder; and what of it
is no plain file with a plain name, told as findings and never written.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from pathlib import Path

from almanac.findings import Finding, Place, error, warning
from almanac.kinds import TOP_FOLDERS
from almanac.source import paths
from almanac.source.git.objects import LINK, SUBMODULE, TreeEntry, contents, printable, tree
from almanac.source.snapshot import MOST_BYTES

_FILE, _PROGRAM, _FOLDER = "100644", "100755", "040000"
_LONGEST_NAME = 255  # bytes: what the common file systems hold
_LONGEST_PATH = 1000
_ENTRY = ".yml"


def export(root: Path, commit: str, to: Path) -> list[Finding]:
    """Write ``drills/`` and ``plans/`` of ``root`` as they are in a commit below ``to``, each byte
    as git keeps it; give what is amiss with what cannot be written.

    Only plain files are written. Of one that is too large to be an entry, only that much is written
    that the reader sees it; of one that no entry can be, only its name. Raises RevisionError.
    """
    plain, findings = _sorted_out(
        entry for entry in tree(root, commit) if entry.path.partition("/")[0] in TOP_FOLDERS
    )
    asked = {
        entry.object for entry in plain if entry.path.endswith(_ENTRY) and entry.size <= MOST_BYTES
    }
    held = dict(contents(root, sorted(asked))) if asked else {}
    for entry in plain:
        if entry.size > MOST_BYTES and entry.path.endswith(_ENTRY):
            raw = b"#" * (MOST_BYTES + 1)
        else:
            raw = held.get(entry.object, b"")
        if said := _write(to / entry.path, None if entry.kind == "tree" else raw):
            findings.append(paths.unreadable(entry.path, "file", said))
    return findings


def _write(target: Path, raw: bytes | None) -> str:
    """Write a file, or make a folder; why the machine would not, "" where it did."""
    try:
        if raw is None:
            target.mkdir(parents=True, exist_ok=True)
        else:
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(raw)
    except (OSError, ValueError) as problem:
        return getattr(problem, "strerror", None) or str(problem)
    return ""


def _sorted_out(entries: Iterable[TreeEntry]) -> tuple[list[TreeEntry], list[Finding]]:
    """The files and folders that can stand in a folder anywhere, and a finding for each other."""
    plain: list[TreeEntry] = []
    findings: dict[Finding, None] = {}
    first: dict[str, str] = {}
    for entry in sorted(entries, key=_lower_case_first):
        if said := _bad_path(entry.path) or _clash(first, entry.path) or _bad_mode(entry):
            findings.setdefault(said)
        else:
            plain.append(entry)
            if entry.mode == _PROGRAM:
                findings.setdefault(_program(entry.path))
    return plain, list(findings)


def _lower_case_first(entry: TreeEntry) -> tuple[int, bool, str]:
    """Folders before what stands in them; of names that differ by case, the lower-case one."""
    return entry.path.count("/"), entry.path != entry.path.lower(), entry.path


def _bad_path(path: str) -> Finding | None:
    """What keeps a path from standing in a folder of any system; the topmost name is told."""
    for above, name in _names(path):
        if not name.isprintable():
            return paths.unprintable(printable(above), name)
        if name in {"", ".", ".."} or name.lower() == ".git" or "\\" in name:
            return error(
                "bad-id", Place(printable(path)), "this name leads elsewhere", "take the file out"
            )
        if len(name.encode()) > _LONGEST_NAME or len(path) > _LONGEST_PATH:
            return error(
                "bad-id",
                Place(printable(path[:80]) + "…"),
                f"the path is longer than a computer holds: {len(path):,} characters",
                "shorten it",
            )
    return None


def _names(path: str) -> Iterator[tuple[str, str]]:
    """Each name of a path, with the path of the folder that it stands in."""
    parts = path.split("/")
    return (("/".join(parts[:number]), name) for number, name in enumerate(parts))


def _clash(first: dict[str, str], path: str) -> Finding | None:
    """Two paths that are one file on a computer which does not tell case, or forms of a letter,
    apart. ``first`` holds what came before.
    """
    for above, name in _names(path):
        whole = f"{above}/{name}" if above else name
        earlier = first.setdefault(unicodedata.normalize("NFKC", whole).casefold(), whole)
        if earlier != whole:
            return error(
                "case-clash",
                Place(whole),
                f"on some computers this is the same file as {earlier}: one hides the other",
                "rename one of the two",
            )
    return None


def _bad_mode(entry: TreeEntry) -> Finding | None:
    if entry.mode == LINK:
        return paths.link(entry.path)
    if entry.mode == SUBMODULE or entry.kind == "commit":
        return error(
            "submodule",
            Place(entry.path),
            "this is another repository; entries are plain files in plain folders",
            "put the files themselves here",
        )
    if entry.mode in (_FILE, _PROGRAM, _FOLDER):
        return None
    return error(
        "not-a-file",
        Place(entry.path),
        f"git keeps this with the mode {entry.mode}, and a plain file has {_FILE}",
        "remove it from git and add it again",
    )


def _program(path: str) -> Finding:
    return warning(
        "marked-as-program",
        Place(path),
        "this file is marked as a program to run, and nothing here is one",
        f"git update-index --chmod=-x {path}",
    )
