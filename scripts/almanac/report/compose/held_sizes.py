"""What a part of a practice that is opened comes to as it stands there: its clocks, and what counts
against the limits of a practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property, reduce

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.asked import in_a_lane
from almanac.arithmetic.composing.pieces import TENTHS, UNKNOWN, Size
from almanac.arithmetic.composing.table import TableSquad
from almanac.arithmetic.crews import FIRST, SECOND
from almanac.arithmetic.out_of_breath import NEVER
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.arithmetic.under_water import is_under
from almanac.checks.after_fast import breath_of
from almanac.checks.run_room import Tally, tally
from almanac.report.compose.facts import Places
from almanac.report.compose.laid import Layer
from almanac.report.compose.offers import doses_of, up


@dataclass(frozen=True)
class HeldSizes:
    """Adds up the parts of one practice, whose every clock is known."""

    analysis: Analysis
    summary: PracticeSummary
    squad: TableSquad
    places: Places

    @cached_property
    def _layer(self) -> Layer:
        return Layer(self.analysis, self.squad.id, self.summary.practice.pool)

    def rows(self, number: int) -> list[SheetRow]:
        """The rows of the run sheet of a part, by its number from 0: more than one of stations and
        of what is done apart.
        """
        return [row for row in self.summary.sheet if row.stage.number == number + 1]

    @cached_property
    def in_lane(self) -> tuple[int, ...]:
        """By lane group the swimmers of its fullest lane, in the lanes that the practice has."""
        lanes = self.summary.practice.lanes.groups
        return tuple(
            in_a_lane(own.heads, len(lanes[own.id]) if lanes.get(own.id) else own.lanes)
            for own in self.squad.groups
        )

    def _ways(self, number: int) -> Iterator[tuple[str, list[SheetRow]]]:
        """What each lane group does of a part, in order, and each half of one that is halved."""
        for group in self.squad.groups:
            for but in (SECOND, FIRST) if group.id in self.summary.halved else (SECOND,):
                own = [
                    row
                    for row in self.rows(number)
                    if any(cell.group == group.id and cell.crew.half != but for cell in row.cells)
                ]
                if own:
                    yield group.id, own

    def size(self, number: int) -> Size:
        """A part as it is written, which is the only size that it has."""
        far, fast, sums = [0.0], [0.0], [Tally()]
        under, calm = NEVER, NEVER
        for group, rows in self._ways(number):
            swums = [row.run.of(group) for row in rows]
            far.append(float(sum(own.distance.value for own in swums)))
            fast.append(sum(own.metres * float(own.shares.fast or 0) for own in swums))
            sums.append(reduce(Tally.__add__, (tally(self.analysis, own) for own in swums)))
            first, after = self._breath(group, rows)
            under, calm = min(under, first), min(calm, after)
        return Size(
            number=1,
            distance=up(max(far)),
            times=self._times(number),
            fast=up(max(fast)),
            resisted=up(max(own.resisted for own in sums)),
            plates=up(max(own.plates for own in sums)),
            under=up(max(own.under_metres for own in sums)),
            goes_under=UNKNOWN if under == NEVER else int(TENTHS * under),
            calm=UNKNOWN if calm == NEVER else int(TENTHS * calm),
            doses=tuple(sorted(doses_of(self._layer, sums, self.places.drills))),
        )

    def _breath(self, group: str, rows: list[SheetRow]) -> tuple[float, float]:
        """Until the group first goes under water with no fast work before, and since its last fast
        work, in seconds; waits and changes are left out, so that both are the least they can be.
        """
        limit = self.analysis.catalogue.policy.limit("push_off_most")
        before, after = breath_of(self.analysis), breath_of(self.analysis)
        before.since_s = 0.0
        for row in rows:
            own, clock = row.run.of(group), row.run.clocks[group]
            before.swim(own.events, own.course, clock)
            after.swim(own.events, own.course, clock)
        goes = any(is_under(rep, limit) for row in rows for rep in row.run.of(group).reps)
        first = min((own.since_s for own in before.found if own.carried), default=NEVER)
        return first if goes else NEVER, after.since_s

    def _times(self, number: int) -> tuple[int | None, ...]:
        """By lane group from the part's start until it is done, with its usual heads in a lane."""
        rows = self.rows(number)
        starts, found = min(row.starts.s for row in rows), dict[str, float]()
        for cell in (cell for row in rows for cell in row.cells):
            found[cell.group] = max(found.get(cell.group, 0.0), cell.ends.s - starts)
        usual = [in_a_lane(own.heads, own.lanes) for own in self.squad.groups]
        extra = [max(0, own - few) for own, few in zip(self.in_lane, usual, strict=True)]
        return tuple(
            up(TENTHS * found[own.id]) - more * own.gap if own.id in found else 1
            for own, more in zip(self.squad.groups, extra, strict=True)
        )


def most_held(
    analysis: Analysis, squad: TableSquad, places: Places, broken: frozenset[str]
) -> Mapping[str, Mapping[int, int]]:
    """By pool and drill the most, in permille of its dose, that the parts of one of the squad's
    practices have of it: what may stand already where one is opened. ``broken`` are files with an
    error, which nobody opens.
    """
    found: dict[str, dict[int, int]] = {}
    for id, practice in analysis.catalogue.practices.items():
        summary = analysis.practices.get(id)
        if practice.squad != squad.id or practice.file in broken:
            continue
        if summary is None or summary.ends_s is None:
            continue
        sizes, whole = HeldSizes(analysis, summary, squad, places), dict[int, int]()
        for number in range(len(practice.parts)):
            for drill, plain, strict in sizes.size(number).doses:
                whole[drill] = whole.get(drill, 0) + max(plain, strict)
        most = found.setdefault(practice.pool, {})
        most.update({own: max(most.get(own, 0), has) for own, has in whole.items()})
    return found
