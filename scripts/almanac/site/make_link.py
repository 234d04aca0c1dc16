"""The way from the page of a practice to Make a practice, where it is opened to be changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from urllib.parse import urlencode

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_pieces import SET
from almanac.model.practice import Practice
from almanac.report.compose_address import PAGE
from almanac.report.compose_pieces import part_keys
from almanac.report.compose_table import can_compose

_PARTS = range(3, 7)  # a warm-up, one to four pieces of work and relief, a cool-down


def change_link(analysis: Analysis, practice: Practice) -> str:
    """The address, below the site's root, that opens a practice with its pieces; "" where not all
    of its parts are sets and parts that a practice is made of.
    """
    squad, waters = practice.squad, analysis.catalogue.club.waters
    if practice.pool not in waters or not can_compose(analysis, squad):
        return ""
    keys = analysis.once((part_keys, squad), lambda: part_keys(analysis, squad))
    parts = [*_pieces(practice, keys)]
    once = {own.partition(":")[0] for own in parts}
    if "" in parts or len(once) < len(parts) or len(parts) not in _PARTS:
        return ""
    slot = practice.slot
    words = {
        "squad": squad, "pool": practice.pool, "minutes": slot.minutes,
        "lanes": ",".join(_lanes(analysis, practice)), "start": slot.start,
        "parts": ",".join(parts), "from": practice.id,
    }  # fmt: skip
    return f"{PAGE}#" + urlencode({name: own for name, own in words.items() if own}, safe="/,:")


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
