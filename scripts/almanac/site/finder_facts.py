"""What the finder knows of every drill, set and practice, beside the words that it is found by."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from almanac.analysis.adapted import done_by
from almanac.analysis.analysis import Analysis
from almanac.arithmetic.glance import chief_drill
from almanac.model.catalogue import Key
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.site.entry_times import Times, far, times_of
from almanac.site.practice_times import lanes_in_use, times_of_practice

VOCABULARIES = {
    facet: VOCABULARY_OF[facet] for facet in ("goal", "position", "stroke", "effort", "level")
}


@dataclass(frozen=True)
class Facts:
    """What the finder knows of one entry. Words by facet, under ``whom`` the needs that leave
    nothing of it out; ``meant`` the lane groups that it is for,
    ``distance`` in words for each of ``meant``, or once where all go as far; ``lanes`` that it
    takes and ``adults`` that it needs at one moment, 0 where it says nothing of them; ``own_pool``
    the course that it is written for.

    A set mends what the drill mends that it is mostly made of, and shows that drill's figure.
    """

    entry: Entry
    words: Mapping[str, tuple[str, ...]]
    needs: tuple[str, ...]
    suits: tuple[str, ...] = ()
    times: Times = field(default_factory=Times)
    figure: str = ""
    meant: tuple[str, ...] = ()
    distance: tuple[str, ...] = ()
    lanes: int = 0
    adults: int = 0
    own_pool: str = ""


Words = Mapping[str, tuple[str, ...]]


def words_of(analysis: Analysis, key: Key) -> Words:
    """Of a drill, and of a set and a practice that can be worked out, for whom it is done as it is
    and the words of what is swum of it, by facet; of anything else none.
    """
    kind, id = key
    entry: SwimSet | Practice
    if kind == Drill.kind:
        return {"whom": done_by(analysis, analysis.catalogue.drills[id])}
    if kind == SwimSet.kind and id in analysis.computable:
        entry, swum = analysis.computable[id], analysis.summary(id).each
    elif kind == Practice.kind and id in analysis.practices:
        entry, swum = analysis.practices[id].practice, analysis.practices[id].each
    else:
        return {}
    found = {
        facet: tuple(
            word
            for word in analysis.catalogue.words(VOCABULARIES[facet])
            if any(word in own.by[facet] for own in swum)
        )
        for facet in ("position", "stroke", "effort")
    }
    return {**found, "whom": done_by(analysis, entry)}


@dataclass(frozen=True)
class FinderFacts:
    """The facts of every drill, set and practice of a catalogue; ``pictures`` names the body figure
    of each drill. ``times`` gives what ``times_of`` would, and ``words`` what ``words_of`` would,
    where that is known already.
    """

    analysis: Analysis
    pictures: Mapping[str, str]
    times: Callable[[Key], Times] | None = None
    words: Callable[[Key], Words] | None = None

    def __iter__(self) -> Iterator[Facts]:
        """Drills in teaching order, then sets and practices by level and title."""
        catalogue = self.analysis.catalogue
        order = {id: number for number, id in enumerate(self.analysis.teaching_order)}
        levels = list(catalogue.words("levels"))
        drills = sorted(catalogue.drills.values(), key=lambda one: order.get(one.id, len(order)))
        yield from map(self._drill, drills)
        yield from map(
            self._set,
            sorted(
                self.analysis.computable.values(),
                key=lambda one: (levels.index(one.level), one.title.casefold()),
            ),
        )
        practices = [self._practice(id) for id in self.analysis.practices]
        yield from sorted(
            practices,
            key=lambda own: (levels.index(own.words["level"][0]), own.entry.title.casefold()),
        )

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

    def _times(self, entry: Entry) -> Times:
        key = entry.kind, entry.id
        return self.times(key) if self.times else times_of(self.analysis, key)

    def _words(self, entry: Entry) -> Words:
        key = entry.kind, entry.id
        return self.words(key) if self.words else words_of(self.analysis, key)

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
            **self._words(drill),
        }
        needs, suits = drill.gear.needs, drill.gear.may_add
        return Facts(drill, words, needs, suits, self._times(drill), self.pictures[drill.id])

    def _set(self, swim_set: SwimSet) -> Facts:
        analysis = self.analysis
        summary = analysis.summary(swim_set.id)
        chief = chief_drill(summary.pieces)
        meant = analysis.meant(swim_set)
        words = {
            "goal": swim_set.goals,
            "fault": self._faults_of.get(chief.id, ()) if chief else (),
            **self._words(swim_set),
            "level": (swim_set.level,),
        }
        return Facts(
            entry=swim_set,
            words=words,
            needs=summary.gear,
            times=self._times(swim_set),
            figure=self.pictures[chief.id] if chief else "",
            meant=meant,
            distance=("on land",) if swim_set.is_on_land else far(summary, meant),
            own_pool="" if swim_set.is_on_land else str(swim_set.course),
        )

    def _practice(self, id: str) -> Facts:
        analysis = self.analysis
        summary = analysis.practices[id]
        catalogue, practice = analysis.catalogue, summary.practice
        meant = tuple(summary.groups)
        sets = [run.swim_set for run in summary.runs if run.swim_set]
        words = {
            "goal": tuple(dict.fromkeys(goal for own in sets for goal in own.goals)),
            "fault": (),
            **self._words(practice),
            "level": (catalogue.club.squads[practice.squad].level,),
        }
        return Facts(
            entry=practice,
            words=words,
            needs=tuple(need.gear for need in summary.gear),
            times=times_of_practice(catalogue, summary),
            meant=meant,
            distance=far(summary, meant),
            lanes=lanes_in_use(summary),
            adults=summary.hands.adults if summary.hands else 0,
            own_pool=str(summary.pool.course),
        )
