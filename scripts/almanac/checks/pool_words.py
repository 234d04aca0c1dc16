"""What a pool lacks for a start, a drill or a level, in a coach's words, with the mend."""

from __future__ import annotations

from almanac.arithmetic.pool_fit import Misplaced
from almanac.arithmetic.start_limits import Lack
from almanac.model.catalogue import Catalogue
from almanac.model.pool import ENDS, Pool

FIRST = "local codes, the pool operator's and the federation's rules come first"
_MEASURE = "measure it and write it under `ends` of the pool in plans/club.yml"
_IN_WATER = "start in the water"


def end_words(pool: Pool, end: str) -> str:
    """An end as people call it."""
    own = pool.ends.get(end)
    return f"the {own.title.lower()}" if own and own.title else f"the {end} end"


def lane_words(lanes: tuple[int, ...]) -> str:
    """Lanes by number: ``lane 4``, ``lanes 1 and 2``, ``lanes 1 to 3``, ``lanes 1, 2 and 4``."""
    numbers = [str(lane) for lane in lanes]
    if len(numbers) < 2:
        return f"lane {numbers[0]}" if numbers else "no lane"
    if len(lanes) > 2 and lanes == tuple(range(lanes[0], lanes[-1] + 1)):
        return f"lanes {numbers[0]} to {numbers[-1]}"
    return f"lanes {', '.join(numbers[:-1])} and {numbers[-1]}"


def what_words(catalogue: Catalogue, found: Misplaced) -> str:
    """What asks for it: a start, a partner, or a drill."""
    if found.is_start:
        return f"'{found.what}'"
    if found.what in catalogue.drills:
        return catalogue.drills[found.what].title
    return f"'{found.what}'"


def message(catalogue: Catalogue, pool: Pool, found: Misplaced) -> str:
    """What is amiss."""
    what, where = what_words(catalogue, found), end_words(pool, found.end)
    lanes = lane_words(found.lanes)
    has, asked = _metres(found.shortfall.has), _metres(found.shortfall.asked)
    return {
        Lack.LANES_UNSAID: f"{what} is done somewhere else in the pool, and nobody says in which "
        "lanes: the depth there is not known",
        Lack.END_UNKNOWN: f"{what} needs {asked} of water, and how deep it is at {where} in "
        f"{lanes} is not known: the pool begins at {has}",
        Lack.NO_STARTS: f"{what} at {where} in {lanes}, where the pool's operator allows no starts",
        Lack.SHALLOW: f"{what} needs {asked} of water; {where} has {has} in {lanes}",
        Lack.DEEP: f"{what} needs water to stand in, {asked} at most, and {lanes} has {has}",
        Lack.PLATFORM_UNKNOWN: f"{what} at {where} in {lanes}: how high one stands above the water "
        "there is not known",
        Lack.PLATFORM_HIGH: f"{what} at {where} in {lanes} goes off {has}, and {asked} is the most",
        Lack.NO_LEDGE: f"{what} at {where} in {lanes}, which has no ledge",
        Lack.NO_FLAGS: f"{what} comes in on the back to {where}, which has no flags",
    }[found.shortfall.lack]


def hint(pool: Pool, found: Misplaced) -> str:
    """How to mend it."""
    leave = _leave(pool, found)
    return {
        Lack.LANES_UNSAID: "write its `lanes` and its `end` beside `place`",
        Lack.END_UNKNOWN: f"{_MEASURE}, or {_IN_WATER}; {FIRST}",
        Lack.NO_STARTS: f"{leave}{_IN_WATER}, or choose another lane; {FIRST}",
        Lack.SHALLOW: f"{leave}{_IN_WATER}, or go where it is deeper; {FIRST}"
        if found.is_start
        else f"{leave}give it lanes or a pool that is deeper, or another drill",
        Lack.DEEP: "give it lanes where everybody stands, or another drill",
        Lack.PLATFORM_UNKNOWN: f"{_MEASURE} (platform_m), or {_IN_WATER}; {FIRST}",
        Lack.PLATFORM_HIGH: f"go off the edge, or {_IN_WATER}; {FIRST}",
        Lack.NO_LEDGE: "start without a ledge, or in another lane",
        Lack.NO_FLAGS: "hang flags, swim it easy with a hand ahead, or turn on to the front before "
        "the wall",
    }[found.shortfall.lack]


def _leave(pool: Pool, found: Misplaced) -> str:
    """The other end, where that has the depth; or how to be at one end alone."""
    if found.both_ends:
        return "it is begun at both ends: write reps (or legs) of two lengths, or "
    other = next(end for end in ENDS if end != found.end)
    own, asked = pool.ends.get(other), found.shortfall.asked
    if own is None or asked is None:
        return ""
    here = [own.in_lane(lane) for lane in found.lanes]
    if min(end.depth_m for end in here) < asked or not all(end.starts for end in here):
        return ""
    return f"leave from {end_words(pool, other)} (end: {other}), or "


def _metres(value: float | None) -> str:
    return "" if value is None else f"{value:g} m"
