"""The gear of a practice in words: how much of it, and who fetches it for what."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.model.catalogue import Catalogue
from almanac.report.sheet_moments import short_moment
from almanac.report.sheet_text import part_name


def fetch_words(catalogue: Catalogue, summary: PracticeSummary, gear: str) -> str:
    """Who fetches a piece of gear, and for what: whoever takes the part that uses it first. Common
    practice.
    """
    first = next(row for row in summary.sheet if any(gear in own for own in _worn(row)))
    led_by = first.run.doing.led_by
    who = catalogue.words("roles")[led_by].title.lower() if led_by else "coach"
    when = short_moment(summary.practice.slot.start, first.starts)
    return f"the {who} fetches it for {part_name(catalogue, first)}, {when}"


def gear_of(summary: PracticeSummary, group: str) -> Iterator[tuple[str, int]]:
    """Each piece of gear that a lane group uses, with the most of its heads that do at once."""
    most: dict[str, int] = {}
    for row in summary.sheet:
        for cell in row.cells:
            if cell.group == group:
                heads = cell.crew.heads_at_once(row.run.most_in_lane)
                for gear in row.run.of(group).gear:
                    most[gear] = max(heads, most.get(gear, 0))
    yield from most.items()


def _worn(row: SheetRow) -> Iterator[tuple[str, ...]]:
    return (row.run.of(cell.group).gear for cell in row.cells)
