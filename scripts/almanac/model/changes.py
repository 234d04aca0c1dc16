"""What of written items a lane group swims, and what of a round in each of its rounds: changes
laid over what is written for all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from almanac.model.assumed import Assumed
from almanac.model.manner import Aim
from almanac.model.reps import Change, Distance, Part, Reps, in_all
from almanac.model.swim_set import Item, Round, RoundsChange

LAST = "last"
"""The round that is the last one, however many there are."""


def items_for(items: tuple[Item, ...], group: str) -> tuple[Item, ...]:
    """The items as one lane group swims them; the very same tuple where nothing in it is said for
    that group alone. Reps of which it does none stay, as no reps: every item keeps its place.
    """
    own = tuple(_item_for(item, group) for item in items)
    return items if all(a is b for a, b in zip(own, items, strict=True)) else own


def _item_for(item: Item, group: str) -> Item:
    if isinstance(item, Round):
        inner = items_for(item.items, group)
        item = item if inner is item.items else replace(item, items=inner)
        return gone_round(item, item.by_group[group]) if group in item.by_group else item
    if isinstance(item, Reps) and group in item.by_group:
        return changed(item, item.by_group[group])
    return item


def is_for(items: tuple[Item, ...], group: str) -> bool:
    """Whether a lane group does any of the items."""
    return any(
        bool(item.rounds) and is_for(item.items, group) if isinstance(item, Round)
        else isinstance(item, Reps) and bool(item.reps)
        for item in items_for(items, group)
    )  # fmt: skip


def gone_round(item: Round, change: RoundsChange) -> Round:
    """Rounds as often, and with the pause, that a lane group has instead. What is said of the last
    round then holds of the group's own last.
    """
    pause = change.pause_between
    return replace(
        item,
        rounds=item.rounds if change.rounds is None else change.rounds,
        pause_between=item.pause_between if pause is None else pause,
        by_group={},
    )


def changed(item: Reps, change: Change) -> Reps:
    """Reps with a change laid over them: what is said of a lane group first, then what is said of a
    round, and of the last round before its number. Every figure of a group is of the reps as they
    then are.

    A distance takes the place of a time and the other way round, and so do a send-off and rest. In
    a rep of parts each of them takes the effort, and what is done; how far each goes stays. A time
    that is assumed of the rep as it was holds no longer where another is swum, or at another
    effort; a time to hold that is asked of all no longer where another is swum.
    """
    if item.is_split and change.do:
        item = replace(item, parts=(replace(item.parts[0], distance=item.distance),))
        item = replace(item, is_split=False, stated=None)
    share = len(item.parts) if item.is_split else 1
    parts = change.parts or tuple(
        _changed_part(part, change, item.is_parted, share) for part in item.parts
    )
    another = (change.distance, change.time, change.do, change.effort, change.parts, change.gear)
    is_other = any(value is not None for value in another)
    paced = change.sendoff is not None or change.rest is not None
    return replace(
        item,
        reps=item.reps if change.reps is None else change.reps,
        parts=parts,
        sendoff=change.sendoff if paced else item.sendoff,
        rest=change.rest if paced else item.rest,
        gear=item.gear if change.gear is None else change.gear,
        assume=Assumed(change.assume) if change.assume else None if is_other else item.assume,
        waves=change.waves or item.waves,
        start=change.start or item.start,
        manner=change.manner or item.manner,
        aim=change.aim or _aim_left(item.aim, change),
        note=change.note or item.note,
        is_parted=item.is_parted or change.parts is not None,
        is_split=item.is_split and change.parts is None,
        stated=_whole(change.distance)
        if change.parts is not None or (item.is_split and change.distance)
        else item.stated,
    )


def _aim_left(aim: Aim | None, change: Change) -> Aim | None:
    """The time to hold that stays: of a swim that is another, only what is asked by lane group."""
    is_another = any((change.distance, change.time, change.do, change.parts))
    return None if aim and aim.every is not None and is_another else aim


def _changed_part(part: Part, change: Change, is_one_of_parts: bool, share: int) -> Part:
    travels = not is_one_of_parts and (change.distance or change.time) is not None
    return replace(
        part,
        distance=in_all([Fraction(change.distance or 0) / share]) if travels else part.distance,
        hold_s=change.time if travels else part.hold_s,
        do=change.do or part.do,
        turns=() if change.do else part.turns,
        order="" if change.do else part.order,
        effort=change.effort or part.effort,
    )


def rounds_of(item: Round) -> tuple[tuple[Item, ...], ...]:
    """What each round holds, in order: the same tuple where a round is as it is written."""
    return tuple(_in_round(item, number) for number in range(1, item.rounds + 1))


def _in_round(item: Round, number: int) -> tuple[Item, ...]:
    own = tuple(_round_item(inner, item, number) for inner in item.items)
    return item.items if all(a is b for a, b in zip(own, item.items, strict=True)) else own


def _round_item(inner: Item, around: Round, number: int) -> Item:
    of_all = change_in(around.by_round, number, around.rounds)
    if isinstance(inner, Round):
        return _all_changed(inner, of_all) if of_all else inner
    if isinstance(inner, Reps):
        for change in (of_all, change_in(inner.by_round, number, around.rounds)):
            inner = changed(inner, change) if change else inner
    return inner


def _all_changed(item: Round, change: Change) -> Round:
    return replace(
        item,
        items=tuple(
            _all_changed(inner, change)
            if isinstance(inner, Round)
            else changed(inner, change)
            if isinstance(inner, Reps)
            else inner
            for inner in item.items
        ),
    )


def change_in(by_round: Mapping[str, Change], number: int, of: int) -> Change | None:
    """The change of round ``number`` of so many; what is said of the last goes before its
    number.
    """
    last = by_round.get(LAST) if number == of else None
    return last or by_round.get(str(number))


def _whole(distance: Distance | None) -> int | None:
    return None if distance is None else int(distance)
