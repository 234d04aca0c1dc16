"""What a review says, as titled lists of lines, for a comment and for a terminal. Whatever comes
from the proposal is fenced (``report/fenced.py``); every other word is the program's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.comparison import Comparison
from almanac.findings import Place, counted
from almanac.report.fenced import fenced, linked
from almanac.report.review import dangers as review_dangers
from almanac.report.review import entries as review_entries
from almanac.report.review import findings as review_findings
from almanac.report.review import new as review_new
from almanac.report.review.figures import by_entry, seen_first
from almanac.report.review.first import first_lines

_SAID = {
    "added": "added",
    "changed": "changed",
    "moved": "moved",
    "removed": "removed",
    "retired": "out of use",
    "unreadable": "that cannot be read",
}
_SCREEN = 8  # lines of a section that stand unfolded
_FIRST = 99  # of what is read first, where fewer dangers go
_SMALL = 3  # lines of all that was changed


@dataclass(frozen=True)
class ReviewSection:
    """A title and its lines; a line that begins with two spaces belongs to the one before it.

    ``brief`` is what stands unfolded, where that is not the first ``most`` of ``lines``; of it the
    first ``always`` stand whatever room there is.
    """

    title: str
    lines: list[str]
    most: int = _SCREEN
    brief: list[str] | None = None
    always: int = 0

    @property
    def shown(self) -> list[str]:
        """What is read where there is room for it."""
        return self.lines if self.brief is None else self.brief


def sections(review: Comparison, address: str = "") -> list[ReviewSection]:
    """The sections that have lines, what must not be missed first. ``address`` is where files can
    be looked at, "" for none.
    """
    entries = ReviewSection(
        "Entries",
        list(review_entries.in_full(review, address)),
        brief=list(review_entries.in_brief(review, address)),
    )
    is_small = len(entries.lines) <= _SMALL  # what was done then stands before what comes of it
    found = [
        _first(review, address),
        *[entries] * is_small,
        ReviewSection("What coaches will see", list(seen_first(review)), 99),
        ReviewSection(
            "Findings that appear",
            list(review_findings.in_full(review.appeared, address)),
            brief=list(review_findings.in_brief(review.appeared, address)),
        ),
        *[entries] * (not is_small),
        ReviewSection("Figures that move", list(by_entry(review)), 0),
        ReviewSection("Findings that go", list(review_findings.in_full(review.gone, address))),
        ReviewSection("Entries that say nearly the same", list(_alike(review))),
        ReviewSection("Entries that nothing uses any more", list(_unused(review))),
        ReviewSection("Other files", list(_files(review, address))),
    ]
    return [section for section in found if section.lines]


def _first(review: Comparison, address: str) -> ReviewSection:
    """Dangers that go stand there in any case, and above all else."""
    dangers = list(review_dangers.in_brief(review, address))
    brief = first_lines(review, address, review_new.in_brief(review, address), brief=True)
    full = first_lines(review, address, review_new.in_full(review, address))
    return ReviewSection(
        "Read this first",
        [*review_dangers.in_full(review, address), *full],
        max(_FIRST, len(dangers)),
        [*dangers, *brief],
        len(dangers),
    )


def headline(review: Comparison) -> str:
    """How many entries, figures and findings, in a sentence or two."""
    counts = {
        said: sum(change.what == what for change in review.entries) for what, said in _SAID.items()
    }
    entries = (
        ", ".join(f"{count} {what}" for what, count in counts.items() if count)
        or "no entry changed"
    )
    touched = len({(move.kind, move.id) for move in review.figures})
    warnings = len(review.appeared) - review.new_errors
    return (
        f"{entries}. {counted(len(review.figures), 'figure moves', 'figures move')}"
        f" in {counted(touched, 'entry', 'entries')}."
        f" {counted(review.new_errors, 'new error')}, {counted(warnings, 'new warning')},"
        f" {counted(len(review.gone), 'finding')} gone."
    )


def _alike(review: Comparison) -> Iterator[str]:
    for kind, pair in review.alike:
        yield f"- {kind} {fenced(pair.first)} and {fenced(pair.second)}: {pair.share:.0%}"


def _unused(review: Comparison) -> Iterator[str]:
    return (f"- {kind} {fenced(id)}" for kind, id in review.unused)


def _files(review: Comparison, address: str) -> Iterator[str]:
    for file in review.files:
        where = address if file.mode_after else ""
        yield f"- **{file.what}** {linked(file.path, Place(file.path), where)}"
