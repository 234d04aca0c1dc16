"""A practice as stages: what begins at one moment for all who take part, and ends when the last of
them is done.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from almanac.arithmetic.crews import Crew, crews_named
from almanac.arithmetic.part_run import PartRun, SetInPool, run_part
from almanac.arithmetic.timing import Timing
from almanac.model.club import LaneGroup
from almanac.model.pool import Pool
from almanac.model.practice import Doing, Practice, PracticePart
from almanac.source.reader import DataPath


@dataclass(frozen=True)
class SharedStart:
    """What begins at one moment for all: lists of parts (``tracks``) that run beside each other,
    each part of a list after the one before it. A turn of stations is a stage of its own.
    ``number`` is the part's, from 1; ``turn`` that of the stations, None where none changes over.

    Its talk goes before it for all (``talk_s``), and before each turn but the first the time to
    change over (``change_s``).
    """

    number: int
    turn: int | None
    talk_s: float
    change_s: float
    tracks: tuple[tuple[PartRun, ...], ...]


@dataclass(frozen=True)
class Staging:
    """What is needed to lay the parts of a practice out."""

    timing: Timing
    practice: Practice
    pool: Pool
    groups: Mapping[str, LaneGroup]
    set_in_pool: SetInPool

    def run(self, path: DataPath, word: str, doing: Doing, crews: tuple[Crew, ...]) -> PartRun:
        """What some crews do."""
        return run_part(self.timing, path, word, doing, crews, self.pool, self.set_in_pool)

    def crews(self, names: tuple[str, ...], half: str, doing: Doing) -> tuple[Crew, ...]:
        """Those who are named, in the lanes that they have for it; a hall has none."""
        crews = crews_named(names, half, self.groups, self.practice.lanes, doing.lanes)
        return tuple(replace(own, lanes=()) for own in crews) if self.pool.is_land else crews

    def stages(self) -> Iterator[SharedStart]:
        """The stages, in order."""
        for number, part in enumerate(self.practice.parts):
            path: DataPath = ("parts", number)
            if part.apart:
                yield self._apart(number + 1, part, path)
            elif part.stations:
                yield from self._turns(number + 1, part, path)
            else:
                run = self.run(path, part.part, part, self.crews(tuple(self.groups), "", part))
                yield SharedStart(number + 1, None, 0.0, 0.0, ((run,),))

    def _apart(self, number: int, part: PracticePart, path: DataPath) -> SharedStart:
        tracks = tuple(
            tuple(
                self.run(
                    (*path, "apart", place, "parts", step),
                    inner.part,
                    inner,
                    self.crews(own.groups, own.half, inner),
                )
                for step, inner in enumerate(own.parts)
            )
            for place, own in enumerate(part.apart)
        )
        return SharedStart(number, None, float(part.talk or 0), 0.0, tracks)

    def _turns(self, number: int, part: PracticePart, path: DataPath) -> Iterator[SharedStart]:
        """Each turn of the stations: who began at one goes on to the next, from the last to the
        first, until all have been at all.
        """
        stations, begin = part.stations, beginners(part, tuple(self.groups))
        for turn in range(len(stations)):
            tracks = []
            for place, (names, half) in enumerate(begin):
                if not names and not half:
                    continue  # nobody begins here, so nobody is here one turn later at the next
                at = (place + turn) % len(stations)
                crews = self.crews(names, half, stations[at])
                tracks.append((self.run((*path, "stations", at), part.part, stations[at], crews),))
            talk = float(part.talk or 0) if turn == 0 else 0.0
            change = float(part.change or 0) if turn else 0.0
            yield SharedStart(number, turn + 1, talk, change, tuple(tracks))


def beginners(
    part: PracticePart, groups: tuple[str, ...]
) -> tuple[tuple[tuple[str, ...], str], ...]:
    """Who begins at each station: the lane groups that are named, or a half of the lanes; where no
    station says it, the groups in the club's order, one at each station, more where there are more
    groups than stations.
    """
    stations = part.stations
    if any(station.begins or station.half for station in stations):
        return tuple((station.begins, station.half) for station in stations)
    return tuple((groups[place :: len(stations)], "") for place in range(len(stations)))
