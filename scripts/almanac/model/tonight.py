"""A practice as it is on the night: what is otherwise than written, for one evening."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TypeVar

from almanac.model.catalogue import Catalogue
from almanac.model.practice import Doing, Lanes, Practice, PracticePart


@dataclass(frozen=True)
class Tonight:
    """What is otherwise: heads and lanes by lane group, lanes that are out of use, adults who are
    there, minutes that are left, and the part, from 1, that comes next.
    """

    heads: Mapping[str, int] = field(default_factory=dict)
    lanes: Mapping[str, Lanes] = field(default_factory=dict)
    out_of_use: Lanes = ()
    adults: int | None = None
    minutes: int | None = None
    begins_with: int = 1

    @property
    def changes_anything(self) -> bool:
        """Whether something is otherwise than written."""
        return self != Tonight()


def tonight(catalogue: Catalogue, id: str, change: Tonight) -> Catalogue:
    """The catalogue as it is for a practice tonight: everything that is computed and checked then
    follows. Raises KeyError for a practice or a lane group that it does not have.
    """
    club, practice = catalogue.club, catalogue.practices[id]
    groups = {
        name: replace(group, heads=change.heads.get(name, group.heads))
        for name, group in club.lane_groups.items()
    }
    entries = {
        **catalogue.entries,
        ("club", "club"): replace(club, lane_groups=groups),
        ("practice", id): _practice(practice, change),
    }
    return Catalogue(entries, catalogue.documents, catalogue.moved)


def _practice(practice: Practice, change: Tonight) -> Practice:
    usual = practice.lanes
    lanes = replace(
        usual,
        out_of_use=tuple(dict.fromkeys((*usual.out_of_use, *change.out_of_use))),
        groups={**usual.groups, **change.lanes},
    )
    parts = tuple(_part(part, change) for part in practice.parts[change.begins_with - 1 :])
    minutes = practice.slot.minutes if change.minutes is None else change.minutes
    return replace(
        practice,
        parts=parts,
        lanes=lanes,
        adults=practice.adults if change.adults is None else change.adults,
        slot=replace(practice.slot, minutes=minutes),
    )


def _part(part: PracticePart, change: Tonight) -> PracticePart:
    """A part whose own lanes give way to those of the night."""
    own = _doing(part, change)
    return replace(
        own,
        apart=tuple(
            replace(some, parts=tuple(_doing(inner, change) for inner in some.parts))
            for some in part.apart
        ),
        stations=tuple(_doing(station, change) for station in part.stations),
    )


D = TypeVar("D", bound=Doing)


def _doing(doing: D, change: Tonight) -> D:
    kept = {group: lanes for group, lanes in doing.lanes.items() if group not in change.lanes}
    return replace(doing, lanes=kept)
