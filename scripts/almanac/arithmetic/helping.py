"""Whom a part of a practice needs beside those who do it, and which job falls to its coach."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from almanac.arithmetic.crews import Crew
from almanac.arithmetic.part_run import PartRun
from almanac.model.entry import Helper
from almanac.model.gear import Gear
from almanac.model.manner import ADULT

WATCHER, TIMEKEEPER, CORD_HOLDER = "watcher", "timekeeper", "cord-holder"
"""Jobs that the reckoning asks for by name."""
WATCHES = Helper(TIMEKEEPER, "lane")


@dataclass(frozen=True)
class Help:
    """So many (``count``) of a helper, for the drills and the gear that ask for it (``titles``;
    none where the part itself does). ``by_coach`` where one of them is whoever takes the part, and
    ``under_water`` where a drill under water asks for it.
    """

    helper: Helper
    count: int
    titles: tuple[str, ...] = ()
    by_coach: bool = False
    under_water: bool = False

    @property
    def others(self) -> int:
        """How many it takes beside the coach."""
        return self.count - self.by_coach


def help_of(
    run: PartRun, crews: Sequence[Crew], gear: Mapping[str, Gear], owned: Mapping[str, int]
) -> tuple[Help, ...]:
    """Whom some crews of a part need, counted from ``helpers`` of the part, of its drills and of
    its gear: for each lane in use, each piece of gear in use (no more than the club owns), each
    lane group, or once for the part. Who is asked for twice is needed once.

    Where times are noted (``note_result``) somebody keeps time in each lane, unless the part says
    itself who does. ``coach_is`` names the job that falls to whoever takes the part: one of those
    who do it is then no further person, save a watcher of what goes under water, who does nothing
    else. House convention.
    """
    found: dict[Helper, list[_Asked]] = {}
    for own in _asked(run, crews, gear, owned):
        found.setdefault(own.helper, []).append(own)
    every = (_help(helper, asked) for helper, asked in found.items())
    return tuple(_with_coach((own for own in every if own.count), run.doing.coach_is))


@dataclass(frozen=True)
class _Asked:
    """A helper that the part, a drill or a piece of gear asks for, and those who do or use it."""

    helper: Helper
    users: Sequence[Crew]
    title: str = ""
    pieces: int = 0
    under_water: bool = False


def _help(helper: Helper, asked: Sequence[_Asked]) -> Help:
    """How many of a helper it takes for all who ask: lanes and lane groups of different drills are
    added, those of the same are not.
    """
    users = {(crew.group, crew.half): crew for own in asked for crew in own.users}
    count = {
        "lane": sum(crew.lane_group.lanes for crew in users.values()),
        "piece": max(own.pieces for own in asked),
        "group": len(users),
        "part": 1,
    }[helper.each]
    titles = tuple(dict.fromkeys(own.title for own in asked if own.title))
    return Help(helper, count, titles, under_water=any(own.under_water for own in asked))


def _with_coach(every: Iterable[Help], job: str) -> Iterator[Help]:
    """The same, with one of the helpers of a job done by the coach; an adult before others."""
    each = tuple(every)
    fit = [
        own for own in each if own.helper.job == job and not (own.under_water and job == WATCHER)
    ]
    chosen = max(fit, key=lambda own: own.helper.adult, default=None)
    yield from (replace(own, by_coach=own is chosen) for own in each)


def _asked(
    run: PartRun, crews: Sequence[Crew], gear: Mapping[str, Gear], owned: Mapping[str, int]
) -> Iterator[_Asked]:
    """Whom the part, its gear and its drills ask for, each on its own."""
    yield from (_Asked(helper, crews) for helper in run.doing.helpers)
    worn: dict[str, list[Crew]] = {}
    drills: dict[str, list[Crew]] = {}
    timed: list[Crew] = []
    known = {}
    for crew in crews:
        swum = run.of(crew.group)
        for id in swum.gear:
            worn.setdefault(id, []).append(crew)
        for drill in {piece.drill.id: piece.drill for piece in swum.pieces}.values():
            known[drill.id] = drill
            drills.setdefault(drill.id, []).append(crew)
        if any(rep.item.note_result == "time" and rep.distance for rep in swum.reps):
            timed.append(crew)
    for id, own in worn.items():
        heads = sum(crew.heads_at_once(run.most_in_lane) for crew in own)
        pieces = min(heads, owned.get(id, heads))
        for helper in _holders(run, own, gear[id]):
            yield _Asked(helper, own, gear[id].title, pieces)
    for id, own in drills.items():
        drill = known[id]
        for helper in drill.helpers:
            yield _Asked(helper, own, drill.title, under_water=drill.is_under_water)
    if not any(one.job == TIMEKEEPER for one in run.doing.helpers):
        yield _Asked(WATCHES, timed)


def _holders(run: PartRun, users: Iterable[Crew], gear: Gear) -> tuple[Helper, ...]:
    """The helpers of a piece of gear: who holds a cord is an adult where the reps say so."""
    held = {
        rep.item.cord.held_by
        for crew in users
        for rep in run.of(crew.group).reps
        if rep.item.cord and gear.id in rep.gear
    }
    if ADULT not in held:
        return gear.helpers
    return tuple(
        replace(own, adult=True) if own.job == CORD_HOLDER else own for own in gear.helpers
    )
