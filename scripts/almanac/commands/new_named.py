"""What a starter names: of the squad that was chosen, or of the first that has any, its practice,
a set of its level, and the course of the club's pool.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from almanac.model.load import Loaded
from almanac.units import COURSES

_USUAL = "25m"


def named(kind: str, answers: Mapping[str, Any], loaded: Loaded) -> dict[str, str]:
    """By kind the id that a starter is to name in place of the first one, and its ``course``."""
    club = _club(loaded)
    found = {"course": _course(club, str(answers.get("pool", "")))}
    squad = str(answers.get("squad", ""))
    practices = {id: data for id, data in _entries("practice", loaded) if "squad" in data}
    if kind == "block" and not squad:
        squad = next((str(data["squad"]) for data in practices.values()), "")
    if not squad:
        return found
    own = next((id for id, data in practices.items() if data["squad"] == squad), "")
    level = club.get("squads", {}).get(squad, {}).get("level")
    sets = [
        id
        for id, data in _entries("set", loaded)
        if data.get("level") == level and data.get("course") == found["course"]
    ]
    found |= {"squad": squad, "practice": own}
    return found | ({"set": sets[0]} if sets else {})


def _course(club: Mapping[str, Any], pool: str) -> str:
    """The course of a pool, else of the first one with water."""
    pools = club.get("pools", {})
    chosen = [pools[pool]] if pool in pools else pools.values()
    return next((own["course"] for own in chosen if own.get("course") in COURSES), _USUAL)


def _club(loaded: Loaded) -> Mapping[str, Any]:
    document = loaded.documents.get(("club", "club"))
    return document.data if document else {}


def _entries(kind: str, loaded: Loaded) -> Iterator[tuple[str, Mapping[str, Any]]]:
    for (own, id), document in loaded.documents.items():
        if own == kind and "moved_to" not in document.data:
            yield id, document.data
