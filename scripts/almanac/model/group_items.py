"""What of written items is for one lane group."""

from __future__ import annotations

from dataclasses import replace

from almanac.model.swim_set import Item, Reps, Round


def items_for(items: tuple[Item, ...], group: str) -> tuple[Item, ...]:
    """The items as one lane group swims them; the very same tuple where nothing in it is said for
    that group alone.
    """
    own = tuple(_item_for(item, group) for item in items)
    return items if all(a is b for a, b in zip(own, items, strict=True)) else own


def _item_for(item: Item, group: str) -> Item:
    if isinstance(item, Round):
        inner = items_for(item.items, group)
        return item if inner is item.items else replace(item, items=inner)
    return item.by_group.get(group, item) if isinstance(item, Reps) else item
