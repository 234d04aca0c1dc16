"""A review as Markdown that fits a pull request comment. Whatever comes from the proposal is fenced
(``report/fenced.py``); every other word is the program's own.
"""

from __future__ import annotations

from almanac.analysis.comparison import Comparison
from almanac.findings import counted
from almanac.report.fenced import fenced
from almanac.report.review.sections import ReviewSection, headline, sections

MOST_BYTES = 65_000  # a comment on GitHub holds 65,536 characters; a byte is never more than one
MARK = "<!-- deck-almanac-review -->"
MARK_NOTHING = "<!-- deck-almanac-review: nothing -->"
_FOR_THE_CUT = 1_000  # bytes kept for the sentence that says what is cut


def _pieces(section: ReviewSection) -> list[tuple[str, list[str], str]]:
    """What stands before some lines of a section, the lines, and what stands behind them."""
    title = f"\n### {section.title}\n\n"
    lines, most = section.lines, section.most
    if section.shown != lines:  # what stands unfolded is told otherwise, and all of it below
        whole, folded, said = section.shown[:most], lines, "all of them, "
    else:
        most = len(lines) if most and len(lines) <= most + 1 else most
        whole, folded = lines[:most], lines[most:]
        said = "more " if whole else ""
    found = [(title, whole, "")] if whole else []
    if folded:
        opening = f"\n<details><summary>{section.title}: {_count(said, len(folded))}</summary>\n\n"
        found.append((opening, _at_top(folded), "\n</details>\n"))
    return found


def _count(said: str, lines: int) -> str:
    if said == "more ":
        return f"{lines:,} more {'line' if lines == 1 else 'lines'}"
    return said + counted(lines, "line")


def _at_top(lines: list[str]) -> list[str]:
    """Lines of a list that begins anew: what belonged to a line before it is an item of its own."""
    belongs = next((at for at, line in enumerate(lines) if not line.startswith("  ")), len(lines))
    return [line.lstrip() for line in lines[:belongs]] + lines[belongs:]


def review_markdown(review: Comparison, base: str, address: str = "") -> str:
    """The review for a person with two minutes. ``address`` is where files can be looked at, "" for
    none.
    """
    told = sections(review, address)
    head = [
        MARK if told else MARK_NOTHING,
        f"## What this changes, against {fenced(base)}",
        headline(review),
    ]
    if not review.comparable:
        head.append(
            "Figures cannot be compared: one side's club, policy or vocabularies are broken."
        )
    return _within(head, told)


def _within(head: list[str], sections: list[ReviewSection]) -> str:
    """All of it, or as many whole lines as a comment holds and a sentence on the rest."""
    text = "\n\n".join(head) + "\n"
    left_out: list[tuple[str, int]] = []
    room = MOST_BYTES - _FOR_THE_CUT - len(text.encode())
    for section in sections:
        missing = 0
        for opening, lines, closing in _pieces(section):
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
