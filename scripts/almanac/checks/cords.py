"""Rules on cords and ropes: who holds the other end, who else is in the lane, and who looks on."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.analysis.pool_starts import crews_in_water
from almanac.arithmetic.cords import CordsAtOnce, cords_at_once, is_tied, ties, tows
from almanac.arithmetic.events import Rep
from almanac.arithmetic.lane_order import lane_order
from almanac.checks.each_practice import practices_of
from almanac.checks.rule import Problem, forbids, refuses
from almanac.checks.ways import entry_level
from almanac.model.entry import Entry
from almanac.model.manner import SWIMMER
from almanac.model.practice import Practice
from almanac.model.reps import Reps
from almanac.model.walk import reps_with_paths, versions_with_paths, written_items
from almanac.source.reader import DataPath


@forbids("tie-unsaid")
def tie_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Gear that resists or assists the whole body says what it ties the swimmer to (``tied_to``):
    nothing, a holder or an anchor.
    """
    for gear in analysis.catalogue.gear.values():
        if gear.may_tie and not gear.tied_to:
            text = "nothing says whether it ties the swimmer to somebody or something"
            mend = "write tied_to: nothing, holder, anchor or either"
            yield Problem(gear, ("acts_on",), text, mend, of_key=True)


@refuses("cord-end-unsaid")
def cord_end_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Where a cord or a rope ties a swimmer, in the water or on land, the reps say who holds its
    other end, and where (``cord``). Gear that comes with the drill, with a part of a rep, with a
    lane group or with a round counts as well.
    """
    for entry, item, path, level in _tied_items(analysis):
        if item.cord is None:
            text = "a swimmer is tied, and nothing says who holds the other end"
            mend = "write cord: {held_by: adult, swimmer or anchor, at: where that is}"
            yield Problem(entry, path, text, mend, level=level)


@refuses("cord-held")
def cord_held(analysis: Analysis) -> Iterator[Problem]:
    """Swimmers hold the end of a cord only where their level may (``cords_by_swimmers_most`` in the
    policy), and in no more lanes at once than it says.
    """
    policy = analysis.catalogue.policy
    for entry, item, path, level in _tied_items(analysis):
        most = policy.of_level(level).limit("cords_by_swimmers_most")
        if item.cord and item.cord.held_by == SWIMMER and not most:
            text = f"a swimmer holds the end of a cord, and at {level} an adult does"
            mend = "write held_by: adult, and find an adult for each cord, or use no cord"
            yield Problem(entry, (*path, "cord"), text, mend, level=level)
    for practice, found, level in _cords_at_once(analysis):
        most = policy.of_level(level).limit("cords_by_swimmers_most")
        if most and found.by_swimmers > most:
            text = f"swimmers hold {found.by_swimmers} cords at once, and {most:g} are the most"
            mend = "use fewer cords at once, in turns, or have adults hold them"
            yield Problem(practice, found.run.path, text, mend, level=level)


@refuses("cord-lane")
def cord_lane(analysis: Analysis) -> Iterator[Problem]:
    """In a lane with a cord no more swim at once than the policy's ``cord_lane_most``: whoever
    comes past swims into it.
    """
    most = int(analysis.catalogue.policy.limit("cord_lane_most"))
    tying = ties(analysis.catalogue.gear)
    for text, practice, path, level in _full_lanes(analysis, tying, most):
        message = f"{text} swim at once in a lane with a cord, and {most} may"
        yield Problem(practice, path, message, _FEWER, level=level)


@refuses("line-lane")
def line_lane(analysis: Analysis) -> Iterator[Problem]:
    """In a lane in which somebody tows a line no more swim at once than the policy's
    ``line_lane_most``. Gear that resists the whole body and ties nobody, and whose dangers name a
    line that catches, is towed on one: a parachute.
    """
    catalogue = analysis.catalogue
    most = int(catalogue.policy.limit("line_lane_most"))
    towing = tows(catalogue.gear)
    for text, practice, path, level in _full_lanes(analysis, towing, most):
        message = f"{text} swim at once in a lane in which a line is towed, and {most} may"
        yield Problem(practice, path, message, _FEWER, level=level)


_FEWER = "write most_in_lane: 1 in the set, or waves: {swimmers: 1}, or more lanes"


def _full_lanes(
    analysis: Analysis, gear: frozenset[str], most: int
) -> Iterator[tuple[str, Practice, DataPath, str]]:
    """Where more swim at once in a lane than may with such gear in it: who and how many."""
    policy = analysis.catalogue.policy
    for practice, summary in practices_of(analysis) if gear else ():
        level = entry_level(analysis.catalogue, practice)
        for run, crew in crews_in_water(summary):
            swum = run.of(crew.group)
            if gear.isdisjoint(swum.gear):
                continue
            reps = [rep for rep in swum.reps if is_tied(rep, gear) and not _is_on_land(rep)]
            orders = [lane_order(rep, crew.lane_group, policy, run.most_in_lane) for rep in reps]
            full = max((order.at_once for order in orders), default=0)
            if full > most:
                path = (*run.path, "set") if run.swim_set else (*run.path, *reps[0].path)
                yield f"{crew.title}: {full}", practice, path, level


@refuses("cord-adults")
def cord_adults(analysis: Analysis) -> Iterator[Problem]:
    """A practice with cords has the adults for them: one at each cord that an adult holds, one for
    as many others as the policy says (``cords_each_adult_most``), and one for everybody else. One
    that does not say how many ``adults`` it has is refused.
    """
    policy = analysis.catalogue.policy
    for practice, found, level in _cords_at_once(analysis):
        need = found.adults(policy.of_level(level))
        if practice.adults is None or practice.adults < need:
            has = "it does not say how many it has" if practice.adults is None else "it has fewer"
            text = f"{found.cords} cords in use at once need {need} adults, and {has}"
            mend = "write the adults who are there under `adults`, or use fewer cords at once"
            yield Problem(practice, found.run.path, text, mend, level=level)


def _is_on_land(rep: Rep) -> bool:
    return all(piece.drill.is_on_land for piece in rep.pieces)


def _tied_items(analysis: Analysis) -> Iterator[tuple[Entry, Reps, DataPath, str]]:
    """Every item, as written and as it is for some, in which somebody is tied; and its level."""
    catalogue = analysis.catalogue
    tying = ties(catalogue.gear)
    if not tying:
        return
    drills = {
        id for id, drill in catalogue.drills.items() if not tying.isdisjoint(drill.gear.needs)
    }
    for entry, items, start in written_items(catalogue):
        level = entry_level(catalogue, entry)
        for item, path in reps_with_paths(items, start):
            if _is_tied_item(item, tying, drills):
                yield entry, item, path, level
        for own, change, path in versions_with_paths(items, start):
            if (change.gear or change.do or change.parts) and _is_tied_item(own, tying, drills):
                yield entry, own, path, level


def _is_tied_item(item: Reps, tying: frozenset[str], drills: set[str]) -> bool:
    worn = {*item.gear, *(gear for part in item.parts for gear in part.gear)}
    done = {drill for part in item.parts for drill in part.drills}
    return not tying.isdisjoint(worn) or not drills.isdisjoint(done)


def _cords_at_once(analysis: Analysis) -> Iterator[tuple[Practice, CordsAtOnce, str]]:
    """The moment of each practice at which most cords are in use."""
    catalogue = analysis.catalogue
    tying, owned = ties(catalogue.gear), catalogue.club.gear_owned
    if not tying:
        return
    for practice, summary in practices_of(analysis):
        if all(tying.isdisjoint(swum.gear) for run in summary.runs for swum in run.each):
            continue
        found = max(
            cords_at_once(summary.sheet, tying, owned),
            key=lambda own: (own.by_adults, own.cords),
            default=None,
        )
        if found:
            yield practice, found, entry_level(catalogue, practice)
