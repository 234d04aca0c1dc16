"""A set for every lane group at once: the lines of its whiteboard, and when each group goes and how
fast, in one table for who has the width.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from string import ascii_lowercase
from typing import Any, NamedTuple

from almanac.arithmetic.group_clock import GroupClock
from almanac.report.board_line import BoardLine
from almanac.units import show_time

NONE = "–"
_MARK = re.compile(r" \(([^()]*)\)")


class GroupCell(NamedTuple):
    """When a lane group goes and how fast, each with the letters of its marks."""

    go: str
    go_marks: str = ""
    target: str = ""
    target_marks: str = ""


def group_table(
    board: Sequence[BoardLine], clocks: Mapping[str, GroupClock], titles: Mapping[str, str]
) -> dict[str, Any]:
    """The table of a whiteboard that was timed for the lane groups of ``titles``: heads, a row a
    line with a send-off and a target each, and how long the whole takes.

    What a time stands on where it is less than fresh tests is a letter; ``marks`` says what each
    letter means.
    """
    lines, letters = [line for line in board if line.path], dict[str, str]()
    return {
        "heads": list(titles.values()),
        "rows": [(line.what, [_cell(line, id, letters) for id in titles]) for line in lines],
        "clocks": [_clock(clocks[id]) for id in titles],
        "marks": [(letter, words) for words, letter in letters.items()],
    }


def _cell(line: BoardLine, group: str, letters: dict[str, str]) -> GroupCell:
    if line.groups and group not in line.groups:
        return GroupCell(NONE)
    go = _own(line.go_of, group, line.go).removeprefix("on ")
    target = _own(line.target_of, group, line.target).removeprefix("target ")
    return GroupCell(*_short(go or NONE, letters), *_short(target, letters))


def _short(words: str, letters: dict[str, str]) -> tuple[str, str]:
    """Words without their marks, and the letter of each mark, given to it when it is first met."""
    marks = _MARK.findall(words)
    for mark in marks:
        letters.setdefault(mark, ascii_lowercase[len(letters)])
    return _MARK.sub("", words), "".join(letters[mark] for mark in marks)


def _own(each: Sequence[tuple[str, str, str]], group: str, of_all: str) -> str:
    return next((words for id, _, words in each if id == group), "" if each else of_all)


def _clock(clock: GroupClock) -> str:
    return show_time(clock.clock.value) if clock.clock else NONE
