"""Rules on a hall, a place of the club's that has no water."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.each_practice import practices_of
from almanac.checks.rule import Problem, forbids
from almanac.model.pool import Pool


@forbids("hall-without-water")
def hall_without_water(analysis: Analysis) -> Iterator[Problem]:
    """A place of the course ``land`` has no water: what is done in a practice there is done on
    land, no meet and no lanes of a timetable are there, and no lanes, depth, flags, ends or
    temperature are said of it.
    """
    catalogue = analysis.catalogue
    halls = {id: pool for id, pool in catalogue.club.pools.items() if pool.is_land}
    for id, hall in halls.items():
        if said := _of_water(hall):
            message = f"'{hall.title}' is on land, and '{said}' is said of it"
            hint = f"take '{said}' out, or write the course of its pool"
            yield Problem(catalogue.club, ("pools", id), message, hint, of_key=True)
    for practice, summary in practices_of(analysis):
        for run in summary.runs if practice.pool in halls else ():
            if run.every_rep and run.is_in_water:
                message = f"it is swum, and {halls[practice.pool].title} has no water"
                hint = "take drills of the mode land, or name a pool"
                yield Problem(practice, run.path, message, hint)
    for meet in catalogue.meets.values():
        if meet.pool in halls:
            message = f"a meet is swum, and {halls[meet.pool].title} has no water"
            yield Problem(meet, ("pool",), message, "name a pool")
    for timetable in catalogue.timetables.values():
        for number, slot in enumerate(timetable.slots):
            if slot.pool in halls:
                message = f"{halls[slot.pool].title} has no lanes"
                yield Problem(timetable, ("slots", number, "pool"), message, "name a pool")


def _of_water(hall: Pool) -> str:
    """What is said of a hall that only a pool has, or ""."""
    said = {
        "lanes": hall.lanes,
        "depth_m": hall.depth_m.most,
        "flags": hall.flags,
        "ends": hall.ends,
        "water_c": hall.water_c is not None,
    }
    return next((name for name, value in said.items() if value), "")
