"""The way from the page of a practice to Make a practice, where it is opened to be changed; or why
it is changed in its file alone, and the way to another that is like it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import parse_qs, urlencode

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.wishes import GOALS_MOST
from almanac.arithmetic.practice_aims import chief_goals
from almanac.model.practice import Practice
from almanac.report.compose.address import PAGE, opens
from almanac.report.compose.opened import can_open
from almanac.report.compose.table import can_compose

_WISHES = ("groups", "goals", "gear", "heads", "effort", "adults")


@dataclass(frozen=True)
class ChangeLink:
    """``address`` below the site's root, "" where Make a practice has nothing for it. ``why_not``
    is a sentence where it opens another practice for the same goals; "" where it opens this one.
    """

    address: str
    why_not: str = ""


def change_link(analysis: Analysis, practice: Practice) -> ChangeLink:
    """The way to Make a practice, where it is opened, with what was wished of it where it was
    composed; to others for its goals where not all of its times are known.
    """
    squad, waters = practice.squad, analysis.catalogue.club.waters
    if practice.pool not in waters or not can_compose(analysis, squad):
        return ChangeLink("")
    why_not = can_open(analysis, practice)
    if why_not:
        goals = _goals(analysis, practice)
        address = _address(analysis, practice, {"goals": ",".join(goals)}) if goals else ""
        return ChangeLink(address, f"Make a practice can’t open it: {why_not}.")
    words = _composed(analysis, practice) | {"from": practice.id}
    return ChangeLink(_address(analysis, practice, words))


def _address(analysis: Analysis, practice: Practice, more: Mapping[str, str]) -> str:
    slot = practice.slot
    words = {
        "squad": practice.squad, "pool": practice.pool, "minutes": str(slot.minutes),
        "lanes": ",".join(_lanes(analysis, practice)), "start": slot.start, **more,
    }  # fmt: skip
    return f"{PAGE}#" + urlencode({name: own for name, own in words.items() if own}, safe="/,:")


def _composed(analysis: Analysis, practice: Practice) -> dict[str, str]:
    """Of a composed practice what was wished, and the roles of its pieces; its pieces are those
    that it has now.
    """
    if not opens(analysis.catalogue, practice.composed):
        return {}
    words = {name: own[0] for name, own in parse_qs(practice.composed).items()}
    roles = "".join(own[0] for own in words.get("parts", "").split(",") if own)
    found = {name: words[name] for name in _WISHES if name in words}
    return found | ({"roles": roles} if len(roles) == len(practice.parts) else {})


def _goals(analysis: Analysis, practice: Practice) -> list[str]:
    summary = analysis.practices.get(practice.id)
    return [*chief_goals(summary)][:GOALS_MOST] if summary else []


def _lanes(analysis: Analysis, practice: Practice) -> Iterator[str]:
    """The lane groups that have more or fewer lanes than usual."""
    for id, lanes in practice.lanes.groups.items():
        if len(lanes) != analysis.catalogue.lane_groups[id].lanes:
            yield f"{id}:{len(lanes)}"
