"""What is in use at the same moment of a practice: gear, adults, helpers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from almanac.arithmetic.crews import Crew
from almanac.arithmetic.helping import help_of
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.model.gear import Gear

Busy = tuple[SheetRow, SheetCell]  # a crew in the part that it does


def moments(sheet: Sequence[SheetRow]) -> Iterator[tuple[Busy, ...]]:
    """Who does what at each moment at which somebody begins something: from a part's start to the
    crew's own end. Where an end is not known, until the stage ends.
    """
    for _, of_stage in groupby(sheet, key=lambda row: id(row.stage)):
        rows = tuple(of_stage)
        busy = [(row, cell) for row in rows for cell in row.cells]
        for moment in dict.fromkeys(row.starts.s for row in rows):
            yield tuple(own for own in busy if _is_under_way(*own, moment))


def _is_under_way(row: SheetRow, cell: SheetCell, moment: float) -> bool:
    return row.starts.s <= moment and (bool(cell.ends.missing) or moment < cell.ends.s)


def gear_at_once(sheet: Sequence[SheetRow]) -> Iterator[tuple[str, int, PartRun]]:
    """Each piece of gear with the most heads that use it at the same moment, and the part in which
    they do.
    """
    most: dict[str, tuple[int, PartRun]] = {}
    for busy in moments(sheet):
        heads: Counter[str] = Counter()
        where: dict[str, PartRun] = {}
        for row, cell in busy:
            for gear in row.run.of(cell.group).gear:
                heads[gear] += cell.crew.heads_at_once(row.run.most_in_lane)
                where.setdefault(gear, row.run)
        for gear, count in heads.items():
            if gear not in most or count > most[gear][0]:
                most[gear] = count, where[gear]
    for gear, (count, run) in most.items():
        yield gear, count, run


@dataclass(frozen=True)
class Hands:
    """Those who are needed at one moment beside the swimmers: how many for each job, how many of
    them ``must`` be adults, and so how many ``adults``. ``run`` is a part of that moment.
    """

    run: PartRun
    jobs: Mapping[str, int]
    must: Mapping[str, int]

    @property
    def adults(self) -> int:
        """How many must be adults."""
        return sum(self.must.values())


LEADS = "lead"  # the job of an adult who takes a part alone
COACHES = "coach"  # and of the one who has all that nobody takes alone


def hands(
    sheet: Sequence[SheetRow], gear: Mapping[str, Gear], owned: Mapping[str, int]
) -> Hands | None:
    """Those who are needed at the moment that needs the most adults, and among such moments the
    most hands: one adult for each part with ``led_by``, one who coaches all the other parts of that
    moment together, and whom the parts need beside them. A job that falls to the coach
    (``coach_is``) takes nobody more; whoever coaches several parts at once does one such job.
    """
    found = [_hands(busy, gear, owned) for busy in moments(sheet) if busy]
    return max(found, key=lambda own: (own.adults, sum(own.jobs.values())), default=None)


def _hands(busy: tuple[Busy, ...], gear: Mapping[str, Gear], owned: Mapping[str, int]) -> Hands:
    jobs: Counter[str] = Counter({LEADS: 0, COACHES: 0})  # these are told first
    must: Counter[str] = Counter({LEADS: 0, COACHES: 0})
    by_run: dict[int, tuple[PartRun, list[Crew]]] = {}
    for row, cell in busy:
        by_run.setdefault(id(row.run), (row.run, []))[1].append(cell.crew)
    is_free = True  # whoever coaches what nobody takes alone, for one more job
    for run, crews in by_run.values():
        alone = bool(run.doing.led_by)
        jobs[LEADS if alone else COACHES] += 1
        for own in help_of(run, crews, gear, owned):
            count = own.others if is_free or alone else own.count
            is_free = is_free and (alone or not own.by_coach)
            jobs[own.helper.job] += count
            must[own.helper.job] += count if own.helper.adult else 0
    jobs[COACHES] = min(jobs[COACHES], 1)
    must.update({job: jobs[job] for job in (LEADS, COACHES)})
    return Hands(busy[0][0].run, dict(+jobs), dict(+must))
