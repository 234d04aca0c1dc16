"""Revisions of the repository that a folder stands in: their names, and their history."""

from __future__ import annotations

from pathlib import Path

from almanac.kinds import TOP_FOLDERS
from almanac.source.git.objects import RevisionError, run


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
    return run(root, *arguments).decode("utf-8", "replace")
