"""A folder as it was at a git revision, written out elsewhere to be read like any other folder."""

from __future__ import annotations

import io
import subprocess
import tarfile
from pathlib import Path

from almanac.kinds import TOP_FOLDERS


class RevisionError(Exception):
    """A revision that cannot be read; the message says why and what to do."""


def export(root: Path, revision: str, to: Path) -> None:
    """Write ``drills/`` and ``plans/`` of ``root`` as they were at ``revision`` below ``to``.

    Only plain files are written: a link or a submodule of that time stays out. Raises RevisionError
    where git is missing, ``root`` is in no repository, or the revision is not there.
    """
    prefix = _git(root, "rev-parse", "--show-prefix").strip()
    commit = resolve(root, revision)
    listed = _git(root, "ls-tree", "--name-only", f"{commit}:{prefix}" if prefix else commit).split(
        "\n"
    )
    there = [name for name in TOP_FOLDERS if name in listed]
    if not there:
        return
    packed = _run(
        root, "archive", "--format=tar", f"{commit}:{prefix}" if prefix else commit, *there
    )
    with tarfile.open(fileobj=io.BytesIO(packed)) as archive:
        for member in archive:
            file = archive.extractfile(member) if member.isfile() else None
            if file is not None and ".." not in Path(member.name).parts:
                target = to / member.name
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_bytes(file.read())


def resolve(root: Path, revision: str) -> str:
    """The commit that a revision names. Raises RevisionError, with what to do, where there is
    none.
    """
    if revision.startswith("-"):
        raise RevisionError(f"'{revision}' is no revision")
    try:
        return _git(root, "rev-parse", "--verify", "--quiet", f"{revision}^{{commit}}").strip()
    except RevisionError:
        pass
    if not _git(root, "rev-list", "--all", "--max-count=1").strip():
        raise RevisionError("the repository has no commit yet: commit first")
    if _git(root, "rev-parse", "--is-shallow-repository").strip() == "true":
        raise RevisionError(
            f"'{revision}' is not in this shallow clone: fetch it with git fetch --unshallow"
        )
    raise RevisionError(f"there is no revision '{revision}': name a branch, a tag or a commit")


def history(root: Path, most: int) -> str:
    """The log of the last ``most`` commits that touched the catalogue, newest first, for
    ``changes``.

    Each commit is a line ``commit<TAB>hash<TAB>ISO date`` and then git's own name-status lines,
    with paths below ``root``. "" where there is no repository or no commit.
    """
    try:
        return _git(
            root,
            "log",
            f"--max-count={most}",
            "--no-merges",
            "--date=short",
            "--format=commit%x09%H%x09%cd",
            "--name-status",
            "--find-renames",
            "--relative",
            "--",
            *TOP_FOLDERS,
        )
    except RevisionError:
        return ""


def _git(root: Path, *arguments: str) -> str:
    return _run(root, *arguments).decode("utf-8", "replace")


def _run(root: Path, *arguments: str) -> bytes:
    try:
        done = subprocess.run(
            ["git", "-C", str(root), *arguments], capture_output=True, check=False
        )
    except FileNotFoundError:
        raise RevisionError("git is not installed") from None
    if done.returncode:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise RevisionError(
            said[0].removeprefix("fatal: ") if said else f"git {arguments[0]} failed"
        )
    return done.stdout
