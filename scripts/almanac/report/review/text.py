"""A review for a terminal: within one screen, or with ``--all`` the whole of it."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Sequence

from almanac.analysis.comparison import Comparison
from almanac.findings import counted
from almanac.report.fenced import fenced
from almanac.report.review.sections import ReviewSection, headline, sections

ROWS, WIDTH = 30, 100  # of a screen, and characters of a row, where none is known
_FIRST = ("Read this first", "What coaches will see", "Findings that appear", "Entries")
_FOOT = 4  # rows for what is not shown
# Rows that a section is left by those before it: blank, title, a line, the rest counted.
_LEAST = 5
_LEAST_FOUND = 10  # the same of findings: an error that is folded away is not seen
# A code span of one line, by CommonMark's rule: as many ticks at its end as at its start.
_SPAN = re.compile(r"(?<!`)(`+)(?!`)([^\n]*?)(?<!`)\1(?!`)")


def review_text(
    review: Comparison, base: str, command: str, most: int = ROWS, width: int = WIDTH
) -> str:
    """The review within a screen of ``most`` rows of ``width`` characters. Of what has no room a
    line says how much there is; ``command`` is what shows it all.
    """
    told = sections(review)
    rows = _head(review, base, width)
    first = [own for own in told if own.title in _FIRST]
    left = most - len(rows) - _FOOT
    is_cut = False
    for number, section in enumerate(first):
        kept = sum(_kept(other, width) for other in first[number + 1 :])
        shown, cut = _screen(section, left - kept, width)
        rows += shown
        left -= len(shown)
        is_cut = is_cut or cut or section.shown != section.lines
    folded = []
    for section in told:
        whole = _whole(section, width)
        if section.title in _FIRST:
            continue
        if section.most and len(whole) <= left:
            rows += whole
            left -= len(whole)
        else:
            folded.append(section)
    if folded:
        rows += ["", *_wrapped(f"Not shown: {_counts(folded)}.", width)]
    if folded or is_cut:
        rows.append(f"All of it: {command}")
    return "\n".join(rows) + "\n"


def review_whole(review: Comparison, base: str) -> str:
    """Every line of the review."""
    rows = _head(review, base, WIDTH)
    for section in sections(review):
        rows += _whole(section, WIDTH)
    return "\n".join(rows) + "\n"


def _head(review: Comparison, base: str, width: int) -> list[str]:
    rows = [_plain(f"What this changes, against {fenced(base)}")]
    rows += _wrapped(headline(review), width)
    if not review.comparable:
        rows.append("Figures cannot be compared: one side's club, policy or words are broken.")
    return rows


def _whole(section: ReviewSection, width: int) -> list[str]:
    return ["", section.title, *(row for line in section.lines for row in _wrapped(line, width))]


def _kept(section: ReviewSection, width: int) -> int:
    """How many rows are kept for a section: no more than it takes."""
    most = _LEAST_FOUND if section.title == "Findings that appear" else _LEAST
    return min(most, 2 + sum(len(_wrapped(line, width)) for line in section.shown))


def _screen(section: ReviewSection, room: int, width: int) -> tuple[list[str], bool]:
    """A section in at most so many rows, what stands always whole in any case, of the others where
    these do not fit the first row of each; and whether something is left out.
    """
    lines = [_wrapped(line, width) for line in section.shown]
    if not lines:
        return [], True
    rows, shown, left = ["", section.title], 0, room - 2
    if sum(map(len, lines)) > left:
        lines = lines[: section.always] + [_one_row(own, width) for own in lines[section.always :]]
    if sum(map(len, lines)) > left:
        left -= 1  # for what tells the rest
    for number, line in enumerate(lines):
        if number >= max(section.always, 1) and len(line) > left:
            break
        rows += line
        left -= len(line)
        shown += 1
    if shown < len(lines):
        rows.append(f"  … and {counted(len(lines) - shown, 'more line')}")
    return rows, shown < len(lines) or any(own[-1].endswith("…") for own in lines)


def _one_row(rows: list[str], width: int) -> list[str]:
    """The first row of a line, marked where it goes on."""
    return rows if len(rows) == 1 else [f"{rows[0][: width - 1].rstrip()}…"]


def _counts(folded: Sequence[ReviewSection]) -> str:
    return ", ".join(
        f"{own.title[0].lower()}{own.title[1:]} ({counted(len(own.lines), 'line')})"
        for own in folded
    )


def _wrapped(line: str, width: int) -> list[str]:
    """A line of Markdown as rows of plain text; what goes on stands below its first word."""
    indent = " " * (len(line) - len(line.lstrip()))
    is_item = line.lstrip().startswith("- ")
    text = _plain(line.strip().removeprefix("- "))
    lead = f"{indent}- " if is_item else indent
    return textwrap.wrap(
        text,
        width,
        initial_indent=lead,
        subsequent_indent=" " * len(lead),
        break_on_hyphens=False,
    )


def _plain(line: str) -> str:
    """Markdown without its marks: what stands in a code span as it is, in quotes where it has
    blanks.
    """
    return "".join(_pieces(line))


def _pieces(line: str) -> Iterator[str]:
    end = 0
    for span in _SPAN.finditer(line):
        yield line[end : span.start()].replace("**", "").replace("*nothing*", "nothing")
        inside = span[2]
        if inside.strip() and inside[0] == " " == inside[-1]:
            inside = inside[1:-1]
        yield f"“{inside}”" if " " in inside else inside
        end = span.end()
    yield line[end:].replace("**", "").replace("*nothing*", "nothing")
