"""The whiteboard: a set in words, as a coach would write it up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from almanac.model.catalogue import Catalogue
from almanac.model.changes import LAST, changed, gone_round
from almanac.model.reps import Change, Reps
from almanac.model.swim_set import Item, Pause, Round, SwimSet
from almanac.model.variants import given
from almanac.report.board_line import BoardLine, lines_without, narrowed
from almanac.report.reps_line import go_words, how_many, joined, reps_line
from almanac.report.set_words import (
    aim_words,
    effort_words,
    gear_words,
    start_words,
    waves_words,
)
from almanac.source.reader import DataPath
from almanac.units import show_time


def board(catalogue: Catalogue, swim_set: SwimSet) -> list[BoardLine]:
    """The set's lines, in order."""
    return board_lines(catalogue, given(swim_set).items)


def board_lines(catalogue: Catalogue, items: tuple[Item, ...]) -> list[BoardLine]:
    """The lines of items, in order."""
    return list(_lines(catalogue, items, 0, ("items",)))


def _lines(
    catalogue: Catalogue, items: tuple[Item, ...], depth: int, path: DataPath, rounds: int = 0
) -> Iterator[BoardLine]:
    """The lines of the items at ``path`` that are done in so many rounds."""
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Pause):
            yield BoardLine(depth, f"Pause {show_time(item.seconds)}", note=item.note)
        elif isinstance(item, Round):
            yield from _rounds(catalogue, item, depth, here)
        else:
            yield from (replace(own, path=here) for own in _by_group(catalogue, item, depth))
            yield from _by_round(catalogue, item.by_round, depth + 1, rounds, item)


def _rounds(catalogue: Catalogue, item: Round, depth: int, path: DataPath) -> Iterator[BoardLine]:
    """A line that says how often each lane group goes round, and what a round holds: for those who
    go round at all.
    """
    ways: dict[tuple[int, float | None], list[str]] = {}
    for group, change in item.by_group.items():
        own = gone_round(item, change)
        ways.setdefault((own.rounds, own.pause_between), []).append(group)
    others = [group for group in catalogue.lane_groups if group not in item.by_group]
    for (rounds, pause), groups in ways.items():
        whose = ", ".join(catalogue.lane_groups[group].title for group in groups)
        line = _round_line(depth, rounds, pause, item.note)
        yield _only_for(line, tuple(groups), whose)
    if others:
        line = _round_line(depth, item.rounds, item.pause_between, item.note)
        yield _only_for(line, tuple(others), "Others") if ways else line
    out = {group for (rounds, _), groups in ways.items() if not rounds for group in groups}
    inner = [
        *_lines(catalogue, item.items, depth + 1, (*path, "items"), item.most),
        *_by_round(catalogue, item.by_round, depth + 1, item.most),
    ]
    yield from lines_without(inner, out, tuple(catalogue.lane_groups)) if out else inner


def _round_line(depth: int, rounds: int, pause: float | None, note: str) -> BoardLine:
    if not rounds:
        return BoardLine(depth, "Wait")
    between = f"{show_time(pause)} between rounds" if pause and rounds > 1 else ""
    what = f"{rounds} round{'s' * (rounds != 1)}"
    return BoardLine(depth, what, go=between, note=note, is_rounds=True)


def _by_group(catalogue: Catalogue, item: Reps, depth: int) -> Iterator[BoardLine]:
    """The line of reps; one for each way of doing them where lane groups differ."""
    if not item.by_group:
        yield reps_line(catalogue, item, depth)
        return
    others = tuple(group for group in catalogue.lane_groups if group not in item.by_group)
    for change in dict.fromkeys(map(repr, item.by_group.values())):
        groups = tuple(group for group, own in item.by_group.items() if repr(own) == change)
        whose = ", ".join(catalogue.lane_groups[group].title for group in groups)
        own = changed(item, item.by_group[groups[0]])
        line = reps_line(catalogue, own, depth) if own.reps else BoardLine(depth, "Wait")
        yield _only_for(line, groups, whose)
    if others:
        yield _only_for(reps_line(catalogue, item, depth), others, "Others")


def _only_for(line: BoardLine, groups: tuple[str, ...], whose: str) -> BoardLine:
    return replace(narrowed(line, groups), groups=groups, whose=whose)


def _by_round(
    catalogue: Catalogue,
    changes: Mapping[str, Change],
    depth: int,
    rounds: int,
    item: Reps | None = None,
) -> Iterator[BoardLine]:
    """What is different in a round: of ``item``, or of all that the round holds."""
    for number, change in changes.items():
        if number != LAST and int(number) > rounds:
            continue  # a set asked for fewer rounds
        which = "Last round" if number == LAST else f"Round {number}"
        effort = effort_words(catalogue, change.effort) if change.effort else ""
        gear = gear_words(catalogue, change.gear or ())
        bare = "without gear" if change.gear == () else ""
        what = joined(how_many(catalogue, change, item), bare)
        go = go_words(catalogue, change)
        yield BoardLine(
            depth,
            f"{which}: {what}" if what else which,
            joined(effort, waves_words(change.waves)),
            go,
            gear,
            change.note or "",
            how=start_words(catalogue, change.start or ""),
            aim=aim_words(catalogue, change.aim),
        )


def board_text(lines: list[BoardLine]) -> str:
    """The whiteboard for a terminal."""
    shown = []
    for line in lines:
        parts = [
            f"{line.whose}: {line.what}" if line.whose else line.what,
            line.effort,
            line.gear,
            line.how,
            line.go,
            line.aim,
            f"{line.result} {' '.join(['____'] * line.room)}" if line.result else "",
            f"({line.note})" if line.note else "",
        ]
        shown.append("    " * line.depth + ", ".join(filter(None, parts)))
    return "\n".join(shown)
