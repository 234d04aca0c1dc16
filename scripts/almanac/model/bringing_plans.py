"""What a plan of one club names of that club, squads, lane groups and pools, found again in
another.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from almanac.kinds import IN_CLUB
from almanac.model.catalogue import Key
from almanac.model.club import Club
from almanac.source.reader import Document
from almanac.source.rewrite import uses

PLANS = ("practice", "block", "meet", "timetable")
"""Kinds that are of one club's squads, lane groups and pools."""
Renamed = Mapping[Key, str]
"""By kind and id of the one club the id in the other."""
_WHAT = {"squad": "squad", "lane_group": "lane group", "pool": "pool"}


class NotFoundAgain(Exception):
    """Something of the one club that the other has not, or more than once; the message says what
    to write.
    """


@dataclass(frozen=True)
class Clubs:
    """The club that a plan comes from, and the one that it is brought to. ``asked`` are ids of the
    one, each with the id in the other that was given for it.
    """

    there: Club
    here: Club
    asked: Mapping[str, str]

    def found_again(self, documents: Iterable[tuple[str, Document]]) -> Renamed:
        """What plans, each with its kind, name of the one club, by what it is here: as it was
        asked for, else the squad of that level, the pool of that course, of the same id or the only
        one; the lane group of that place in a squad of as many. Raises NotFoundAgain.
        """
        named = dict.fromkeys(key for kind, own in documents for key in _named(kind, own))
        found, missing = dict[Key, str](), list[str]()
        for key in named:
            try:
                found[key] = self._here(*key)
            except NotFoundAgain as problem:
                missing += [str(problem)] if str(problem) not in missing else []
        if missing:
            raise NotFoundAgain("; ".join(missing))
        return found

    def _here(self, kind: str, id: str) -> str:
        here: Mapping[str, object] = getattr(self.here, IN_CLUB[kind])
        given = self.asked.get(id, "")
        if given in here:
            return given
        if given:
            raise NotFoundAgain(f"no {_WHAT[kind]} here is called '{given}', but {_listed(here)}")
        alike = list(self._alike(kind, id))
        alike = [id] if id in alike else alike
        if len(alike) == 1:
            return alike[0]
        title = getattr(self.there, IN_CLUB[kind])[id].title
        raise NotFoundAgain(
            f"it names the {_WHAT[kind]} '{id}' ({title}) of that club: say which of yours it is, "
            f"--as {id}= and one of {_listed(alike or self._possible(kind, id))}"
        )

    def _possible(self, kind: str, id: str) -> Iterable[str]:
        """What could be meant here: no hall for a pool, and no pool for a hall."""
        here: Mapping[str, object] = getattr(self.here, IN_CLUB[kind])
        if kind != "pool":
            return here
        is_land = self.there.pools[id].is_land
        same = [own for own, pool in self.here.pools.items() if pool.is_land == is_land]
        return same or here

    def _alike(self, kind: str, id: str) -> Iterator[str]:
        if kind == "squad":
            level = self.there.squads[id].level
            yield from (own for own, squad in self.here.squads.items() if squad.level == level)
        elif kind == "pool":
            course = self.there.pools[id].course
            yield from (own for own, pool in self.here.pools.items() if pool.course == course)
        else:
            squad = self.there.lane_groups[id].squad
            theirs = [own for own, it in self.there.lane_groups.items() if it.squad == squad]
            own_squad = self._here("squad", squad)
            ours = [own for own, it in self.here.lane_groups.items() if it.squad == own_squad]
            if id in ours:
                yield id
            elif len(theirs) == len(ours):
                yield ours[theirs.index(id)]


def _named(kind: str, document: Document) -> Iterator[Key]:
    yield from ((use.kind, use.id) for use in uses(document, kind) if use.kind in IN_CLUB)


def _listed(ids: Iterable[str]) -> str:
    return ", ".join(ids)
