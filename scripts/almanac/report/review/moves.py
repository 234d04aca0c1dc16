"""How a figure moves, in words: from what to what, in which entries, how far."""

from __future__ import annotations

from collections.abc import Sequence

from almanac.analysis.figure_moves import FigureMove
from almanac.report.fenced import fenced
from almanac.report.working_text import show_value
from almanac.units import show_time

_IN_TIME = ("clock", "time", "slack", "rest", "last touch")


def distance(move: FigureMove) -> float:
    """How far it moves, in its own unit."""
    return abs((move.after or 0) - (move.before or 0))


def ways(moves: Sequence[FigureMove]) -> str:
    """How far a figure goes down and up: "0:10 to 0:40 less", in whole seconds or units."""
    steps = [(move, round(move.after or 0) - round(move.before or 0)) for move in moves]
    said = []
    for word, own in (("less", [-step for _, step in steps if step < 0]),
                      ("more", [step for _, step in steps if step > 0])):  # fmt: skip
        if own:
            least, most = _step(min(own), moves[0]), _step(max(own), moves[0])
            said.append(f"{least} {word}" if least == most else f"{least} to {most} {word}")
    return " and ".join(said)


def _step(step: float, move: FigureMove) -> str:
    return show_time(step) if move.name in _IN_TIME else show_value(step, move.unit)


def alike(moves: Sequence[FigureMove]) -> list[list[FigureMove]]:
    """Moves that show the same together, the largest first."""
    same: dict[tuple[str, str], list[FigureMove]] = {}
    for move in sorted(moves, key=_share, reverse=True):
        shows = shown(move, move.before), shown(move, move.after)
        same.setdefault(shows, []).append(move)
    return list(same.values())


def told(move: FigureMove) -> str:
    """A move; of an entry that was not there its value alone."""
    if move.before is None and move.near:
        return f"**{shown(move, move.after)}**"
    return f"**{shown(move, move.before)} → {shown(move, move.after)}**"


def where(moves: Sequence[FigureMove]) -> str:
    """In which entries, and for which lane groups, where these are few."""
    kind, ids = moves[0].kind, list(dict.fromkeys(move.id for move in moves))
    if len(ids) > 2:
        return f"in {len(ids)} {kind}s"
    whose = list(dict.fromkeys(move.whose for move in moves if move.whose))
    groups = f", for {' and '.join(map(fenced, whose))}" if 0 < len(whose) <= 2 else ""
    return f"in {kind} {' and '.join(map(fenced, ids))}{groups}"


def _share(move: FigureMove) -> float:
    before, after = move.before or 0, move.after or 0
    return abs(after - before) / max(abs(before), abs(after), 1e-9)


def shown(move: FigureMove, value: float | None) -> str:
    """A value as coaches see it, in whole seconds and metres."""
    if value is None:
        return shown_value(value, move)
    if move.name == "slack" and value < 0:
        return f"{show_time(-value)} too long"
    # nobody sees a tenth of a second, of a metre or of a load
    return shown_value(round(value), move)


def shown_value(value: float | None, move: FigureMove) -> str:
    """A figure's value as it is shown; "no number" where there is none."""
    return "no number" if value is None else show_value(value, move.unit)
