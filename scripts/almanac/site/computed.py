"""The page "How it is computed": each formula, its source and its limits, from the docstrings of
the code itself.
"""

from __future__ import annotations

import inspect
import re
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import registered
from almanac.analysis.figures.figure import Documented
from almanac.arithmetic.assumed import targets
from almanac.arithmetic.at_once import hands
from almanac.arithmetic.brief import brief
from almanac.arithmetic.by_time import lengths_in
from almanac.arithmetic.clock import Clock, suggest
from almanac.arithmetic.course import lay_in_course, misfits, nearest_lengths
from almanac.arithmetic.crews import crew_of
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.expand import expand
from almanac.arithmetic.facets import Shares, by_facet, distance_working
from almanac.arithmetic.gear_changes import gear_changes
from almanac.arithmetic.gear_needs import gear_needs
from almanac.arithmetic.graph import circles, teaching_order
from almanac.arithmetic.group_tests import paired_trials
from almanac.arithmetic.kick import distance_per_leg_cycle, kick_rate, speed_from_stroke, strouhal
from almanac.arithmetic.known_tests import known_points, latest_tests
from almanac.arithmetic.lane_order import LaneOrder, gap_for, lane_order
from almanac.arithmetic.lanes import crowded, too_tight
from almanac.arithmetic.manners import manner_of, wait_after
from almanac.arithmetic.marks import mark_from_wall
from almanac.arithmetic.moment import least_seconds
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.pace_lines import line_through
from almanac.arithmetic.race import CriticalSpeed, critical_speed, fade, points
from almanac.arithmetic.resistance import (
    added_drag,
    cord_force,
    drag_force,
    parachute_k,
    pulley_force,
    swimmer_drag,
)
from almanac.arithmetic.rest_rules import rest_after, rest_working
from almanac.arithmetic.run_sheet import SheetCell, may_join, run_sheet
from almanac.arithmetic.scaling import scalable, scaled
from almanac.arithmetic.session_load import planned_load, session_minutes, session_rating
from almanac.arithmetic.stages import Stage, beginners
from almanac.arithmetic.timed_reps import GroupClock, until_done
from almanac.arithmetic.training_load import session_load, week_load
from almanac.arithmetic.working import BuildTime
from almanac.model.changes import changed
from almanac.model.policy import RestRule
from almanac.model.variants import given
from almanac.site.links import Page
from almanac.units import show_number

# The rules that numbers follow, by chapter. The formulas of registered figures that are not named
# here stand at the end of their chapters.
FORMULAS: tuple[tuple[str, tuple[tuple[str, Documented], ...]], ...] = (
    ("Distance", (
        ("Laying a set out", expand),
        ("Total distance", distance_working),
        ("Distance by a facet", by_facet),
        ("Shares", Shares),
        ("Marks in the pool", mark_from_wall),
        ("Swimming by time", lengths_in),
        ("Starts, partners and teams", manner_of),
        ("What differs for a lane group or in a round", changed),
        ("Variants", given),
        ("Which rounds or reps are asked for", scalable),
        ("Fewer or more rounds or reps", scaled),
    )),
    ("Effort", (
        ("Descend, build and rotate", EffortScale.span),
        ("A build across several words", EffortScale.split),
        ("The time of a build", BuildTime),
    )),
    ("Pace", (
        ("Which tests count", latest_tests),
        ("A group's tests of one activity", known_points),
        ("The line through the tests", line_through),
        ("Target of a piece of a rep", Pacer.piece),
        ("Target of a rep", Pacer.whole),
        ("A time that is assumed", targets),
    )),
    ("Clock", (
        ("The set on the clock", Clock.run),
        ("What a rep takes", Clock.rep),
        ("Rests inside a rep", until_done),
        ("While others go", wait_after),
        ("Rest that an effort asks", rest_after),
        ("Rest by distance or by work", rest_working),
        ("What a rep needs", Clock.need),
        ("Suggested send-off", suggest),
        ("Gear changes", gear_changes),
        ("Rated work of a set", GroupClock.rated_work),
    )),
    ("Lanes", (
        ("Gap between swimmers", gap_for),
        ("Waves", lane_order),
        ("Room that a send-off leaves", LaneOrder.least_interval),
        ("Too tight", too_tight),
        ("Crowded", crowded),
    )),
    ("Other pools", (
        ("The set in another course", lay_in_course),
        ("Reps that do not fit", misfits),
        ("The nearest that fits", nearest_lengths),
    )),
    ("Practice", (
        ("The run sheet", run_sheet),
        ("When something is not known", least_seconds),
        ("Who waits, and for whom", SheetCell),
        ("Lists apart, and turns of stations", Stage),
        ("Who begins at which station", beginners),
        ("Lanes, and halves of them", crew_of),
        ("Gear to carry", gear_needs),
        ("Adults and helpers", hands),
        ("Where latecomers join", may_join),
    )),
    ("Load of a week", (
        ("Session load", session_load),
        ("Minutes of a session", session_minutes),
        ("Rating of a planned session", session_rating),
        ("Planned load of a practice", planned_load),
        ("Monotony and strain", week_load),
    )),
    ("Drag", (
        ("Drag and speed", drag_force),
        ("Parachutes", parachute_k),
        ("Cords", cord_force),
        ("Pulleys", pulley_force),
        ("The swimmer's own drag", swimmer_drag),
        ("From two times", added_drag),
    )),
    ("Kick and stroke", (
        ("Kick rate", kick_rate),
        ("Distance of a leg cycle", distance_per_leg_cycle),
        ("Speed from the stroke", speed_from_stroke),
        ("Strouhal number", strouhal),
    )),
    ("Races and tests", (
        ("Critical speed", critical_speed),
        ("Its limits", CriticalSpeed),
        ("Of a lane group", paired_trials),
        ("Fade", fade),
        ("Points", points),
    )),
    ("What leads to what", (
        ("Circles", circles),
        ("Teaching order", teaching_order),
    )),
    ("Safety", (("The brief", brief),)),
)  # fmt: skip


