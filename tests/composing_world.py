"""Small tables to compose a practice from, by hand and by chance.

A slot of 100 minutes, so that 60 tenths are a permille of it. Two lane groups: ``quick`` with 8
heads in 2 lanes, ``slow`` with 9 in 2, so that their fullest lanes have 4 and 5. Goals, strokes and
drills are 0, 1, 2; efforts 0 to 4, of which 3 is the first that counts as fast and 1 the last that
is gentle; of gear 0 there are 10 and it takes 300 to change, of gear 1 20 and 100.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.pieces import SET, UNKNOWN, Offer, PracticePiece, Size, Sizes
from almanac.arithmetic.composing.table import (
    ComposeTable,
    GearHere,
    Limits,
    Named,
    PoolHere,
    TableGroup,
    TableSquad,
    Taught,
)
from almanac.arithmetic.composing.wishes import Kept, Wishes

GROUPS = (TableGroup("quick", "Quick", 2, 8, 50), TableGroup("slow", "Slow", 2, 9, 100))
LIMITS = Limits(fast=400, resisted=300, plates=200, under=100, under_after_fast=1000)
GEAR = (GearHere("fins", "Fins", 10, 300), GearHere("socks", "Drag socks", 20, 100))
MINUTES = 100

Own = tuple[PracticePiece, tuple[Size, ...]]


def named(word: str, number: int = 3) -> tuple[Named, ...]:
    return tuple(Named(f"{word}-{at}", f"{word.title()} {at}") for at in range(number))


def piece(id: str = "a", roles: str = "wsmec", **more: Any) -> PracticePiece:
    """A set that is done once, serves nothing and asks for nothing, unless told otherwise; all of
    it serves each of its goals, and is as hard as its hardest.
    """
    empty: dict[str, Any] = dict.fromkeys(
        ("goals", "drills", "asks", "strokes", "gear", "begins", "ends"), ()
    )
    empty |= {"of": SET, "part": 0, "kick": 0, "hardest": 0, "most_in_lane": 0, "talk": 0}
    empty |= {"what": "", "written": 1, "cue": "", "title": id.title()}
    whole = empty | more
    served = len(whole["goals"])
    shown = {
        "called": whole["title"],
        "shares": (1000,) * served,
        "shows": ("",) * served,
        "effort": whole["hardest"],
    }
    return PracticePiece(id=id, roles=roles, **(shown | whole))


def size(takes: int | tuple[int | None, ...] = 600, number: int = 1, **more: Any) -> Size:
    """A size that both lane groups do in so long, with nothing in it that is limited."""
    times = takes if isinstance(takes, tuple) else (takes, takes)
    empty: dict[str, Any] = dict.fromkeys(("fast", "resisted", "plates", "under"), 0)
    empty |= {"distance": 100, "goes_under": UNKNOWN, "calm": UNKNOWN, "doses": ()}
    return Size(number=number, times=times, **(empty | more))


def sized(takes: int = 600, own: Size | None = None, place: int = 99, **of: Any) -> Sized:
    """A piece as it is for some wishes, that is in no table."""
    return Sized(place, piece(**of), own or size(takes), takes, 0)


def table(*pieces: Own, rooms: Sequence[tuple[int, int]] = (), **of_squad: Any) -> ComposeTable:
    """A table of pieces with their sizes."""
    offers = tuple(
        Offer(place, 1, rooms[place] if rooms else (0, 0), tuple(Sizes(each) for each in sizes))
        for place, (_, sizes) in enumerate(pieces)
    )
    squad = TableSquad(
        "a",
        "A",
        "performing",
        GROUPS,
        LIMITS,
        frozenset(),
        120,
        {"home": (1, 12)},
        {"home": offers},
    )
    progression = Taught("ladder", "Ladder", ((0,), (1, 2)))
    return ComposeTable(
        goals=named("goal"), efforts=named("effort", 5), gentle=1, fast=3, strokes=named("stroke"),
        gear=GEAR, drills=("drill-0", "drill-1", "drill-2"), strokes_swum=frozenset(),
        pools=(PoolHere("home", "Home", "25m", 6),), squad=replace(squad, **of_squad),
        progressions=(progression,), practices=(), blocks=(),
        pieces=tuple(own for own, _ in pieces),
    )  # fmt: skip


def wishes(**more: Any) -> Wishes:
    """Both lane groups as they usually are, and the first goal."""
    usual: dict[str, Any] = {
        "pool": "home", "groups": (0, 1), "lanes": (2, 2), "heads": (8, 9), "minutes": MINUTES,
        "goals": (0,), "gear": tuple(own.owned for own in GEAR),
    }  # fmt: skip
    return Wishes(**(usual | more))


def asked(*pieces: Own, of: ComposeTable | None = None, **more: Any) -> Asked:
    """Wishes held against a table of these pieces; without any, of a main set for the first goal,
    so that work serves it.
    """
    own = of or table(*(pieces or ((piece(roles="m", goals=(0,)), (size(),)),)))
    return Asked(own, wishes(**more))


def drawn(seed: int) -> Asked:
    """Wishes and a table by chance: few pieces, so that every practice of them can be tried."""
    chance = random.Random(seed)

    def some(most: int, odds: float) -> tuple[int, ...]:
        return tuple(each for each in range(most) if chance.random() < odds)

    pieces: list[Own] = []
    every = ("we", "wc", "sw", "m", "msc", "m", "ec", "c")
    for number, roles in enumerate(every):
        gear = some(2, 0.3) if roles == "m" else ()
        drills = some(3, 0.4)
        own = piece(
            f"p{number}", roles,
            of="drill" if roles == "sw" else chance.choice(("set", "part")),
            goals=tuple(chance.sample(range(3), chance.randint(0, 2))), drills=drills,
            asks=tuple(set(some(3, 0.1)) - set(drills)), strokes=some(3, 0.4),
            kick=chance.choice((0, 200, 500, 501, 800)), hardest=chance.randint(0, 4),
            gear=gear, begins=gear, ends=gear[:1], talk=chance.choice((0, 60, 200)),
            what=chance.choice(("", "rounds")), written=2,
        )  # fmt: skip
        start = chance.randrange(1500, 12000 if "m" in roles else 4000, 10)
        step = chance.randrange(300, 900, 10)
        sizes = [
            size(
                (start + step * at, start + step * at - 100), at + 1,
                distance=100 * (at + 1), fast=chance.choice((0, 0, 100, 200)),
                under=chance.choice((0, 0, 40)), calm=chance.choice((UNKNOWN, 0, 500)),
                goes_under=chance.choice((UNKNOWN, UNKNOWN, 0, 400)),
                doses=tuple((drill, 300, 350) for drill in drills),
            )
            for at in range(chance.randint(1, 2 if "m" in roles else 3))
        ]  # fmt: skip
        pieces.append((own, tuple(sizes)))
    # As long as some practice of these lasts, which may yet break a limit.
    stands = [
        *chance.choice(((0, 4, 7), (0, 2, 5, 1), (1, 3, 4, 7), (0, 4, 5, 7), (1, 2, 4, 6, 7)))
    ]
    long = sum(
        pieces[place][0].talk + (chance.choice(pieces[place][1]).times[0] or 0) for place in stands
    )
    kept = []
    if chance.random() < 0.4:
        place = chance.randrange(len(every))
        role = chance.choice(every[place])
        kept = [
            Kept(
                place,
                "n" if role == "m" and chance.random() < 0.4 else role,
                -chance.randint(0, 1) or 1,
            )
        ]
    return asked(
        *pieces,
        minutes=-(-long // 600),
        goals=tuple(chance.sample(range(3), chance.randint(1, 2))),
        effort=chance.choice((UNKNOWN, 2, 3)),
        days={place: chance.randint(0, 30) for place in some(len(every), 0.2)},
        taught=frozenset(some(3, 0.7)),
        heads=chance.choice(((8, 9), (8, 9), (8, 11))),
        gear=chance.choice(((10, 20), (19, 20))),
        kept=tuple(kept),
    )
