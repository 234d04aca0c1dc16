"""What a new club is asked: by options, in a terminal question by question, or by defaults alone.
A bad answer gets a sentence and the question again; a bad option ends it.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from almanac.commands import start_answers as read
from almanac.commands import start_places as places
from almanac.commands.outcome import UsageError, in_terminal
from almanac.model.new_club import LEVELS, NewClub, NewGroup, NewPool, NewSquad
from almanac.source.suggest import nearest
from almanac.units import ON_LAND, show_number

T = TypeVar("T")
_OPENING = """Answer each question, or press Enter for what stands in [brackets].
All of it can be changed later, in plans/club.yml."""
_LEVELS = "foundation learns to swim lengths, building swims all four strokes, performing races"
_WELCOME = "What we teach, what we look for, and what we do tonight."
_EMERGENCY = """In an emergency at {}: number to call / address as it is said / where the telephone
is / the defibrillator / the first-aid box / the way in for help? All six, with / between"""
_COLOUR = "blue, green, red, violet or #rrggbb"


@dataclass(frozen=True)
class Asker:
    """How questions are put. ``start_depth_m`` is the least depth in which anybody may dive."""

    asks: bool
    gear: Collection[str]
    start_depth_m: float

    def __call__(self, question: str, default: str, take: Callable[[str], T]) -> T:
        """The answer to a question, or its default where nobody is asked."""
        while True:
            words = (self._line(f"{question} [{default}] ") if self.asks else "") or default
            try:
                return take(words)
            except ValueError as problem:
                if not self.asks:
                    raise UsageError(str(problem)) from None
                print(f"  {problem}")

    def _line(self, prompt: str) -> str:
        try:
            return input(prompt).strip()
        except EOFError:
            raise UsageError(
                "nothing was written: the answers ended before the questions"
            ) from None

    def say(self, words: str) -> None:
        """Something beside the questions."""
        if self.asks:
            print(words)

    def doubt(self, least: float, most: float) -> str:
        """What is doubtful about a depth, or ""."""
        said = f"{show_number(least, 2)} to {show_number(most, 2)} m"
        if most < self.start_depth_m:
            need = f"{show_number(self.start_depth_m, 2)} m"
            return f"{said} is too shallow for any dive or start, which needs {need}"
        return f"{said} is deep: was it in feet? Then write 4-7ft" if least > 3 else ""


def ask_club(arguments: argparse.Namespace, gear: Collection[str], start_depth_m: float) -> NewClub:
    """A new club, by options first. Raises UsageError."""
    asking = Asker(in_terminal(), gear, start_depth_m)
    asking.say(_OPENING)

    def told(option: str, question: str, default: str, take: Callable[[str], T]) -> T:
        given = getattr(arguments, option)
        return asking(question, default, take) if given is None else _given(option, given, take)

    name = told("name", "\nWhat is the club called?", "Our Swimming Club", read.name)
    said = [_given("pool", own, places.pools) for own in arguments.pool or ()]
    pools = [pool for own in said for pool in own] or _pools(asking)
    for pool in pools if arguments.pool else ():
        if not pool.is_land and (doubt := asking.doubt(pool.least_m, pool.most_m)):
            print(f"note: {pool.title}: {doubt}")
    place = next((pool for pool in pools if not pool.is_land), pools[0])
    question = f"\n{_EMERGENCY.format(place.title)}"
    plan = told("emergency", question, read.NONE, places.emergency)
    place = replace(place, emergency=plan)
    pools = [place if own.id == place.id else own for own in pools]
    squads = [_given("squad", own, read.squad) for own in arguments.squad or ()]
    for squad in squads:
        _refuse_too_wide(squad, place)
    squads = squads or _squads(asking, place)
    for option, all in (("pool", pools), ("squad", squads)):
        ids = [own.id for own in all]
        if twice := next((id for id in ids if ids.count(id) > 1), ""):
            raise UsageError(f"--{option}: two are called '{twice}'; give one of them another name")
    usual = read.NONE if place.is_land else "kickboard=20"
    asking.say(f"\nGear that the program knows: {', '.join(gear)}")
    owned = told("gear", "What of it do you own, and how many? - for nothing", usual, _gear(gear))
    asking.say("\nThe site. - leaves a thing out.")
    return NewClub(
        name,
        told("address", "Its address, like https://club.example/", read.NONE, read.address),
        told("repository", "Address of the repository of these files", read.NONE, read.address),
        told("program", "Where its workflow gets the program", read.NONE, read.program),
        told("welcome", "A sentence of welcome on the first page", _WELCOME, read.welcome),
        told("colour", f"Colour of what is pressed: {_COLOUR}", read.NONE, read.colours),
        tuple(pools),
        tuple(squads),
        owned,
    )  # fmt: skip


def _given(option: str, words: str, take: Callable[[str], T]) -> T:
    try:
        return take(words)
    except ValueError as problem:
        raise UsageError(f"--{option}: {problem}") from None


def _refuse_too_wide(squad: NewSquad, place: NewPool) -> None:
    if not place.is_land and squad.lanes > place.lanes:
        raise UsageError(
            f"--squad: '{squad.title}' fills {squad.lanes} lanes, and {place.title} has "
            f"{place.lanes}; give its lane groups fewer"
        )


def _gear(known: Collection[str]) -> Callable[[str], dict[str, int]]:
    def take(words: str) -> dict[str, int]:
        owned = read.gear(words)
        for id in owned:
            if id not in known:
                near = nearest(id, known)
                mend = f"; is it '{near}'?" if near else f", but {', '.join(known)}"
                raise ValueError(f"no gear '{id}' comes with the program{mend}")
        return owned

    return take


def _pools(asking: Asker) -> list[NewPool]:
    where = f"\nWhere do you train: a pool of 25m, 50m or 25yd, or {ON_LAND} alone?"
    pools = [_pool(asking, asking(where, "25m", places.course), ())]
    while asking.asks:
        more = asking("Another pool? Its course", read.NONE, _or_none(places.course))
        if not more:
            break
        pools.append(_pool(asking, more, [own.id for own in pools]))
    return pools


def _pool(asking: Asker, course: str, taken: Sequence[str]) -> NewPool:
    usual = "Hall" if course == ON_LAND else f"Pool {len(taken) + 1}" if taken else "Pool"
    id, title = asking("  What is it called?", usual, _unlike(taken))
    pool = NewPool(id, title, course)
    if pool.is_land:
        return pool
    lanes = asking("  How many lanes do you have?", "6", read.count(1, 20, "lanes"))
    question = "  How deep, from shallow to deep, in metres (or feet: 4-7ft)?"
    least, most = asking(question, "1.0-1.9", places.depth)
    if asking.asks and (doubt := asking.doubt(least, most)):
        print(f"  {doubt}.")
        same = f"{least:g}-{most:g}"
        least, most = asking("  Once more, or Enter where that is so", same, places.depth)
    return replace(pool, lanes=lanes, least_m=least, most_m=most)


def _squads(asking: Asker, place: NewPool) -> list[NewSquad]:
    squads: list[NewSquad] = []
    given = asking("\nWhat is a squad of yours called?", "Juniors", _unlike(()))
    while True:
        squads.append(_squad(asking, place, *given))
        if not asking.asks:
            return squads
        taken = [own.id for own in squads]
        more = asking("Another squad? Its name", read.NONE, _or_none(_unlike(taken)))
        if not more:
            return squads
        given = more


def _squad(asking: Asker, place: NewPool, id: str, title: str) -> NewSquad:
    asking.say(f"  {_LEVELS}")
    level = asking("  Its level?", LEVELS[1], read.level)
    sessions = asking(
        "  How often does it train in a week?", "3", read.count(1, 14, "sessions a week")
    )
    if place.is_land:
        heads = asking("  How many are in it?", "12", read.count(1, 200, "swimmers"))
        return NewSquad(id, title, level, sessions, (NewGroup(1, heads, ""),))
    most = min(10, place.lanes)
    how_many = read.count(1, most, "lane groups")
    many = asking("  How many lane groups (each swims at one pace)?", "1", how_many)
    groups: list[NewGroup] = []
    for number in range(1, many + 1):
        left = place.lanes - sum(own.lanes for own in groups) - (many - number)
        which = f"  Group {number}: how" if many > 1 else "  How"
        usual = str(min(left, 2 if many > 1 else 3))
        lanes = asking(f"{which} many lanes?", usual, read.count(1, min(10, left), "lanes"))
        heads = asking(f"{which} many swimmers?", str(4 * lanes), read.count(1, 200, "swimmers"))
        unit = "yards" if place.course.endswith("yd") else "metres"
        time = asking(
            f"{which} long for 200 {unit} kicked on the back, like 4:30? - for not timed yet",
            read.NONE,
            read.time,
        )
        groups.append(NewGroup(lanes, heads, time))
    return NewSquad(id, title, level, sessions, tuple(groups))


def _or_none(take: Callable[[str], T]) -> Callable[[str], T | None]:
    return lambda words: None if words == read.NONE else take(words)


def _unlike(taken: Collection[str]) -> Callable[[str], tuple[str, str]]:
    def take(words: str) -> tuple[str, str]:
        id, title = read.named(words)
        if id in taken:
            raise ValueError(f"there is a '{id}' already: take another name")
        return id, title

    return take
