"""The whiteboard with times: to each line of reps when to go and how fast, as each lane group has
them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import groupby

from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.pace import Target
from almanac.arithmetic.table import ItemRow, item_rows
from almanac.arithmetic.timed_reps import TimedRep
from almanac.model.catalogue import Catalogue
from almanac.report.board_line import BoardLine
from almanac.source.reader import DataPath
from almanac.units import show_time

SUGGESTED = " (suggested)"
REST = " rest"
"""The mark of a send-off that nobody wrote."""


def timed_lines(
    catalogue: Catalogue,
    lines: Iterable[BoardLine],
    clocks: Mapping[str, GroupClock],
    groups: Sequence[str],
) -> list[BoardLine]:
    """The lines with the send-offs and the targets of these lane groups, a send-off that is
    suggested marked so; one for all where they are the same. Lines that are of no reps stay.
    """
    rows = {group: {row.path: row for row in item_rows(clocks[group])} for group in groups}
    return [_timed(catalogue, line, rows) if line.path else line for line in lines]


def _timed(
    catalogue: Catalogue, line: BoardLine, rows: Mapping[str, Mapping[DataPath, ItemRow]]
) -> BoardLine:
    own = {
        group: of_group[line.path]
        for group, of_group in rows.items()
        if line.path in of_group and group in (line.groups or rows)
    }
    go, go_of = _by_group(catalogue, {group: go_words(row) for group, row in own.items()})
    target, target_of = _by_group(catalogue, {id: target_words(row) for id, row in own.items()})
    return replace(
        line,
        go=go or line.go,
        go_of=go_of if own else line.go_of,
        target=target,
        target_of=target_of,
    )


def _by_group(
    catalogue: Catalogue, words: Mapping[str, str]
) -> tuple[str, tuple[tuple[str, str, str], ...]]:
    """What holds of all, and where they differ of each by its title."""
    if len(set(words.values())) <= 1:
        return next(iter(words.values()), ""), ()
    each = tuple((id, catalogue.lane_groups[id].title, own) for id, own in words.items())
    return "; ".join(f"{title} {own}" for _, title, own in each), each


def go_words(row: ItemRow) -> str:
    """When to go: ``on 1:20``, one for each rep where they differ, and rounds after a stroke where
    they do; ``0:15 rest``; "" where reps go straight on.
    """
    words = _each_round(row, _goes)
    is_suggested = words and any(timed.suggested for timed in row.timed)
    return f"{words}{SUGGESTED}" if is_suggested else words


def _goes(reps: Sequence[TimedRep]) -> str:
    item = reps[0].rep.item
    if item.sendoff is None:
        return f"{show_time(item.rest)}{REST}" if item.rest else ""
    times = [timed.sendoff_s for timed in reps]
    return "on " + _listed(["–" if time is None else show_time(time) for time in times])


def target_words(row: ItemRow) -> str:
    """How fast: ``target 0:52.4``, one for each rep where they differ; with what it stands on where
    that is less than fresh tests. "" where no target is known, or where reps are done by time.
    """
    words = _each_round(row, _targets)
    return f"target {words}{target_marks(row.slowest)}" if words else ""


def _targets(reps: Sequence[TimedRep]) -> str:
    times = [timed.target_s for timed in reps if timed.rep.item.parts[0].hold_s is None]
    if not times or None in times:
        return ""
    return _listed([show_time(time, tenths=True) for time in times if time is not None])


def _each_round(row: ItemRow, words: Callable[[Sequence[TimedRep]], str]) -> str:
    """The words of the reps of each round; rounds that say the same once."""
    rounds = groupby(row.timed, key=lambda timed: timed.rep.rounds)
    return " / ".join(dict.fromkeys(filter(None, (words(tuple(own)) for _, own in rounds))))


def target_marks(timed: TimedRep) -> str:
    """What a target stands on where that is less than fresh tests over more than one distance."""
    if not isinstance(timed.target, Target):
        return ""
    marks = {
        "estimated": timed.target.estimated,
        "tested in another pool": timed.target.other_course,
        "from an old test": timed.target.stale,
        "assumed": timed.target.assumed,
    }
    return "".join(f" ({mark})" for mark, holds in marks.items() if holds)


def _listed(each: Sequence[str]) -> str:
    """One where all are the same, else all in order."""
    return each[0] if len(set(each)) == 1 else ", ".join(each)
