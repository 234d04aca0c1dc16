"""Walks over what is written: items, reps, notes, efforts and what drills tell, each with the path
that leads to it in its file.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.model.catalogue import Catalogue
from almanac.model.changes import changed
from almanac.model.drill import Drill
from almanac.model.effort_plans import Effort, words_of
from almanac.model.practice import Practice
from almanac.model.reps import Change, Reps
from almanac.model.swim_set import Item, Round, SwimSet, changes_of, reps_of
from almanac.source.reader import DataPath


def written_items(
    catalogue: Catalogue,
) -> Iterator[tuple[SwimSet | Practice, tuple[Item, ...], DataPath]]:
    """The items of every set, and those that practices hold in place, with the path that leads to
    them.
    """
    for swim_set in catalogue.sets.values():
        yield swim_set, swim_set.items, ("items",)
    for practice in catalogue.practices.values():
        for path, doing in practice.doings:
            if doing.items:
                yield practice, doing.items, (*path, "items")


def reps_with_paths(
    items: tuple[Item, ...], path: DataPath = ("items",)
) -> Iterator[tuple[Reps, DataPath]]:
    """Every reps item with its path in the file."""
    for index, item in enumerate(items):
        if isinstance(item, Round):
            yield from reps_with_paths(item.items, (*path, index, "items"))
        elif isinstance(item, Reps):
            yield item, (*path, index)


def notes_with_paths(
    items: tuple[Item, ...], path: DataPath = ("items",)
) -> Iterator[tuple[DataPath, str]]:
    """The note of every item that has one, with its path in the file."""
    for index, item in enumerate(items):
        if item.note:
            yield (*path, index, "note"), item.note
        if isinstance(item, Round):
            yield from notes_with_paths(item.items, (*path, index, "items"))
        elif isinstance(item, Reps):
            for key in ("by_group", "by_variant", "by_round"):
                for name, change in getattr(item, key).items():
                    if change.note:
                        yield (*path, index, key, name, "note"), change.note


def written_notes(
    catalogue: Catalogue,
) -> Iterator[tuple[SwimSet | Practice, tuple[Item, ...], DataPath, str]]:
    """Every note of sets and practices, with its path and the items that it is about."""
    for entry, items, start in written_items(catalogue):
        for path, note in notes_with_paths(items, start):
            yield entry, items, path, note
    for practice in catalogue.practices.values():
        for path, doing in practice.doings:
            if doing.note:
                items = catalogue.sets[doing.set].items if doing.set else doing.items
                yield practice, items, (*path, "note"), doing.note


def drills_named(items: tuple[Item, ...]) -> frozenset[str]:
    """The ids of all drills that items name, for anybody and in any round."""
    changes = [*changes_of(items)]
    parted = [*(reps.parts for reps in reps_of(items)), *(own.parts or () for own in changes)]
    named = {id for parts in parted for part in parts for id in part.drills}
    return frozenset(named | {own.do for own in changes if own.do})


def every_reps(items: tuple[Item, ...]) -> Iterator[Reps]:
    """Every reps item as it is written, and as it is for a lane group or in a round."""
    yield from reps_of(items)
    yield from (reps for reps, _, _ in versions_with_paths(items))


def efforts_named(items: tuple[Item, ...]) -> dict[str, None]:
    """The effort words that items name, for anybody and in any round."""
    named = (part.effort for reps in every_reps(items) for part in reps.parts)
    return dict.fromkeys(word for effort in named for word in words_of(effort))


def starts_named(items: tuple[Item, ...]) -> dict[str, None]:
    """The starts that items name, for anybody and in any round."""
    return dict.fromkeys(reps.start for reps in every_reps(items) if reps.start)


def told_with_paths(drill: Drill) -> Iterator[tuple[DataPath, str]]:
    """What a drill has somebody do, in its names, its summary and its steps."""
    yield ("title",), drill.title
    yield ("summary",), drill.summary
    yield from ((("also_called", number), name) for number, name in enumerate(drill.also_called))
    yield from ((("steps", number), step) for number, step in enumerate(drill.steps))


def efforts_with_paths(item: Reps, path: DataPath) -> Iterator[tuple[Effort, DataPath]]:
    """Every effort of a reps item with its path."""
    if not item.is_parted:
        yield item.parts[0].effort, (*path, "effort")
    else:
        for number, part in enumerate(item.parts):
            yield part.effort, (*path, "parts", number, "effort")


def versions_with_paths(
    items: tuple[Item, ...], path: DataPath = ("items",)
) -> Iterator[tuple[Reps, Change, DataPath]]:
    """What is different of reps for a lane group or in a round: the reps as they then are, the
    change, and its path. A change that a whole round makes stands once for each of its reps.
    """
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Round):
            for number, change in item.by_round.items():
                for reps in reps_of(item.items):
                    yield changed(reps, change), change, (*here, "by_round", number)
            yield from versions_with_paths(item.items, (*here, "items"))
        elif isinstance(item, Reps):
            for key in ("by_group", "by_variant", "by_round"):
                for name, change in getattr(item, key).items():
                    yield changed(item, change), change, (*here, key, name)


def sendoff_path(items: tuple[Item, ...], path: DataPath, group: str) -> DataPath:
    """Where the send-off of a lane group stands for the item at ``path`` of ``items``."""
    item = next(item for item, where in reps_with_paths(items) if where == path)
    own = item.by_group.get(group)
    if own and own.sendoff:
        return (*path, "by_group", group, "sendoff")
    named = item.sendoff is not None and group in item.sendoff.by_group
    return (*path, "sendoff", group) if named else (*path, "sendoff")


def aim_path(items: tuple[Item, ...], path: DataPath, group: str, aim: float) -> DataPath:
    """Where a lane group's time to hold stands for the item at ``path`` of ``items``: where the
    group or a round has that time of its own, there; else beside the reps.
    """
    item = next(item for item, where in reps_with_paths(items) if where == path)
    for key in ("by_round", "by_group", "by_variant"):
        for name, change in getattr(item, key).items():
            is_own = key != "by_group" or name == group
            if is_own and change.aim is not None and change.aim.of(group) == aim:
                return (*path, key, name, "aim")
    named = item.aim is not None and group in item.aim.by_group
    return (*path, "aim", group) if named else (*path, "aim")
