"""A line of the whiteboard, and what of it is for whom."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

from almanac.frozen import quick
from almanac.source.reader import DataPath


@quick
@dataclass(frozen=True)
class BoardLine:
    """One line: how deep in rounds, what is done, how hard, when to go, and the note; each may be
    empty.

    ``go_of`` holds, where lane groups differ, each group's id, title and own words for ``go``.
    ``groups`` are the lane groups that the line is for, and ``whose`` says who they are; both are
    empty where it is for all.
    ``how`` says start, partner and team, ``aim`` the time to hold (``aim_of`` as ``go_of``),
    ``result`` what is noted of each rep, with ``room`` places to note it in. ``path`` leads to the
    reps that the line is of, () for any other line; ``target`` says how fast (``target_of`` as
    ``go_of``) where times were laid over the line (``timed_board``). ``is_rounds``: it says how
    often what stands below it is done, and ``go`` the pause between.
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
    aim_of: tuple[tuple[str, str, str], ...] = ()
    result: str = ""
    room: int = 0
    path: DataPath = ()
    target: str = ""
    target_of: tuple[tuple[str, str, str], ...] = ()
    is_rounds: bool = False


def lines_for(lines: list[BoardLine], groups: Collection[str]) -> list[BoardLine]:
    """The lines that stand for these lane groups, without what is for others. What is for one
    lane group alone is not said to be its own.
    """
    return [
        _seen_by(line, groups)
        for line in lines
        if not line.groups or not set(line.groups).isdisjoint(groups)
    ]


def lines_without(
    lines: list[BoardLine], out: Collection[str], every: tuple[str, ...]
) -> list[BoardLine]:
    """The lines as they stand where some of ``every`` lane group do none of them."""
    left = ([group for group in line.groups or every if group not in out] for line in lines)
    each = zip(lines, left, strict=True)
    return [replace(line, groups=tuple(groups)) for line, groups in each if groups]


def _seen_by(line: BoardLine, groups: Collection[str]) -> BoardLine:
    own = narrowed(line, groups)
    if len(groups) > 1 or not (_differs(own) or own.groups or own.whose):
        return own
    return replace(
        own,
        go=own.go_of[0][2] if own.go_of else own.go,
        go_of=(),
        aim=own.aim_of[0][2] if own.aim_of else own.aim,
        aim_of=(),
        target=own.target_of[0][2] if own.target_of else own.target,
        target_of=(),
        groups=(),
        whose="",
    )


def _differs(line: BoardLine) -> bool:
    return bool(line.go_of or line.aim_of or line.target_of)


def narrowed(line: BoardLine, groups: Collection[str]) -> BoardLine:
    """The line with the times of these lane groups alone, where lane groups have their own."""
    if not _differs(line):
        return line
    go_of = tuple(own for own in line.go_of if own[0] in groups)
    aim_of = tuple(own for own in line.aim_of if own[0] in groups)
    target_of = tuple(own for own in line.target_of if own[0] in groups)
    return replace(
        line,
        go_of=go_of,
        go=_by_title(go_of) if line.go_of else line.go,
        aim_of=aim_of,
        aim=_by_title(aim_of) if line.aim_of else line.aim,
        target_of=target_of,
        target=_by_title(target_of) if line.target_of else line.target,
    )


def _by_title(own: tuple[tuple[str, str, str], ...]) -> str:
    return "; ".join(f"{title} {words}" for _, title, words in own)
