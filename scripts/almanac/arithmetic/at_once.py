"""What is in use at the same moment of a practice: gear, adults, helpers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from almanac.arithmetic.crews import Crew
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.model.entry import Helper
from almanac.model.knowledge import Gear

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
    """Those who are needed at one moment beside the swimmers: how many for each job, and how many
    of them must be adults. ``run`` is a part of that moment.
    """

    run: PartRun
    jobs: Mapping[str, int]
    adults: int


LEADS = "lead"  # the job of an adult who takes a station or a list of parts alone


def hands(
    sheet: Sequence[SheetRow], gear: Mapping[str, Gear], owned: Mapping[str, int]
) -> Hands | None:
    """Those who are needed at the moment that needs the most adults, and among such moments the
    most hands.

    A part with ``led_by`` takes one adult. Drills, gear and parts say in ``helpers`` whom they need
    and for how many one is enough: a lane in use, a piece of gear in use (no more than the club
    owns), a lane group, or the whole part. One adult at least is on deck.
    """
    found = [_hands(busy, gear, owned) for busy in moments(sheet) if busy]
    return max(found, key=lambda own: (own.adults, sum(own.jobs.values())), default=None)


def _hands(busy: tuple[Busy, ...], gear: Mapping[str, Gear], owned: Mapping[str, int]) -> Hands:
    jobs: Counter[str] = Counter()
    adults = 0
    by_run: dict[int, tuple[PartRun, list[Crew]]] = {}
    for row, cell in busy:
        by_run.setdefault(id(row.run), (row.run, []))[1].append(cell.crew)
    for run, crews in by_run.values():
        if run.doing.led_by:
            jobs[LEADS] += 1
            adults += 1
        for helper, count in _needed(run, crews, gear, owned).items():
            jobs[helper.job] += count
            adults += count if helper.adult else 0
    return Hands(busy[0][0].run, dict(jobs), max(1, adults))


def _needed(
    run: PartRun, crews: Sequence[Crew], gear: Mapping[str, Gear], owned: Mapping[str, int]
) -> Mapping[Helper, int]:
    """Helpers of one part with how many of each; one who is asked for twice is needed once."""
    found: dict[Helper, int] = {}

    def ask(helpers: Sequence[Helper], users: Sequence[Crew], pieces: int) -> None:
        for helper in helpers:
            count = {
                "lane": sum(crew.lane_group.lanes for crew in users),
                "piece": pieces,
                "group": len(users),
                "part": 1,
            }[helper.each]
            found[helper] = max(found.get(helper, 0), count)

    ask(run.doing.helpers, crews, 0)
    users: dict[str, list[Crew]] = {}
    drills: dict[str, tuple[tuple[Helper, ...], list[Crew]]] = {}
    for crew in crews:
        swum = run.of(crew.group)
        for id in swum.gear:
            users.setdefault(id, []).append(crew)
        for drill in {piece.drill.id: piece.drill for piece in swum.pieces}.values():
            drills.setdefault(drill.id, (drill.helpers, []))[1].append(crew)
    for id, own in users.items():
        heads = sum(crew.heads_at_once(run.most_in_lane) for crew in own)
        ask(gear[id].helpers, own, min(heads, owned.get(id, heads)))
    for helpers, own in drills.values():
        ask(helpers, own, 0)
    return found
