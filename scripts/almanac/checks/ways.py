"""The ways in which sets and parts of practices are swum, each with the level that its limits are
of.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.scaling import REPS, ROUNDS, scalable, scaled
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.swum import Swum
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.model.variants import given
from almanac.source.reader import DataPath

Said = tuple[str, DataPath, str, str]  # code, path in the items, message, hint


@dataclass(frozen=True)
class Way:
    """One way of swimming a set, or a part of a practice: what is swum, on the clocks of the lane
    groups that swim it so, and the lowest level among these.

    ``start`` leads to what holds its items in the file of ``entry``. ``asked`` says that it is the
    set with as many rounds or reps as it may be asked for, or in a variant that nobody has yet.
    """

    entry: Entry
    start: DataPath
    swum: Swum
    clocks: tuple[GroupClock, ...]
    level: str
    is_of_set: bool = False
    asked: str = ""
    is_scaled: bool = False

    @property
    def is_part(self) -> bool:
        """Whether it is a part of a practice, and no set by itself."""
        return isinstance(self.entry, Practice)

    def path(self, own: DataPath) -> DataPath:
        """Where something of its items stands; in a practice that swims a set, at the set."""
        return self.start if self.is_of_set else (*self.start, *own)


def lowest(catalogue: Catalogue, levels: Iterable[str]) -> str:
    """The lowest of some levels; of none, the lowest that there is."""
    order = list(catalogue.words("levels"))
    return min(levels, key=order.index, default=order[0])


def entry_level(catalogue: Catalogue, entry: SwimSet | Practice) -> str:
    """The level of a set; of a practice that of its squad."""
    if isinstance(entry, SwimSet):
        return entry.level
    return catalogue.club.squads[entry.squad].level


def group_level(catalogue: Catalogue, group: str) -> str:
    """The level of a lane group: its squad's."""
    return catalogue.club.squads[catalogue.lane_groups[group].squad].level


def set_ways(analysis: Analysis, id: str) -> tuple[Way, ...]:
    """Every way of swimming a computable set, and where the entry states bounds, of the most that
    it may be asked for. Worked out once for an analysis.
    """
    return analysis.once((set_ways, id), lambda: tuple(_set_ways(analysis, id)))


def _set_ways(analysis: Analysis, id: str) -> Iterator[Way]:
    swim_set, summary = analysis.computable[id], analysis.summary(id)
    yield from _ways(analysis, swim_set, summary, "")
    yield from _of_nobody(analysis, swim_set)
    for what in (ROUNDS, REPS):
        scale = scalable(swim_set, what, analysis.catalogue.policy.limit("most_reps"))
        if scale and scale.stated and scale.most > scale.written:
            more = scaled(swim_set, scale, scale.most)
            own = summarise(analysis.timing, more, swim_set.course, analysis.meant(swim_set))
            for way in _ways(analysis, swim_set, own, f" with {scale.most} {what}"):
                yield replace(way, is_scaled=True)


def _of_nobody(analysis: Analysis, swim_set: SwimSet) -> Iterator[Way]:
    """As it is swum in each variant that nobody is given yet: a practice may give it."""
    meant = analysis.meant(swim_set)
    for name, groups in swim_set.variants.items():
        if not groups:
            own = given(swim_set, dict.fromkeys(meant, name))
            laid = summarise(analysis.timing, own, swim_set.course, meant)
            yield from _ways(analysis, swim_set, laid, f" in variant {name}")


def _ways(analysis: Analysis, swim_set: SwimSet, summary: SetSummary, asked: str) -> Iterator[Way]:
    catalogue, meant = analysis.catalogue, analysis.meant(swim_set)
    ways = {id(summary.of(group)): summary.of(group) for group in meant}
    for swum in ways.values() if meant else (summary.first,):
        groups = [group for group in meant if summary.of(group) is swum]
        levels = [group_level(catalogue, group) for group in groups]
        if len(ways) < 2:  # where groups differ each is judged by what it does itself
            levels.append(swim_set.level)
        clocks = tuple(summary.clocks[group] for group in groups)
        yield Way(swim_set, (), swum, clocks, lowest(catalogue, levels), asked=asked)


def part_ways(analysis: Analysis, summary: PracticeSummary) -> Iterator[tuple[PartRun, Way]]:
    """Every part of a practice, once, as each lane group of the squad swims it."""
    practice = summary.practice
    level = analysis.catalogue.club.squads[practice.squad].level
    for run in {run.path: run for run in summary.runs}.values():
        for swum, groups in run.ways:
            clocks = tuple(run.clocks[group] for group in groups)
            start = (*run.path, "set") if run.swim_set else run.path
            yield run, Way(practice, start, swum, clocks, level, is_of_set=bool(run.swim_set))


def is_above(catalogue: Catalogue, one: str, other: str) -> bool:
    """Whether a level is above another."""
    order = list(catalogue.words("levels"))
    return order.index(one) > order.index(other)


def judged_ways(analysis: Analysis, judge: Callable[[Way], Iterable[Said]]) -> Iterator[Coded]:
    """What ``judge`` says of each way of swimming a set, and of each part of a practice. What is
    told at a set is told again at a practice only where that is of a lower level.
    """
    catalogue = analysis.catalogue
    told: dict[str, set[tuple[str, str]]] = {}
    for id in analysis.computable:
        for way in set_ways(analysis, id):
            for code, path, message, hint in judge(way):
                told.setdefault(id, set()).add((way.level, code))
                own = Problem(way.entry, way.path(path), message + way.asked, hint)
                yield code, own._replace(level=way.level)
    for summary in analysis.practices.values():
        for run, way in part_ways(analysis, summary):
            known = told.get(run.swim_set.id, set()) if run.swim_set else set()
            at_set = {code for level, code in known if not is_above(catalogue, level, way.level)}
            for code, path, message, hint in judge(way):
                if code not in at_set:
                    own = Problem(way.entry, way.path(path), message, hint, level=way.level)
                    yield code, own
