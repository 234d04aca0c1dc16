"""What the finder knows of every drill and set."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.glance import chief_drill, drill_seconds, whole_minutes
from almanac.arithmetic.pace import Target
from almanac.arithmetic.timed_reps import GroupClock
from almanac.model.catalogue import Key
from almanac.model.entry import Entry
from almanac.model.knowledge import Drill
from almanac.model.swim_set import SwimSet
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.report.ways import distance_words
from almanac.units import COURSES

VOCABULARIES = {
    facet: VOCABULARY_OF[facet] for facet in ("goal", "position", "stroke", "effort", "level")
}

Minutes = list[list[int | None]]  # by pool, then by lane group; None where not known


@dataclass(frozen=True)
class Facts:
    """What the finder knows of one entry. Words by facet; ``minutes`` by pool and lane group, None
    where not known, below zero where they hang on an assumed time.

    A set mends what the drill mends that it is mostly made of, and shows that drill's figure.
    """

    entry: Entry
    words: Mapping[str, tuple[str, ...]]
    needs: tuple[str, ...]
    suits: tuple[str, ...]
    minutes: Minutes
    figure: str
    distance: str
    more: tuple[str, ...]


@dataclass(frozen=True)
class FinderFacts:
    """The facts of every drill and set of a catalogue; ``pictures`` names the body figure of each
    drill. ``minutes`` gives what ``minutes_of`` would, where that is known already.
    """

    analysis: Analysis
    pictures: Mapping[str, str]
    minutes: Callable[[Key], Minutes] | None = None

    def __iter__(self) -> Iterator[Facts]:
        """Drills in teaching order, then sets by level and title."""
        catalogue = self.analysis.catalogue
        order = {id: number for number, id in enumerate(self.analysis.teaching_order)}
        levels = list(catalogue.words("levels"))
        drills = sorted(
            catalogue.drills.values(), key=lambda drill: order.get(drill.id, len(order))
        )
        sets = sorted(
            self.analysis.computable.values(),
            key=lambda item: (levels.index(item.level), item.title.casefold()),
        )
        yield from map(self._drill, drills)
        yield from map(self._set, sets)

    @cached_property
    def mended_by(self) -> Mapping[str, tuple[str, ...]]:
        """By fault, the drills that mend it: as its causes name them, then those that say so
        themselves.
        """
        catalogue = self.analysis.catalogue
        found = {
            id: dict.fromkeys(drill for cause in fault.causes for drill in cause.mended_by)
            for id, fault in catalogue.faults.items()
        }
        for drill in catalogue.drills.values():
            for fault in drill.mends:
                found[fault].setdefault(drill.id)
        return {fault: tuple(drills) for fault, drills in found.items()}

    @cached_property
    def _faults_of(self) -> Mapping[str, tuple[str, ...]]:
        faults: dict[str, list[str]] = {}
        for fault, drills in self.mended_by.items():
            for drill in drills:
                faults.setdefault(drill, []).append(fault)
        return {drill: tuple(found) for drill, found in faults.items()}

    def _minutes(self, entry: Entry) -> Minutes:
        key = entry.kind, entry.id
        return self.minutes(key) if self.minutes else minutes_of(self.analysis, key)

    def _drill(self, drill: Drill) -> Facts:
        efforts = list(self.analysis.catalogue.efforts)
        first, last = efforts.index(drill.effort.easiest), efforts.index(drill.effort.hardest)
        words = {
            "goal": drill.goals,
            "fault": self._faults_of.get(drill.id, ()),
            "position": (drill.position,),
            "stroke": (drill.stroke,),
            "effort": tuple(efforts[first : last + 1]),
            "level": (drill.level,),
        }
        more = (*drill.also_called, *drill.cues)
        return Facts(
            drill,
            words,
            drill.gear.needs,
            drill.gear.may_add,
            self._minutes(drill),
            self.pictures[drill.id],
            "",
            more,
        )

    def _set(self, swim_set: SwimSet) -> Facts:
        analysis = self.analysis
        summary = analysis.summary(swim_set.id)
        chief = chief_drill(summary.pieces)
        swum = summary.each
        words = {
            "goal": swim_set.goals,
            "fault": self._faults_of.get(chief.id, ()) if chief else (),
            **{
                facet: self._in_order(facet, (word for own in swum for word in own.by[facet]))
                for facet in ("position", "stroke", "effort")
            },
            "level": (swim_set.level,),
        }
        return Facts(
            entry=swim_set,
            words=words,
            needs=summary.gear,
            suits=(),
            minutes=self._minutes(swim_set),
            figure=self.pictures[chief.id] if chief else "",
            distance="On land"
            if swim_set.is_on_land
            else " or ".join(dict.fromkeys(distance_words(own) for own in swum)),
            more=swim_set.also_called,
        )

    def _in_order(self, facet: str, split: Iterable[str]) -> tuple[str, ...]:
        found = set(split)
        return tuple(
            word for word in self.analysis.catalogue.words(VOCABULARIES[facet]) if word in found
        )


def minutes_of(analysis: Analysis, key: Key) -> Minutes:
    """Minutes of a drill or a set that can be worked out, up to the next whole one; of anything
    else none.
    """
    kind, id = key
    if kind == SwimSet.kind and id in analysis.computable:
        by_pool = (analysis.summary_in(id, course).clocks for course in COURSES.values())
        return [[_marked(run) for run in clocks.values()] for clocks in by_pool]
    if kind == Drill.kind:
        drill, timing = analysis.catalogue.drills[id], analysis.timing
        return [
            [
                whole_minutes(drill_seconds(drill, timing.clock(group, course)))
                for group in analysis.catalogue.lane_groups
            ]
            for course in COURSES.values()
        ]
    return []


def _marked(run: GroupClock) -> int | None:
    minutes = whole_minutes(run.clock.value if run.clock else None)
    hangs = any(
        isinstance(timed.target, Target)
        and timed.target.assumed
        and (timed.sendoff is None or timed.suggested)
        for timed in run.reps
    )
    return -minutes if minutes and hangs else minutes
