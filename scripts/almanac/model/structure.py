"""Data that its schema has found sound, into frozen dataclasses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from datetime import date
from typing import Any

import cattrs
from cattrs.gen import make_dict_structure_fn, override

from almanac.model.benchmark import Benchmark
from almanac.model.block import Block, ShareRange, TaperDates
from almanac.model.club import Club
from almanac.model.drill import Drill, EffortRange, Sight
from almanac.model.entry import DepthNeeded, Entry, Seconds, Span
from almanac.model.expectation import Expectation, GroupExpectation
from almanac.model.fault import Fault
from almanac.model.gear import Gear
from almanac.model.item_hooks import register_items
from almanac.model.log import Log
from almanac.model.meet import Meet
from almanac.model.need import Need
from almanac.model.policy import STRICTEST, DayCount, LevelLimits, Policy, Rating, Vocabulary
from almanac.model.pool import Depth
from almanac.model.practice import Practice
from almanac.model.progression import Progression
from almanac.model.published import Source
from almanac.model.season import Closure, CourseChange, Exams, Outline, Season, Stretch
from almanac.model.swim_set import Item, SwimSet
from almanac.model.timetable import Timetable
from almanac.source import schemas
from almanac.units import Course, parse_time

CLASSES: dict[str, type[Entry]] = {
    cls.kind: cls
    for cls in (
        Vocabulary,
        Drill,
        Fault,
        Gear,
        Benchmark,
        Progression,
        Source,
        Need,
        SwimSet,
        Practice,
        Block,
        Meet,
        Timetable,
        Season,
        Log,
        Club,
        Policy,
    )
}

_FROM_TO = {"least": override(rename="from"), "most": override(rename="to")}
_DATES = {"first": override(rename="from"), "last": override(rename="to")}
_DATED = (
    TaperDates, Timetable, Season, Stretch, Closure, Exams, CourseChange, Outline,
)  # fmt: skip
_HAZARDS = {"hazards": override(rename="safety")}
_RENAMED: dict[type[Any], dict[str, Any]] = {
    Span: _FROM_TO,
    ShareRange: _FROM_TO,
    DayCount: _FROM_TO,
    **dict.fromkeys(_DATED, _DATES),
    Depth: _FROM_TO,
    DepthNeeded: _FROM_TO,
    Rating: _FROM_TO,
    EffortRange: {"easiest": override(rename="from"), "hardest": override(rename="to")},
    Progression: {"for_whom": override(rename="for")},
    Drill: {**_HAZARDS, "drawing": override(rename="figure")},
    Fault: {"drawing": override(rename="figure")},
    Benchmark: _HAZARDS,
    SwimSet: _HAZARDS,
    Practice: _HAZARDS,
    Meet: _HAZARDS,
}


def _converter() -> cattrs.Converter:
    converter = cattrs.Converter(forbid_extra_keys=True, detailed_validation=False)
    converter.register_structure_hook(Seconds, lambda data, _: Seconds(parse_time(data)))
    converter.register_structure_hook(date, lambda data, _: date.fromisoformat(data))
    converter.register_structure_hook(Course, lambda data, _: Course.parse(data))
    register_items(converter)
    converter.register_structure_hook(
        Sight, lambda data, _: Sight(data["from"], data.get("see") or data["what"])
    )
    converter.register_structure_hook(Expectation, _expectation)
    plain_policy = converter.get_structure_hook(Policy)
    converter.register_structure_hook(
        Policy, lambda data, cls: plain_policy(_with_default_limits(data), cls)
    )
    for cls, renamed in _RENAMED.items():
        hook = make_dict_structure_fn(cls, converter, _cattrs_forbid_extra_keys=True, **renamed)
        converter.register_structure_hook(cls, hook)
    return converter


def _with_default_limits(data: Mapping[str, Any]) -> Mapping[str, Any]:
    """A policy with each limit and house rule that it leaves out as the schema has it, limits for
    all and by level; under ``STRICTEST`` what holds of a level that is named nowhere.
    """
    whole = {
        field: {**schemas.defaults("policy", field), **data.get(field, {})}
        for field in ("limits", "house_rules")
    }
    by_level = schemas.level_defaults()
    levels = {
        level: {**by_level.get(level, by_level[STRICTEST]), **data["levels"].get(level, {})}
        for level in (*data["levels"], *by_level)
    }
    return {**data, **whole, "levels": {level: _level(own) for level, own in levels.items()}}


def _level(data: Mapping[str, Any]) -> Mapping[str, Any]:
    """What a policy says of a level, its limits apart: what has no field of its own is one."""
    others = {own.name: data[own.name] for own in fields(LevelLimits) if own.name in data}
    return {**others, "limits": {name: own for name, own in data.items() if name not in others}}


def _expectation(data: Mapping[str, Any], _: Any) -> Expectation:
    clock = {group: parse_time(time) for group, time in data.get("clock", {}).items()}
    by_group = {group: GroupExpectation(**own) for group, own in data.get("by_group", {}).items()}
    return Expectation(**{**data, "clock": clock, "by_group": by_group})


_CONVERTER = _converter()


def structure(data: Mapping[str, Any], kind: str, id: str, file: str) -> Entry:
    """The entry that sound data holds. Raises only where schema and dataclass have parted."""
    return _CONVERTER.structure({**data, "id": id, "file": file}, CLASSES[kind])


def structure_items(data: list[dict[str, Any]]) -> tuple[Item, ...]:
    """The items that sound data holds, as a set or a part of a practice writes them."""
    return _CONVERTER.structure(data, tuple[Item, ...])