@dataclass(frozen=True)
class Formula:
    """A formula as the page tells it; ``code`` names where it stands."""

    title: str
    code: str
    paragraphs: tuple[str, ...]


def computed_page(analysis: Analysis) -> Page:
    """The page, with the policy's limits at its end."""
    sections = [
        {
            "title": title,
            "formulas": [
                Formula(name, _code(member), paragraphs(member.__doc__)) for name, member in members
            ],
        }
        for title, members in _chapters().items()
    ]
    return Page(
        "computed.md",
        "computed",
        {"sections": sections, "limits": _limits(analysis), "rests": _rests(analysis)},
    )


def _chapters() -> dict[str, list[tuple[str, Documented]]]:
    chapters = {title: list(members) for title, members in FORMULAS}
    told = {_code(member) for members in chapters.values() for _, member in members}
    for section, figure in registered():
        for member in figure.documented:
            if _code(member) not in told:
                told.add(_code(member))
                chapter = chapters[section.chapter]
                chapter.append((_title(figure.name, section.key, chapter), member))
    return chapters


def _title(name: str, of: str, chapter: list[tuple[str, Documented]]) -> str:
    """A figure's name, and what it is of where the chapter tells of another of that name."""
    title = name.capitalize()
    return f"{title} of a {of}" if title in {told for told, _ in chapter} else title


def paragraphs(docstring: str | None) -> tuple[str, ...]:
    """A docstring's paragraphs, without the marks of code and without what is raised."""
    told = (
        " ".join(part.split()).replace("``", "")
        for part in inspect.cleandoc(docstring or "").split("\n\n")
    )
    without = (re.sub(r"\s*Raises [^.]*?(\.(?=\s|$)|$)", "", part) for part in told)
    return tuple(part for part in without if part)


def _code(member: Documented) -> str:
    function: Any = member
    if isinstance(member, property):
        function = member.fget
    elif isinstance(member, cached_property):
        function = member.func
    return f"{function.__module__.removeprefix('almanac.')}.{function.__qualname__}"


def _limits(analysis: Analysis) -> list[dict[str, str]]:
    return [
        {
            "name": name.replace("_", " "),
            "value": f"{show_number(limit.value, 3)} {limit.unit}",
            "reason": limit.reason,
            "source": limit.source,
        }
        for name, limit in analysis.catalogue.policy.limits.items()
    ]


def _rests(analysis: Analysis) -> list[dict[str, str]]:
    return [
        {
            "effort": analysis.catalogue.efforts[word].title,
            "least": _rule(rest.least),
            "wanted": _rule(rest.wanted),
            "reason": rest.reason,
            "source": rest.source,
        }
        for word, rest in analysis.catalogue.policy.rest.items()
    ]


def _rule(rule: RestRule) -> str:
    if rule.seconds_per_50 is not None:
        return f"{show_number(rule.seconds_per_50)} s for each 50 m"
    return f"{show_number(rule.share_of_work or 0.0, 2)} × the work"
