"""Rules on sets: what must add up, end at a wall, and leave time to breathe."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from almanac.arithmetic.course import Misfit
from almanac.arithmetic.expand import count_reps
from almanac.arithmetic.lanes import crowded, gap_for, heads_in_lane, too_tight
from almanac.arithmetic.summary import SetSummary, clock_for
from almanac.checks.rule import Problem, forbids, warns
from almanac.checks.study import Study, efforts_with_paths, reps_with_paths
from almanac.model.swim_set import Build, Descend, SwimSet
from almanac.units import show_distance, show_number, show_time


@forbids("too-many-reps")
def too_many_reps(study: Study) -> Iterator[Problem]:
    """A set holds no more reps than the policy's ``most_reps``: nested rounds multiply faster than one thinks."""
    for swim_set in study.catalogue.sets.values():
        if study.is_runaway(swim_set):
            message = f"the rounds multiply to {count_reps(swim_set.items):,} reps"
            most = show_number(study.catalogue.policy.limit("most_reps"))
            mend = f"write fewer rounds: at most {most} reps (plans/policy.yml)"
            yield Problem(swim_set, ("items",), message, mend, of_key=True)


@forbids("descend-one-rep")
def descend_one_rep(study: Study) -> Iterator[Problem]:
    """A descend needs two reps or more: over one rep there is nothing to get faster than."""
    for swim_set in study.catalogue.sets.values():
        for item, path in reps_with_paths(swim_set.items):
            for effort, where in efforts_with_paths(item, path):
                if isinstance(effort, Descend) and item.reps < 2:
                    mend = f"write one word, or build: [{effort.first}, {effort.last}] within the rep"
                    yield Problem(swim_set, where, "a descend needs two reps or more, and here is one", mend)


@forbids("effort-falls")
def effort_falls(study: Study) -> Iterator[Problem]:
    """A descend and a build go from the easier word to the harder one."""
    order = list(study.catalogue.efforts)
    for swim_set in study.catalogue.sets.values():
        for item, path in reps_with_paths(swim_set.items):
            for effort, where in efforts_with_paths(item, path):
                if isinstance(effort, (Descend, Build)) and order.index(effort.first) >= order.index(effort.last):
                    form = type(effort).__name__.lower()
                    message = f"a {form} from {effort.first} to {effort.last} does not get faster"
                    yield Problem(swim_set, where, message, "write the easier word first, or use rotate")


@forbids("rep-ends-mid-pool")
def rep_ends_mid_pool(study: Study) -> Iterator[Problem]:
    """Every rep of a set ends at a wall of the course that the set is written for."""
    for swim_set, misfit in _misfits(study):
        if misfit.ends:
            unit = swim_set.course.unit
            message = f"a rep of {show_distance(misfit.distance, unit)} ends between the walls of a {swim_set.course} pool"
            mend = f"the nearest that ends at a wall: {show_distance(misfit.nearest, unit)}"
            yield Problem(swim_set, (*misfit.path, *_distance_step(swim_set, misfit)), message, mend)


@warns("change-mid-pool")
def change_mid_pool(study: Study) -> Iterator[Problem]:
    """Changes inside a rep fall at a wall of the course that the set is written for."""
    for swim_set, misfit in _misfits(study):
        if not misfit.ends:
            unit = swim_set.course.unit
            message = f"part {(misfit.part or 0) + 1} ends between the walls of a {swim_set.course} pool"
            mend = f"the nearest that ends at a wall: {show_distance(misfit.nearest, unit)}; or accept it with a reason"
            yield Problem(swim_set, (*misfit.path, "parts", misfit.part or 0, "distance"), message, mend)


def _misfits(study: Study) -> Iterator[tuple[SwimSet, Misfit]]:
    for id, swim_set in study.computable.items():
        for misfit in study.summary(id).misfits:
            yield swim_set, misfit


def _distance_step(swim_set: SwimSet, misfit: Misfit) -> tuple[str, ...]:
    parted = next(item.is_parted for item, path in reps_with_paths(swim_set.items) if path == misfit.path)
    return ("parts",) if parted else ("distance",)


@forbids("expect-differs")
def expect_differs(study: Study) -> Iterator[Problem]:
    """What an author writes under ``expect`` is what the set adds up to; a difference shows both."""
    for id, swim_set in study.computable.items():
        summary = study.summary(id)
        expect = swim_set.expect
        totals: Mapping[str, tuple[Any, float]] = {
            "distance": (expect.distance, summary.distance.value),
            "reps": (expect.reps, len(summary.reps)),
            "lengths": (expect.lengths, float(summary.lengths)),
        }
        for name, (believed, computed) in totals.items():
            if believed is not None and believed != computed:
                yield _difference(swim_set, (name,), show_number(believed), show_number(computed))
        for facet, words in expect.by.items():
            for word, distance in words.items():
                computed = float(summary.by[facet].get(word, 0))
                if abs(distance - computed) > 0.05:
                    yield _difference(swim_set, ("by", facet, word), show_number(distance), show_number(computed))
        yield from _clock_differences(swim_set, summary)


