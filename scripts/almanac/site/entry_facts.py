"""The one fact that a list of what was found shows of an entry beside its title and kind."""

from __future__ import annotations

from almanac.model.benchmark import Benchmark
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.fault import Fault
from almanac.model.gear import Gear
from almanac.model.meet import Meet
from almanac.model.progression import Progression
from almanac.model.published import Source
from almanac.model.season import Season
from almanac.model.timetable import Timetable
from almanac.report.shown import date_words


def fact_of(catalogue: Catalogue, entry: Entry) -> str:
    """What a coach picks it by; "" of sets and practices, whose minutes hang on the lane group."""
    match entry:
        case Drill():
            return _needs(catalogue, entry)
        case Fault():
            first = next((drill for cause in entry.causes for drill in cause.mended_by), None)
            return f"first: {catalogue.drills[first].title}" if first else ""
        case Gear():
            return _many(sum(1 for _ in catalogue.users(entry, Drill)), "drill")
        case Benchmark():
            uses = catalogue.words("test-uses")
            return f"gives {', '.join(uses[id].title.lower() for id in entry.gives)}"
        case Progression():
            return _many(len(entry.stages), "stage")
        case Source():
            return entry.cited
        case Block():
            return _many(len(entry.weeks), "week")
        case Meet() | Timetable() | Season():
            return date_words(entry.first)
        case _:
            return ""


def _needs(catalogue: Catalogue, drill: Drill) -> str:
    """The gear that a drill cannot do without."""
    names = [catalogue.gear[id].title.lower() for id in drill.gear.needs]
    return f"needs {', '.join(names)}" if names else "no gear"


def _many(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"
