"""The brief: every hazard and control that a set gathers from all it uses."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from almanac.arithmetic.expand import Rep
from almanac.model.entry import Hazard
from almanac.model.knowledge import Gear


@dataclass(frozen=True)
class BriefHazard:
    """A danger and the ids of the entries that it comes from."""

    hazard: str
    control: str
    sources: tuple[str, ...]


def brief(
    own: Iterable[tuple[Hazard, str]], reps: Iterable[Rep], gear: Mapping[str, Gear]
) -> tuple[BriefHazard, ...]:
    """Dangers of the set or practice itself, then of its starts, partners and teams, of its gear,
    and of its drills, each once with all it comes from.

    ``own`` holds the first of these, each with the id of the entry that states it.
    """
    reps = tuple(reps)
    drills = {piece.drill.id: piece.drill for rep in reps for piece in rep.pieces}
    worn = {id: gear[id] for rep in reps for piece in rep.pieces for id in piece.gear}
    gathered: dict[Hazard, list[str]] = {}
    with_whom = dict.fromkeys(pair for rep in reps for pair in rep.item.manner.hazards)
    for hazard, id in (*own, *with_whom):
        gathered.setdefault(hazard, []).append(id)
    for piece_of_gear in worn.values():
        for hazard in piece_of_gear.hazards:
            gathered.setdefault(hazard, []).append(piece_of_gear.id)
    for drill in drills.values():
        for hazard in drill.hazards:
            gathered.setdefault(hazard, []).append(drill.id)
    return tuple(
        BriefHazard(hazard.hazard, hazard.control, tuple(ids)) for hazard, ids in gathered.items()
    )
