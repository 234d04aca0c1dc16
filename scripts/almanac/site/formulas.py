"""What "How it is computed" tells, by chapter, beside the formulas of registered figures."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.figures.figure import Documented
from almanac.arithmetic.assumed import targets
from almanac.arithmetic.at_once import hands
from almanac.arithmetic.brief import brief
from almanac.arithmetic.by_time import lengths_in
from almanac.arithmetic.clock import Clock, suggest
from almanac.arithmetic.course import lay_in_course, misfits, nearest_lengths
from almanac.arithmetic.crews import crew_of
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.effort_pace import EffortPace
from almanac.arithmetic.expand import expand
from almanac.arithmetic.facets import Shares, by_facet, distance_working
from almanac.arithmetic.gear_changes import gear_changes
from almanac.arithmetic.gear_needs import gear_needs
from almanac.arithmetic.graph import circles, teaching_order
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.group_tests import paired_trials
from almanac.arithmetic.helping import help_of
from almanac.arithmetic.kept import kept_load, week_kept_load, week_kept_metres
from almanac.arithmetic.kick import distance_per_leg_cycle, kick_rate, speed_from_stroke, strouhal
from almanac.arithmetic.known_tests import known_points, latest_tests
from almanac.arithmetic.lane_order import LaneOrder, gap_for, lane_order
from almanac.arithmetic.lanes import crowded, too_tight
from almanac.arithmetic.manners import manner_of, wait_after
from almanac.arithmetic.marks import mark_from_wall
from almanac.arithmetic.moment import least_seconds
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.pace_lines import line_through
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.practice_workings import practice_time, slack
from almanac.arithmetic.race import critical_speed, fade, points
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
from almanac.arithmetic.stages import SharedStart, beginners
from almanac.arithmetic.taper import taper
from almanac.arithmetic.test_workings import critical_speed_of
from almanac.arithmetic.timed_reps import until_done
from almanac.arithmetic.training_load import session_load, week_load
from almanac.arithmetic.week_change import week_change
from almanac.arithmetic.working import BuildTime
from almanac.model.changes import changed
from almanac.model.variants import given

# What a formula is looked for by that has no page of its own.
ASKED: Mapping[str, tuple[str, ...]] = {
    "Supine share": (
        "balance of kick on the back and on the front", "how much of the kick is on the back",
        "kick on back versus front", "share of kick on the back", "back and front in balance",
    ),
    "Fast share": ("how much fast work in a block", "share of fast work", "how much sprinting"),
    "Resisted share": ("how much resisted work in a block", "share of work with gear that drags"),
    "Taper": ("how long a taper", "how much less before a meet", "how is a taper worked out"),
    "Suggested send-off": ("how is a send-off computed", "where does the send-off come from"),
    "Gap between swimmers": ("how far apart do they go", "seconds between swimmers"),
    "Change of a week": (
        "weekly load jump", "too big a jump", "load went up", "increase per week",
        "how much more each week", "ten percent rule", "volume growing too fast",
        "more metres every week", "building up too quickly",
    ),
}  # fmt: skip

# Anchors that the page gave a formula before it moved in the code, which is where they come from:
# links from elsewhere still lead to it.
FORMER: Mapping[str, Documented] = {
    "of-arithmetic-pace-effortpace-time": EffortPace.time,
    "of-arithmetic-stages-stage": SharedStart,
    "of-arithmetic-timed-reps-groupclock-density": GroupClock.density,
    "of-arithmetic-timed-reps-groupclock-rated-work": GroupClock.rated_work,
    "of-arithmetic-timed-reps-groupclock-rest": GroupClock.rest,
}

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
        ("At an effort", EffortPace.time),
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
        ("What a part takes", PartRun.takes),
        ("When something is not known", least_seconds),
        ("Who waits, and for whom", SheetCell),
        ("Lists apart, and turns of stations", SharedStart),
        ("Who begins at which station", beginners),
        ("Lanes, and halves of them", crew_of),
        ("Gear to carry", gear_needs),
        ("Helpers of a part", help_of),
        ("Adults and helpers at once", hands),
        ("Where latecomers join", may_join),
        ("Time of a practice", practice_time),
        ("Time to spare", slack),
    )),
    ("Load of a week", (
        ("Session load", session_load),
        ("Minutes of a session", session_minutes),
        ("Rating of a planned session", session_rating),
        ("Planned load of a practice", planned_load),
        ("Monotony and strain", week_load),
        ("Load of a session that was kept", kept_load),
        ("Load of a week that was kept", week_kept_load),
        ("Distance of a week that was kept", week_kept_metres),
        ("Change of a week", week_change),
        ("Taper", taper),
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
        ("Critical speed", critical_speed_of),
        ("Of any number of trials, with r²", critical_speed),
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
