"""The figures that a change moves, for a review: first what coaches and swimmers will see, on the
clock and in metres, then all of them by entry.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from almanac.analysis.comparison import Comparison, FigureMove
from almanac.findings import counted
from almanac.report.fenced import fenced
from almanac.report.working_text import show_value
from almanac.units import show_time

# What is looked at first, in this order; work on a fixed send-off shows in the rest that it leaves.
_SEEN = ("clock", "minutes", "distance", "load")
_ELSE = ("last touch", "rest", "rating")
_WORDS = {"minutes": "whole practice", "load": "planned load", "rating": "planned rating"}
_MOST_OF_ONE = 4  # entries named of one figure before the rest is counted
_MOST_MOVES = 12  # figures shown of one entry before the rest is counted


def seen_first(review: Comparison) -> Iterator[str]:
    """What coaches will see: of each of these figures the largest moves, or how many there are."""
    visible = [
        move for move in review.figures if _shown(move, move.before) != _shown(move, move.after)
    ]
    names = {move.name for move in visible}
    for name in _SEEN if names.intersection(_SEEN) else _ELSE:
        yield from _of_name(name, [move for move in visible if move.name == name])


def _of_name(name: str, moves: Sequence[FigureMove]) -> Iterator[str]:
    """One figure: moves that show the same are one line; those of the changed entry come first."""
    same: dict[tuple[str, str, str], list[FigureMove]] = {}
    for move in sorted(moves, key=lambda move: (not move.near, -_share(move))):
        shows = _shown(move, move.before), _shown(move, move.after)
        same.setdefault((*shows, "" if move.near else move.kind), []).append(move)
    lines = sorted(same.items(), key=lambda item: (not item[1][0].near, -len(item[1])))
    for (before, after, _), own in lines[:_MOST_OF_ONE]:
        yield f"- {_WORDS.get(name, name)}: **{before} → {after}** {_where(own)}"
    if rest := [move for _, own in lines[_MOST_OF_ONE:] for move in own]:
        entries = counted(len({(move.kind, move.id) for move in rest}), "entry", "entries")
        yield f"- {_WORDS.get(name, name)}: moves in {entries} more, below"


def _where(moves: Sequence[FigureMove]) -> str:
    kind, ids = moves[0].kind, list(dict.fromkeys(move.id for move in moves))
    if len(ids) > 2:
        return f"in {len(ids)} {kind}s"
    whose = list(dict.fromkeys(move.whose for move in moves if move.whose))
    groups = f", for {' and '.join(map(fenced, whose))}" if 0 < len(whose) <= 2 else ""
    return f"in {kind} {' and '.join(map(fenced, ids))}{groups}"


def _share(move: FigureMove) -> float:
    before, after = move.before or 0, move.after or 0
    return abs(after - before) / max(abs(before), abs(after), 1e-9)


def _shown(move: FigureMove, value: float | None) -> str:
    if value is None:
        return shown_value(value, move)
    if move.name == "minutes":
        return show_time(round(value * 60))
    # nobody sees a tenth of a second, of a metre or of a load
    return shown_value(round(value), move)


def by_entry(review: Comparison) -> Iterator[str]:
    """Every figure that moves, entry by entry."""
    for (kind, id, near), moves in groupby(
        review.figures, key=lambda move: (move.kind, move.id, move.near)
    ):
        own = list(moves)
        yield f"- {kind} {fenced(id)}{'' if near else ' (by what it uses)'}"
        visible = [
            move for move in own if shown_value(move.before, move) != shown_value(move.after, move)
        ][:_MOST_MOVES]
        yield from (f"  - {_move(move)}" for move in visible)
        if len(own) > len(visible):
            yield f"  - and {len(own) - len(visible)} more"


def _move(move: FigureMove) -> str:
    name = fenced(f"{move.name}, {move.whose}" if move.whose else move.name)
    return f"{name}: {shown_value(move.before, move)} → {shown_value(move.after, move)}"


def shown_value(value: float | None, move: FigureMove) -> str:
    """A figure's value as it is shown; "no number" where there is none."""
    return "no number" if value is None else show_value(value, move.unit)
