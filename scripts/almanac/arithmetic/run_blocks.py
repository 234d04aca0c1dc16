"""What a lane group does in a part, as blocks that are laid end to end to run it by the clock: reps
of one item, waits, and rounds that hold blocks of their own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum, auto
from itertools import groupby

from almanac.arithmetic.events import Event, Rep
from almanac.arithmetic.gear_changes import GearChange
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.timed_reps import TimedRep
from almanac.frozen import quick
from almanac.source.reader import DataPath


@quick
@dataclass(frozen=True)
class RepsBlock:
    """Reps of one item that follow each other in one round. ``first`` is the place of the first of
    them among all the reps. ``every_s`` is what each takes of the clock, in seconds, from its
    send-off to what comes next; None where that is not known.
    """

    first: int
    reps: tuple[TimedRep, ...]

    @property
    def every_s(self) -> tuple[float | None, ...]:
        """What each takes of the clock, in seconds."""
        return tuple(own.clock.value if own.clock else None for own in self.reps)


class WaitReason(Enum):
    """What a wait is for."""

    PAUSE = auto()
    GEAR = auto()


@dataclass(frozen=True)
class WaitBlock:
    """A wait of ``seconds`` on the clock, for a pause that the entry names, or for gear that no
    pause covers.
    """

    seconds: float
    why: WaitReason
    note: str
    change: GearChange | None


@dataclass(frozen=True)
class RoundsBlock:
    """Rounds, each with its blocks, and ``between_s`` seconds between one and the next. ``path``
    leads to them in the items.
    """

    path: DataPath
    rounds: tuple[tuple[Block, ...], ...]
    between_s: float


Block = RepsBlock | WaitBlock | RoundsBlock


@quick
@dataclass(frozen=True)
class _Placed:
    """A block with where it stands in the items, and the numbers of the rounds around it."""

    path: DataPath
    rounds: tuple[int, ...]
    block: RepsBlock | WaitBlock


def run_blocks(events: Sequence[Event], clock: GroupClock) -> tuple[Block, ...]:
    """The blocks of what a lane group does: laid end to end they take what its clock says, pauses
    and the gear changes that no pause covers included.
    """
    return tuple(_nested(list(_in_a_row(events, clock)), 0))


def _in_a_row(events: Sequence[Event], clock: GroupClock) -> Iterator[_Placed]:
    """The blocks one after the other, rounds unrolled."""
    changes = {id(change.before): change for change in clock.changes if change.uncovered_s}
    gathered: list[TimedRep] = []
    number = 0
    for event in events:
        goes_on = gathered and _place(gathered[0].rep) == _place(event)
        if gathered and (not goes_on or id(event) in changes):
            yield _reps(number, gathered)
            gathered = []
        if not isinstance(event, Rep):
            wait = WaitBlock(event.seconds, WaitReason.PAUSE, event.note, None)
            yield _Placed(event.path, event.rounds, wait)
            continue
        if id(event) in changes:
            change = changes[id(event)]
            wait = WaitBlock(change.uncovered_s, WaitReason.GEAR, "", change)
            yield _Placed(event.path, event.rounds, wait)
        gathered.append(clock.reps[number])
        number += 1
    if gathered:
        yield _reps(number, gathered)


def _place(event: Event) -> tuple[DataPath, tuple[int, ...]]:
    return event.path, event.rounds


def _reps(after: int, gathered: list[TimedRep]) -> _Placed:
    rep = gathered[0].rep
    return _Placed(rep.path, rep.rounds, RepsBlock(after - len(gathered), tuple(gathered)))


def _nested(placed: Sequence[_Placed], depth: int) -> Iterator[Block]:
    """Blocks so deep in rounds, with the rounds that they hold put together again.

    A path has two steps for each round around it, ``items`` and a number, and two of its own.
    """
    own = 2 * depth + 2
    for path, found in groupby(placed, key=lambda one: one.path[:own]):
        inside = list(found)
        if len(inside[0].path) == own:
            yield from (one.block for one in inside)
            continue
        rounds, between_s = [], 0.0
        for _, each in groupby(inside, key=lambda one: one.rounds[depth]):
            held = list(each)
            if held[-1].path == (*path, "pause_between"):
                between = held.pop().block
                assert isinstance(between, WaitBlock)
                between_s = between.seconds
            rounds.append(tuple(_nested(held, depth + 1)))
        yield RoundsBlock(path, tuple(rounds), between_s)


def home_s(timed: TimedRep) -> float | None:
    """Seconds from the start of a rep, or of its last wave, until the last swimmer of the fullest
    lane has touched: (swimmers at once − 1) × gap, and the time of the rep, of a pair or a team
    until the last of them has touched. None where its target is not known.
    """
    return None if timed.done_s is None else timed.order.tail.value + timed.done_s
