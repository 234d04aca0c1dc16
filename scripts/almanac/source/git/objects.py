"""What git keeps of a revision, read from its objects alone: no file is checked out, no attribute
and no filter is heeded, so that nothing in a proposal can hide a part of it.
"""

from __future__ import annotations

import subprocess
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from almanac.kinds import TOP_FOLDERS

LINK, SUBMODULE = "120000", "160000"
_NOWHERE = "000000"  # the mode of what is not there


class RevisionError(Exception):
    """A revision that cannot be read; the message says why and what to do."""


@dataclass(frozen=True)
class TreeEntry:
    """One name in the tree of a commit: its path below the folder asked for, its mode in octal, its
    kind (``blob``, ``tree``, ``commit``), its object's name and its size in bytes (0 for what is no
    file). Bytes that are not UTF-8 stand in the path as lone surrogates.
    """

    path: str
    mode: str
    kind: str
    object: str
    size: int


@dataclass(frozen=True)
class ChangedFile:
    """A file that differs between two commits, by its path below the root (``../`` where it stands
    above it), with every character that cannot be shown as its escape. Modes are "" where it is not
    there.
    """

    path: str
    mode_before: str
    mode_after: str

    @property
    def is_entry(self) -> bool:
        """Whether it is a plain file where entries stand: those are told by what is in them."""
        top, _, name = self.path.partition("/")
        is_plain = not {self.mode_before, self.mode_after} & {LINK, SUBMODULE}
        is_read = top in TOP_FOLDERS and name.endswith(".yml") and not self.is_hidden
        return is_plain and is_read

    @property
    def is_hidden(self) -> bool:
        """Whether its name, or that of a folder above it, begins with a dot: nothing reads it."""
        return any(part.startswith(".") and part != ".." for part in self.path.split("/"))

    def is_below(self, folders: Collection[str]) -> bool:
        """Whether it is one of these folders of the root, or stands below one."""
        return self.path.partition("/")[0] in folders

    @property
    def what(self) -> str:
        """``added``, ``removed`` or ``changed``."""
        if not self.mode_before:
            return "added"
        return "changed" if self.mode_after else "removed"


def tree(root: Path, commit: str) -> Iterator[TreeEntry]:
    """Every name below ``root`` in the tree of a commit, folders too, in git's order."""
    where = f"{commit}:{_prefix(root)}"
    listed = run(root, "ls-tree", "-r", "-t", "-z", "-l", "--full-tree", where)
    for line in listed.split(b"\0"):
        if line:
            head, _, path = line.partition(b"\t")
            mode, kind, name, size = head.decode("ascii").split()
            yield TreeEntry(
                path.decode("utf-8", "surrogateescape"),
                mode,
                kind,
                name,
                int(size) if size.isdigit() else 0,
            )


def contents(root: Path, objects: Iterable[str]) -> Iterator[tuple[str, bytes]]:
    """The bytes of objects, each as it is kept, by its name."""
    asked = "".join(f"{name}\n" for name in objects)
    given = run(root, "cat-file", "--batch", given=asked.encode("ascii"))
    start = 0
    while start < len(given):
        end = given.index(b"\n", start)
        name, kind, *size = given[start:end].decode("ascii").split()
        if not size:
            raise RevisionError(f"git does not have the object {name}: it is {kind}")
        start = end + 1 + int(size[0])
        yield name, given[end + 1 : start]
        start += 1  # the line break after it


def changed_files(root: Path, before: str, after: str) -> list[ChangedFile]:
    """Every file of the repository that differs between two commits, by path."""
    prefix = _prefix(root)
    told = run(
        root,
        "diff-tree",
        *("-r", "-z", "--raw", "--no-renames", "--no-ext-diff", "--no-textconv"),
        "--ignore-submodules=none",  # else .gitmodules could keep one out of sight
        before,
        after,
        "--",
    ).split(b"\0")
    return [
        ChangedFile(
            _below(prefix, path.decode("utf-8", "surrogateescape")),
            *("" if mode == _NOWHERE else mode for mode in head.decode("ascii")[1:].split()[:2]),
        )
        for head, path in zip(told[0::2], told[1::2], strict=False)  # git ends the row with nothing
    ]


def printable(path: str) -> str:
    """A path with every character that cannot be shown, or that turns the order of others, as its
    escape.
    """
    return "".join(char if char.isprintable() else f"\\x{ord(char) & 0xFFFF:02x}" for char in path)


def _below(prefix: str, path: str) -> str:
    """A path of the repository as it is seen from the folder that ``prefix`` names."""
    is_below = path.startswith(prefix)
    return printable(path.removeprefix(prefix) if is_below else "../" * prefix.count("/") + path)


def _prefix(root: Path) -> str:
    """Where a folder stands in its repository, with a slash at the end; "" for the top."""
    told = run(root, "rev-parse", "--show-prefix").decode("utf-8", "surrogateescape")
    return told.removesuffix("\n")


def run(root: Path, *arguments: str, given: bytes = b"") -> bytes:
    """What git prints. Raises RevisionError where it is missing or refuses."""
    try:
        done = subprocess.run(
            ["git", "--no-replace-objects", "-C", str(root), *arguments],
            input=given,
            capture_output=True,
            check=False,
        )
    except FileNotFoundError:
        raise RevisionError("git is not installed") from None
    if done.returncode:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise RevisionError(
            said[0].removeprefix("fatal: ") if said else f"git {arguments[0]} failed"
        )
    return done.stdout
