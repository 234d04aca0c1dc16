"""What a start asks of the water and the wall where it is done, and whether they give it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto

from almanac.model.policy import Policy, Word
from almanac.model.pool import Pool, PoolEnd
from almanac.wording.dives import names_a_dive, names_a_start

HEAD_FIRST, BACKWARDS, FEET_FIRST, IN_THE_WATER = (
    "head-first",
    "backwards",
    "feet-first",
    "in-the-water",
)
EDGE, LEDGE, PLATFORM = "edge", "ledge", "platform"
DIVE = Word("", "", enters=HEAD_FIRST)
"""A dive of no word: off whatever platform is there."""
EDGE_DIVE = Word("", "", enters=HEAD_FIRST, off=EDGE)


class Lack(Enum):
    """What is amiss with a place."""

    LANES_UNSAID = auto()  # somewhere in the pool, and nobody says in which lanes
    END_UNKNOWN = auto()  # how deep it is there is not known
    NO_STARTS = auto()  # the pool's operator allows none there
    SHALLOW = auto()
    DEEP = auto()
    PLATFORM_UNKNOWN = auto()  # how high it is is not known
    PLATFORM_HIGH = auto()
    NO_LEDGE = auto()
    NO_FLAGS = auto()


OF_DEPTH = frozenset({Lack.LANES_UNSAID, Lack.END_UNKNOWN, Lack.SHALLOW, Lack.DEEP})
OF_PLATFORM = frozenset({Lack.PLATFORM_UNKNOWN, Lack.PLATFORM_HIGH, Lack.NO_LEDGE})


@dataclass(frozen=True)
class Shortfall:
    """What a place lacks: what it ``has`` and what is asked, in metres, where that is a number."""

    lack: Lack
    has: float | None = None
    asked: float | None = None


@dataclass(frozen=True)
class StartLimits:
    """The limits that a start is under, in metres: the least depth, the highest platform."""

    depth_least: float
    platform_most: float


def enters(word: Word) -> str:
    """How one gets under way by a start. One that does not say counts as head-first, and so does
    one that says otherwise and begins above the water all the same (``belies``).
    """
    return HEAD_FIRST if belies(word) else word.enters or HEAD_FIRST


def belies(word: Word) -> str:
    """What of a start says that it begins above the water, head first, where ``enters`` says not:
    what it goes ``off``, or its own words; "" where they agree.
    """
    if word.enters in (IN_THE_WATER, BACKWARDS) and word.off in (EDGE, PLATFORM):
        return f"it goes off the {word.off}"
    text = f"{word.title}. {word.means}"
    dives = word.enters in (IN_THE_WATER, FEET_FIRST) and names_a_dive(text)
    if dives or (word.enters == IN_THE_WATER and names_a_start(text)):
        return "its own words tell of a dive, or of a start from above"
    return ""


def start_limits(policy: Policy, level: str, word: Word, taught: bool) -> StartLimits:
    """The limits of a start for a level. A start that a drill teaches has the depth of teaching,
    whatever the level; a word may ask for more than the policy does.
    """
    own = policy.of_level(level)
    depth = {
        FEET_FIRST: policy.limit("feet_first_depth_least"),
        IN_THE_WATER: 0.0,
    }.get(enters(word), own.limit("start_depth_least"))
    if taught and enters(word) in (HEAD_FIRST, BACKWARDS):
        depth = max(depth, policy.limit("teaching_depth_least"))
    return StartLimits(max(depth, word.depth_m.least or 0.0), own.limit("platform_most"))


def start_shortfall(
    pool: Pool, end: str, lane: int, word: Word, limits: StartLimits
) -> Shortfall | None:
    """What a lane lacks at one end for a start; None where it has all.

    Where the end is not known, the pool's shallowest water counts, and the platform is unknown.
    """
    how = enters(word)
    if how == IN_THE_WATER and not limits.depth_least:
        return None
    here = pool.ends[end].in_lane(lane) if end in pool.ends else None
    if here and not here.starts and how != IN_THE_WATER:
        return Shortfall(Lack.NO_STARTS)
    depth = here.depth_m if here else pool.depth_m.least
    if depth < limits.depth_least:
        lack = Lack.SHALLOW if here or pool.depth_m.most < limits.depth_least else Lack.END_UNKNOWN
        return Shortfall(lack, depth, limits.depth_least)
    if how == HEAD_FIRST or (how == FEET_FIRST and word.off == PLATFORM):
        return _platform_shortfall(here, word, limits.platform_most)
    if how == BACKWARDS and word.off == LEDGE and not (here and here.ledge):
        return Shortfall(Lack.NO_LEDGE)
    return None


def _platform_shortfall(here: PoolEnd | None, word: Word, most: float) -> Shortfall | None:
    height = height_of(here, word) if here else None
    if height is None:
        return Shortfall(Lack.PLATFORM_UNKNOWN, asked=most)
    return Shortfall(Lack.PLATFORM_HIGH, height, most) if height > most else None


def height_of(here: PoolEnd, word: Word) -> float | None:
    """Height in metres of what a start goes off: the edge where it says so, else the platform."""
    if word.off == EDGE and here.edge_m is not None:
        return here.edge_m
    return here.platform_m
