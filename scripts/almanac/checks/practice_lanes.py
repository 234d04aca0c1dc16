"""Rules on the lanes of a practice: which there are, who is in them, and whether there is room."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from almanac.analysis.analysis import Analysis
from almanac.analysis.pool_starts import crews_in_water, dry_starts_of
from almanac.arithmetic.at_once import moments
from almanac.arithmetic.crews import Crew
from almanac.arithmetic.lane_order import lane_order
from almanac.arithmetic.lanes import crowded
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.under_water import counts
from almanac.checks.each_practice import practices_of
from almanac.checks.lanes import Full, crowded_words, is_blind, room_hint
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.club import LaneGroup
from almanac.model.practice import Practice
from almanac.source.reader import DataPath


@forbids("lane-not-there")
def lane_not_there(analysis: Analysis) -> Iterator[Problem]:
    """A lane that is named is one of the pool's, and in use; and no lane group is left without a
    lane while it is in the water.
    """
    for practice, summary in practices_of(analysis):
        for path, lanes in _named_lanes(practice):
            beyond = [lane for lane in lanes if lane > summary.pool.lanes]
            closed = [lane for lane in lanes if lane in practice.lanes.out_of_use]
            if beyond:
                message = f"there is no lane {beyond[0]}: the club has {summary.pool.lanes} here"
                yield Problem(practice, path, message, "name one of them, counted from 1")
            elif closed and path != ("lanes", "out_of_use"):
                message = f"lane {closed[0]} is out of use"
                yield Problem(practice, path, message, "give the lane group another lane")
        for run, crew in crews_in_water(summary):
            if not crew.lanes:
                message = f"{crew.name} has no lane left: all of its own are out of use"
                hint = "give it lanes of others in `lanes`, for the practice or for this part"
                yield Problem(practice, run.path, message, hint)
                break


def _named_lanes(practice: Practice) -> Iterator[tuple[DataPath, tuple[int, ...]]]:
    own = practice.lanes
    yield ("lanes", "out_of_use"), own.out_of_use
    yield ("lanes", "shared"), own.shared
    for group, lanes in own.groups.items():
        yield ("lanes", "groups", group), lanes
    for path, doing in practice.doings:
        for group, lanes in doing.lanes.items():
            yield (*path, "lanes", group), lanes


@forbids("lane-twice")
def lane_twice(analysis: Analysis) -> Iterator[Problem]:
    """No two lane groups are in one lane at the same moment."""
    for practice, summary in practices_of(analysis):
        for busy in moments(summary.sheet):
            holder: dict[int, Crew] = {}
            for row, cell in busy:
                if not row.run.is_in_water:
                    continue
                clash = next((lane for lane in cell.crew.lanes if lane in holder), None)
                if clash is not None and holder[clash].group != cell.group:
                    message = f"lane {clash} has {holder[clash].name} and {cell.crew.name} in it"
                    hint = "give one of them other lanes"
                    yield Problem(practice, row.run.path, message, hint)
                holder.update(dict.fromkeys(cell.crew.lanes, cell.crew))


@forbids("shared-lane-unfit")
def shared_lane_unfit(analysis: Analysis) -> Iterator[Problem]:
    """In a lane that is shared with the public nobody starts from the wall or the edge, goes under
    water, on a cord or against gear that resists: strangers cannot know of it.
    """
    for practice, summary in practices_of(analysis):
        if not practice.lanes.shared:
            continue
        own_starts = {
            (run.path, crew.name) for run, crew, _ in dry_starts_of(analysis.catalogue, summary)
        }
        for run, crew in crews_in_water(summary):
            shared = [lane for lane in crew.lanes if lane in practice.lanes.shared]
            what = _unfit(analysis, run, crew) if shared else ""
            what = what or ("starts" if shared and (run.path, crew.name) in own_starts else "")
            if what:
                message = f"{crew.name} has {what} in lane {shared[0]}, shared with the public"
                hint = "give it other lanes for this part, or do it on another day"
                yield Problem(practice, run.path, message, hint)


def _unfit(analysis: Analysis, run: PartRun, crew: Crew) -> str:
    gear, push_off = analysis.catalogue.gear, analysis.catalogue.policy.limit("push_off_most")
    for piece in run.of(crew.group).pieces:
        if counts(piece.drill, push_off):
            return piece.drill.title.lower()
        for id in piece.gear:
            if gear[id].resists or gear[id].ties:
                return f"{piece.drill.title.lower()} with {gear[id].title.lower()}"
    return ""


@warns("shared-lane-full")
def shared_lane_full(analysis: Analysis) -> Iterator[Problem]:
    """A lane that is shared with the public holds few of the squad (``shared_lane_most`` in the
    policy); who has no other lane is no more than that.
    """
    most = int(analysis.catalogue.policy.limit("shared_lane_most"))
    for practice, summary in practices_of(analysis):
        told: set[str] = set()
        for run, crew in crews_in_water(summary):
            shared = [lane for lane in crew.lanes if lane in practice.lanes.shared]
            full = bool(shared) and len(shared) == len(crew.lanes)
            if full and crew.heads > most * len(shared) and crew.name not in told:
                told.add(crew.name)
                message = (
                    f"{crew.name}: {crew.heads} heads, and only lanes that are shared with the "
                    f"public, which hold {most} each"
                )
                hint = "give it a lane of its own, or have some do their part on land"
                yield Problem(practice, run.path, message, hint)


@warns("part-crowded")
def part_crowded(analysis: Analysis) -> Iterator[Problem]:
    """A lane group has room in the lanes that it has for a part, where these are not its usual
    ones: because others are given, some are out of use, or half of the group is there. Lanes that
    are shared with the public hold ``shared_lane_most`` each, the others the rest.
    """
    for problem, is_unseen in full_parts(analysis):
        if not is_unseen:  # back-crowded tells it
            yield problem


def full_parts(analysis: Analysis) -> list[Full]:
    """Every part in other lanes than usual, or shared ones, that lacks room. Worked out once."""
    return analysis.once(full_parts, lambda: [*_full_parts(analysis)])


def _full_parts(analysis: Analysis) -> Iterator[Full]:
    policy = analysis.catalogue.policy
    most = int(policy.limit("shared_lane_most"))
    for practice, summary in practices_of(analysis):
        for run, crew in crews_in_water(summary):
            shared = sum(lane in practice.lanes.shared for lane in crew.lanes)
            if crew.is_usual and not shared:
                continue  # lane-crowded tells it at the set or the items
            group = _in_own_lanes(crew, shared, most)
            reps = tuple(
                replace(timed, order=lane_order(timed.rep, group, policy, run.most_in_lane))
                for timed in run.clocks[crew.group].reps
            )
            for full in crowded(replace(run.clocks[crew.group], reps=reps), group, run.course):
                message = f"{crew.title}, in {_lane_count(crew)}: {crowded_words(full)}"
                level = analysis.catalogue.club.squads[practice.squad].level
                found = Problem(practice, run.path, message, room_hint(full), level=level)
                yield found, is_blind(analysis, full)
                break


def _lane_count(crew: Crew) -> str:
    """In how many lanes a crew is."""
    return "1 lane" if len(crew.lanes) == 1 else f"{len(crew.lanes)} lanes"


def _in_own_lanes(crew: Crew, shared: int, most: int) -> LaneGroup:
    """Those of a crew who are in the lanes that it has for itself."""
    own = crew.lane_group
    left = own.lanes - shared
    return replace(own, lanes=left, heads=max(left, own.heads - most * shared)) if left > 0 else own
