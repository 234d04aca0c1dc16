"""The run sheet of a practice in its JSON contract: times in seconds from the start of the slot."""

from __future__ import annotations

from typing import Any

from almanac.arithmetic.crews import crew_of
from almanac.arithmetic.helping import Help
from almanac.arithmetic.moment import Moment
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.report.sheet_text import other_figures
from almanac.report.shown import other_figures_json
from almanac.rounding import decimals


def sheet_json(summary: PracticeSummary) -> list[dict[str, Any]]:
    """The rows of the run sheet, in order."""
    return [_row(summary, row) for row in summary.sheet]


def lanes_json(summary: PracticeSummary) -> dict[str, Any]:
    """The lanes that each lane group has all evening, and those that are not as usual."""
    own = summary.practice.lanes
    groups = {} if summary.pool.is_land else summary.groups
    return {
        "lanes": {
            "out_of_use": list(own.out_of_use),
            "shared": list(own.shared),
            "groups": {id: list(crew_of(id, "", groups, own, {}).lanes) for id in groups},
        }
    }


def hands_json(summary: PracticeSummary) -> dict[str, Any]:
    """The adults and helpers that are needed at the same moment."""
    need = summary.hands
    if need is None:
        return {}
    there = summary.practice.adults
    told = {"needed": need.adults, "there": there, "jobs": dict(need.jobs)}
    return {"adults": {**told, "must_be_adults": dict(need.must)}}


def _row(summary: PracticeSummary, row: SheetRow) -> dict[str, Any]:
    """A part; ``starts_s`` is null where it is not known, and ``from_s`` then the earliest."""
    doing = row.run.doing
    told = {
        "rounds": doing.rounds,
        "reps": doing.reps,
        "place": doing.place,
        "led_by": doing.led_by,
        "turn": row.stage.turn,
        "change_s": row.change_s,
    }
    return {
        "part": row.run.word,
        "number": row.stage.number,
        "set": doing.set,
        **{key: value for key, value in told.items() if value},
        "talk_s": row.talk_s,
        "gear_s": row.gear_s,
        **_moment("starts_s", "from_s", row.starts),
        **_moment("ends_s", "ends_from_s", row.ends),
        "latecomers": row.joins,
        **({"helpers": [_help(own) for own in row.helps]} if row.helps else {}),
        "groups": {cell.crew.name: _cell(summary, row, cell) for cell in row.cells},
    }


def _help(own: Help) -> dict[str, Any]:
    """A job beside the swimmers: ``count`` people, one of them the coach where ``by_coach``."""
    return {
        "job": own.helper.job,
        "count": own.count,
        "each": own.helper.each,
        "adult": own.helper.adult,
        "by_coach": own.by_coach,
        "for": list(own.titles),
    }


def _cell(summary: PracticeSummary, row: SheetRow, cell: SheetCell) -> dict[str, Any]:
    waits_for = {"waits_for": cell.waits_for.name} if cell.waits_for else {}
    return {
        **_distance(row.run, cell.group),
        **_moment("ends_s", "ends_from_s", cell.ends),
        "waits_s": cell.waits_s,
        **waits_for,
        "clock_over_s": _tenths(cell.clock_over_s),
        "last_touch_s": _tenths(cell.last_touch_s),
        "lanes": list(cell.crew.lanes),
        **other_figures_json(other_figures(summary, row, cell.group), ()),
    }


def _tenths(seconds: float | None) -> float | None:
    return None if seconds is None else decimals(seconds, 1)


def _distance(run: PartRun, group: str) -> dict[str, float]:
    """How far a lane group goes in a part, where some go farther than others."""
    return {"distance": run.of(group).distance.value} if run.differs else {}


def _moment(known: str, earliest: str, moment: Moment) -> dict[str, Any]:
    exact = {known: moment.known_s}
    return {**exact, earliest: decimals(moment.s, 1)} if moment.missing else exact
