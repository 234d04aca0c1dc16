"""The summary of a set: everything that its page, ``sum`` and the JSON show."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from almanac.arithmetic.brief import BriefHazard, brief
from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.swum_by_group import ByGroup, GroupClocks, swum_by
from almanac.arithmetic.timing import Clocks, Timing
from almanac.model.catalogue import Catalogue
from almanac.model.changes import is_for
from almanac.model.swim_set import SwimSet, groups_named, reps_of
from almanac.model.variants import given
from almanac.units import Course


@dataclass(frozen=True, kw_only=True)
class SetSummary(ByGroup):
    """A set added up, in one course, as each lane group swims it.

    ``gear`` and ``brief`` are of all of them; ``clocks`` are by lane group.
    """

    swim_set: SwimSet
    timing: Clocks = field(repr=False)
    gear: tuple[str, ...]
    brief: tuple[BriefHazard, ...]
    clocks: Mapping[str, GroupClock]


def summarise(
    timing: Timing,
    swim_set: SwimSet,
    course: Course | None = None,
    groups: Iterable[str] | None = None,
) -> SetSummary:
    """Add a set up, in its own course or laid into another, for some lane groups or all of them;
    then those that it is meant for come before the others.
    """
    own = given(swim_set)
    in_course = own if course in (None, own.course) else lay_in_course(own, course)
    catalogue = timing.catalogue
    every, meant = tuple(catalogue.lane_groups), groups_meant(catalogue, swim_set)
    chosen = (*meant, *every) if groups is None else groups
    found = swum_by(
        timing,
        in_course.items,
        in_course.course,
        dict.fromkeys(chosen),
        in_course.most_in_lane,
    )
    swum = {group: found.swum[group] for group in every} if groups is None else found.swum
    return SetSummary(
        swim_set=in_course,
        timing=timing.clocks,
        first=found.first,
        swum=swum,
        gear=tuple(dict.fromkeys(id for swum in found.each for id in swum.gear)),
        brief=brief(
            in_course.key,
            [(hazard, in_course.key) for hazard in in_course.hazards],
            found.every_rep,
            catalogue.gear,
            catalogue.vocabularies,
        ),
        clocks=GroupClocks(swum),
    )


def groups_meant(catalogue: Catalogue, swim_set: SwimSet) -> tuple[str, ...]:
    """The lane groups that a set is written for: those that it gives send-offs, else those of its
    level; and those for whom something of it is different. None that it leaves out altogether.
    """
    named = {
        group for item in reps_of(swim_set.items) if item.sendoff for group in item.sendoff.by_group
    }
    differing = set(groups_named(swim_set.items))
    swim_set = given(swim_set)
    squads = catalogue.club.squads
    return tuple(
        id
        for id, group in catalogue.lane_groups.items()
        if (
            id in differing
            or (id in named if named else squads[group.squad].level == swim_set.level)
        )
        and (id not in differing or is_for(swim_set.items, id))
    )
