"""The words of the address of Make a practice that make a practice again, to be changed there: the
same that the page itself writes (site_src/scripts/make/asked.js).
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.order import Stood
from almanac.arithmetic.composing.pieces import TENTHS, UNKNOWN
from almanac.arithmetic.composing.table import ComposeTable
from almanac.model.catalogue import Catalogue
from almanac.model.composed_words import named_in

PAGE = "make.html"


def address_words(asked: Asked, order: Sequence[Stood], start: str) -> str:
    """What was wished and is not as usual, and which pieces stand, how often. What was done and
    taught before is that evening's, and is left out.
    """
    wishes, table = asked.wishes, asked.table
    groups, gear = table.squad.groups, table.gear
    some = [groups[place].id for place in wishes.groups] if len(wishes.groups) < len(groups) else []
    lanes = {own.id: (wishes.lanes[place], own.lanes) for place, own in enumerate(groups)}
    heads = {own.id: (wishes.heads[place], own.heads) for place, own in enumerate(groups)}
    here = {own.id: (wishes.gear[place], own.owned) for place, own in enumerate(gear)}
    words = {
        "squad": table.squad.id,
        "pool": wishes.pool,
        "groups": ",".join(some),
        "minutes": str(wishes.minutes),
        "goals": ",".join(table.goals[goal].id for goal in wishes.goals),
        "gear": _unusual(here),
        "lanes": _unusual(lanes),
        "heads": _unusual(heads),
        "effort": "" if wishes.effort == UNKNOWN else table.efforts[wishes.effort].id,
        "adults": "" if wishes.adults == UNKNOWN else str(wishes.adults),
        "start": start,
        "parts": _parts(table, order),
    }
    return "&".join(f"{name}={own}" for name, own in words.items() if own)


def address(catalogue: Catalogue, words: str) -> str:
    """Where the club's site opens it; below whatever the site stands at where nothing says so."""
    return f"{catalogue.club.site.address}{PAGE}#{words}"


def opens(catalogue: Catalogue, words: str) -> bool:
    """Whether all that an address names is still there, so that the page can open it."""
    club = catalogue.club
    known: dict[str, Collection[str]] = {
        "squad": club.squads, "pool": club.waters, "lane_group": catalogue.lane_groups,
        "gear": catalogue.gear, "goals": catalogue.words("goals"), "efforts": catalogue.efforts,
        "set": catalogue.sets, "practice": catalogue.practices, "drill": catalogue.drills,
    }  # fmt: skip
    named = [*named_in(words)]
    return bool(named) and all(own.id in known[own.kind] for own in named)


def _unusual(numbers: Mapping[str, tuple[int, int]]) -> str:
    return ",".join(f"{id}:{own}" for id, (own, usual) in numbers.items() if own != usual)


def _parts(table: ComposeTable, order: Iterable[Stood]) -> str:
    return ",".join(
        f"{one.role}.{piece.key}:{one.own.number}"
        + (f":{piece.talk // TENTHS}" if piece.talk != table.pieces[one.own.place].talk else "")
        for one in order
        for piece in [one.own.piece]
    )
