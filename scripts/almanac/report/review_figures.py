"""The figures that a change moves, for a review: first what coaches and swimmers will see, on the
clock and in metres, then all of them by entry.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from almanac.analysis.comparison import Comparison
from almanac.analysis.figure_moves import FigureMove
from almanac.findings import counted
from almanac.report.fenced import fenced
from almanac.report.working_text import show_value
from almanac.units import show_time

# What is looked at first, in this order; work on a fixed send-off shows in the rest that it leaves.
_SEEN = ("clock", "minutes", "distance", "load", "rest")
_ELSE = ("last touch", "rating")
_IN_TIME = ("clock", "minutes", "rest", "last touch")
_WORDS = {
    "minutes": "whole practice",
    "load": "planned load",
    "rating": "planned rating",
    "rest": "rest in all",
}
_MOST_OF_ONE = 4  # lines of one figure of the changed entry before the rest is counted
_MOST_NEW = 2  # new entries that are told one by one before the least and the most of all
_MOST_MOVES = 12  # figures shown of one entry before the rest is counted


def seen_first(review: Comparison) -> Iterator[str]:
    """What coaches will see: of each of these figures the largest moves, or how many there are."""
    clocked = {(move.kind, move.id) for move in review.figures if move.name == "clock"}
    visible = [
        move
        for move in review.figures
        if _shown(move, move.before) != _shown(move, move.after)
        and not (move.name == "rest" and (move.kind, move.id) in clocked)  # the clock says it
    ]
    names = {move.name for move in visible}
    for name in _SEEN if names.intersection(_SEEN) else _ELSE:
        yield from _of_name(name, [move for move in visible if move.name == name])


def _of_name(name: str, moves: Sequence[FigureMove]) -> Iterator[str]:
    """One figure: of the changed entry each move, those that show the same as one line; of all that
    uses it a line for each kind.
    """
    words = _WORDS.get(name, name)
    new = [move for move in moves if move.near and move.before is None]
    if len({(move.kind, move.id) for move in new}) > _MOST_NEW:
        yield from (f"- {words}: {own}" for own in _of_new(new))
        moves = [move for move in moves if not move.near or move.before is not None]
    near = _alike([move for move in moves if move.near])
    for own in near[:_MOST_OF_ONE]:
        yield f"- {words}: {_told(own[0])} {_where(own)}"
    if rest := near[_MOST_OF_ONE:]:
        yield f"- {words}: {counted(sum(map(len, rest)), 'figure')} more of what was changed, below"
    far = [move for move in moves if not move.near]
    for kind in dict.fromkeys(move.kind for move in far):
        yield f"- {words}: {_of_kind([move for move in far if move.kind == kind])}"


def _of_new(moves: Sequence[FigureMove]) -> Iterator[str]:
    """What one figure is in the new entries of each kind that have it: the least and the most."""
    for kind in dict.fromkeys(move.kind for move in moves):
        own = sorted(
            (move for move in moves if move.kind == kind and move.after),
            key=lambda move: move.after or 0,
        )
        if not own:
            continue
        least, most = (_shown(move, move.after) for move in (own[0], own[-1]))
        span = least if least == most else f"{least} to {most}"
        yield f"**{span}** in {counted(len({move.id for move in own}), f'new {kind}')}"


def _of_kind(moves: Sequence[FigureMove]) -> str:
    """What one figure does in all entries of a kind: the move itself where it is one, else how far
    it goes both ways, and the largest.
    """
    most = max(moves, key=lambda move: abs((move.after or 0) - (move.before or 0)))
    if len(_alike(moves)) == 1 or not all(
        move.before is not None and move.after is not None for move in moves
    ):
        return f"{_told(most)} {_where(moves)}"
    entries = len({move.id for move in moves})
    if entries == 1:
        return f"{_told(most)} {_where([most])}, the most of its lane groups"
    return f"{_ways(moves)} in {entries} {moves[0].kind}s; most {_told(most)} {_where([most])}"


def _ways(moves: Sequence[FigureMove]) -> str:
    """How far a figure goes down and up: "0:10 to 0:40 less", in whole seconds or units."""
    steps = [(move, round(move.after or 0) - round(move.before or 0)) for move in moves]
    if moves[0].name == "minutes":
        steps = [
            (move, round((move.after or 0) * 60) - round((move.before or 0) * 60)) for move in moves
        ]
    said = []
    for word, own in (("less", [-step for _, step in steps if step < 0]),
                      ("more", [step for _, step in steps if step > 0])):  # fmt: skip
        if own:
            least, most = _step(min(own), moves[0]), _step(max(own), moves[0])
            said.append(f"{least} {word}" if least == most else f"{least} to {most} {word}")
    return " and ".join(said)


def _step(step: float, move: FigureMove) -> str:
    return show_time(step) if move.name in _IN_TIME else show_value(step, move.unit)


def _alike(moves: Sequence[FigureMove]) -> list[list[FigureMove]]:
    """Moves that show the same together, the largest first."""
    same: dict[tuple[str, str], list[FigureMove]] = {}
    for move in sorted(moves, key=_share, reverse=True):
        shows = _shown(move, move.before), _shown(move, move.after)
        same.setdefault(shows, []).append(move)
    return list(same.values())


def _told(move: FigureMove) -> str:
    """A move; of an entry that was not there its value alone."""
    if move.before is None and move.near:
        return f"**{_shown(move, move.after)}**"
    return f"**{_shown(move, move.before)} → {_shown(move, move.after)}**"


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
