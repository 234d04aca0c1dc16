"""The JSON contract of a set's summary, version 1. ``by`` and ``distance`` are in the unit named
beside them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from almanac.arithmetic.clock import GroupClock, TimedRep
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.summary import SetSummary
from almanac.findings import Finding
from almanac.source.reader import DataPath

VERSION = 1


def set_json(summary: SetSummary, findings: Iterable[Finding] = ()) -> dict[str, Any]:
    """A set's summary as the contract shows it."""
    return {
        "version": VERSION,
        "kind": "set",
        "id": summary.swim_set.id,
        "course": str(summary.course),
        "distance": _number(summary.distance.value),
        "unit": summary.course.unit.value,
        "metres": round(summary.metres, 3),
        "lengths": _number(summary.lengths),
        "reps": len(summary.reps),
        "by": {
            facet: {word: _number(value) for word, value in split.items()}
            for facet, split in summary.by.items()
        },
        "shares": _shares(summary),
        "gear": list(summary.gear),
        "groups": {group: _group(clock) for group, clock in summary.clocks.items()},
        "brief": [
            {"hazard": line.hazard, "control": line.control, "from": list(line.sources)}
            for line in summary.brief
        ],
        "misfits": [
            {
                "path": dotted(misfit.path),
                "distance": misfit.distance,
                "ends": misfit.ends,
                "nearest": misfit.nearest,
            }
            for misfit in summary.misfits
        ],
        "findings": [finding.as_json() for finding in findings],
    }


def dotted(path: DataPath) -> str:
    """A path as text: ``items[0].items[1]``."""
    text = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in path)
    return text.removeprefix(".")


def _number(value: Fraction | float) -> float | int:
    rounded = round(float(value), 3)
    return int(rounded) if rounded == int(rounded) else rounded


def _tenth(value: float | None) -> float | None:
    return None if value is None else round(value, 1)


def _shares(summary: SetSummary) -> Mapping[str, float | None]:
    shares = summary.shares
    names = ("kick", "supine_flutter", "prone_flutter", "board_flutter", "resisted", "fast")
    found: dict[str, float | None] = {
        name: None if getattr(shares, name) is None else round(float(getattr(shares, name)), 4)
        for name in names
    }
    return {**found, "kick_into_stroke": shares.kick_into_stroke}


def _group(clock: GroupClock) -> dict[str, Any]:
    return {
        "clock_s": _tenth(clock.clock.value if clock.clock else None),
        "work_s": _tenth(clock.work.value if clock.work else None),
        "rest_s": _tenth(clock.rest_s),
        "density": None if clock.density is None else round(clock.density, 3),
        "load": _tenth(clock.load.value if clock.load else None),
        "missing": [_missing(item) for item in clock.missing],
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
        "distance": rep.distance,
        "held": any(piece.hold_s is not None for piece in rep.pieces),
        "target_s": _tenth(timed.target_s),
        "estimated": isinstance(target, Target) and target.estimated,
        "other_course": isinstance(target, Target) and target.other_course,
        "sendoff_s": _tenth(timed.sendoff_s),
        "suggested": timed.suggested,
        "rest_s": _tenth(timed.rest_s),
    }
