"""A small club made in code, so that the arithmetic's tests stand whatever the catalogue holds."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import MISSING, fields, replace
from datetime import date
from typing import Any

import numpy

from almanac.arithmetic.clock import Clock
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Event
from almanac.arithmetic.expand import expand
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import NoNumber, Paces
from almanac.model.benchmark import Benchmark, Protocol
from almanac.model.catalogue import Catalogue
from almanac.model.club import Club, LaneGroup, Squad, TimedTest
from almanac.model.drill import Dose, Drill, GearUse, PaceRule
from almanac.model.entry import Entry, Hazard, Seconds, Span
from almanac.model.gear import Gear
from almanac.model.policy import Limit, Policy, Rating, RestByEffort, RestRule, Vocabulary, Word
from almanac.model.structure import structure_items
from almanac.model.swim_set import SwimSet
from almanac.units import COURSES, Course, parse_time

SHORT, LONG, YARDS = COURSES["25m"], COURSES["50m"], COURSES["25yd"]
HAZARD = Hazard("wall", "Tired legs carry less far.", "Ten seconds apart.")
_GRAVE = {"wall": "injury", "cold": "ache", "rope": "ache", "blackout": "life"}
BRIEFED_BY = {
    "hazards": {
        word: Word(word.title(), "", gravity=gravity, control=f"Mind the {word}.")
        for word, gravity in _GRAVE.items()
    },
    "gravities": {word: Word(word.title(), "") for word in ("life", "injury", "ache")},
}

# word: (least rating, greatest rating, share of the best speed)
EFFORTS = {
    "easy": (0, 3, 0.72), "steady": (3, 5, 0.80), "strong": (5, 7, 0.87), "fast": (7, 9, 0.94),
    "all-out": (9, 10, 1.0),
}  # fmt: skip
SCALE = EffortScale(
    {word: Word(word.title(), "", Rating(*row[:2]), row[2]) for word, row in EFFORTS.items()}
)


def activity(mode: str, stroke: str, kick: str, position: str, arms: str) -> dict[str, str]:
    """What is done, as fields of a drill or a benchmark."""
    return {"mode": mode, "stroke": stroke, "kick": kick, "position": position, "arms": arms}


# id: what is done, gear that it needs, and the benchmark and factor that it is timed by
ON_BACK = activity("kick", "backstroke", "flutter", "supine", "streamline")
BACKSTROKE = activity("swim", "backstroke", "flutter", "supine", "stroking")
BOARD = activity("kick", "freestyle", "flutter", "prone", "board")
CRAWL = activity("swim", "freestyle", "flutter", "prone", "stroking")
_DRILLS: dict[str, tuple[dict[str, str], tuple[str, ...], tuple[str, float] | None]] = {
    "kick": (ON_BACK, (), ("kick-200", 1.0)),
    "slow-kick": (ON_BACK, (), ("kick-50", 1.2)),
    "socks-kick": (ON_BACK, ("socks",), ("kick-50", 1.0)),
    "chute-kick": (ON_BACK, ("chute",), ("kick-25-in-chute", 1.0)),
    "backstroke": (BACKSTROKE, (), ("back-100", 1.0)),
    "board-kick": (BOARD, ("board",), ("board-100", 1.0)),
    "crawl": (CRAWL, (), ("crawl-100", 1.0)),
    "float": (activity("drill", "any", "none", "supine", "at-sides"), (), None),
    "upright": (activity("kick", "any", "flutter", "vertical", "at-sides"), (), None),
}
GEAR = {  # what it does, seconds to change, pace factor
    "socks": ("resists", 30, 1.08), "chute": ("resists", 45, 1.25), "fins": ("assists", 20, 0.8),
    "board": ("supports", 5, 1.0), "beeper": ("informs", 0, 1.0),
}  # fmt: skip
_BENCHMARKS: dict[str, tuple[dict[str, str], int, tuple[str, ...]]] = {
    "kick-25": (ON_BACK, 25, ()), "kick-50": (ON_BACK, 50, ()), "kick-200": (ON_BACK, 200, ()),
    "kick-25-in-chute": (ON_BACK, 25, ("chute",)), "back-100": (BACKSTROKE, 100, ()),
    "back-400": (BACKSTROKE, 400, ()),
    "board-100": (BOARD, 100, ("board",)), "crawl-100": (CRAWL, 100, ()),
}  # fmt: skip

# The tests of osprey-1 on kick on the back and on backstroke, as the example club has them.
OSPREY = {
    "kick-25": "0:22.0",
    "kick-50": "0:47.2",
    "kick-200": "3:30.0",
    "back-100": "1:09.0",
    "back-400": "5:12.0",
}
LIMITS = {
    "gap_on_back": 10, "sendoff_step": 5, "rest_step": 5, "single_test_exponent": 1.08,
    "least_exponent": 1.0,
    "greatest_exponent": 1.3, "slowest_afloat": 0.0, "most_reps": 400,
    "own_sendoff_from": 30, "rest_by_distance_most": 30, "held_as_50": 60,
}  # fmt: skip
# word: seconds for each 50 m, or share of the work; least and wanted
REST = {
    "easy": ("seconds_per_50", 3, 10), "steady": ("seconds_per_50", 4, 10),
    "strong": ("seconds_per_50", 5, 15),
    "fast": ("share_of_work", 0.25, 0.5), "all-out": ("share_of_work", 1.0, 2.0),
}  # fmt: skip


def made(cls: type[Entry], **given: Any) -> Any:
    """An entry with the fields that are given; what else it must have is empty."""
    given.setdefault("title", given.get("id", ""))
    for field in fields(cls):
        if (
            field.name not in given
            and field.default is MISSING
            and field.default_factory is MISSING
        ):
            given[field.name] = (
                {}
                if field.type.startswith("Mapping")
                else ()
                if field.type.startswith(("Ids", "tuple"))
                else ""
            )
    return cls(**given)


def _drill(id: str) -> Drill:
    activity, needs, pace = _DRILLS[id]
    rule = PaceRule(*pace) if pace else None
    held: Any = {"time": Seconds(20)} if id == "upright" else {"distance": 50}
    return made(
        Drill,
        id=id,
        hazards=(HAZARD,),
        level="building",
        gear=GearUse(needs),
        pace=rule,
        dose=Dose(Span(4, 8), Seconds(20), 12, **held),
        **activity,
    )


def _gear(id: str) -> Gear:
    effect, change_s, factor = GEAR[id]
    return made(
        Gear, id=id, effect=effect, hazards=(HAZARD,), change_s=change_s, pace_factor=factor
    )


def _benchmark(id: str) -> Benchmark:
    activity, distance, gear = _BENCHMARKS[id]
    protocol = Protocol((), Seconds(60), SHORT, "", "")
    return made(
        Benchmark,
        id=id,
        distance=distance,
        protocol=protocol,
        gear=gear,
        repeat_every="4 weeks",
        **activity,
    )


DRILLS = {id: _drill(id) for id in _DRILLS}
PIECES = {id: _gear(id) for id in GEAR}
BENCHMARKS = {id: _benchmark(id) for id in _BENCHMARKS}


BRIEF_WORDS = {id: made(Vocabulary, id=id, words=words) for id, words in BRIEFED_BY.items()}


def policy(**limits: float) -> Policy:
    """The policy, with some limits changed."""
    rest = {
        word: RestByEffort(RestRule(**{rule: least}), RestRule(**{rule: wanted}), "", "")
        for word, (rule, least, wanted) in REST.items()
    }
    all_limits = {name: Limit(value, "", "", "") for name, value in {**LIMITS, **limits}.items()}
    return made(Policy, id="policy", limits=all_limits, rest=rest)


def swum(
    benchmark: str, time: str | float, course: Course = SHORT, on: str = "2026-09-01"
) -> TimedTest:
    """A timed test."""
    return TimedTest(benchmark, Seconds(parse_time(time)), course, date.fromisoformat(on))


Tests = Mapping[str, str | float] | Iterable[TimedTest]


def group(tests: Tests = OSPREY, heads: int = 14, lanes: int = 3, gap: float = 5) -> LaneGroup:
    """A lane group: osprey-1 unless told otherwise."""
    timed = [swum(*test) for test in tests.items()] if isinstance(tests, Mapping) else tests
    return LaneGroup("Osprey", "osprey", lanes, heads, Seconds(gap), tuple(timed))


def paces(of: LaneGroup | None = None, day: date | None = None, **limits: float) -> Paces:
    """The pace lines of a lane group."""
    return Paces(of or group(), BENCHMARKS, policy(**limits), day)


def clock(of: LaneGroup | None = None, course: Course = SHORT, **limits: float) -> Clock:
    """The clock of a lane group, which sets know as ``osprey-1``."""
    lines = paces(of, **limits)
    return Clock("osprey-1", Pacer(lines, PIECES, SCALE, course), lines.policy, PIECES)


def events(*items: dict) -> tuple[Event, ...]:
    """Items, as an entry writes them, laid out."""
    return expand(structure_items(list(items)), DRILLS, SCALE)


def swim_set(*items: dict, course: Course = SHORT) -> SwimSet:
    """A set of items as an entry writes them."""
    return made(
        SwimSet, id="a-set", level="performing", course=course, items=structure_items(list(items))
    )


def catalogue(of: LaneGroup | None = None) -> Catalogue:
    """All of it as a catalogue with one lane group, ``osprey-1``."""
    squads = {"osprey": Squad("Osprey", "performing", 6)}
    club = made(Club, id="club", squads=squads, lane_groups={"osprey-1": of or group()})
    efforts = made(Vocabulary, id="efforts", words=SCALE.words)
    lists = [efforts, *BRIEF_WORDS.values()]
    entries = [*DRILLS.values(), *PIECES.values(), *BENCHMARKS.values(), club, policy(), *lists]
    return Catalogue({(entry.kind, entry.id): entry for entry in entries}, {}, {})


def retimed(drill: str, like: str, factor: float) -> Drill:
    """A drill with another pace rule."""
    return replace(DRILLS[drill], pace=PaceRule(like, factor))


def rep(
    drill: str = "kick", distance: int = 50, effort: str | dict = "strong", reps: int = 1, **more
) -> tuple[Event, ...]:
    """The reps of one item."""
    return events({"reps": reps, "distance": distance, "do": drill, "effort": effort, **more})


def target(of: LaneGroup | None = None, course: Course = SHORT, **item) -> Target | NoNumber:
    """The target of the first rep of one item, by default for osprey-1."""
    return clock(of, course).rep(rep(**item)[0]).target


def best(
    distance: float, activity: str = "kick", tests: Mapping[str, str | float] = OSPREY
) -> float:
    """The best time over a distance, by numpy's straight lines between the logarithms of the
    tests.
    """
    known = {
        int(id.split("-")[1]): parse_time(time)
        for id, time in tests.items()
        if id.startswith(activity)
    }
    logs, times = numpy.log(sorted(known)), numpy.log([known[m] for m in sorted(known)])
    if min(known) <= distance <= max(known):
        return math.exp(numpy.interp(math.log(distance), logs, times))
    ends = slice(None, 2) if distance < min(known) else slice(-2, None)
    slope, start = numpy.polyfit(logs[ends], times[ends], 1)
    return math.exp(start + slope * math.log(distance))
