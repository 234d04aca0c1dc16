"""A review as Markdown that fits a pull request comment. Whatever comes from the proposal is fenced
(``report/fenced.py``); every other word is the program's own.
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

MOST_BYTES = 65_000  # a comment on GitHub holds 65,536 characters; a byte is never more than one
MARK = "<!-- deck-almanac-review -->"
MARK_NOTHING = "<!-- deck-almanac-review: nothing -->"
_FOR_THE_CUT = 1_000  # bytes kept for the sentence that says what is cut
_SCREEN = 8  # lines of a section that stand unfolded


@dataclass(frozen=True)
class Section:
    """A title and its lines; a line that begins with two spaces belongs to the one before it. After
    the first ``most`` lines the rest is folded.
    """

    title: str
    lines: list[str]
    most: int = _SCREEN

    @property
    def pieces(self) -> list[tuple[str, list[str], str]]:
        """What stands before some lines, the lines, and what stands behind them."""
        title = f"\n### {self.title}\n\n"
        most = self.most if len(self.lines) > self.most + 1 else len(self.lines)
        if not self.most:
            most = 0
        whole, folded = self.lines[:most], self.lines[most:]
        found = [(title, whole, "")] if whole else []
        if folded:
            more = f"{len(folded):,} {'more lines' if whole else 'lines'}"
            opening = f"\n<details><summary>{self.title}: {more}</summary>\n\n"
            found.append((opening, _at_top(folded), "\n</details>\n"))
        return found


def _at_top(lines: list[str]) -> list[str]:
    """Lines of a list that begins anew: what belonged to a line before it is an item of its own."""
    belongs = next((at for at, line in enumerate(lines) if not line.startswith("  ")), len(lines))
    return [line.lstrip() for line in lines[:belongs]] + lines[belongs:]


def review_markdown(review: Comparison, base: str, address: str = "") -> str:
    """The review for a person with two minutes. ``address`` is where files can be looked at, "" for
    none.
    """
    sections = [
        Section("Read this first", list(first_lines(review, address)), 99),
        Section("What coaches will see", list(seen_first(review)), 99),
        Section("Findings that appear", list(_findings(review.appeared, address))),
        Section("Entries", [line for change in review.entries for line in _entry(change, address)]),
        Section("Figures that move", list(by_entry(review)), 0),
        Section("Findings that go", list(_findings(review.gone, address))),
        Section("Entries that say nearly the same", list(_alike(review))),
        Section("Entries that nothing uses any more", list(_unused(review))),
        Section("Other files", list(_files(review, address))),
    ]
    sections = [section for section in sections if section.lines]
    head = [
        MARK if sections else MARK_NOTHING,
        f"## What this changes, against {fenced(base)}",
        _headline(review),
    ]
    if not review.comparable:
        head.append(
            "Figures cannot be compared: one side's club, policy or vocabularies are broken."
        )
    return _within(head, sections)


def _within(head: list[str], sections: list[Section]) -> str:
    """All of it, or as many whole lines as a comment holds and a sentence on the rest."""
    text = "\n\n".join(head) + "\n"
    left_out: list[tuple[str, int]] = []
    room = MOST_BYTES - _FOR_THE_CUT - len(text.encode())
    for section in sections:
        missing = 0
        for opening, lines, closing in section.pieces:
            room -= len((opening + closing).encode())
            shown = []
            for line in lines:
                room -= len(line.encode()) + 1
                if room < 0:
                    break
                shown.append(line + "\n")
            if shown:
                text += opening + "".join(shown) + closing
            missing += len(lines) - len(shown)
        if missing:
            left_out.append((section.title, missing))
    if not left_out:
        return text
    told = ", ".join(f"{count:,} of “{title}”" for title, count in left_out)
    all_told = counted(sum(count for _, count in left_out), "line is", "lines are")
    return (
        f"{text}\nCut here, because a comment holds no more: {all_told} left out ({told})."
        " `almanac review --json` tells them all.\n"
    )


def _headline(review: Comparison) -> str:
    counts = {
        what: sum(change.what == what for change in review.entries)
        for what in ("added", "changed", "moved", "removed", "unreadable")
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
    for finding in findings:
        hint = f" ({fenced(finding.hint, 400)})" if finding.hint else ""
        yield (
            f"- **{finding.severity.word}** {linked(str(finding.place), finding.place, address)}"
            f" {fenced(finding.code)}: {fenced(finding.message, 600)}{hint}"
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
