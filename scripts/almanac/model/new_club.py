"""What a new club says of itself, and the file of the club that this makes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from almanac.source.forms import FORM
from almanac.source.scalars import in_quotes, name
from almanac.units import COURSES, METRES_PER_YARD, ON_LAND, parse_time, show_time

TEST = "back-kick-200"
_USUAL = {"foundation": "5:40", "building": "4:20", "performing": "3:30"}
"""What a group of a level is assumed to take for 200 m kicked on the back where nobody has timed
it: house preference, and shown as assumed."""
LEVELS = tuple(_USUAL)
_OTHERS = {"backstroke-100": 0.335, "freestyle-400": 1.36}
"""What other tests are assumed to take, as shares of the kicked 200: house preference."""


EMERGENCY = ("call", "address", "telephone", "defibrillator", "first_aid", "way_in")


@dataclass(frozen=True)
class NewPool:
    """A pool: its course, lanes, and depth in metres from shallow to deep; or a place on land.
    ``emergency`` has what is done there in the order of ``EMERGENCY``, or nothing.
    """

    id: str
    title: str
    course: str
    lanes: int = 0
    least_m: float = 0.0
    most_m: float = 0.0
    emergency: tuple[str, ...] = ()

    @property
    def is_land(self) -> bool:
        """Whether there is no water."""
        return self.course == ON_LAND


@dataclass(frozen=True)
class NewGroup:
    """A lane group: lanes, heads, and its time over 200 kicked on the back as it was timed in the
    club's first pool, "" where it was not.
    """

    lanes: int
    heads: int
    time: str


@dataclass(frozen=True)
class NewSquad:
    """A squad, its sessions a week and its lane groups, quickest first."""

    id: str
    title: str
    level: str
    sessions: int
    groups: tuple[NewGroup, ...]

    @property
    def lanes(self) -> int:
        """The lanes that it fills."""
        return sum(group.lanes for group in self.groups)

    @property
    def heads(self) -> int:
        """All who are in it."""
        return sum(group.heads for group in self.groups)


@dataclass(frozen=True)
class NewClub:
    """What a new club says of itself. ``program`` is what pip installs in its workflow, or "" where
    nobody has said it yet; ``colours`` are for white and for dark, or none.
    """

    name: str
    address: str
    repository: str
    program: str
    welcome: str
    colours: tuple[str, ...]
    pools: tuple[NewPool, ...]
    squads: tuple[NewSquad, ...]
    gear: Mapping[str, int]

    @property
    def place(self) -> NewPool:
        """Where its squads train: its first pool, else its first place on land."""
        return next((pool for pool in self.pools if not pool.is_land), self.pools[0])


def club_file(club: NewClub, today: date) -> str:
    """The text of ``plans/club.yml``."""
    return "".join(
        [f"form: {FORM}\ntitle: {in_quotes(club.name)}\n", *_site(club), *_body(club, today)]
    )


def _site(club: NewClub) -> Iterator[str]:
    said = {"address": club.address, "repository": club.repository, "welcome": club.welcome}
    if any(said.values()) or club.colours:
        yield "site:\n"
        yield from (f"  {key}: {in_quotes(value)}\n" for key, value in said.items() if value)
    if club.colours:
        light, dark = map(in_quotes, club.colours)
        yield f"  colours: {{light: {light}, dark: {dark}}}\n"


def _body(club: NewClub, today: date) -> Iterator[str]:
    yield "pools:\n"
    for pool in club.pools:
        yield f"  {name(pool.id)}:\n    title: {in_quotes(pool.title)}\n    course: {pool.course}\n"
        if not pool.is_land:
            depth = f"{{from: {pool.least_m:g}, to: {pool.most_m:g}}}"
            yield f"    lanes: {pool.lanes}\n    depth_m: {depth}\n    flags: true\n"
        if pool.emergency:
            yield "    emergency:\n"
            said = zip(EMERGENCY, pool.emergency, strict=True)
            yield from (f"      {key}: {in_quotes(value)}\n" for key, value in said)
    yield "squads:\n"
    for squad in club.squads:
        own = f"level: {squad.level}, sessions_a_week: {squad.sessions}"
        yield f"  {name(squad.id)}: {{title: {in_quotes(squad.title)}, {own}}}\n"
    yield "lane_groups:\n"
    for squad in club.squads:
        for number, group in enumerate(squad.groups, 1):
            yield from _group(club, squad, number, group, today)
    yield "gear_owned:\n" if club.gear else "gear_owned: {}\n"
    yield from (f"  {name(id)}: {count}\n" for id, count in club.gear.items())


def _group(
    club: NewClub, squad: NewSquad, number: int, group: NewGroup, today: date
) -> Iterator[str]:
    title = squad.title if len(squad.groups) == 1 else f"{squad.title} {number}"
    yield f"  {squad.id}-{number}:\n    title: {in_quotes(title)}\n    squad: {name(squad.id)}\n"
    if club.place.is_land:
        yield f"    heads: {group.heads}\n"
        return
    yield f"    lanes: {group.lanes}\n    heads: {group.heads}\n    gap: 0:10\n"
    course = COURSES[club.place.course]
    if group.time:
        test = f"benchmark: {TEST}, time: {group.time}, course: {course}, on: {today}"
        yield f"    tests:\n      - {{{test}}}\n"
    best_s = _over_200_m(club, group) if group.time else _assumed_s(club, squad, number - 1)
    shares = _OTHERS if group.time else {TEST: 1.0, **_OTHERS}
    yield "    # Not timed yet: what is paced by these is shown as assumed until there is a test.\n"
    yield "    assume:\n"
    for test, share in shares.items():
        yield f"      - {{benchmark: {test}, time: {show_time(math.ceil(best_s * share))}}}\n"


def _over_200_m(club: NewClub, group: NewGroup) -> float:
    """The time of a lane group that was timed; what is assumed is in the test's course, of 25 m."""
    in_yards = str(COURSES[club.place.course]).endswith("yd")
    return parse_time(group.time) / (METRES_PER_YARD if in_yards else 1)


def _assumed_s(club: NewClub, squad: NewSquad, place: int) -> float:
    """The usual time of the level, but no quicker than a lane group before it was timed at, and no
    slower than one behind it.
    """
    timed = [_over_200_m(club, own) if own.time else None for own in squad.groups]
    before = [own for own in timed[:place] if own is not None]
    behind = [own for own in timed[place:] if own is not None]
    return min([max([parse_time(_USUAL[squad.level]), *before]), *behind])
