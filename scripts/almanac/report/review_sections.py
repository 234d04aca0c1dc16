"""What a review says, as titled lists of lines, for a comment and for a terminal. Whatever comes
from the proposal is fenced (``report/fenced.py``); every other word is the program's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.comparison import Comparison
from almanac.findings import Finding, Place, counted
from almanac.model.compare import EntryChange
from almanac.report.fenced import difference, fenced, linked
from almanac.report.review_figures import by_entry, seen_first
from almanac.report.review_first import first_lines
from almanac.report.set_json import dotted

_SAID = {
    "added": "added",
    "changed": "changed",
    "moved": "moved",
    "removed": "removed",
    "unreadable": "that cannot be read",
}
_SCREEN = 8  # lines of a section that stand unfolded
_SMALL = 3  # lines of all that was changed


@dataclass(frozen=True)
class ReviewSection:
    """A title and its lines; a line that begins with two spaces belongs to the one before it. After
    the first ``most`` lines the rest is folded.
    """

    title: str
    lines: list[str]
    most: int = _SCREEN


def sections(review: Comparison, address: str = "") -> list[ReviewSection]:
    """The sections that have lines, what must not be missed first. ``address`` is where files can
    be looked at, "" for none.
    """
    entries = ReviewSection(
        "Entries", [line for change in review.entries for line in _entry(change, address)]
    )
    is_small = len(entries.lines) <= _SMALL  # what was done then stands before what comes of it
    found = [
        ReviewSection("Read this first", list(first_lines(review, address)), 99),
        *[entries] * is_small,
        ReviewSection("What coaches will see", list(seen_first(review)), 99),
        ReviewSection("Findings that appear", list(_findings(review.appeared, address))),
        *[entries] * (not is_small),
        ReviewSection("Figures that move", list(by_entry(review)), 0),
        ReviewSection("Findings that go", list(_findings(review.gone, address))),
        ReviewSection("Entries that say nearly the same", list(_alike(review))),
        ReviewSection("Entries that nothing uses any more", list(_unused(review))),
        ReviewSection("Other files", list(_files(review, address))),
    ]
    return [section for section in found if section.lines]


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


def _entry(change: EntryChange, address: str) -> Iterator[str]:
    moved = f" from {fenced(change.moved_from)}" if change.moved_from else ""
    link = linked(change.id, Place(change.file), address if change.what != "removed" else "")
    yield f"- **{change.what}** {change.kind} {link}{moved}"
    for field in change.fields:
        name = fenced(dotted(field.path))
        if field.before is None:
            yield f"  - {name} new: {fenced(field.after)}"
        elif field.after is None:
            yield f"  - {name} gone: {fenced(field.before)}"
        else:
            yield f"  - {name}: {difference(field.before, field.after)}"


def _findings(findings: list[Finding], address: str) -> Iterator[str]:
    """A line for each; what one check finds at one place for the same reason is one."""
    same: dict[tuple[object, ...], list[Finding]] = {}
    for finding in findings:
        same.setdefault((finding.code, finding.place, finding.hint), []).append(finding)
    for first, *others in same.values():
        hint = f" ({fenced(first.hint, 400)})" if first.hint else ""
        more = f", and {counted(len(others), 'other')} there like it" if others else ""
        yield (
            f"- **{first.severity.word}** {linked(str(first.place), first.place, address)}"
            f" {fenced(first.code)}: {fenced(first.message, 600)}{hint}{more}"
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
