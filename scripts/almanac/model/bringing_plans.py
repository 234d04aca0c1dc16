"""What a plan of one club names of that club, squads, lane groups and pools, found again in
another.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from almanac.kinds import IN_CLUB
from almanac.model.catalogue import Key
from almanac.model.club import Club
from almanac.source.edits.rewrite import key_node, rewritten, uses
from almanac.source.edits.taken_out import without
from almanac.source.reader import Document, read

PLANS = ("practice", "block", "meet", "timetable")
"""Kinds that are of one club's squads, lane groups and pools."""
NOBODY = "-"
"""Given for a lane group that nobody stands for here: it is left out."""
Renamed = Mapping[Key, str]
"""By kind and id of the one club the id in the other, or ``NOBODY``."""
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
        one; the lane group of that place in a squad of as many. Raises NotFoundAgain, with all that
        has to be said.
        """
        named = dict.fromkeys(key for kind, own in documents for key in _named(kind, own))
        found, unsaid = dict[Key, str](), dict[Key, list[str]]()
        for key in named:
            alike = self._here(*key)
            if len(alike) == 1:
                found[key] = alike[0]
            elif key[0] != "lane_group" or not self._follows(key[1]):
                unsaid[key] = alike
        if unsaid:
            raise NotFoundAgain(
                "it is for what is that club's own; say what of yours stands for it, all in one "
                "command:" + "".join(f"\n    {line}" for line in self._asked(found, unsaid))
            )
        return found

    def _here(self, kind: str, id: str) -> list[str]:
        """What stands for something here: one id, where that is plain."""
        here: Mapping[str, object] = getattr(self.here, IN_CLUB[kind])
        given = self.asked.get(id, "")
        if given in here or (given == NOBODY and kind == "lane_group"):
            return [given]
        if given == NOBODY:
            raise NotFoundAgain(f"{_WHAT[kind]} '{id}': a lane group alone can be left out")
        if given:
            raise NotFoundAgain(f"no {_WHAT[kind]} here is called '{given}', but {_listed(here)}")
        alike = list(self._alike(kind, id))
        return [id] if id in alike else alike

    def _follows(self, id: str) -> bool:
        """Whether a lane group is plain as soon as it is said which squad stands for its own."""
        squads = self._here("squad", self.there.lane_groups[id].squad)
        places = {len(_groups(self.here, own)) for own in squads or self.here.squads}
        theirs = _groups(self.there, self.there.lane_groups[id].squad)
        return len(squads) != 1 and places == {len(theirs)}

    def _asked(self, found: Renamed, unsaid: Mapping[Key, list[str]]) -> Iterator[str]:
        """A line for all that is not plain: what to write, where there is but one answer."""
        taken = {own for (kind, _), own in found.items() if kind == "lane_group"}
        for (kind, id), alike in unsaid.items():
            of = getattr(self.there, IN_CLUB[kind])[id]
            what = f"the {_WHAT[kind]} {of.title}"
            mine = [own for own in alike or self._possible(kind, id) if own not in taken]
            if len(mine) == 1:
                taken |= {*mine} if kind == "lane_group" else set()
                yield f"--as {id}={mine[0]}  for {what}"
            elif mine:
                left_out = f", or {NOBODY} to leave it out" if kind == "lane_group" else ""
                yield f"--as {id}=…  for {what}: one of {_listed(mine)}{left_out}"
            elif kind == "lane_group":
                yield f"--as {id}={NOBODY}  leaves out {what}"
            else:
                other = "no hall" if of.is_land else "no pool with water"
                yield f"there is {other} here for {what}: name one in plans/club.yml first"

    def _possible(self, kind: str, id: str) -> list[str]:
        """What could be meant here: no hall for a pool, no pool for a hall, and no lane group of
        another squad.
        """
        if kind == "squad":
            return list(self.here.squads)
        if kind == "lane_group":
            squads = self._here("squad", self.there.lane_groups[id].squad)
            return [it for own in squads or self.here.squads for it in _groups(self.here, own)]
        is_land = self.there.pools[id].is_land
        return [own for own, pool in self.here.pools.items() if pool.is_land == is_land]

    def _alike(self, kind: str, id: str) -> Iterator[str]:
        if kind == "squad":
            level = self.there.squads[id].level
            yield from (own for own, squad in self.here.squads.items() if squad.level == level)
        elif kind == "pool":
            course = self.there.pools[id].course
            yield from (own for own, pool in self.here.pools.items() if pool.course == course)
        else:
            squad = self.there.lane_groups[id].squad
            theirs, squads = _groups(self.there, squad), self._here("squad", squad)
            ours = _groups(self.here, squads[0]) if len(squads) == 1 else []
            if id in ours:
                yield id
            elif len(theirs) == len(ours):
                yield ours[theirs.index(id)]


def in_words_of(renamed: Renamed, plan: Document, kind: str) -> str:
    """A plan's text with the squads, lane groups and pools of the club that it is brought to.
    Raises NotFoundAgain where two lane groups of it would be one.
    """
    gone = [use for use in uses(plan, kind) if renamed.get((use.kind, use.id)) == NOBODY]
    if gone:
        nodes = (key_node(plan, it.path) if it.is_key else plan.node(it.path) for it in gone)
        marks = [(node.start_mark.line + 1, node.start_mark.column + 1) for node in nodes]
        rest, _ = read(without(plan.text, marks).encode(), plan.file)
        assert rest is not None, plan.file
        plan = rest
    named = [use for use in uses(plan, kind) if (use.kind, use.id) in renamed]
    words = {(use.path, use.is_key): renamed[use.kind, use.id] for use in named}
    groups = {use.id: renamed[use.kind, use.id] for use in named if use.kind == "lane_group"}
    here = [*groups.values()]
    twice = [id for id, own in groups.items() if here.count(own) > 1]
    text = None if twice else rewritten(plan, words)
    if text is None:
        hint = f": leave one out, as --as {twice[-1]}={NOBODY}" if twice else ""
        raise NotFoundAgain(f"two of what it names would be one here{hint}")
    return text


def parts_alone(plan: Document) -> list[int]:
    """The parts, from 1, of lane groups apart of which one list alone is left."""
    parts = enumerate(plan.data.get("parts", ()), 1)
    return [number for number, part in parts if len(part.get("apart", ())) == 1]


def _groups(club: Club, squad: str) -> list[str]:
    return [own for own, group in club.lane_groups.items() if group.squad == squad]


def _named(kind: str, document: Document) -> Iterator[Key]:
    yield from ((use.kind, use.id) for use in uses(document, kind) if use.kind in IN_CLUB)


def _listed(ids: Iterable[str]) -> str:
    return ", ".join(ids)
