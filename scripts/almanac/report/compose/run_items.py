"""The items of a piece in another pool or another size, by those that it is written with."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from almanac.report.differences import difference

LONGEST_LINE = 34
"""Letters of a whiteboard line in a run."""
_COUNT = re.compile(r"^\d+ × ")
_LAID = ("metres", "far", "line", "what", "note")


def on_items(run: Mapping[str, Any], known: Sequence[Mapping[str, Any]]) -> dict[str, Any]:
    """A run with its items in the places of ``known`` ones that are the same but for how often they
    are done and the pool that they are laid into; others come behind them.
    """
    items = [dict(own) for own in known]
    places: list[int] = []
    for own in run["items"]:
        place = _place(own, known, places)
        if place is None:
            place = len(items)
            items.append(own)
        else:
            note = {key: known[place][key] for key in ("note",) if key in known[place]}
            items[place] = {key: value for key, value in own.items() if key != "note"} | note
        places.append(place)
    crews = {
        group: {"blocks": [_placed(block, places) for block in own["blocks"]]}
        for group, own in run["crews"].items()
    }
    return {"items": items, "crews": crews}


def _place(
    own: Mapping[str, Any], known: Sequence[Mapping[str, Any]], taken: Sequence[int]
) -> int | None:
    """Where an item stands among known ones: the one that is most like it, None where none is."""
    alike = [
        place for place, one in enumerate(known) if place not in taken and _kind(one) == _kind(own)
    ]
    unlike = {
        place: [known[place].get(key) != own.get(key) for key in ("note", "line")]
        for place in alike
    }
    return min(alike, key=unlike.__getitem__, default=None)


def _kind(item: Mapping[str, Any]) -> tuple[dict[str, Any], str]:
    told = {key: value for key, value in item.items() if key not in _LAID}
    return told, _COUNT.sub("", item["what"])


def _placed(block: Mapping[str, Any], places: Sequence[int]) -> dict[str, Any]:
    if "rounds" in block:
        rounds = [
            {**own, "blocks": [_placed(one, places) for one in own["blocks"]]}
            for own in block["rounds"]
        ]
        return {**block, "rounds": rounds}
    return {**block, "item": places[block["item"]]} if "item" in block else dict(block)


def items_told(old: Sequence[Mapping[str, Any]], new: Sequence[Mapping[str, Any]]) -> Any:
    """What differs of the items. ``n`` where that is how often one is done and no more."""
    told = difference(list(old), list(new))
    if isinstance(told, dict):
        return {place: _counted(old[int(place)], own) for place, own in told.items()}
    return told


def _counted(old: Mapping[str, Any], told: Mapping[str, Any]) -> dict[str, Any]:
    count = _COUNT.match(told.get("what", ""))
    if not count:
        return dict(told)
    number = int(count.group().split()[0])
    line, what = (_COUNT.sub("", old[key]) for key in ("line", "what"))
    often = f"{number} × {line}" if number > 1 else line
    shown = often if len(often) <= LONGEST_LINE else line
    if told.get("line", old["line"]) != shown or told["what"] != f"{number} × {what}":
        return dict(told)
    return {"n": number} | {key: own for key, own in told.items() if key not in ("line", "what")}
