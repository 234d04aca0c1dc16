"""The rows of a set's clock on its page: what is swum, when to go, target, rest and aims."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from almanac.analysis.figures import table
from almanac.arithmetic.pace import Target
from almanac.arithmetic.table import ItemRow
from almanac.arithmetic.timed_reps import TimedRep, unlike
from almanac.model.reps import Reps
from almanac.report.shown import shown, shown_rest
from almanac.report.timed_board import target_marks
from almanac.report.working_text import steps
from almanac.units import show_number, show_time


def reps_label(item: Reps) -> str:
    """How many and how far."""
    hold_s, swimmers = item.parts[0].hold_s, item.manner.swimmers
    label = f"{item.reps} × {show_time(hold_s) if hold_s else item.distance}"
    return f"{label}, {show_number(item.distance / swimmers)} each" if swimmers > 1 else label


# The figures of an item that the table tells with the spread of its reps; others follow them.
COLUMNS = ("target", "sendoff", "rest", "aim")


def _time(seconds: float | None, tenths: bool = False) -> str:
    return "–" if seconds is None else show_time(seconds, tenths)


def clock_row(row: ItemRow) -> dict[str, Any]:
    """A row of the clock of a set: a rep or several alike, and what the table says of it."""
    slow, fast = row.slowest, row.fastest
    is_swum = slow.rep.item.parts[0].hold_s is None
    target = _time(slow.target_s, tenths=is_swum)
    if slow.target_s != fast.target_s:
        target += f" to {_time(fast.target_s, tenths=is_swum)}"
    sorts = unlike(row.timed)
    rests = [own for timed in sorts if (own := shown_rest(timed)) is not None]
    rest = f"{show_number(min(rests))} s" if rests else "–"
    if rests and min(rests) != max(rests):
        rest = f"{show_number(min(rests))} to {show_number(max(rests))} s"
    if not all(timed.fits for timed in sorts):
        rest = "does not fit"
    return {
        "what": ", ".join(dict.fromkeys(map(_timed_label, sorts))),
        "target": target + target_marks(slow),
        "sendoff": _go(row),
        "inside": f"{show_number(slow.rep.inner_rest_s)} s inside" if slow.rep.inner_rest_s else "",
        "aim": _aims(row),
        "suggested": slow.suggested,
        "rest": rest,
        "others": [shown(own) for own in table("set", "item", "rows", row, COLUMNS)],
        "steps": steps(slow.target.working, "target", "s")
        if isinstance(slow.target, Target)
        else [],
    }


def _go(row: ItemRow) -> str:
    """When to go: one for all reps, or one for each; where rounds differ, each of them once."""
    rounds = groupby(row.timed, key=lambda timed: timed.rep.rounds)
    each = dict.fromkeys(tuple(map(_goes, reps)) for _, reps in rounds)
    return " / ".join(words[0] if len(set(words)) == 1 else ", ".join(words) for words in each)


def _goes(timed: TimedRep) -> str:
    if timed.rep.item.sendoff is not None:
        return _time(timed.sendoff_s)
    rest = timed.rep.item.rest
    return f"{show_time(rest)} rest" if rest else "straight on"


def _aims(row: ItemRow) -> str:
    """The times that are asked for, each once; of some reps alone where others are asked none."""
    if row.aim is None and not any(timed.aim for timed in row.timed):
        return ""
    aims = dict.fromkeys(timed.aim.value for timed in row.timed if timed.aim)
    of = "" if all(timed.aim for timed in row.timed) else " of some"
    return f"{', '.join(show_time(aim, tenths=True) for aim in aims)} asked for{of}"


def _timed_label(timed: TimedRep) -> str:
    """What a rep is, and how far it goes where it is swum by time."""
    label, distance = reps_label(timed.rep.item), timed.rep.distance
    if not any(piece.by_time for piece in timed.rep.pieces):
        return label
    return (
        f"{label} ({show_number(distance)} estimated)"
        if distance
        else f"{label}, how far is not known"
    )
