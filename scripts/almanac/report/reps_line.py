"""A line of the whiteboard for one item of reps: how many, how far, what, when to go."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from almanac.model.catalogue import Catalogue
from almanac.model.changes import changed
from almanac.model.manner import Aim
from almanac.model.reps import Change, Part, Reps
from almanac.model.sendoff import Sendoff
from almanac.report.board_line import BoardLine
from almanac.report.set_words import (
    TO_MARK,
    aim_words,
    do_words,
    effort_of_reps,
    effort_words,
    gear_words,
    hold_words,
    how_words,
    sendoff_words,
    times_words,
    waves_words,
)
from almanac.units import show_number, show_time


def how_many(catalogue: Catalogue, change: Change, item: Reps | None) -> str:
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


def go_words(catalogue: Catalogue, item: Reps | Change) -> str:
    """When to go: the send-offs, else the rest; "" where neither stands."""
    if item.sendoff:
        return sendoff_words(catalogue, item.sendoff)
    return f"{show_time(item.rest)} rest" if item.rest else ""


def reps_line(catalogue: Catalogue, item: Reps, depth: int) -> BoardLine:
    """One item of reps as a line of the board."""
    return BoardLine(
        depth,
        what_words(catalogue, item),
        joined(
            "" if item.is_parted else effort_of_reps(catalogue, item, item.parts[0].effort),
            waves_words(item.waves),
        ),
        go_words(catalogue, item),
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
        return f"{item.reps} × {show_number(item.distance)} {_parts(catalogue, item.parts, item)}"
    if item.is_split:
        titles = ", ".join(catalogue.drills[part.do].title for part in item.parts)
        each = show_number(part.distance)
        return f"{item.reps} × {show_number(item.distance)}, {each} each of {titles}"
    each = show_time(part.hold_s) if part.hold_s else show_number(part.distance)
    return f"{item.reps} × {each} {do_words(catalogue, part)}"


def joined(*words: str) -> str:
    """The words that there are, with commas between."""
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


def _parts(catalogue: Catalogue, parts: Sequence[Part], item: Reps | None = None) -> str:
    """The parts of a rep, those alike in a row once: ``as 3 times 50 Backstroke (strong), 0:10 rest
    each, then 50 Freestyle (fast)``. What is done in all of them stands before them: ``Backstroke:
    25 (easy), then 25 (fast)``.
    """
    done = {do_words(catalogue, part) for part in parts}
    is_one = len(done) == 1
    said = ((_part(catalogue, part, is_one, item), " each" if part.rest else "") for part in parts)
    rows = ((words, len([*alike])) for words, alike in groupby(said))
    told = ", then ".join(
        f"{count} times {words}{each}" if count > 1 else words for (words, each), count in rows
    )
    return f"{done.pop()}: {told}" if is_one else f"as {told}"


def _part(catalogue: Catalogue, part: Part, is_told: bool, item: Reps | None) -> str:
    gear = f" {gear_words(catalogue, part.gear)}" if part.gear else ""
    effort = (
        effort_of_reps(catalogue, item, part.effort)
        if item
        else effort_words(catalogue, part.effort)
    )
    rest = f", {show_time(part.rest)} rest" if part.rest else ""
    what = "" if is_told else do_words(catalogue, part)
    far = (what, TO_MARK[part.to]) if part.to else (show_number(part.distance), what)
    swum = " ".join(filter(None, far))
    passing = ", gear changed in passing" if part.in_passing else ""
    return f"{swum} ({effort}){gear}{passing}{rest}"
