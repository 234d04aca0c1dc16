"""The lines of a composed piece's whiteboard, and who swims each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from almanac.model.catalogue import Catalogue
from almanac.model.swim_set import Item
from almanac.report.board_line import BoardLine, lines_for
from almanac.report.whiteboard import board_lines


def lines_of(
    catalogue: Catalogue, items: tuple[Item, ...], groups: Sequence[str]
) -> list[BoardLine]:
    """The lines for these lane groups, by id. ``whose`` names those of them that a line is for, and
    is empty where all do it.
    """
    return [
        _named(catalogue, line, groups) for line in lines_for(board_lines(catalogue, items), groups)
    ]


def _named(catalogue: Catalogue, line: BoardLine, groups: Sequence[str]) -> BoardLine:
    own = [group for group in groups if group in line.groups]
    is_for_all = len(own) in (0, len(groups))
    titles = ", ".join(catalogue.lane_groups[group].title for group in own)
    return replace(line, whose="" if is_for_all else titles)


def line_words(line: BoardLine) -> str:
    """A line in words, without its send-offs, which are each lane group's; a pause between rounds
    is everybody's.
    """
    between = line.go if line.is_rounds else ""
    words = ", ".join(part for part in (line.what, line.effort, line.gear, between) if part)
    return f"{line.whose}: {words}" if line.whose else words
