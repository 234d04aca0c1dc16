"""The JSON contract of a set's summary, version 1. ``by`` and ``distance`` are in the unit named
beside them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from almanac.analysis.figures import by_name
from almanac.analysis.figures.figure import NamedFigure
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.timed_reps import TimedRep
from almanac.findings import Finding
from almanac.report.brief_text import brief_json
from almanac.report.facet_shares import facet_numbers
from almanac.report.shown import other_figures_json, rounded, shown_rest
from almanac.rounding import half_up, tenths
from almanac.source.reader import DataPath

VERSION = 1
# The keys of the contract, in its order, and the figures that they hold.
_TOTALS = ("distance", "metres", "lengths", "reps")
_SHARES = {
    "kick": "kick share",
    "supine_flutter": "supine share",
    "prone_flutter": "prone share",
    "board_flutter": "board share",
    "resisted": "resisted share",
    "fast": "fast share",
}
_ON_THE_CLOCK = {
    "clock_s": ("clock", 1),
    "last_touch_s": ("last touch", 1),
    "work_s": ("work", 1),
    "rest_s": ("rest", 1),
    "density": ("density", 3),
    "rated_work": ("rated work", 1),
}


def set_json(summary: SetSummary, findings: Iterable[Finding] = ()) -> dict[str, Any]:
    """A set's summary as the contract shows it."""
    totals, shares = (by_name("set", key, summary.first) for key in ("set", "shares"))
    return {
        **set_totals(summary),
        "by": facets_json(summary.first),
        "shares": _shares(shares),
        "gear": list(summary.gear),
        "groups": {
            group: {**(_swum(summary.of(group)) if summary.differs else {}), **_group(clock)}
            for group, clock in summary.clocks.items()
        },
        "brief": brief_json(summary.brief),
        "misfits": [
            {
                "path": dotted(misfit.path),
                "distance": _number(misfit.distance),
                "ends": misfit.ends,
                "why": misfit.why.value,
                "nearest": misfit.nearest,
            }
            for misfit in summary.misfits
        ],
        "findings": [finding.as_json() for finding in findings],
        **other_figures_json(totals.values(), _TOTALS),
    }


def set_totals(summary: SetSummary) -> dict[str, Any]:
    """The first part of it: what a set comes to as a whole."""
    totals = by_name("set", "set", summary.first)
    return {
        "version": VERSION,
        "kind": "set",
        "id": summary.swim_set.id,
        "course": str(summary.course),
        "distance": _whole(totals["distance"]),
        "unit": summary.course.unit.value,
        **_by_time(summary.first),
        "metres": rounded(totals["metres"], 3),
        "lengths": _whole(totals["lengths"]),
        "reps": totals["reps"].value,
    }


def facets_json(swum: Swum) -> dict[str, Any]:
    """Distance by the words of each facet."""
    return {facet: facet_numbers(split) for facet, split in swum.by.items()}


def _by_time(swum: Swum) -> dict[str, Any]:
    """What of the distance is estimated, and how many reps have none that is known."""
    unknown = sum(piece.unknown is not None for piece in swum.by_time)
    return {"estimated_distance": _number(swum.estimated), "distance_unknown": unknown}


def _swum(swum: Swum) -> dict[str, Any]:
    """What a lane group swims, where some swim another thing than others."""
    figures = by_name("set", "set", swum)
    totals = {name: _whole(figures[name]) for name in ("distance", "lengths")}
    return {**totals, **_by_time(swum), "by": facets_json(swum)}


def dotted(path: DataPath) -> str:
    """A path as text: ``items[0].items[1]``."""
    text = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in path)
    return text.removeprefix(".")


def _number(value: Fraction | float) -> float | int:
    rounded = float(half_up(value, Decimal("0.001")))
    return int(rounded) if rounded == int(rounded) else rounded


def _whole(figure: NamedFigure) -> float | int:
    return _number(figure.value or 0)


def _tenth(value: float | None) -> float | None:
    return None if value is None else tenths(value)


def _rest(timed: TimedRep) -> float | None:
    rest = shown_rest(timed)
    return None if rest is None else float(rest)


def _shares(shares: Mapping[str, NamedFigure]) -> dict[str, Any]:
    found = {key: rounded(shares[name], 4) for key, name in _SHARES.items()}
    into_stroke = _whole(shares["kick into stroke"])
    told = (*_SHARES.values(), "kick into stroke")
    return {**found, "kick_into_stroke": into_stroke, **other_figures_json(shares.values(), told)}


def _group(clock: GroupClock) -> dict[str, Any]:
    figures = by_name("set", "group", clock)
    return {
        **{key: rounded(figures[name], digits) for key, (name, digits) in _ON_THE_CLOCK.items()},
        "assumed": list(clock.assumed),
        "missing": [_missing(item) for item in clock.missing],
        "does_not_fit": [
            {
                "path": dotted(unfit.timed.rep.path),
                "rep": unfit.timed.rep.number,
                "sendoff_s": _tenth(unfit.sendoff_s),
                "takes_s": _tenth(unfit.done_s),
                "fits_s": _tenth(unfit.fits_s),
            }
            for unfit in clock.unfit
        ],
        "gear_changes": [
            {
                "before": dotted(change.before.path),
                "on": sorted(change.on),
                "off": sorted(change.off),
                "cost_s": change.cost_s,
                "uncovered_s": change.uncovered_s,
                "at_far_end": change.at_far_end,
            }
            for change in clock.changes
        ],
        "reps": [_rep(timed) for timed in clock.reps],
        **other_figures_json(figures.values(), [name for name, _ in _ON_THE_CLOCK.values()]),
    }


def _missing(item: NoNumber) -> dict[str, str]:
    return {"because": item.because.value, "drill": item.drill, "benchmark": item.benchmark}


def _rep(timed: TimedRep) -> dict[str, Any]:
    rep, target = timed.rep, timed.target
    return {
        "path": dotted(rep.path),
        "round": rep.rounds[-1] if rep.rounds else None,
        "rounds": list(rep.rounds),
        "rep": rep.number,
        "distance": _number(rep.distance),
        "held": any(piece.hold_s is not None and not piece.by_time for piece in rep.pieces),
        "aim_s": _tenth(timed.aim.value if timed.aim else None),
        "by_time": any(piece.by_time for piece in rep.pieces),
        "drills": [piece.drill.id for piece in rep.pieces],
        "start": rep.item.start or None,
        "partner": rep.item.partner or None,
        "team": rep.item.team or None,
        "note_result": rep.item.note_result or None,
        "rest_inside_s": _tenth(rep.inner_rest_s),
        "target_s": _tenth(timed.target_s),
        "estimated": isinstance(target, Target) and target.estimated,
        "other_course": isinstance(target, Target) and target.other_course,
        "stale": isinstance(target, Target) and target.stale,
        "assumed": isinstance(target, Target) and target.assumed,
        "sendoff_s": _tenth(timed.sendoff_s),
        "suggested": timed.suggested,
        "in_lane": timed.order.heads,
        "gap_s": _tenth(timed.order.gap_s),
        "waves": timed.order.waves,
        "rest_s": _rest(timed),
    }