def _clock_differences(swim_set: SwimSet, summary: SetSummary) -> Iterator[Problem]:
    for group, believed in swim_set.expect.clock.items():
        clock = summary.clocks[group].clock
        if clock is None or abs(clock.value - believed) > 0.5:
            computed = show_time(clock.value) if clock else "no number: a target is not known"
            yield _difference(swim_set, ("clock", group), show_time(believed), computed)


def _difference(swim_set: SwimSet, path: tuple[str, ...], believed: str, computed: str) -> Problem:
    what = " ".join(step for step in path if step != "by")
    message = f"'{what}' is believed to be {believed}, and the set adds up to {computed}"
    return Problem(swim_set, ("expect", *path), message, f"write {computed}, or mend the items")


@warns("sendoff-too-tight")
def sendoff_too_tight(study: Study) -> Iterator[Problem]:
    """A send-off leaves at least the rest that the effort needs (``rest`` in the policy), for each lane group.

    A send-off below the target itself can never be made: the message says so.
    """
    for swim_set, summary, group in _runs(study):
        clock = clock_for(study.catalogue, group, swim_set.course)
        for tight in too_tight(summary.clocks[group], clock):
            timed = tight.timed
            target, sendoff = show_time(timed.target_s or 0, tenths=True), show_time(timed.sendoff_s or 0)
            short = "is below the target" if tight.too_short else f"leaves {show_number(timed.rest_s or 0)} s"
            message = (
                f"{group}: a send-off of {sendoff} {short}: target {target}"
                f" and least rest {show_number(tight.least_rest_s)} s"
            )
            yield Problem(swim_set, _sendoff_path(swim_set, timed.rep.path, group), message, f"write {show_time(tight.suggested_s)}")


@warns("lane-crowded")
def lane_crowded(study: Study) -> Iterator[Problem]:
    """The last swimmer in a lane has left before the leader is back at the wall.

    The gap between swimmers is the lane group's own, and on the back at least the policy's
    ``gap_on_back``, because a swimmer on the back cannot see ahead.
    """
    for swim_set, summary, group in _runs(study):
        lane_group, policy = study.catalogue.lane_groups[group], study.catalogue.policy
        for full in crowded(summary.clocks[group], lane_group, policy, swim_set.course, swim_set.most_in_lane):
            message = (
                f"{group}: with {full.heads} in a lane {show_number(full.gap_s)} s apart the last leaves at"
                f" {show_time(full.last_leaves_s)}, and the leader comes back at {show_time(full.back_s, tenths=True)}"
            )
            mend = f"at most {full.most_heads} in a lane, longer reps, or leave from both ends"
            yield Problem(swim_set, full.timed.rep.path, message, mend)


@warns("gap-over-sendoff")
def gap_over_sendoff(study: Study) -> Iterator[Problem]:
    """The gap between swimmers is shorter than the send-off, or the leader leaves again before the second."""
    for swim_set, summary, group in _runs(study):
        lane_group = study.catalogue.lane_groups[group]
        seen = set()
        for timed in summary.clocks[group].reps:
            gap = gap_for(timed.rep, lane_group, study.catalogue.policy)
            if heads_in_lane(lane_group, swim_set.most_in_lane) > 1 and timed.sendoff_s and gap >= timed.sendoff_s and timed.rep.path not in seen:
                seen.add(timed.rep.path)
                message = f"{group}: a gap of {show_number(gap)} s is not below the send-off of {show_time(timed.sendoff_s)}"
                path = _sendoff_path(swim_set, timed.rep.path, group)
                yield Problem(swim_set, path, message, "lengthen the send-off, or put fewer in a lane")


def _runs(study: Study) -> Iterator[tuple[SwimSet, SetSummary, str]]:
    for id, swim_set in study.computable.items():
        for group in study.meant(swim_set):
            yield swim_set, study.summary(id), group


def _sendoff_path(swim_set: SwimSet, path: tuple[str | int, ...], group: str) -> tuple[str | int, ...]:
    item = next(item for item, where in reps_with_paths(swim_set.items) if where == path)
    named = item.sendoff is not None and group in item.sendoff.by_group
    return (*path, "sendoff", group) if named else (*path, "sendoff")
