"""The whiteboard: a set in words, as a coach would write it up."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace

from almanac.model.catalogue import Catalogue
from almanac.model.changes import LAST, changed
from almanac.model.swim_set import Change, Item, Part, Pause, Reps, Round, Sendoff, SwimSet
from almanac.model.variants import given
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.report.set_words import (
    TO_MARK,
    aim_words,
    do_words,
    effort_words,
    gear_words,
    how_words,
    sendoff_words,
    times_words,
    waves_words,
)
from almanac.units import show_number, show_time


@dataclass(frozen=True)
class BoardLine:
    """One line: how deep in rounds, what is done, how hard, when to go, and the note; each may be
    empty.

    ``go_of`` holds, where lane groups differ, each group's id, title and own words for ``go``.
    ``groups`` are the lane groups that the line is for, and ``whose`` says who they are; both are
    empty where it is for all.
    ``how`` says start, partner and team, ``aim`` the time to hold, ``result`` what is noted of each
    rep, with ``room`` places to note it in.
    """

    depth: int
    what: str
    effort: str = ""
    go: str = ""
    gear: str = ""
    note: str = ""
    go_of: tuple[tuple[str, str, str], ...] = ()
    groups: tuple[str, ...] = ()
    whose: str = ""
    how: str = ""
    aim: str = ""
    result: str = ""
    room: int = 0


def board(catalogue: Catalogue, swim_set: SwimSet) -> list[BoardLine]:
    """The set's lines, in order."""
    return board_lines(catalogue, given(swim_set).items)


def board_lines(catalogue: Catalogue, items: tuple[Item, ...]) -> list[BoardLine]:
    """The lines of items, in order."""
    return list(_lines(catalogue, items, 0))


def lines_for(lines: list[BoardLine], groups: Collection[str]) -> list[BoardLine]:
    """The lines that stand for these lane groups, without what is for others. What is for one
    lane group alone is not said to be its own.
    """
    return [
        _seen_by(line, groups)
        for line in lines
        if not line.groups or not set(line.groups).isdisjoint(groups)
    ]


def _seen_by(line: BoardLine, groups: Collection[str]) -> BoardLine:
    go_of = tuple(own for own in line.go_of if own[0] in groups)
    if len(groups) > 1:
        return replace(line, go_of=go_of)
    go = go_of[0][2] if go_of else "" if line.go_of else line.go
    return replace(line, go=go, go_of=(), groups=(), whose="")


def _lines(
    catalogue: Catalogue, items: tuple[Item, ...], depth: int, rounds: int = 0
) -> Iterator[BoardLine]:
    """The lines of items that are done in so many rounds."""
    for item in items:
        if isinstance(item, Pause):
            yield BoardLine(depth, f"Pause {show_time(item.seconds)}", note=item.note)
        elif isinstance(item, Round):
            pause = item.pause_between if item.rounds > 1 else None
            between = f"{show_time(pause)} between rounds" if pause else ""
            what = f"{item.rounds} round{'s' * (item.rounds != 1)} of"
            yield BoardLine(depth, what, go=between, note=item.note)
            yield from _lines(catalogue, item.items, depth + 1, item.rounds)
            yield from _by_round(catalogue, item.by_round, depth + 1, item.rounds)
        else:
            yield from _by_group(catalogue, item, depth)
            yield from _by_round(catalogue, item.by_round, depth + 1, rounds)


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
    go_of = tuple(own for own in line.go_of if own[0] in groups)
    go = "; ".join(f"{title} {words}" for _, title, words in go_of) if line.go_of else line.go
    return replace(line, groups=groups, whose=whose, go_of=go_of, go=go)


def _by_round(
    catalogue: Catalogue, changes: Mapping[str, Change], depth: int, rounds: int
) -> Iterator[BoardLine]:
    for number, change in changes.items():
        if number != LAST and int(number) > rounds:
            continue  # a set asked for fewer rounds
        which = "Last round" if number == LAST else f"Round {number}"
        effort = effort_words(catalogue, change.effort) if change.effort else ""
        gear = gear_words(catalogue, change.gear or ())
        what = ", ".join(filter(None, (_how_many(catalogue, change), _no_gear(change))))
        go = _go(catalogue, change)
        yield BoardLine(depth, f"{which}: {what}" if what else which, effort, go, gear)


def _how_many(catalogue: Catalogue, change: Change) -> str:
    if change.parts:
        return "as " + ", then ".join(_part(catalogue, part) for part in change.parts)
    each = show_time(change.time) if change.time else str(change.distance or "")
    count = "" if change.reps is None else f"{change.reps} ×"
    drill = catalogue.drills[change.do].title if change.do else ""
    return " ".join(filter(None, (count, each, drill)))


def _no_gear(change: Change) -> str:
    return "without gear" if change.gear == () else ""


def _go(catalogue: Catalogue, item: Reps | Change) -> str:
    if item.sendoff:
        return sendoff_words(catalogue, item.sendoff)
    return f"{show_time(item.rest)} rest" if item.rest else ""


def _reps(catalogue: Catalogue, item: Reps, depth: int) -> BoardLine:
    return BoardLine(
        depth,
        _what(catalogue, item),
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
        result=f"note the {item.note_result}" if item.note_result else "",
        room=item.reps if item.note_result else 0,
    )


def _what(catalogue: Catalogue, item: Reps) -> str:
    part = item.parts[0]
    if item.is_parted:
        parts = ", then ".join(_part(catalogue, part) for part in item.parts)
        return f"{item.reps} × {show_number(item.distance)} as {parts}"
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


def _part(catalogue: Catalogue, part: Part) -> str:
    gear = f" with {gear_words(catalogue, part.gear)}" if part.gear else ""
    effort = effort_words(catalogue, part.effort)
    rest = f", {show_time(part.rest)} rest" if part.rest else ""
    what = do_words(catalogue, part)
    swum = f"{what} {TO_MARK[part.to]}" if part.to else f"{show_number(part.distance)} {what}"
    passing = ", gear changed in passing" if part.in_passing else ""
    return f"{swum} ({effort}){gear}{passing}{rest}"


def board_text(lines: list[BoardLine]) -> str:
    """The whiteboard for a terminal."""
    shown = []
    for line in lines:
        parts = [
            f"{line.whose}: {line.what}" if line.whose else line.what,
            line.effort,
            f"with {line.gear}" if line.gear else "",
            line.how,
            line.go,
            line.aim,
            f"{line.result} {' '.join(['____'] * line.room)}" if line.result else "",
            f"({line.note})" if line.note else "",
        ]
        shown.append("    " * line.depth + ", ".join(filter(None, parts)))
    return "\n".join(shown)


def facet_title(catalogue: Catalogue, facet: str, word: str) -> str:
    """How a facet's word is shown: the vocabulary's title, or gear by title."""
    if facet == "gear":
        return (
            " + ".join(catalogue.gear[id].title for id in word.split("+"))
            if word != "none"
            else "No gear"
        )
    return catalogue.words(VOCABULARY_OF[facet])[word].title


def in_order(catalogue: Catalogue, facet: str, split: Mapping[str, object]) -> list[str]:
    """The words of a facet's split in the order of their vocabulary; gear as it appears."""
    if facet == "gear":
        return list(split)
    return [word for word in catalogue.words(VOCABULARY_OF[facet]) if word in split]
