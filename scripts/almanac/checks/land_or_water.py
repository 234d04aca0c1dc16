"""The rule on drills of which one field says that they are in the water and another on land."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids
from almanac.model.drill import Drill
from almanac.model.entry import ANY_DEPTH
from almanac.source.reader import DataPath
from almanac.wording.wet_or_dry import is_out, is_wet


@forbids("land-or-water")
def land_or_water(analysis: Analysis) -> Iterator[Problem]:
    """A drill is in the water or on land by all that it says: its mode and its ``position``, its
    ``depth_m``, ``start`` and ``under_water``, and the words of its steps.
    Else the limits of the other would hold for it.
    """
    for drill in analysis.catalogue.drills.values():
        for path, message, hint in _torn(drill):
            yield Problem(drill, path, message, hint)
            break


def _torn(drill: Drill) -> Iterator[tuple[DataPath, str, str]]:
    if drill.is_land_mode and any(map(is_wet, drill.steps)):
        hint = "write another mode, or take the water out of its steps"
        yield ("mode",), "its mode is on land, and its steps are in the water", hint
    if drill.is_on_land and not drill.is_land_mode and not any(map(is_out, drill.steps)):
        hint = "write a mode on land, or how the body lies in the water"
        yield ("position",), "its position is on land, and its mode and steps are not", hint
    if drill.is_on_land:
        for name, is_said in (
            ("depth_m", drill.depth_m != ANY_DEPTH),
            ("start", bool(drill.start)),
            ("under_water", drill.under_water is not None),
        ):
            if is_said:
                hint = "take it out, or write another mode and position"
                yield (name,), f"it is on land, and says {name}", hint
