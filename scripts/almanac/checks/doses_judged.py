"""What the rules on a drill's own dose look at: sets, items in place, and practices as a whole."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.events import Break, Event, Piece, Rep
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import rest_after
from almanac.checks.dose_sums import is_plain, over_dose, times_more
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.ways import Said, Way, judged_ways
from almanac.model.gear import Gear
from almanac.model.moving import Activity
from almanac.model.reps import Reps
from almanac.units import show_number, show_time


def judged(analysis: Analysis) -> Iterator[Coded]:
    """Every breach, with the code of its rule."""
    over: dict[str, set[str]] = {}

    def judge(way: Way) -> Iterator[Said]:
        if way.is_part:
            if not way.is_of_set:  # what a rep is does not hang on who does it: the set tells it
                yield from _way(analysis, way)
            return
        if not way.is_scaled:  # its reps are those of the set as it is written
            yield from _way(analysis, way)
        for drill, path, message, hint in over_dose(analysis, way.swum, way.level):
            over.setdefault(way.entry.id, set()).add(drill)
            yield "drill-dose", path, message, hint

    yield from judged_ways(analysis, judge)
    for summary in analysis.practices.values():
        level = analysis.catalogue.club.squads[summary.practice.squad].level
        sets = {run.swim_set.id for run in summary.runs if run.swim_set}
        at_sets = {drill for id in sets for drill in over.get(id, ())}
        for swum in summary.every_way:
            for drill, _, message, hint in over_dose(analysis, swum, level):
                if drill not in at_sets:
                    found = Problem(summary.practice, ("parts",), message, hint, of_key=True)
                    yield "drill-dose", found._replace(level=level)


def _way(analysis: Analysis, way: Way) -> Iterator[Said]:
    told = set[object]()
    for clock in way.clocks or (None,):
        timed = {id(own.rep): own for own in clock.reps} if clock else {}
        events = way.swum.events
        for number, event in enumerate(events):
            if not isinstance(event, Rep):
                continue
            key = (event.path, tuple((piece.drill.id, piece.effort) for piece in event.pieces))
            if key not in told:
                told.add(key)
                for piece in () if _is_test(analysis, event, way) else event.pieces:
                    yield from _effort(analysis, event, piece)
                    yield from _length(analysis, event, piece, way.level)
            straight = _is_straight_on(event.item) and _is_all_gentle(analysis, event)
            if _goes_on(events, number) and not straight:
                rest = rest_after(events, number, timed.get(id(event)))
                yield from _rest(analysis, event, rest)


def _is_test(analysis: Analysis, rep: Rep, way: Way) -> bool:
    """Whether a rep is a timed test of the club's, done once: it is swum as its benchmark says."""
    piece, metres = rep.pieces[0], float(rep.distance) * way.swum.course.unit.metres
    return rep.item.reps == len(rep.pieces) == 1 and any(
        abs(own - metres) < 0.5 for own in _tested(analysis).get(piece.drill.activity, ())
    )


def _tested(analysis: Analysis) -> Mapping[Activity, Collection[float]]:
    """How far the club's timed tests go in metres, by what is done in them."""

    def found() -> Mapping[Activity, Collection[float]]:
        metres: dict[Activity, set[float]] = {}
        for test in analysis.catalogue.benchmarks.values():
            metres.setdefault(test.activity, set()).add(test.metres)
        return metres

    return analysis.once(_tested, found)


def _effort(analysis: Analysis, rep: Rep, piece: Piece) -> Iterator[Said]:
    order, own = list(analysis.catalogue.efforts), piece.drill.effort
    words = [order.index(word) for word in analysis.scale.split(piece.effort)]
    if max(words) > order.index(own.hardest):
        message = f"'{piece.drill.title}' at {order[max(words)]}"
        yield "drill-too-hard", rep.path, message, f"it goes to {own.hardest} at most"
    elif min(words) < order.index(own.easiest):
        message = f"'{piece.drill.title}' at {order[min(words)]}"
        yield "drill-too-easy", rep.path, message, f"it begins at {own.easiest}"


def _length(analysis: Analysis, rep: Rep, piece: Piece, level: str) -> Iterator[Said]:
    drill, dose = piece.drill, piece.drill.dose
    gentle = _is_gentle(analysis, piece, analysis.catalogue.gear)
    share = analysis.catalogue.policy.limit(
        "dose_gentle_rep_most" if gentle and drill.travels else "dose_rep_most"
    )
    if drill.is_full_stroke and is_plain(analysis, piece):
        share *= times_more(analysis, drill, level)
    goes = rep.item.reps if _is_straight_on(rep.item) else 1  # without rest they are one go
    far, long = goes * float(piece.distance), goes * (piece.hold_s or 0.0)
    if dose.distance and far > share * dose.distance:
        message = f"{show_number(far)} of '{drill.title}' in one go"
        most = show_number(share * dose.distance)
        yield "drill-dose", rep.path, message, f"its dose is {dose.distance}: at most {most}"
    elif dose.time and long > share * dose.time:
        message = f"{show_time(long)} of '{drill.title}' in one go"
        most = show_time(share * dose.time)
        yield "drill-dose", rep.path, message, f"its dose is {show_time(dose.time)}: {most} at most"


def is_too_far_at_once(analysis: Analysis, swum: Swum, level: str) -> bool:
    """Whether reps that follow each other without rest are beyond the dose of a drill in one go."""
    items = {rep.path: rep for rep in swum.reps if _is_straight_on(rep.item)}.values()
    each = ((rep, piece) for rep in items for piece in rep.pieces)
    return any(True for rep, piece in each for _ in _length(analysis, rep, piece, level))


def _is_straight_on(item: Reps) -> bool:
    return item.sendoff is None and item.rest is None


def _is_all_gentle(analysis: Analysis, rep: Rep) -> bool:
    return all(_is_gentle(analysis, piece, analysis.catalogue.gear) for piece in rep.pieces)


def _is_gentle(analysis: Analysis, piece: Piece, gear: Mapping[str, Gear]) -> bool:
    words = analysis.scale.split(piece.effort).keys()
    loaded = any(gear[id].resists for id in piece.gear) or piece.drill.is_under_water
    return words <= set(analysis.scale.gentle) and not loaded


def _goes_on(events: tuple[Event, ...], number: int) -> bool:
    """Whether the next rep is of the same item: then there is rest between the two."""
    after = next((event for event in events[number + 1 :] if not isinstance(event, Break)), None)
    return after is not None and after.path == events[number].path


def _rest(analysis: Analysis, rep: Rep, rest_s: float | None) -> Iterator[Said]:
    drill = rep.pieces[-1].drill
    least = analysis.catalogue.policy.limit("dose_rest_share") * drill.dose.rest
    if rest_s is not None and rest_s < least - 0.5:
        rest = f"{show_number(rest_s)} s" if rest_s else "no"
        message = f"{rest} rest between reps of '{drill.title}'"
        hint = f"its dose is {show_time(drill.dose.rest)}: at least {show_time(least)}"
        yield "drill-dose", rep.path, message, hint
