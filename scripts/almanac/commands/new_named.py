"""What a starter names: of the squad that was chosen, or of the first that has any, its practice,
a set of its level, the course of the club's pool, and the adults that it takes there.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Any

from almanac.arithmetic.watching import watch
from almanac.model.load import Loaded
from almanac.model.vocabularies import LAND
from almanac.units import COURSES, ON_LAND

_USUAL = "25m"


def named(kind: str, answers: Mapping[str, Any], loaded: Loaded) -> dict[str, str]:
    """By kind the id that a starter is to name in place of the first one; its ``course``, the
    ``level`` of the club's first squad, and of a practice the fewest ``adults``.
    """
    club = _club(loaded)
    levels = [str(own.get("level")) for own in _listed(club, "squads").values()]
    found = {"course": _course(club, str(answers.get("pool", "")))}
    found |= {"level": levels[0]} if levels else {}
    if found["course"] == ON_LAND:
        usual = found.get("level", "")
        found["drill"] = _drill_on_land(loaded, str(answers.get("level", usual)))
    squad = str(answers.get("squad", ""))
    if kind == "practice" and (adults := _adults(loaded, squad, str(answers.get("pool", "")))):
        found["adults"] = str(adults)
    practices = {id: data for id, data in _entries("practice", loaded) if "squad" in data}
    if kind == "block" and not squad:
        squad = next((str(data["squad"]) for data in practices.values()), "")
    if not squad:
        return found
    own = next((id for id, data in practices.items() if data["squad"] == squad), "")
    level = _listed(club, "squads").get(squad, {}).get("level")
    if found["course"] == ON_LAND:
        found["drill"] = _drill_on_land(loaded, str(level))
    sets = [
        id
        for id, data in _entries("set", loaded)
        if data.get("level") == level and data.get("course") == found["course"]
    ]
    found |= {"squad": squad, "practice": own}
    return found | ({"set": sets[0]} if sets else {})


def _adults(loaded: Loaded, squad: str, pool: str) -> int:
    """The fewest adults for a squad in a pool, else for the first of each; 0 where that is not
    known.
    """
    if loaded.catalogue is None:
        return 0
    club, policy = loaded.catalogue.club, loaded.catalogue.policy
    squad = squad if squad in club.squads else next(iter(club.squads), "")
    place = club.pools.get(pool) or next(iter(club.pools.values()), None)
    if place is None or not squad:
        return 0
    own = watch(policy, club.squads[squad].level, place)
    heads = sum(it.heads for it in loaded.catalogue.lane_groups.values() if it.squad == squad)
    return max(own.fewest, math.ceil(heads / own.each) if own.each else 0)


def _drill_on_land(loaded: Loaded, level: str) -> str:
    """A drill on land, of a level where there is one."""
    drills = [(id, data) for id, data in _entries("drill", loaded) if data.get("mode") == LAND]
    of_level = [id for id, data in drills if data.get("level") == level]
    return next(iter([*of_level, *(id for id, _ in drills)]), "")


def _course(club: Mapping[str, Any], pool: str) -> str:
    """The course of a pool, else of the first one with water, else of a hall."""
    pools = _listed(club, "pools")
    chosen = [pools[pool]] if pool in pools else pools.values()
    courses = [str(own.get("course")) for own in chosen]
    return next(
        (own for own in courses if own in COURSES), ON_LAND if ON_LAND in courses else _USUAL
    )


def _club(loaded: Loaded) -> Mapping[str, Any]:
    document = loaded.documents.get(("club", "club"))
    return document.data if document else {}


def _listed(club: Mapping[str, Any], listing: str) -> dict[str, Mapping[str, Any]]:
    """What the club lists by id; nothing of what is no such thing, which ``check`` tells."""
    own = club.get(listing)
    return {
        id: it for id, it in (own if isinstance(own, dict) else {}).items() if isinstance(it, dict)
    }


def _entries(kind: str, loaded: Loaded) -> Iterator[tuple[str, Mapping[str, Any]]]:
    for (own, id), document in loaded.documents.items():
        if own == kind and "moved_to" not in document.data:
            yield id, document.data
