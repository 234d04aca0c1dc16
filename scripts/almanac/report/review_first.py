"""What a reviewer must not miss, in whole sentences, for the top of a review."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.comparison import Comparison
from almanac.findings import Place
from almanac.report.fenced import linked
from almanac.source.git_objects import LINK, SUBMODULE, ChangedFile

_HIDES = {
    ".gitattributes": "it can hide files from the host's own view of this change, and alter them on"
    " their way to a computer; this review reads past it",
    ".gitmodules": "it brings in other repositories",
    ".mailmap": "it alters who is said to have written what",
}
_RUNS_BY_ITSELF = (".github/", ".ci/", ".pre-commit-config.yaml", ".vscode/", "CODEOWNERS")


def first_lines(review: Comparison, address: str) -> Iterator[str]:
    """One list item each, the gravest first."""
    for file in review.files:
        if said := _of_file(file):
            link = linked(file.path, Place(file.path), address if file.mode_after else "")
            yield f"- {link} is {file.what}: {said}."


def _of_file(file: ChangedFile) -> str:
    """Why a file outside the entries matters whoever reads this; "" where it does not."""
    name = file.path.rpartition("/")[2]
    if file.mode_after == LINK != file.mode_before:
        return "it is a link, which can lead anywhere on the computer that follows it"
    if file.mode_after == SUBMODULE != file.mode_before:
        return "it is another repository, of which nothing is read here"
    if name in _HIDES:
        return _HIDES[name]
    if any(file.path.startswith(start) or file.path == start for start in _RUNS_BY_ITSELF):
        return "it decides what runs by itself, and who must agree to a change"
    return ""
