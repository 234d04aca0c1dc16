"""Reps of a run as they are told shortest where one is told by what differs from another: when the
last is home by how much later than the target, and the rest by how much less than what the target
leaves. Both stay where targets change. ``site_src/scripts/make/packed.js`` undoes it.
"""

from __future__ import annotations

from typing import Any

from almanac.report.run.items import number


def packed(block: dict[str, Any]) -> dict[str, Any]:
    """A block with ``tail`` for ``home`` and ``less`` for ``rest``, where all of them are known."""
    if "rounds" in block:
        rounds = [{**own, "blocks": [*map(packed, own["blocks"])]} for own in block["rounds"]]
        return {**block, "rounds": rounds}
    if "reps" not in block:
        return block
    told = dict(block)
    every, target, rest, home = (_each(block, key) for key in ("every", "target", "rest", "home"))
    if target and home:
        told["tail"] = _once([h - t for h, t in zip(home, target, strict=True)])
        del told["home"]
    if every and target and rest:
        less = [e - t - r for e, t, r in zip(every, target, rest, strict=True)]
        told["less"] = _once(less)
        del told["rest"]
    return told


def _each(block: dict[str, Any], key: str) -> list[float]:
    """What holds for each rep; nothing where that is not known of one."""
    own = block.get(key)
    each: list[Any] = own if isinstance(own, list) else [own] * block["reps"]
    return [] if None in each else each


def _once(each: list[float]) -> Any:
    shown = [number(round(value, 1)) for value in each]
    return shown[0] if shown.count(shown[0]) == len(shown) else shown
