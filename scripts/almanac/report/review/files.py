"""Files outside the entries that a change touches: why each matters to a reviewer."""

from __future__ import annotations

from collections.abc import Sequence

from almanac.findings import Place
from almanac.kinds import TOP_FOLDERS
from almanac.report.fenced import linked
from almanac.source.git.objects import LINK, SUBMODULE, ChangedFile

_HIDES = {
    ".gitattributes": "it can hide files from the host's own view of this change, and alter them on"
    " their way to a computer; this review reads past it",
    ".gitmodules": "it brings in other repositories",
    ".mailmap": "it alters who is said to have written what",
}
_RUNS_BY_ITSELF = (".github/", ".ci/", ".pre-commit-config.yaml", ".vscode/", "CODEOWNERS")
_MOST_NAMED = 8  # files named in one line before the rest is counted


def first_of(named: Sequence[str]) -> str:
    """The first of some names in a row, and how many more there are."""
    more = len(named) - _MOST_NAMED
    return ", ".join(named[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def of_checks(files: Sequence[ChangedFile], address: str) -> str:
    """That what checks a proposal, or shows it, is changed by it."""
    named = [
        f"{linked(file.path, Place(file.path), address if file.mode_after else '')} ({file.what})"
        for file in files
    ]
    return (
        "**The checks change.** This proposal changes what checks it or shows it: "
        f"{first_of(named)}."
        " The findings here are those of the program before it."
    )


def of_file(file: ChangedFile) -> str:
    """Why a file outside the entries matters whoever reads this; "" where it does not."""
    name = file.path.rpartition("/")[2]
    if file.mode_after == LINK != file.mode_before:
        return "it is a link, which can lead anywhere on the computer that follows it"
    if file.mode_after == SUBMODULE != file.mode_before:
        return "it is another repository, of which nothing is read here"
    if name in _HIDES:
        return _HIDES[name]
    if file.is_hidden and file.is_below(TOP_FOLDERS):
        return "its name begins with a dot, or stands in a folder whose does: no check reads it"
    if any(file.path.startswith(start) or file.path == start for start in _RUNS_BY_ITSELF):
        return "it decides what runs by itself, and who must agree to a change"
    return ""
