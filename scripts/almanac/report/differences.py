"""What of a JSON value differs from another, so that pages can make the one of the other: a run in
another pool or another size has nearly all as it is written. ``site_src/scripts/make/apply.js`` is
the other half.

Of an object the keys that differ, each with its own difference, and under ``-`` those that are
gone. Of a list of objects the places that differ; where it has another length, for each of its own
the place of the one that it is like: a number where nothing differs, else that with the difference.
Anything else stands as it is.
"""

from __future__ import annotations

import json
from typing import Any

GONE = "-"


def difference(old: Any, new: Any) -> Any:
    """What makes ``new`` of ``old``; an empty object where nothing does."""
    if isinstance(old, dict) and isinstance(new, dict):
        return _of_objects(old, new)
    if _holds_objects(old) and _holds_objects(new):
        return _of_lists(old, new)
    return new


def _of_objects(old: dict[str, Any], new: dict[str, Any]) -> dict[str, Any]:
    told = {
        key: difference(old[key], value) if key in old else value
        for key, value in new.items()
        if key not in old or old[key] != value
    }
    gone = [key for key in old if key not in new]
    return {**told, GONE: gone} if gone else told


def _of_lists(old: list[Any], new: list[Any]) -> Any:
    if len(old) == len(new):
        pairs = enumerate(zip(old, new, strict=True))
        return {str(place): difference(a, b) for place, (a, b) in pairs if a != b}
    return [_nearest(old, own) for own in new]


def _nearest(old: list[Any], own: Any) -> Any:
    """One of a list by the one of another that it is most like."""
    if own in old:
        return old.index(own)
    each = [[place, difference(one, own)] for place, one in enumerate(old)]
    return min(each, key=lambda told: len(json.dumps(told)))


def _holds_objects(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and isinstance(value[0], dict)
