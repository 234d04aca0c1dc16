"""The parts of a practice that is opened to be changed, each as it stands there: held, so that what
nobody could compose, stations, a test, lines of its own, keeps its clock, its lanes and its words.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property, reduce

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.at_once import gear_at_once, hands
from almanac.arithmetic.composing_asked import in_a_lane
from almanac.arithmetic.composing_pieces import (
    HELD,
    PLACES,
    TENTHS,
    UNKNOWN,
    Offer,
    PracticePiece,
    Size,
    Sizes,
)
from almanac.arithmetic.composing_table import TableSquad
from almanac.arithmetic.crews import FIRST, SECOND
from almanac.arithmetic.leaving_out import comes_home
from almanac.arithmetic.out_of_breath import NEVER
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.arithmetic.under_water import is_under
from almanac.checks.after_fast import breath_of
from almanac.checks.run_room import Tally, tally
from almanac.model.pool import START_END
from almanac.model.vocabularies import TESTS
from almanac.report.compose_facts import Places
from almanac.report.compose_laid import Layer
from almanac.report.compose_offers import doses_of, up

_WHOLE = 1000  # permille


@dataclass(frozen=True)
class HeldParts:
    """Tells of the parts of one practice, whose every clock is known, for its squad as it stands
    in the table.
    """

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

    def piece(self, number: int) -> PracticePiece:
        """A part as a piece that stands where it is written: as nothing that is chosen."""
        rows, practice = self.rows(number), self.summary.practice
        drills = self._drills(number)
        word = self.analysis.catalogue.words("practice-parts")[practice.parts[number].part].title
        sets = [row.run.swim_set.title for row in rows if row.run.swim_set]
        needs = {need for id in drills for need in self.analysis.catalogue.drills[id].needs_first}
        known = self.places.drills
        return PracticePiece(
            of=HELD,
            id=practice.id,
            part=number,
            title=" / ".join(dict.fromkeys(sets)) or word,
            roles=PLACES[number],
            goals=(),
            shares=(),
            shows=(),
            drills=tuple(sorted(known[id] for id in drills)),
            asks=tuple(sorted(known[need] for need in needs - drills)),
            strokes=(),
            kick=0,
            hardest=0,
            effort=0,
            gear=(),
            begins=self._worn(rows, 0),
            ends=self._worn(rows, -1),
            most_in_lane=0,
            talk=up(TENTHS * self._lead(rows)),
            what="",
            written=1,
            cue="",
            called=word,
        )

    def gear(self, number: int) -> list[tuple[int, int]]:
        """Each piece of gear of a part, with how many are in use at once."""
        found = gear_at_once(self.rows(number))
        return sorted((self.places.gear[id], heads) for id, heads, _ in found)

    def offers(self) -> list[Offer]:
        """What each part comes to; of a drill that is done more than its dose lets the level, by
        this reckoning, no more is done than there is.
        """
        count = len(self.summary.practice.parts)
        sizes = [self._size(number) for number in range(count)]
        whole: dict[int, tuple[int, int]] = {}
        for drill, plain, strict in (dose for own in sizes for dose in own.doses):
            before, stricter = whole.get(drill, (0, 0))
            is_known = UNKNOWN not in (plain, before)
            whole[drill] = before + plain if is_known else UNKNOWN, stricter + strict
        return [
            Offer(number, self._adults(number), self._room, (Sizes(_within(own, whole)),))
            for number, own in enumerate(sizes)
        ]

    def taught(self) -> list[int]:
        """The drills that parts need first and neither have had done before nor hold."""
        done, found = set[str](), set[str]()
        for number in range(len(self.summary.practice.parts)):
            done |= self._drills(number)
            every = self.analysis.catalogue.drills
            found |= {need for id in self._drills(number) for need in every[id].needs_first} - done
        return sorted(self.places.drills[id] for id in found)

    def stays(self, number: int) -> str:
        """Why nothing may change places with a part: "end" where it begins or ends at the far end
        and so cannot be left out either, "land", "test"; "" where it may.
        """
        part, course = self.summary.practice.parts[number], self.summary.pool.course
        rows = self.rows(number)
        is_away = any(own.end != START_END for _, own in part.doings)
        swums = [own for row in rows if row.run.is_in_water for own in row.run.each]
        if is_away or not all(comes_home(own.reps, course) for own in swums):
            return "end"
        if any(not row.run.is_in_water for row in rows):
            return "land"
        return "test" if part.part == TESTS else ""

    def _drills(self, number: int) -> set[str]:
        reps = [rep for row in self.rows(number) for rep in row.run.every_rep]
        return {piece.drill.id for rep in reps for piece in rep.pieces}

    def _lead(self, rows: list[SheetRow]) -> float:
        """What goes before what begins first, without what only a change of gear takes, in
        seconds.
        """
        starts = min(row.starts.s for row in rows)
        return min(row.talk_s + row.change_s for row in rows if row.starts.s == starts)

    def _worn(self, rows: list[SheetRow], end: int) -> tuple[int, ...]:
        """The gear worn at the first (0) or the last (-1) length, by whichever group."""
        tracks = {row.track: row.run for row in (rows if end else reversed(rows))}
        each = [own.reps for run in tracks.values() for own in run.each if own.reps]
        worn = {id for reps in each for id in reps[end].pieces[end].gear}
        return tuple(sorted(self.places.gear[id] for id in worn))

    def _adults(self, number: int) -> int:
        catalogue = self.analysis.catalogue
        need = hands(self.rows(number), catalogue.gear, catalogue.club.gear_owned)
        return need.adults if need else 1

    @cached_property
    def _in_lane(self) -> tuple[int, ...]:
        """By lane group the swimmers of its fullest lane, in the lanes that the practice has."""
        lanes = self.summary.practice.lanes.groups
        return tuple(
            in_a_lane(own.heads, len(lanes[own.id]) if lanes.get(own.id) else own.lanes)
            for own in self.squad.groups
        )

    @cached_property
    def _room(self) -> tuple[int, ...]:
        """No part has been worked out with more of them in a lane."""
        return self._in_lane

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

    def _size(self, number: int) -> Size:
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
        extra = [max(0, own - few) for own, few in zip(self._in_lane, usual, strict=True)]
        return tuple(
            up(TENTHS * found[own.id]) - more * own.gap if own.id in found else 1
            for own, more in zip(self.squad.groups, extra, strict=True)
        )


def _within(own: Size, whole: Mapping[int, tuple[int, int]]) -> Size:
    """A size whose doses, with those of the other parts, come to no more than the whole."""

    def dose(drill: int, plain: int, strict: int) -> tuple[int, int, int]:
        sums = whole[drill]
        is_plain = sums[0] != UNKNOWN
        counted = sums[0] if is_plain else sums[1]
        if counted <= _WHOLE:
            return drill, plain, strict
        least = _WHOLE * (plain if is_plain else strict) // counted
        return drill, least, least

    return Size(
        own.number, own.distance, own.times, own.fast, own.resisted, own.plates, own.under,
        own.goes_under, own.calm, tuple(dose(*one) for one in own.doses),
    )  # fmt: skip
