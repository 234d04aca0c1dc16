"""The parts of a practice that is opened to be changed, each as it stands there: held, so that what
nobody could compose, stations, a test, lines of its own, keeps its clock, its lanes and its words.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.at_once import gear_at_once, hands
from almanac.arithmetic.composing.pieces import (
    HELD,
    PLACES,
    TENTHS,
    UNKNOWN,
    Offer,
    PracticePiece,
    Size,
    Sizes,
)
from almanac.arithmetic.composing.table import TableSquad
from almanac.arithmetic.leaving_out import comes_home
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.model.pool import START_END
from almanac.model.vocabularies import TESTS
from almanac.report.compose.facts import Places
from almanac.report.compose.held_sizes import HeldSizes
from almanac.report.compose.offers import up

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
    def _sizes(self) -> HeldSizes:
        return HeldSizes(self.analysis, self.summary, self.squad, self.places)

    def piece(self, number: int) -> PracticePiece:
        """A part as a piece that stands where it is written: as nothing that is chosen."""
        rows, practice = self._sizes.rows(number), self.summary.practice
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
        found = gear_at_once(self._sizes.rows(number))
        return sorted((self.places.gear[id], heads) for id, heads, _ in found)

    def offers(self) -> list[Offer]:
        """What each part comes to, with no more in a lane than it has been worked out for. Of a
        drill that is done more than its dose lets the level, by this reckoning, no more is done
        than there is.
        """
        count = len(self.summary.practice.parts)
        sizes = [self._sizes.size(number) for number in range(count)]
        whole: dict[int, tuple[int, int]] = {}
        for drill, plain, strict in (dose for own in sizes for dose in own.doses):
            before, stricter = whole.get(drill, (0, 0))
            is_known = UNKNOWN not in (plain, before)
            whole[drill] = before + plain if is_known else UNKNOWN, stricter + strict
        return [
            Offer(number, self._adults(number), self._sizes.in_lane, (Sizes(_within(own, whole)),))
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
        rows = self._sizes.rows(number)
        is_away = any(own.end != START_END for _, own in part.doings)
        swums = [own for row in rows if row.run.is_in_water for own in row.run.each]
        if is_away or not all(comes_home(own.reps, course) for own in swums):
            return "end"
        if any(not row.run.is_in_water for row in rows):
            return "land"
        return "test" if part.part == TESTS else ""

    def _drills(self, number: int) -> set[str]:
        reps = [rep for row in self._sizes.rows(number) for rep in row.run.every_rep]
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
        need = hands(self._sizes.rows(number), catalogue.gear, catalogue.club.gear_owned)
        return need.adults if need else 1


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
