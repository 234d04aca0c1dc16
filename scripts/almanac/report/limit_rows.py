"""The limits of safety that depend on a level, in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.model.catalogue import Catalogue
from almanac.model.policy import Limit
from almanac.rounding import time_of_day
from almanac.source import schemas
from almanac.source.looser import way_of
from almanac.units import show_number


@dataclass(frozen=True)
class LimitOfLevel:
    """One limit for one level: its value with its unit, its reason and its source."""

    level: str
    value: str
    reason: str
    source: str


def level_limits(catalogue: Catalogue) -> Iterator[tuple[str, list[LimitOfLevel]]]:
    """Every limit by title, with what it is for each level."""
    levels, policy = catalogue.words("levels"), catalogue.policy
    for name, title in schemas.level_titles().items():
        own = [
            LimitOfLevel(word.title, _with_unit(limit), limit.reason, limit.source)
            for level, word in levels.items()
            if (limit := policy.of_level(level).limits.get(name))
        ]
        if own:
            yield title, own


def limits_of_all(catalogue: Catalogue) -> Iterator[tuple[str, str, Limit]]:
    """What each limit that holds for every level says, its value with its unit, and the limit; of
    each that lets more or less happen.
    """
    given = schemas.fields("policy")["limits"]["properties"]
    for name, limit in catalogue.policy.limits.items():
        if way_of(name, given[name]) not in ("", "neither"):
            says = str(given[name]["description"]).rstrip(".").removesuffix(f", in {limit.unit}")
            yield says, _with_unit(limit), limit


def _with_unit(limit: Limit) -> str:
    """``20 m``, ``1 cord``, ``20:00`` of a day."""
    if limit.unit == "h":
        return time_of_day(3600 * limit.value)
    one = limit.value == 1 and len(limit.unit) > 2  # "s" is no plural
    return f"{show_number(limit.value, 2)} {limit.unit.removesuffix('s') if one else limit.unit}"
