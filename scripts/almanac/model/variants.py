"""Variants of a set, A and B: what each lane group is given, by the set or by a practice."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any, TypeVar

from almanac.model.reps import Change, Reps
from almanac.model.swim_set import Item, Round, RoundsChange, SwimSet

_Change = TypeVar("_Change", Change, RoundsChange)


def given(swim_set: SwimSet, chosen: Mapping[str, str] | None = None) -> SwimSet:
    """The set with each lane group's variant laid into what is different for the group; ``chosen``
    are variants by lane group that go before those that the set gives. What is said of a group
    itself goes before its variant.
    """
    own = {group: name for name, groups in swim_set.variants.items() for group in groups}
    items = given_items(swim_set.items, {**own, **(chosen or {})})
    return swim_set if items is swim_set.items else replace(swim_set, items=items)


def given_items(items: tuple[Item, ...], variant_of: Mapping[str, str]) -> tuple[Item, ...]:
    """Items with the variant of each lane group that is given one laid into what is different for
    it; the very same tuple where there is none.
    """
    own = tuple(_item(item, variant_of) for item in items)
    return items if all(a is b for a, b in zip(own, items, strict=True)) else own


def _item(item: Item, variant_of: Mapping[str, str]) -> Item:
    if isinstance(item, Round):
        inner = given_items(item.items, variant_of)
        item = item if inner is item.items else replace(item, items=inner)
        if item.by_variant:
            by_group = _by_group(item.by_group, item.by_variant, variant_of)
            return replace(item, by_group=by_group, by_variant={})
    elif isinstance(item, Reps) and item.by_variant:
        own = _by_group(item.by_group, item.by_variant, variant_of)
        return replace(item, by_group=own, by_variant={})
    return item


def _by_group(
    by_group: Mapping[str, _Change],
    by_variant: Mapping[str, _Change],
    variant_of: Mapping[str, str],
) -> Mapping[str, _Change]:
    own = {
        group: _over(by_variant[name], by_group.get(group))
        for group, name in variant_of.items()
        if name in by_variant
    }
    return {**by_group, **own}


def _over(change: _Change, more: _Change | None) -> _Change:
    """A change with another laid over it."""
    if more is None:
        return change
    told: dict[str, Any] = {
        field.name: getattr(more, field.name)
        for field in fields(more)
        if getattr(more, field.name) is not None
    }
    for one, others in (("sendoff", ("rest",)), ("rest", ("sendoff",)), ("time", ("distance",)),
                        ("distance", ("time",)), ("parts", ("time", "do", "effort"))):  # fmt: skip
        if one in told:
            told = {**dict.fromkeys(others), **told}
    return replace(change, **told)
