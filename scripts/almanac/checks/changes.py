"""Rules on what differs within a set: by rep, by lane group and by round. For sets, and for items
of a practice in place.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids
from almanac.model.changes import LAST, changed
from almanac.model.effort_plans import Descend
from almanac.model.reps import Reps
from almanac.model.sendoff import Sendoff
from almanac.model.swim_set import Item, Round
from almanac.model.walk import efforts_with_paths, reps_with_paths, written_items
from almanac.source.reader import DataPath


@forbids("sendoff-count")
def sendoff_count(analysis: Analysis) -> Iterator[Problem]:
    """A list of send-offs has one for each rep, for each lane group as often as it goes."""
    for entry, items, start in written_items(analysis.catalogue):
        for item, path in reps_with_paths(items, start):
            for where, have, reps in _counts(item, path):
                message = f"{have} send-offs for {reps} rep{'s' * (reps != 1)}"
                group = next(iter(analysis.catalogue.lane_groups), "")
                hint = f"write {reps}, one for each rep, or one time for all of them"
                hint += f"; for each lane group {{{group}: 1:30, ...}}" if group else ""
                yield Problem(entry, where, message, hint)


def _counts(item: Reps, path: DataPath) -> Iterator[tuple[DataPath, int, int]]:
    """The lists of an item's send-offs that do not go with its reps: where, how many, and reps."""
    lists = _lists(item.sendoff, (*path, "sendoff"))
    for group, where, have in lists:
        if group is None and have != item.reps:
            yield where, have, item.reps
        elif group is not None and not _has_own(item, group) and have != _reps_of(item, group):
            yield where, have, _reps_of(item, group)
    for key in ("by_group", "by_variant", "by_round"):
        for name, change in getattr(item, key).items():
            reps = changed(item, change).reps
            own = _lists(change.sendoff, (*path, key, name, "sendoff"))
            if not change.sendoff and not change.rest and reps != item.reps:
                own = [found for found in lists if found[0] in (None, name)]
                own = [(group, (*path, key, name, "reps"), have) for group, _, have in own]
            yield from ((where, have, reps) for _, where, have in own if have != reps and reps)


def _lists(sendoff: Sendoff | None, path: DataPath) -> list[tuple[str | None, DataPath, int]]:
    """Each list of times: the lane group that it is for, where it stands, how long it is."""
    if sendoff is None:
        return []
    every: list[tuple[str | None, DataPath, int]] = [(None, path, len(sendoff.every))]
    own = [(group, (*path, group), len(times)) for group, times in sendoff.by_group.items()]
    return [found for found in [*every, *own] if found[2] > 1]


def _has_own(item: Reps, group: str) -> bool:
    change = item.by_group.get(group)
    return change is not None and (change.sendoff is not None or change.reps is not None)


def _reps_of(item: Reps, group: str) -> int:
    change = item.by_group.get(group)
    return changed(item, change).reps if change else item.reps


@forbids("round-not-there")
def round_not_there(analysis: Analysis) -> Iterator[Problem]:
    """What is said of a round is said of one that there is: ``by_round`` names no round beyond the
    last, and stands on no reps outside a round.
    """
    for entry, items, start in written_items(analysis.catalogue):
        for number, path, rounds in _rounds_named(items, start, 0):
            if number == LAST and rounds:
                continue
            if not rounds:
                message, hint = (
                    "these reps stand in no round",
                    "put them into a round, or take by_round out",
                )
                yield Problem(entry, path[:-1], message, hint, of_key=True)
            elif int(number) > rounds:
                message = f"there is no round {number}: there are at most {rounds}"
                hint = f"write last, or {'1' if rounds == 1 else f'a number from 1 to {rounds}'}"
                yield Problem(entry, path, message, hint, of_key=True)


def _rounds_named(
    items: tuple[Item, ...], path: DataPath, rounds: int
) -> Iterator[tuple[str, DataPath, int]]:
    """Each round that is named: its number, where, and how many rounds there are."""
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, (Reps, Round)):
            around = _most(item) if isinstance(item, Round) else rounds
            yield from ((number, (*here, "by_round", number), around) for number in item.by_round)
        if isinstance(item, Round):
            yield from _rounds_named(item.items, (*here, "items"), _most(item))


def _most(item: Round) -> int:
    return max(item.most, (item.rounds_between or (1, 1))[1])


@forbids("scale-bounds")
def scale_bounds(analysis: Analysis) -> Iterator[Problem]:
    """The bounds within which a set may be asked for fewer or more hold what is written, the least
    first; for reps that descend they begin at two.
    """
    for entry, items, start in written_items(analysis.catalogue):
        for what, written, bounds, path in _bounds(items, start):
            least, most = bounds
            if not least <= written <= most:
                message = f"{written} {what} are written, which is not from {least} to {most}"
                wide = f"[{min(least, most, written)}, {max(least, most, written)}]"
                hint = f"write {wide}, or another number of {what}"
                yield Problem(entry, path, message, hint)
        for item, path in reps_with_paths(items, start):
            efforts = (effort for effort, _ in efforts_with_paths(item, path))
            if (
                item.reps_between
                and item.reps_between[0] < 2
                and any(isinstance(effort, Descend) for effort in efforts)
            ):
                message = "a descend needs two reps or more, and one may be asked for"
                hint = f"write [2, {item.reps_between[1]}]"
                yield Problem(entry, (*path, "reps_between"), message, hint)


def _bounds(
    items: tuple[Item, ...], path: DataPath
) -> Iterator[tuple[str, int, tuple[int, int], DataPath]]:
    """What has bounds: rounds or reps, how many are written, the bounds, and where they stand."""
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Round):
            if item.rounds_between:
                yield "rounds", item.rounds, item.rounds_between, (*here, "rounds_between")
            yield from _bounds(item.items, (*here, "items"))
        elif isinstance(item, Reps) and item.reps_between:
            yield "reps", item.reps, item.reps_between, (*here, "reps_between")


@forbids("change-of-parts")
def change_of_parts(analysis: Analysis) -> Iterator[Problem]:
    """A change of a rep that has parts gives parts: a distance or a time would not say which of
    them is meant.
    """
    for entry, items, start in written_items(analysis.catalogue):
        for item, path in reps_with_paths(items, start):
            for key in ("by_group", "by_variant", "by_round") if item.is_parted else ():
                for name, change in getattr(item, key).items():
                    for field in ("distance", "time"):
                        if getattr(change, field) is not None and change.parts is None:
                            message = (
                                f"the rep has parts, and '{field}' does not say which is meant"
                            )
                            hint = "write parts: the whole rep as it then is"
                            yield Problem(entry, (*path, key, name, field), message, hint, True)
