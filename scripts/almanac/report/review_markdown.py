"""A review as Markdown that fits a pull request comment."""

from __future__ import annotations

import json
from collections.abc import Iterator
from itertools import groupby
from typing import Any

from almanac.analysis.comparison import Comparison, FigureMove
from almanac.findings import Finding, Place, counted
from almanac.model.compare import EntryChange
from almanac.report.set_json import dotted
from almanac.report.working_text import show_value

MOST_CHARACTERS = 60_000  # a comment on the common hosts holds 65,536
_MARKUP = str.maketrans({char: f"&#{ord(char)};" for char in "&<>\\`*_{}[]#|~@"})
_MOST_MOVES = 12  # figures shown of one entry before the rest is counted
MARK = "<!-- deck-almanac-review -->"


def review_markdown(review: Comparison, base: str, address: str = "") -> str:
    """The review for a person with two minutes. ``address`` is where files can be looked at, "" for
    none.
    """
    sections = [
        MARK,
        f"## What this changes, against `{base}`",
        _headline(review),
        *_entries(review, address),
        *(
            []
            if review.comparable
            else ["Figures cannot be compared: one side's club, policy or vocabularies are broken."]
        ),
        *_figures(review),
        *_findings("Findings that appear", review.appeared, address),
        *_findings("Findings that go", review.gone, address),
        *_others(review),
    ]
    text = "\n\n".join(sections) + "\n"
    if len(text) <= MOST_CHARACTERS:
        return text
    return (
        text[:MOST_CHARACTERS].rsplit("\n", 1)[0]
        + "\n\n… cut here: run `almanac review` for the whole.\n"
    )


def _headline(review: Comparison) -> str:
    counts = {
        what: sum(change.what == what for change in review.entries)
        for what in ("added", "changed", "moved", "removed")
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


def _entries(review: Comparison, address: str) -> Iterator[str]:
    if review.entries:
        yield "### Entries"
        yield "\n".join(line for change in review.entries for line in _entry(change, address))


def _entry(change: EntryChange, address: str) -> Iterator[str]:
    moved = f" from `{change.moved_from}`" if change.moved_from else ""
    yield (
        f"- **{change.what}** {change.kind} {_link(Place(change.file), change.id, address)}{moved}"
    )
    for field in change.fields:
        name = dotted(field.path)
        if field.before is None:
            yield f"  - `{name}` new: {_quoted(field.after)}"
        elif field.after is None:
            yield f"  - `{name}` gone: {_quoted(field.before)}"
        else:
            yield f"  - `{name}`: {_quoted(field.before)} → {_quoted(field.after)}"


def _quoted(value: Any) -> str:
    """A value as code, safe inside Markdown, cut where it is long."""
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
    text = " ".join(text.split())
    text = text if len(text) <= 160 else text[:159] + "…"
    fence = "`" * (1 + max((len(run) for run in _runs_of_ticks(text)), default=0))
    return f"{fence} {text} {fence}" if "`" in text else f"`{text}`"


def _runs_of_ticks(text: str) -> list[str]:
    return ["".join(run) for tick, run in groupby(text, lambda char: char == "`") if tick]


def _figures(review: Comparison) -> Iterator[str]:
    if not review.figures:
        return
    yield "### Figures that move"
    lines = []
    for (kind, id, near), moves in groupby(
        review.figures, key=lambda move: (move.kind, move.id, move.near)
    ):
        own = list(moves)
        lines.append(f"- {kind} **{id}**{'' if near else ' (by what it uses)'}")
        visible = [move for move in own if _value(move.before, move) != _value(move.after, move)][
            :_MOST_MOVES
        ]
        lines += [f"  - {_move(move)}" for move in visible]
        if len(own) > len(visible):
            lines.append(f"  - and {len(own) - len(visible)} more")
    yield "\n".join(lines)


def _move(move: FigureMove) -> str:
    group = f" {move.group}" if move.group else ""
    return f"{move.name}{group}: {_value(move.before, move)} → {_value(move.after, move)}"


def _value(value: float | None, move: FigureMove) -> str:
    return "no number" if value is None else show_value(value, move.unit)


def _findings(title: str, findings: list[Finding], address: str) -> Iterator[str]:
    if findings:
        yield f"### {title}"
        yield "\n".join(
            f"- **{finding.severity.word}** "
            f"{_link(finding.place, str(finding.place), address)} `{finding.code}`:"
            f" {_plain(finding.message)}" + (f" ({_plain(finding.hint)})" if finding.hint else "")
            for finding in findings
        )


def _plain(text: str) -> str:
    """Text of an entry in a comment: no markup, no mention of anybody."""
    return " ".join(text.split()).translate(_MARKUP)


def _link(place: Place, words: str, address: str) -> str:
    if not address:
        return f"`{words}`"
    line = f"#L{place.line}" if place.line else ""
    return f"[{words}]({address.rstrip('/')}/{place.file}{line})"


def _others(review: Comparison) -> Iterator[str]:
    if review.alike:
        yield "### Entries that say nearly the same"
        yield "\n".join(
            f"- {kind} {pair.first} and {pair.second}: {pair.share:.0%}"
            for kind, pair in review.alike
        )
    if review.unused:
        yield "### Entries that nothing uses any more"
        yield "\n".join(f"- {kind} {id}" for kind, id in review.unused)
