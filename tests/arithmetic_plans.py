"""Practices and blocks made in code, with tests so round that their figures can be worked by hand.

Squad osprey has two lane groups: `quick` swims 100 crawl in 80 s, `slow` in 100 s; squad heron has
one, which no practice of osprey may count. Over a distance that was tested, all out is the test
itself.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from arithmetic_world import (
    BENCHMARKS,
    BRIEF_WORDS,
    DRILLS,
    PIECES,
    SCALE,
    SHORT,
    YARDS,
    group,
    made,
    policy,
    swim_set,
    swum,
)

from almanac.arithmetic.block import BlockSummary, summarise_block
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.practice import PracticeSummary, summarise_practice
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing
from almanac.model.block import Block, Day, Week
from almanac.model.catalogue import Catalogue
from almanac.model.club import Club, LaneGroup, Squad
from almanac.model.entry import Entry
from almanac.model.policy import Vocabulary
from almanac.model.pool import Depth, Pool
from almanac.model.practice import Practice, PracticePart, Slot
from almanac.model.structure import structure_items

MONDAY = date(2026, 9, 7)
QUICK = group([swum("crawl-100", 80), swum("kick-50", 60)], heads=10, lanes=3)
SLOW = group([swum("crawl-100", 100), swum("kick-50", 75)], heads=6, lanes=2)
HERON = LaneGroup("Heron", "heron", 1, 9, QUICK.gap, QUICK.tests)
GROUPS = {"quick": QUICK, "slow": SLOW, "heron-1": HERON}
OWNED = {"fins": 12, "socks": 16}
POOLS = {"home": SHORT, "away": YARDS}


def club(
    *entries: Entry,
    groups: Mapping[str, LaneGroup] = GROUPS,
    owned: Mapping[str, int] = OWNED,
) -> Catalogue:
    """The catalogue of `arithmetic_world` with two pools, two squads, and more entries."""
    squads = {name: Squad(name, "performing", 6) for name in ("osprey", "heron")}
    pools = {name: Pool(name, course, 6, Depth(1.2, 2.0), True) for name, course in POOLS.items()}
    own = made(Club, id="club", pools=pools, squads=squads, lane_groups=groups, gear_owned=owned)
    efforts = made(Vocabulary, id="efforts", words=SCALE.words)
    every = [
        *DRILLS.values(), *PIECES.values(), *BENCHMARKS.values(), own, policy(), efforts,
        *BRIEF_WORDS.values(), *entries,
    ]  # fmt: skip
    return Catalogue({(entry.kind, entry.id): entry for entry in every}, {}, {})


def swim(
    distance: int = 100, do: str = "crawl", effort: Any = "all-out", reps: int = 1, **more: Any
) -> dict[str, Any]:
    """An item as an entry writes it."""
    return {"reps": reps, "distance": distance, "do": do, "effort": effort, **more}


def part(*written: dict[str, Any], talk: float | None = None, **more: Any) -> PracticePart:
    """A part of a practice with items in place."""
    return PracticePart("main", items=structure_items(list(written)), talk=talk, **more)


def practice_of(
    *parts: PracticePart, pool: str = "home", minutes: int = 30, **more: Any
) -> Practice:
    """A practice of squad osprey."""
    more = {"id": "evening", "squad": "osprey", "focus": "", **more}
    return made(Practice, pool=pool, slot=Slot("18:00", minutes), parts=parts, **more)


def summarised(practice: Practice, catalogue: Catalogue | None = None) -> PracticeSummary:
    """A practice on the clock."""
    known = catalogue or club(practice)
    timing = Timing(known)
    return summarise_practice(
        timing, practice, lambda id, course: summarise(timing, known.sets[id], course)
    )


def run(*parts: PracticePart, **more: Any) -> PracticeSummary:
    """Parts on the clock, as a practice."""
    return summarised(practice_of(*parts, **more))


# Three parts, a pause, and a set: see `test_arithmetic_practice.py` for the sums.
EVENING = (
    part(swim(reps=2, sendoff=120), talk=60),
    part(swim(gear=["fins"])),
    part(swim(gear=["socks"], sendoff=150), talk=15),
    part({"pause": 60}),
    PracticePart("main", set="a-set"),
)
EASY_SOCKS = swim_set(swim(effort="easy", gear=["socks"], rest=10))


def evening(**more: Any) -> PracticeSummary:
    """The practice that most tests look at."""
    practice = practice_of(*EVENING, **more)
    return summarised(practice, club(practice, EASY_SOCKS))


def whole(days: Mapping[str, Day]) -> dict[str, Day]:
    """A week of which no day is missing: what is not named is rest."""
    return {name: days.get(name, Day(rest=True)) for name in DAYS}


def block_of(*weeks: Week | Mapping[str, Day], **more: Any) -> Block:
    """A block of squad osprey from its weeks."""
    own = tuple(week if isinstance(week, Week) else Week("", week) for week in weeks)
    more = {"id": "autumn", "squad": "osprey", "starts": MONDAY, "purpose": "", **more}
    return made(Block, weeks=own, **more)


def block(
    *weeks: Week | Mapping[str, Day], group: str = "quick", **practices: PracticeSummary
) -> BlockSummary:
    """A block added up for one lane group."""
    return summarise_block(block_of(*weeks), lambda id, on: practices[id], group)
