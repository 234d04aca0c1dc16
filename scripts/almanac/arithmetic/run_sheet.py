"""The run sheet of a practice: who is where when, who waits, and for whom."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from almanac.arithmetic.crews import Crew
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.helping import Help, help_of
from almanac.arithmetic.moment import Missing, Moment, latest, least_seconds
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.stages import SharedStart
from almanac.arithmetic.working import Working
from almanac.model.gear import Gear

Worn = dict[tuple[str, str], frozenset[str]]  # by lane group and half


@dataclass(frozen=True)
class SheetCell:
    """Lanes that go together in one part: when it is over for them, how long they then wait, and
    for whom.

    It is over when their clock is, the last rep's full send-off included, and the last swimmer of
    their fullest lane is home, whichever is later; both stand beside it where they are known.
    They wait from then until whoever is last is done with the part, or with the stage where they
    have no other part in it. A wait is not known where one of the two ends is not.
    """

    crew: Crew
    ends: Moment
    waits_s: float | None = None
    waits_for: Crew | None = None
    clock_over_s: float | None = None
    last_touch_s: float | None = None

    @property
    def group(self) -> str:
        """The lane group."""
        return self.crew.group

    @property
    def ends_s(self) -> float | None:
        """When it ends, in seconds from the start; None where that is not known."""
        return self.ends.known_s


@dataclass(frozen=True)
class SheetRow:
    """One part on the run sheet: those who do it start together, after the talk.

    ``gear_s`` is what changing gear from what they did before costs beyond the talk and the time to
    change over. ``ends`` is when the last of them is done, ``helps`` whom it needs beside them.
    ``joins``: see ``may_join``.
    """

    stage: SharedStart
    track: int
    run: PartRun
    talk_s: float
    change_s: float
    gear_s: float
    starts: Moment
    ends: Moment
    cells: tuple[SheetCell, ...]
    helps: tuple[Help, ...] = ()
    joins: bool = False

    @property
    def is_for_all(self) -> bool:
        """Whether all do it together."""
        return len(self.stage.tracks) == 1 and self.stage.turn is None

    @property
    def starts_s(self) -> float | None:
        """When it starts, in seconds from the start; None where that is not known."""
        return self.starts.known_s

    @property
    def ends_s(self) -> float | None:
        """When it ends, in seconds from the start; None where that is not known."""
        return self.ends.known_s


def run_sheet(
    stages: Iterable[SharedStart],
    gear: Mapping[str, Gear],
    scale: EffortScale,
    owned: Mapping[str, int],
) -> Iterator[SheetRow]:
    """The run sheet: a stage begins for everybody when the last lane group has done the one before
    it, and in a stage that runs apart each list of parts goes on without waiting for the others.
    A part is done when its last rep's full send-off is over and its last swimmer home, whichever is
    later (last touch).

    Before each part comes its talk, and before each turn but the first the time to change over;
    changing gear costs what these do not cover, and nothing before the first part. Where a part's
    clock is not known, each time after it is the earliest that it can be.
    """
    now, worn = Moment(0.0), Worn()
    for stage in stages:
        rows = [
            row
            for track in range(len(stage.tracks))
            for row in _track(stage, track, now, worn, gear)
        ]
        now = latest([now, *(row.ends for row in rows)])
        last_of_track = list({row.track: row for row in rows}.values())
        last = [cell for row in last_of_track for cell in row.cells]
        for row in sorted(rows, key=lambda row: row.starts.s):
            joins = may_join(row.run, gear, scale)
            helps = help_of(row.run, row.run.crews, gear, owned)
            is_last = any(row is own for own in last_of_track)
            cells = _waiting(row.cells, now, last) if is_last else row.cells
            yield replace(row, cells=cells, joins=joins, helps=helps)


def may_join(run: PartRun, gear: Mapping[str, Gear], scale: EffortScale) -> bool:
    """Whether latecomers may join at the start of a part: for every lane group in it, it begins
    with a rep at an effort that counts as gentle, and holds nothing under water or against gear
    that resists. Common practice: who is not warm begins gently.
    """
    first = [own.reps[0] for own in run.each if own.reps]
    gently = all(
        set(scale.split(piece.effort)) <= set(scale.gentle) for rep in first for piece in rep.pieces
    )
    pieces = [piece for rep in run.every_rep for piece in rep.pieces]
    hard = any(
        piece.drill.is_under_water or any(gear[id].resists for id in piece.gear) for piece in pieces
    )
    return bool(first) and gently and not hard


def _track(
    stage: SharedStart, track: int, now: Moment, worn: Worn, gear: Mapping[str, Gear]
) -> Iterator[SheetRow]:
    """The rows of one track, one after the other from ``now`` on. Keeps what is ``worn``."""
    begins = now.s == 0
    for number, run in enumerate(stage.tracks[track]):
        talk = float(run.doing.talk or 0) + (0.0 if number else stage.talk_s)
        change = stage.change_s  # a station is one part
        costs = [_change_gear(run, crew, worn, gear) - talk - change for crew in run.crews]
        gear_s = 0.0 if begins and not number else max([0.0, *costs])
        starts = now.after(talk + change + gear_s)
        cells = [_cell(run, crew, starts) for crew in run.crews]
        ends = latest([starts, *(cell.ends for cell in cells)])
        waiting = _waiting(cells, ends, cells)
        yield SheetRow(stage, track, run, talk, change, gear_s, starts, ends, waiting)
        now = ends


def _change_gear(run: PartRun, crew: Crew, worn: Worn, gear: Mapping[str, Gear]) -> int:
    """What changing into what a crew begins with costs it, in seconds; it then wears what it ends
    with: the gear of the first piece and of the last, as between the items of a set.
    """
    reps = run.of(crew.group).reps
    changed: set[str] = set()
    for half in crew.halves:
        before = worn.get(half, frozenset())
        begins = frozenset(reps[0].pieces[0].gear) if reps else before
        changed |= begins ^ before
        worn[half] = frozenset(reps[-1].pieces[-1].gear) if reps else before
    return max((gear[id].change_s for id in changed), default=0)


def _cell(run: PartRun, crew: Crew, starts: Moment) -> SheetCell:
    clock, takes = run.clocks[crew.group], run.takes(crew.group)
    if takes is None:
        least = least_seconds(run.of(crew.group), clock)
        return SheetCell(crew, starts.after(least, Missing(run.path, crew.group, clock.missing)))
    return SheetCell(
        crew,
        starts.after(takes.value),
        clock_over_s=_from(starts, clock.clock),
        last_touch_s=_from(starts, clock.last_touch) if run.is_in_water else None,
    )


def _from(starts: Moment, lasts: Working | None) -> float | None:
    """When something is over that begins with the part, in seconds from the start of the slot; None
    where one of the two is not known.
    """
    return None if lasts is None or starts.missing else starts.s + lasts.value


def _waiting(
    cells: Iterable[SheetCell], until: Moment, among: Sequence[SheetCell]
) -> tuple[SheetCell, ...]:
    """Cells that wait until a moment, for whoever is last ``among`` them and others."""
    slowest = max(among, key=lambda cell: cell.ends.s, default=None)

    def wait(cell: SheetCell) -> SheetCell:
        waits = None if until.missing else until.s - cell.ends.s
        return replace(cell, waits_s=waits, waits_for=slowest.crew if slowest and waits else None)

    return tuple(map(wait, cells))
