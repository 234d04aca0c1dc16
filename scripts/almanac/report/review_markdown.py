"""A review as Markdown that fits a pull request comment. Whatever comes from the proposal is fenced
(``report/fenced.py``); every other word is the program's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from almanac.analysis.comparison import Comparison, FigureMove
from almanac.findings import Finding, Place, counted
from almanac.model.compare import EntryChange
from almanac.report.fenced import difference, fenced, linked
from almanac.report.review_first import first_lines
from almanac.report.set_json import dotted
from almanac.report.working_text import show_value

MOST_BYTES = 65_000  # a comment on GitHub holds 65,536 characters; a byte is never more than one
MARK = "<!-- deck-almanac-review -->"
MARK_NOTHING = "<!-- deck-almanac-review: nothing -->"
_FOR_THE_CUT = 1_000  # bytes kept for the sentence that says what is cut
_MOST_MOVES = 12  # figures shown of one entry before the rest is counted


@dataclass(frozen=True)
class Section:
    """A title and its lines; a line that begins with two spaces belongs to the one before it."""

    title: str
    lines: list[str]


def review_markdown(review: Comparison, base: str, address: str = "") -> str:
    """The review for a person with two minutes. ``address`` is where files can be looked at, "" for
    none.
    """
    sections = [
        Section("Read this first", list(first_lines(review, address))),
        Section("Findings that appear", list(_findings(review.appeared, address))),
        Section("Entries", [line for change in review.entries for line in _entry(change, address)]),
        Section("Figures that move", list(_figures(review))),
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
        title = f"\n### {section.title}\n\n"
        room -= len(title.encode())
        shown = []
        for line in section.lines:
            room -= len(line.encode()) + 1
            if room < 0:
                break
            shown.append(line + "\n")
        if shown:
            text += title + "".join(shown)
        if len(shown) < len(section.lines):
            left_out.append((section.title, len(section.lines) - len(shown)))
    if not left_out:
        return text
    told = ", ".join(f"{count:,} of “{title}”" for title, count in left_out)
    lines = counted(sum(count for _, count in left_out), "line is", "lines are")
    return (
        f"{text}\nCut here, because a comment holds no more: {lines} left out ({told})."
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


def _figures(review: Comparison) -> Iterator[str]:
    for (kind, id, near), moves in groupby(
        review.figures, key=lambda move: (move.kind, move.id, move.near)
    ):
        own = list(moves)
        yield f"- {kind} {fenced(id)}{'' if near else ' (by what it uses)'}"
        visible = [move for move in own if _value(move.before, move) != _value(move.after, move)][
            :_MOST_MOVES
        ]
        yield from (f"  - {_move(move)}" for move in visible)
        if len(own) > len(visible):
            yield f"  - and {len(own) - len(visible)} more"


def _move(move: FigureMove) -> str:
    name = fenced(f"{move.name}, {move.whose}" if move.whose else move.name)
    return f"{name}: {_value(move.before, move)} → {_value(move.after, move)}"


def _value(value: float | None, move: FigureMove) -> str:
    return "no number" if value is None else show_value(value, move.unit)


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
