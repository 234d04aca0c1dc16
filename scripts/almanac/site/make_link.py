"""The way from the page of a practice to Make a practice, where it is opened to be changed; or why
it is changed in its file alone, and the way to another that is like it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import parse_qs, urlencode

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_pieces import SET
from almanac.arithmetic.composing_wishes import GOALS_MOST
from almanac.arithmetic.facets import distance_working
from almanac.arithmetic.leaving_out import ends_home
from almanac.arithmetic.practice_aims import chief_goals
from almanac.model.practice import Practice
from almanac.report.bound_parts import bound_by
from almanac.report.compose_address import PAGE, opens
from almanac.report.compose_parts import other_sizes, part_keys
from almanac.report.compose_table import can_compose

_PARTS = range(3, 7)  # a warm-up, one to four pieces of work and relief, a cool-down
_WISHES = ("groups", "goals", "gear", "heads", "effort", "adults")


@dataclass(frozen=True)
class ChangeLink:
    """``address`` below the site's root, "" where Make a practice has nothing for it. ``why_not``
    is a sentence where it opens another practice for the same goals; "" where it opens this one.
    """

    address: str
    why_not: str = ""


def change_link(analysis: Analysis, practice: Practice) -> ChangeLink:
    """The way to Make a practice: with its pieces where all of its parts are sets and parts that a
    practice is made of, each with its own talk; else with its goals.
    """
    squad, waters = practice.squad, analysis.catalogue.club.waters
    if practice.pool not in waters or not can_compose(analysis, squad):
        return ChangeLink("")
    keys = analysis.once((part_keys, squad), lambda: part_keys(analysis, squad))
    parts = [*_pieces(practice, keys)]
    why_not = _why_not(analysis, practice, parts)
    if why_not:
        goals = _goals(analysis, practice)
        address = _address(analysis, practice, {"goals": ",".join(goals)}) if goals else ""
        return ChangeLink(address, f"Make a practice can’t open it: {why_not}.")
    words = _composed(analysis, practice) | {"parts": ",".join(parts), "from": practice.id}
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


def _pieces(practice: Practice, keys: Mapping[tuple[str, int], str]) -> Iterator[str]:
    """Its parts as keys of pieces, with how often (0 for as written) and the seconds of talk before
    it; "" of another.
    """
    for number, part in enumerate(practice.parts):
        often = 0
        key = keys.get((practice.id, number), "")
        if part.set and not (part.apart or part.stations or part.lanes or part.variants):
            key, often = f"{SET}/{part.set}", part.rounds or part.reps or 0
        yield f"{key}:{often}:{int(part.talk or 0)}" if key else ""


def _why_not(analysis: Analysis, practice: Practice, parts: list[str]) -> str:
    """Why it can't be opened, as a clause; "" where it can."""
    words = analysis.catalogue.words("practice-parts")
    for number, part in enumerate(practice.parts):
        why = bound_by(analysis, part) or _ends_away(analysis, practice, number)
        if why or not parts[number]:
            return f"its part “{words[part.part].title}” {why or 'is of no other practice'}"
    if len(parts) not in _PARTS:
        return f"it has {len(parts)} parts, and one that is made there {_PARTS[0]} to {_PARTS[-1]}"
    once = {own.partition(":")[0] for own in parts}
    return "the same comes twice in it" if len(once) < len(parts) else ""


def _ends_away(analysis: Analysis, practice: Practice, number: int) -> str:
    """Whether items in place end where no other piece begins, and so with a rep more or fewer."""
    if practice.parts[number].set:
        return ""
    course = analysis.practices[practice.id].course
    ways = other_sizes(analysis, practice, number)
    is_home = any(ends_home(distance_working(items).value, course) for items in ways)
    return "" if is_home else "ends at the far end"


def _goals(analysis: Analysis, practice: Practice) -> list[str]:
    goals = chief_goals(analysis.practices[practice.id])
    return [*goals][:GOALS_MOST]


def _lanes(analysis: Analysis, practice: Practice) -> Iterator[str]:
    """The lane groups that have more or fewer lanes than usual."""
    for id, lanes in practice.lanes.groups.items():
        if len(lanes) != analysis.catalogue.lane_groups[id].lanes:
            yield f"{id}:{len(lanes)}"
