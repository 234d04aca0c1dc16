"""A composed practice as an entry of the catalogue, in YAML as entries are written."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.order import Stood
from almanac.arithmetic.composing.pieces import (
    COOL_DOWN,
    EASY,
    MAIN,
    SET,
    SKILL,
    TENTHS,
    WARM_UP,
)
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.wishes import SECOND, THIRD, Wishes
from almanac.arithmetic.scaling import REPS
from almanac.model.vocabularies import CLOSES, OPENS, TEACHES, WORKS
from almanac.report.compose.address import address_words
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.named import focus, summary, title
from almanac.source.scalars import scalar
from almanac.units import show_time

PART_WORDS = {
    WARM_UP: OPENS, SKILL: TEACHES, MAIN: WORKS, SECOND: WORKS, THIRD: WORKS,
    EASY: WORKS, COOL_DOWN: CLOSES,
}  # fmt: skip
"""Which part of a practice a role is; the page has it with the data of a squad."""
_TIME = re.compile(r"\d+|\d+:[0-5]\d(\.\d)?")


def practice_entry(
    table: ComposeTable,
    candidates: Mapping[str, Candidate],
    wishes: Wishes,
    own: Proposal,
    start: str,
    lanes: Mapping[str, Sequence[int]],
) -> dict[str, Any]:
    """The data of the entry. ``start`` is HH:MM; ``lanes`` by lane group the numbers of those that
    are not its usual ones.
    """
    asked = Asked(table, wishes)
    least = asked.adults_least
    entry: dict[str, Any] = {
        "title": title(asked, own),
        "summary": summary(asked, own),
        "squad": table.squad.id,
        "pool": wishes.pool,
        "slot": {"start": start, "minutes": wishes.minutes},
        "focus": focus(asked, own),
        "adults": max([least, *(one.own.adults for one in own.order)]),
    }
    if lanes:
        entry["lanes"] = {"groups": {id: list(each) for id, each in lanes.items()}}
    entry["composed"] = address_words(asked, own.order, start)
    entry["parts"] = [_part(one, candidates[one.own.piece.key]) for one in own.order]
    return entry


def _part(one: Stood, candidate: Candidate) -> dict[str, Any]:
    piece = one.own.piece
    part: dict[str, Any] = {"part": PART_WORDS[one.role]}
    if piece.of == SET:
        part["set"] = piece.id
        if one.own.steps:
            part[piece.what] = one.own.number
    else:
        part["items"] = scaled_items(candidate, one.own.number)
    if piece.talk:
        part["talk"] = show_time(piece.talk // TENTHS)
    return part


def scaled_items(candidate: Candidate, number: int) -> list[Any]:
    """The items of a piece that is no set, so often."""
    items: list[Any] = json.loads(json.dumps(candidate.written))
    if candidate.scale:
        found: Any = items
        for step in candidate.scale.path[1:]:
            found = found[step]
        found[REPS] = number
    return items


def as_yaml(entry: Mapping[str, Any]) -> str:
    """The entry as text: a line for each key, a line for each part and each of its items."""
    return "\n".join(_lines(entry)) + "\n"


def _lines(entry: Mapping[str, Any]) -> Iterator[str]:
    for key, value in entry.items():
        if key != "parts":
            yield f"{key}: {_flow(value, key)}"
            continue
        yield "parts:"
        for part in value:
            mark = "  - "
            for name, own in part.items():
                if name != "items":
                    yield f"{mark}{name}: {_flow(own, name)}"
                else:
                    yield f"{mark}items:"
                    yield from (f"      - {_flow(item, '')}" for item in own)
                mark = "    "


def _flow(value: Any, key: str) -> str:
    """A value on one line."""
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{name}: {_flow(own, name)}" for name, own in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(_flow(own, "") for own in value) + "]"
    if isinstance(value, bool) or value is None:
        return json.dumps(value)
    text = str(value)
    if not isinstance(value, str) or (_TIME.fullmatch(text) and key != "start"):
        return text
    return scalar(text)
