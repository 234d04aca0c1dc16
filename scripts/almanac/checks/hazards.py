"""Rules on hazards: what the vocabulary says of each, and how entries name them."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.under_water import counts
from almanac.checks.rule import Problem, forbids
from almanac.model.benchmark import Benchmark
from almanac.model.drill import Drill
from almanac.model.entry import Hazard
from almanac.model.gear import Gear
from almanac.model.meet import Meet
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.model.vocabularies import (
    AT_SIDES,
    BLACKOUT,
    HAZARDS,
    LINE,
    LOADED_LINE,
    TIRES,
    WALL_AHEAD,
)
from almanac.source.reader import DataPath


@forbids("hazard-unsaid")
def hazard_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Every word of the hazards has its gravity and its standard control: entries lean on both,
    and a brief would else hold a danger that nothing is done about. A drill under water names the
    hazard of a blackout; and where the vocabulary has the words, an upright one out of depth that
    of tiring there, one that comes to a wall with no eyes and no hand on the way that of the head
    and the wall, gear with a line that of the line.
    """
    vocabulary = analysis.catalogue.vocabularies.get(HAZARDS)
    for name, word in vocabulary.words.items() if vocabulary else ():
        lacking = [field for field in ("gravity", "control") if not getattr(word, field)]
        if vocabulary and lacking:
            message = f"'{name}' has no {' and no '.join(lacking)}"
            hint = f"add '{lacking[0]}': how grave it is, and what is always done about it"
            yield Problem(vocabulary, ("words", name), message, hint, of_key=True)
    push_off = analysis.catalogue.policy.limit("push_off_most")
    for drill in analysis.catalogue.drills.values():
        named = {own.hazard for own in drill.hazards}
        if counts(drill, push_off) and not drill.is_on_land and BLACKOUT not in named:
            message = "it is done under water, and names no blackout"
            hint = f"write - hazard: {BLACKOUT} under safety, with what is done about it"
            is_word = vocabulary is None or BLACKOUT in vocabulary.words
            hint += "" if is_word else "; the word goes into drills/vocabulary/hazards.yml first"
            yield Problem(drill, ("safety",), message, hint, of_key=True)
    words = vocabulary.words if vocabulary else {}
    for entry, message, danger in _told(analysis):
        if danger in words and not _names(entry, danger):
            hint = f"write - hazard: {danger} under safety, with what is done about it"
            yield Problem(entry, ("safety",), message, hint, of_key=True)
    for gear in analysis.catalogue.gear.values():
        is_line = gear.ties or any(own.has_line for own in gear.helpers)
        if is_line and LINE in words and not _names(gear, LINE, LOADED_LINE):
            message = "it has a line, and no danger of it is named"
            hint = f"write - hazard: {LINE} under hazards, with what is done about it"
            yield Problem(gear, ("hazards",), message, hint, of_key=True)


# 25 m less the 5 m from the flags to the wall: who goes farther has to know where it is.
_BEYOND_THE_FLAGS_M = 20


def _told(analysis: Analysis) -> Iterator[tuple[Drill | Benchmark, str, str]]:
    """Drills and benchmarks with a danger by what they are: what that is, and its word."""
    clear = analysis.catalogue.policy.limit("upright_depth_least")
    for drill in analysis.catalogue.drills.values():
        if drill.is_upright and (drill.depth_m.least or 0) >= clear:
            yield drill, "it is done upright out of depth, and names nobody who tires there", TIRES
        if _is_blind(drill) and (drill.dose.distance or 0) > _BEYOND_THE_FLAGS_M:
            yield drill, _NOTHING_TELLS, WALL_AHEAD
    for benchmark in analysis.catalogue.benchmarks.values():
        if _is_blind(benchmark) and benchmark.distance > _BEYOND_THE_FLAGS_M:
            yield benchmark, _NOTHING_TELLS, WALL_AHEAD


_NOTHING_TELLS = "it comes to the wall with nothing to tell of it, and does not name the wall"


def _is_blind(own: Drill | Benchmark) -> bool:
    """Whether whoever does it sees nothing ahead: on the back, or no hand before the head."""
    turns_over = own.is_backstroke and not own.is_on_front
    is_led_by_the_head = own.arms == AT_SIDES and not own.is_upright
    return not own.is_on_land and (own.is_on_back or turns_over or is_led_by_the_head)


def _names(entry: Drill | Gear | Benchmark, *words: str) -> bool:
    return any(own.hazard in words for own in entry.hazards)


@forbids("hazard-twice")
def hazard_twice(analysis: Analysis) -> Iterator[Problem]:
    """An entry names a hazard once: what it adds to it stands in one place, and is read."""
    catalogue = analysis.catalogue
    for entry in catalogue.entries.values():
        if isinstance(entry, Drill | Gear | Benchmark | SwimSet | Practice | Meet):
            field = "hazards" if isinstance(entry, Gear) else "safety"
            for path, word in _named_again(entry.hazards, (field,)):
                hint = "write both under the first, and remove this one"
                yield Problem(entry, path, f"'{word}' is named above already", hint)
    for vocabulary in catalogue.vocabularies.values():
        for name, own in vocabulary.words.items():
            for path, word in _named_again(own.safety, ("words", name, "safety")):
                hint = "write both under the first, and remove this one"
                yield Problem(vocabulary, path, f"'{word}' is named above already", hint)


def _named_again(hazards: tuple[Hazard, ...], path: DataPath) -> Iterator[tuple[DataPath, str]]:
    seen: set[str] = set()
    for number, hazard in enumerate(hazards):
        if hazard.hazard in seen:
            yield (*path, number, "hazard"), hazard.hazard
        seen.add(hazard.hazard)
