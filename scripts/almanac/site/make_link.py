"""The way from the page of a practice to Make a practice, where it is opened to be changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from urllib.parse import urlencode
from weakref import WeakKeyDictionary

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_pieces import SET
from almanac.model.practice import Practice
from almanac.report.compose_pieces import part_keys
from almanac.report.compose_table import can_compose

_PARTS = range(3, 7)  # a warm-up, one to four pieces of work and relief, a cool-down
_KEYS: WeakKeyDictionary[Analysis, dict[str, dict[tuple[str, int], str]]] = WeakKeyDictionary()


def change_link(analysis: Analysis, practice: Practice) -> str:
    """The address, below the site's root, that opens a practice with its pieces; "" where not all
    of its parts are sets and parts that a practice is made of.
    """
    known = analysis.catalogue.club.waters
    if practice.pool not in known or not can_compose(analysis, practice.squad):
        return ""
    keys = _KEYS.setdefault(analysis, {})
    if practice.squad not in keys:
        keys[practice.squad] = part_keys(analysis, practice.squad)
    parts = [*_pieces(practice, keys[practice.squad])]
    once = {own.partition(":")[0] for own in parts}
    if "" in parts or len(once) < len(parts) or len(parts) not in _PARTS:
        return ""
    slot = practice.slot
    words = {
        "squad": practice.squad, "pool": practice.pool, "minutes": slot.minutes,
        "lanes": ",".join(_lanes(analysis, practice)), "start": slot.start,
        "parts": ",".join(parts), "from": practice.id,
    }  # fmt: skip
    return "make.html#" + urlencode({name: own for name, own in words.items() if own}, safe="/,:")


def _pieces(practice: Practice, keys: Mapping[tuple[str, int], str]) -> Iterator[str]:
    """Its parts as keys of pieces, with how often where that is not as written; "" of another."""
    for number, part in enumerate(practice.parts):
        if part.set and not (part.apart or part.stations or part.lanes or part.variants):
            often = part.rounds or part.reps
            yield f"{SET}/{part.set}" + (f":{often}" if often else "")
        else:
            yield keys.get((practice.id, number), "")


def _lanes(analysis: Analysis, practice: Practice) -> Iterator[str]:
    """The lane groups that have more or fewer lanes than usual."""
    for id, lanes in practice.lanes.groups.items():
        if len(lanes) != analysis.catalogue.lane_groups[id].lanes:
            yield f"{id}:{len(lanes)}"
