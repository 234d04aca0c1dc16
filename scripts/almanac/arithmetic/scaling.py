"""A set with fewer or more rounds, or reps, than it is written with."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from almanac.arithmetic.expand import count_reps
from almanac.arithmetic.facets import distance_working
from almanac.model.effort_plans import Descend
from almanac.model.reps import Change, Reps
from almanac.model.swim_set import Item, Round, RoundsChange, SwimSet
from almanac.model.walk import efforts_with_paths
from almanac.source.reader import DataPath

ROUNDS, REPS = "rounds", "reps"
_KNOWN = "_scalable"  # beside the fields of a set, as what is worked out once
NEAR = 1  # how much less than is written a page offers, where the entry states no bounds


@dataclass(frozen=True)
class Scalable:
    """What of a set can be asked for fewer or more times: its rounds, or the reps of an item.

    ``written`` is how often it is written, ``least`` and ``most`` are the bounds; ``stated`` where
    the entry gives them, ``alone`` where the set has no other of its sort.
    """

    what: str
    path: DataPath
    written: int
    least: int
    most: int
    stated: bool
    alone: bool = False

    def offered(self) -> range:
        """What a page offers: all that the entry states, for that is held against the limits of
        safety; else what is written and a little less, and never more than anybody has looked at.
        """
        if self.stated:
            return range(self.least, self.most + 1)
        return range(max(self.least, self.written - NEAR), self.written + 1)

    @property
    def ways(self) -> str:
        """Which ways from what is written a page offers it."""
        numbers = self.offered()
        fewer, more = numbers[0] < self.written, numbers[-1] > self.written
        return "fewer or more" if fewer and more else "fewer" if fewer else "more"


class OutOfBounds(ValueError):
    """A number of rounds or reps that a set cannot be asked for; the text says why."""


def scalable(swim_set: SwimSet, what: str, most_reps: float) -> Scalable | None:
    """What of a set is scaled: of its outermost ``rounds`` those with the greatest distance, or the
    ``reps`` of the item with the greatest, of what is done more than once where anything is; the
    first of two alike. None where it has none.

    The bounds are those of the entry. Where it states none, from one, or two where reps descend, up
    to what the policy's ``most_reps`` lets a set hold.
    """
    known: dict[tuple[str, float], Scalable | None] = vars(swim_set).setdefault(_KNOWN, {})
    if (what, most_reps) not in known:  # asked for at each number of a set, and long to find
        known[what, most_reps] = scalable_of(swim_set.items, what, most_reps)
    return known[what, most_reps]


def scalable_of(items: tuple[Item, ...], what: str, most_reps: float) -> Scalable | None:
    """What of items is scaled, as of those of a set."""
    known = [found for found in _found(items, ("items",)) if found[1].what == what]
    if not known:
        return None
    _, chief = max(known, key=lambda found: (found[1].written > 1, found[0]))
    chief = replace(chief, alone=len(known) == 1)
    if chief.stated:
        return chief
    numbers = range(chief.written + 1, chief.most + 1)
    more = bisect_right(
        numbers, most_reps, key=lambda number: count_reps(_scaled(items, chief.path[1:], number))
    )
    return replace(chief, most=chief.written + more)


def _found(items: tuple[Item, ...], path: DataPath) -> Iterator[tuple[float, Scalable]]:
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Round):
            bounds = item.rounds_between or (1, 50)
            own = Scalable(ROUNDS, here, item.rounds, *bounds, bool(item.rounds_between))
            yield distance_working((item,)).value, own
            for distance, inner in _found(item.items, (*here, "items")):
                if inner.what == REPS:
                    yield distance * item.rounds, inner
        elif isinstance(item, Reps):
            descends = any(
                isinstance(effort, Descend) for effort, _ in efforts_with_paths(item, here)
            )
            least = min(item.reps, 2) if descends else 1
            bounds = item.reps_between or (least, 100)
            own = Scalable(REPS, here, item.reps, *bounds, bool(item.reps_between))
            yield distance_working((item,)).value, own


def item_at(items: tuple[Item, ...], path: DataPath) -> Item:
    """The item at a path, its first step left out."""
    item = items[int(path[1])]
    return item_at(item.items, path[2:]) if isinstance(item, Round) and len(path) > 2 else item


def scaled(swim_set: SwimSet, scale: Scalable, number: int) -> SwimSet:
    """A set asked for ``number`` rounds or reps in place of those that are written; every figure
    follows from its items.

    What is said of a round that is then not there falls away, what is said of the last holds of the
    one that is then last. Reps and rounds of a lane group that goes more or less often are scaled
    alike, to the nearest whole number. Of send-offs for each rep the last serves those that come
    after it. Raises OutOfBounds beyond the bounds.
    """
    if not scale.least <= number <= scale.most:
        raise OutOfBounds(f"'{swim_set.id}' takes {scale.least} to {scale.most} {scale.what}")
    return replace(swim_set, items=scaled_items(swim_set.items, scale, number))


def scaled_items(items: tuple[Item, ...], scale: Scalable, number: int) -> tuple[Item, ...]:
    """Items with ``number`` rounds or reps in place of those that are written, as of a set."""
    return _scaled(items, scale.path[1:], number)


def with_counts(
    swim_set: SwimSet, rounds: int | None, reps: int | None, most_reps: float
) -> SwimSet:
    """A set asked for so many rounds of its largest round, so many reps of its largest item, or
    both; the very same set where neither is asked for. Raises OutOfBounds beyond its bounds, and
    where it has nothing of the sort.
    """
    for what, number in ((ROUNDS, rounds), (REPS, reps)):
        if number is None:
            continue
        scale = scalable(swim_set, what, most_reps)
        if scale is None:
            raise OutOfBounds(f"'{swim_set.id}' has no {what}")
        swim_set = scaled(swim_set, scale, number)
    return swim_set


def _scaled(items: tuple[Item, ...], path: DataPath, number: int) -> tuple[Item, ...]:
    index, *rest = path
    return tuple(
        _scaled_item(item, tuple(rest), number) if place == index else item
        for place, item in enumerate(items)
    )


def _scaled_item(item: Item, path: DataPath, number: int) -> Item:
    if isinstance(item, Round):
        if path:
            return replace(item, items=_scaled(item.items, path[1:], number))
        return replace(
            item,
            rounds=number,
            by_group=_rounds(item.by_group, number / item.rounds),
            by_variant=_rounds(item.by_variant, number / item.rounds),
        )
    assert isinstance(item, Reps)
    ratio = number / item.reps
    return replace(
        item,
        reps=number,
        by_group=_changes(item.by_group, ratio),
        by_variant=_changes(item.by_variant, ratio),
        by_round=_changes(item.by_round, ratio),
    )


def _rounds(changes: Mapping[str, RoundsChange], ratio: float) -> Mapping[str, RoundsChange]:
    return {
        name: replace(change, rounds=_often(change.rounds, ratio)) if change.rounds else change
        for name, change in changes.items()
    }


def _often(times: int, ratio: float) -> int:
    # Half a time more is one more: round() goes to the even number.
    return max(1, int(times * ratio + 0.5))


def _changes(changes: Mapping[str, Change], ratio: float) -> Mapping[str, Change]:
    return {
        name: replace(change, reps=_often(change.reps, ratio)) if change.reps else change
        for name, change in changes.items()
    }
