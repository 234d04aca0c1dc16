"""What each lane group swims of one thing, and on which clock: groups that do the same share it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from almanac.arithmetic.course import Misfit
from almanac.arithmetic.events import Event, Piece, Rep
from almanac.arithmetic.facets import Shares
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.swum import Swum, lay_out
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Working
from almanac.frozen import kept
from almanac.model.changes import items_for
from almanac.model.club import LaneGroup
from almanac.model.swim_set import Item
from almanac.units import Course


@dataclass(frozen=True, kw_only=True)
class ByGroup:
    """What lane groups swim of one thing: ``swum`` by group, the same object for groups that do the
    same.

    ``first`` is what the first of the groups that it is meant for swims; where groups differ,
    figures that name no group are of that one.
    """

    first: Swum
    swum: Mapping[str, Swum]

    def of(self, group: str | None) -> Swum:
        """What a lane group swims; ``first`` where none is named, or one that is not among them."""
        return self.first if group is None else self.swum.get(group, self.first)

    @kept
    def ways(self) -> tuple[tuple[Swum, tuple[str, ...]], ...]:
        """Each way of swimming it, with the lane groups that do; one where all do the same."""
        found: dict[int, tuple[Swum, list[str]]] = {}
        for group, swum in self.swum.items():
            found.setdefault(id(swum), (swum, []))[1].append(group)
        return tuple((swum, tuple(groups)) for swum, groups in found.values())

    @kept
    def each(self) -> tuple[Swum, ...]:
        """Every way of swimming it, once."""
        return tuple({id(swum): swum for swum in (self.first, *self.swum.values())}.values())

    @property
    def differs(self) -> bool:
        """Whether some lane groups swim another thing than others."""
        return len(self.ways) > 1

    @property
    def course(self) -> Course:
        """The course that it is laid in."""
        return self.first.course

    @property
    def events(self) -> tuple[Event, ...]:
        """Reps and breaks of the first lane group."""
        return self.first.events

    @property
    def reps(self) -> tuple[Rep, ...]:
        """The reps of the first lane group."""
        return self.first.reps

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The pieces of the first lane group's reps."""
        return self.first.pieces

    @property
    def distance(self) -> Working:
        """The distance of the first lane group."""
        return self.first.distance

    @property
    def metres(self) -> float:
        """The distance of the first lane group in metres."""
        return self.first.metres

    @property
    def lengths(self) -> Fraction:
        """The lengths of the first lane group."""
        return self.first.lengths

    @property
    def by(self) -> Mapping[str, Mapping[str, Fraction]]:
        """The facets of the first lane group."""
        return self.first.by

    @property
    def shares(self) -> Shares:
        """The shares of the first lane group."""
        return self.first.shares

    @kept
    def misfits(self) -> tuple[Misfit, ...]:
        """What of it does not fit the course, for whichever lane group."""
        return tuple(dict.fromkeys(found for swum in self.each for found in swum.misfits))

    @kept
    def every_rep(self) -> tuple[Rep, ...]:
        """The reps of every way of swimming it: what dangers are gathered from."""
        return tuple(rep for swum in self.each for rep in swum.reps)


def swum_by(
    timing: Timing,
    items: tuple[Item, ...],
    course: Course,
    groups: Iterable[str],
    most_in_lane: int | None = None,
) -> ByGroup:
    """Items as each lane group swims them; groups that do the same share one. With no group, as
    they are written.
    """
    known: list[tuple[tuple[Item, ...], Swum]] = []
    found: dict[str, Swum] = {}
    for group in groups:
        own = items_for(items, group)
        # By identity first: for most groups nothing is changed, and to compare items takes long.
        same = next((swum for other, swum in known if other is own or other == own), None)
        if same is None:
            same = lay_out(timing, own, course, most_in_lane, timing.clock(group, course).pacer)
            if same.by_time:  # another group may get as far in the same time, and may not
                same = next((one for one in found.values() if one.events == same.events), same)
            else:
                known.append((own, same))
        found[group] = same
    first = next(iter(found.values()), None) or lay_out(timing, items, course, most_in_lane)
    return ByGroup(first=first, swum=found)


class GroupClocks(Mapping[str, GroupClock]):
    """What is swum on the clock, by lane group; each is worked out when it is first asked for."""

    def __init__(
        self, swum: Mapping[str, Swum], crews: Mapping[str, LaneGroup] | None = None
    ) -> None:
        """``crews`` are lane groups in other lanes than usual, or the parts of them that swim."""
        self._swum = swum
        self._crews = crews or {}
        self._clocks: dict[str, GroupClock | None] = dict.fromkeys(swum)

    def __getitem__(self, group: str) -> GroupClock:
        clock = self._clocks[group]
        if clock is None:
            swum = self._swum[group]
            timer = swum.timing.clock(group, swum.course, self._crews.get(group))
            if timer.most_in_lane != swum.most_in_lane:
                timer = replace(timer, most_in_lane=swum.most_in_lane)
            clock = self._clocks[group] = timer.run(swum.events)
        return clock

    def __iter__(self) -> Iterator[str]:
        return iter(self._clocks)

    def __len__(self) -> int:
        return len(self._clocks)
