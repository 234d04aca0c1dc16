"""The whiteboard: a set in words, as a coach would write it up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import groupby

from almanac.model.catalogue import Catalogue
from almanac.model.changes import LAST, changed, gone_round
from almanac.model.manner import Aim
from almanac.model.reps import Change, Part, Reps
from almanac.model.sendoff import Sendoff
from almanac.model.swim_set import Item, Pause, Round, SwimSet
from almanac.model.variants import given
from almanac.report.board_line import BoardLine, lines_without, narrowed
from almanac.report.set_words import (
    TO_MARK,
    aim_words,
    do_words,
    effort_words,
    gear_words,
    hold_words,
    how_words,
    sendoff_words,
    start_words,
    times_words,
    waves_words,
)
from almanac.source.reader import DataPath
from almanac.units import show_number, show_time


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
        yield _reps(catalogue, item, depth)
        return
    others = tuple(group for group in catalogue.lane_groups if group not in item.by_group)
    for change in dict.fromkeys(map(repr, item.by_group.values())):
        groups = tuple(group for group, own in item.by_group.items() if repr(own) == change)
        whose = ", ".join(catalogue.lane_groups[group].title for group in groups)
        own = changed(item, item.by_group[groups[0]])
        line = _reps(catalogue, own, depth) if own.reps else BoardLine(depth, "Wait")
        yield _only_for(line, groups, whose)
    if others:
        yield _only_for(_reps(catalogue, item, depth), others, "Others")


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
        what = _joined(_how_many(catalogue, change, item), bare)
        go = _go(catalogue, change)
        yield BoardLine(
            depth,
            f"{which}: {what}" if what else which,
            _joined(effort, waves_words(change.waves)),
            go,
            gear,
            change.note or "",
            how=start_words(catalogue, change.start or ""),
            aim=aim_words(catalogue, change.aim),
        )


def _how_many(catalogue: Catalogue, change: Change, item: Reps | None) -> str:
    """What a change of reps makes of them, with their number and distance where either is
    another.
    """
    own = changed(item, change) if item else None
    count = ""
    if own and (change.reps is not None or change.distance or change.time):
        hold_s = own.parts[0].hold_s
        each = show_time(hold_s) if hold_s else show_number(own.distance)
        is_all = change.reps is not None or not own.by_group
        count = f"{own.reps} × {each}" if is_all else f"{each} each"
    if change.parts:
        return f"{count} ".lstrip() + _parts(catalogue, change.parts)
    drill = catalogue.drills[change.do].title if change.do else ""
    return " ".join(filter(None, (count, drill)))


def _go(catalogue: Catalogue, item: Reps | Change) -> str:
    if item.sendoff:
        return sendoff_words(catalogue, item.sendoff)
    return f"{show_time(item.rest)} rest" if item.rest else ""


def _reps(catalogue: Catalogue, item: Reps, depth: int) -> BoardLine:
    return BoardLine(
        depth,
        what_words(catalogue, item),
        _joined(
            "" if item.is_parted else effort_words(catalogue, item.parts[0].effort),
            waves_words(item.waves),
        ),
        _go(catalogue, item),
        gear_words(catalogue, item.gear),
        item.note,
        _go_of(catalogue, item.sendoff),
        how=how_words(catalogue, item),
        aim=aim_words(catalogue, item.aim),
        aim_of=_aim_of(catalogue, item.aim),
        result=f"note the {item.note_result}" if item.note_result else "",
        room=item.reps if item.note_result else 0,
    )


def what_words(catalogue: Catalogue, item: Reps) -> str:
    """What reps are: how many, how far or how long, and what is done; with the efforts where they
    are written as parts.
    """
    part = item.parts[0]
    if item.is_parted:
        return f"{item.reps} × {show_number(item.distance)} {_parts(catalogue, item.parts)}"
    if item.is_split:
        titles = ", ".join(catalogue.drills[part.do].title for part in item.parts)
        each = show_number(part.distance)
        return f"{item.reps} × {show_number(item.distance)}, {each} each of {titles}"
    each = show_time(part.hold_s) if part.hold_s else show_number(part.distance)
    return f"{item.reps} × {each} {do_words(catalogue, part)}"


def _joined(*words: str) -> str:
    return ", ".join(filter(None, words))


def _go_of(catalogue: Catalogue, sendoff: Sendoff | None) -> tuple[tuple[str, str, str], ...]:
    times = sendoff.by_group if sendoff else {}
    return tuple(
        (group, catalogue.lane_groups[group].title, f"on {times_words(own)}")
        for group, own in times.items()
    )


def _aim_of(catalogue: Catalogue, aim: Aim | None) -> tuple[tuple[str, str, str], ...]:
    times = aim.by_group if aim else {}
    return tuple(
        (group, catalogue.lane_groups[group].title, hold_words(time))
        for group, time in times.items()
    )


def _parts(catalogue: Catalogue, parts: Sequence[Part]) -> str:
    """The parts of a rep, those alike in a row once: ``as 3 times 50 Backstroke (strong), 0:10 rest
    each, then 50 Freestyle (fast)``. What is done in all of them stands before them: ``Backstroke:
    25 (easy), then 25 (fast)``.
    """
    done = {do_words(catalogue, part) for part in parts}
    is_one = len(done) == 1
    said = ((_part(catalogue, part, is_one), " each" if part.rest else "") for part in parts)
    rows = ((words, len([*alike])) for words, alike in groupby(said))
    told = ", then ".join(
        f"{count} times {words}{each}" if count > 1 else words for (words, each), count in rows
    )
    return f"{done.pop()}: {told}" if is_one else f"as {told}"


def _part(catalogue: Catalogue, part: Part, is_told: bool) -> str:
    gear = f" {gear_words(catalogue, part.gear)}" if part.gear else ""
    effort = effort_words(catalogue, part.effort)
    rest = f", {show_time(part.rest)} rest" if part.rest else ""
    what = "" if is_told else do_words(catalogue, part)
    far = (what, TO_MARK[part.to]) if part.to else (show_number(part.distance), what)
    swum = " ".join(filter(None, far))
    passing = ", gear changed in passing" if part.in_passing else ""
    return f"{swum} ({effort}){gear}{passing}{rest}"


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
