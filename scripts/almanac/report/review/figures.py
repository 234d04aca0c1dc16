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
from almanac.report.review.moves import alike, distance, shown, shown_value, told, ways, where

# What is looked at first, in this order; work on a fixed send-off shows in the rest that it leaves.
_SEEN = ("clock", "time", "slack", "distance", "load", "rest")
_ELSE = ("last touch", "rating")
_WORDS = {
    "time": "whole practice",
    "slack": "to spare in its slot",
    "load": "planned load",
    "rating": "planned rating",
    "rest": "rest in all",
}
_MOST_OF_ONE = 4  # lines of one figure of the changed entry before the rest is counted
_MOST_GROUPS = 2  # that go different ways in one entry, a line each, before one tells them all
_MOST_NEW = 2  # new entries that are told one by one before the least and the most of all
_MOST_MOVES = 12  # figures shown of one entry before the rest is counted


def seen_first(review: Comparison) -> Iterator[str]:
    """What coaches will see: of each of these figures the largest moves, or how many there are."""
    moved = {(move.kind, move.id, move.name) for move in review.figures}
    told_by = {"rest": "clock", "slack": "time"}
    visible = [
        move
        for move in review.figures
        if shown(move, move.before) != shown(move, move.after)
        and (move.kind, move.id, told_by.get(move.name)) not in moved
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
    many = [own for own in _by_id([move for move in moves if move.near]) if _are_many(own)]
    yield from (f"- {words}: {_of_groups(own)}" for own in many)
    near = alike([move for move in moves if move.near and not any(move in own for own in many)])
    for own in near[:_MOST_OF_ONE]:
        yield f"- {words}: {told(own[0])} {where(own)}"
    if rest := near[_MOST_OF_ONE:]:
        yield f"- {words}: {counted(sum(map(len, rest)), 'figure')} more of what was changed, below"
    far = [move for move in moves if not move.near]
    for kind in [kind for kind in dict.fromkeys(move.kind for move in far) if _is_news(kind, far)]:
        yield f"- {words}: {_of_kind([move for move in far if move.kind == kind])}"


def _is_news(kind: str, far: Sequence[FigureMove]) -> bool:
    """Whether a kind says what no other does: a block's metres are those of its practices."""
    return kind != "block" or all(move.kind == "block" for move in far)


def _of_new(moves: Sequence[FigureMove]) -> Iterator[str]:
    """What one figure is in the new entries of each kind that have it: the least and the most."""
    for kind in dict.fromkeys(move.kind for move in moves):
        own = sorted(
            (move for move in moves if move.kind == kind and move.after),
            key=lambda move: move.after or 0,
        )
        if not own:
            continue
        least, most = (shown(move, move.after) for move in (own[0], own[-1]))
        span = least if least == most else f"{least} to {most}"
        yield f"**{span}** in {counted(len({move.id for move in own}), f'new {kind}')}"


def _of_kind(moves: Sequence[FigureMove]) -> str:
    """What one figure does in all entries of a kind: the move itself where it is one, else how far
    it goes both ways, and the largest.
    """
    most = max(moves, key=distance)
    if len(alike(moves)) == 1 or not all(
        move.before is not None and move.after is not None for move in moves
    ):
        return f"{told(most)} {where(moves)}"
    entries = len({move.id for move in moves})
    if entries == 1:
        return f"{told(most)} {where([most])}, the most of its lane groups"
    return f"{ways(moves)} in {entries} {moves[0].kind}s; most {told(most)} {where([most])}"


def _by_id(moves: Sequence[FigureMove]) -> list[list[FigureMove]]:
    same: dict[tuple[str, str], list[FigureMove]] = {}
    for move in moves:
        same.setdefault((move.kind, move.id), []).append(move)
    return list(same.values())


def _are_many(moves: Sequence[FigureMove]) -> bool:
    """Whether a figure goes so many ways in the lane groups of an entry that a line tells all."""
    are_there = all(move.before is not None and move.after is not None for move in moves)
    return are_there and len(alike(moves)) > _MOST_GROUPS


def _of_groups(moves: Sequence[FigureMove]) -> str:
    """What one figure does in the lane groups of one entry: how far, and the largest move."""
    most = max(moves, key=distance)
    return f"{ways(moves)} {where(moves)}; most {told(most)}, for {fenced(most.whose)}"


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
