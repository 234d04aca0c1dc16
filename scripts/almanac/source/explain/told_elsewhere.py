"""What one slip makes fail in several places, and is told at one of them."""

from __future__ import annotations

import yaml

from almanac.source.explain.hints import REPS_BY_DISTANCE
from almanac.source.failure import Failure
from almanac.source.meant.further_out import stands_further_in
from almanac.source.meant.named_by_key import ALSO_CALLED
from almanac.source.meant.stands_for import one_day, stands_for
from almanac.source.said.times import minutes_until
from almanac.source.said.units import UNITS, apart
from almanac.source.suggest import nearest


def meant_by_others(failure: Failure) -> set[str | None]:
    """The fields that are told at another one: at a key that is spelt wrong or stands for it, or
    at reps that say their distance.
    """
    others = [key for key in failure.value if key not in failure.fields]
    free = [name for name in failure.fields if name not in failure.value]
    meant = {nearest(key, free) for key in others} | {*map(ALSO_CALLED.get, others)}
    meant |= {*stands_for(failure).values()}
    reps = failure.value.get("reps")
    if isinstance(reps, str) and REPS_BY_DISTANCE.fullmatch(reps):
        meant.add("distance")
    if any(one_day(failure, key) for key in others):
        meant |= {"from", "to"}
    if any(minutes_until(failure.value, key) for key in others):
        meant.add("minutes")
    meant |= {name for name in free if stands_further_in(failure, name)}
    if "unit" in failure.fields and apart(failure.value.get("value"), UNITS):
        meant.add("unit")
    return meant


def loose_below(failure: Failure) -> bool:
    """Whether the items of rounds stand below their empty list as fields, where that is told."""
    is_items = failure.value is None and failure.path[-1:] == ("items",)
    return is_items and {"rounds", "reps"} <= {*failure.siblings}


def cut_behind(failure: Failure) -> bool:
    """Whether a list without its brackets goes on as a field, where that is told."""
    if failure.wanted != "array" or not isinstance(failure.value, str) or not failure.path:
        return False
    behind = dict(zip(failure.siblings, [*failure.siblings][1:], strict=False))
    key = behind.get(str(failure.path[-1]), "")
    try:
        around = failure.document.node(failure.path[:-1])
    except KeyError:  # it stands in no file: a lent list, fitted to the club
        return False
    is_flow = isinstance(around, yaml.MappingNode) and around.flow_style
    return bool(is_flow and key and failure.siblings[key] is None)
