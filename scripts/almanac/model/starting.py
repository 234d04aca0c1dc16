"""A new club's folder, as texts by file: its settings, a first progression with all that it needs,
a warm-up and a set for each level, and a practice for each squad.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from itertools import chain
from string import Template

from almanac.kinds import KIND
from almanac.model.bringing import NotBrought, Origin, bring
from almanac.model.catalogue import Catalogue, Key
from almanac.model.load import Loaded
from almanac.model.new_club import LEVELS, TEST, NewClub, NewPool, NewSquad, club_file
from almanac.model.policy import Policy
from almanac.model.swim_set import SwimSet
from almanac.resources import STARTERS
from almanac.source import schemas
from almanac.source.names import Names
from almanac.source.scalars import in_quotes, name

_WATER: tuple[Key, ...] = (
    ("progression", "float-to-streamline-kick"),
    *(("benchmark", id) for id in (TEST, "backstroke-100", "freestyle-400")),
    ("drill", "easy-choice-swim"),
)
_LAND: tuple[Key, ...] = tuple(
    ("drill", id)
    for id in (
        *("wall-streamline-stand", "upper-back-over-towel", "supine-straight-leg-lines"),
        *("half-kneeling-hip-opener", "dead-bug-streamline", "glute-bridge-march"),
        *("plank-to-streamline", "side-bridge-hold", "towel-scrunch"),
        *("seated-hip-turns", "seated-ankle-points"),
    )
)
_WORDS = {  # of a practice: its summary, and what every lane hears
    "foundation": (
        "Easy swimming, the beat, and lengths on the back with a hand ahead.",
        "Long leg down, toes boil the water.",
    ),
    "building": (
        "Legs on the back with one arm up, then fifties that keep their line.",
        "The same small beat from wall to wall.",
    ),
    "performing": (
        "Streamline kicked on the back, first easy, then fifties that are meant.",
        "Quick feet, still hips, both hands lead.",
    ),
}
_WORDS_ON_LAND = {
    "foundation": (
        "Tall at the wall and long on the mat: the line without any hurry.",
        "Ribs in, then reach.",
    ),
    "building": (
        "A trunk that keeps still while one leg, then two arms, move away from it.",
        "Slow arms, slow heel.",
    ),
    "performing": (
        "The line held on the back, in front support and on the side, in two rounds.",
        "Stop before it sags.",
    ),
}
_FLOAT = "back-float-and-line"
"""What all others on the back need first; where nobody can stand it is not begun with."""
_FLOATED = (
    f"  - {{reps: 3, time: 0:15, do: {_FLOAT}, effort: easy, rest: 0:15, "
    "note: Ears under and navel up. Stand before the next.}\n"
)
_MOST_ADULTS = schemas.fields("practice")["adults"]["maximum"]
_WRITTEN_IN = "25m"  # the course of the sets that the program comes with
WORKFLOW = ".github/workflows/site.yml"


def folder_of(club: NewClub, shelf: Loaded, today: date, again: date) -> dict[str, str]:
    """Every file of the new folder. ``shelf`` is the catalogue that the program comes with,
    ``again`` the day by which its reviews are to be the club's own. Raises NotBrought.
    """
    assert shelf.catalogue is not None
    place = club.place
    groups = _by_level(club)
    origin = Origin("the catalogue that the program comes with", today, groups=groups)
    wanted = [*(_LAND if place.is_land else _WATER), *(("gear", id) for id in club.gear)]
    brought = bring(shelf, _names_of(shelf, chain(*groups.values())), wanted, origin).files
    values = {"today": today.isoformat(), "again": again.isoformat(), "course": place.course}
    depth = shelf.catalogue.drills[_FLOAT].depth_m.most
    can_stand = depth is not None and place.least_m <= depth
    values |= {"float": _FLOATED * can_stand, "floated": "a float, " * can_stand}
    own = {"plans/club.yml": club_file(club, today)}
    fitting = _fitting(brought, shelf.catalogue, club)
    own |= {file: _in_course(file, text, place.course) for file, text in fitting.items()}
    if place.is_land:
        own["drills/progressions/a-line-that-holds.yml"] = _filled(
            "progression-on-land.yml", values
        )
        own["plans/sets/warm-up-on-land.yml"] = _filled("warm-up-on-land.yml", values)
    first = {squad.level: squad for squad in reversed(club.squads)}
    for number, level in enumerate(own_level for own_level in LEVELS if own_level in first):
        squad, id = first[level], f"first-{level}"
        own |= dict(_sets(level, place, values))
        adults = _adults(squad, place, shelf.catalogue.policy)
        at = {"start": f"{17 + number}:30", "adults": str(adults)}
        own[f"plans/practices/{id}.yml"] = _practice(squad, place, {**values, **at})
    return {**own, **_beside(club)}


def _names_of(shelf: Loaded, groups: Iterable[str]) -> Names:
    """The program's lists of words, the club's lane groups, and no entry: what it begins with."""
    listed = shelf.names.words.items()
    found = {key: own if key[0] == "vocabulary" else {} for key, own in listed}
    found["reference", "lane_group"] = dict.fromkeys(groups, KIND["club"].files)
    return Names(found)


def _by_level(club: NewClub) -> dict[str, tuple[str, ...]]:
    """The lane groups of each level, by id."""
    found: dict[str, tuple[str, ...]] = {}
    for squad in club.squads:
        own = tuple(f"{squad.id}-{number}" for number in range(1, len(squad.groups) + 1))
        found[squad.level] = found.get(squad.level, ()) + own
    return found


def _fitting(files: Mapping[str, str], catalogue: Catalogue, club: NewClub) -> dict[str, str]:
    """What is brought without sets of drills that ask for water to stand in, where every pool that
    they can be swum in is deeper, and without the lines of progressions that name one.
    """
    course = _course_of_sets(club.place.course)
    fitting = (own.least_m for own in club.pools if own.course == course)
    shallowest = min(fitting, default=club.place.least_m)
    left_out = [
        own
        for own in catalogue.sets.values()
        if own.file in files and _asks_for_less(own, catalogue, shallowest)
    ]
    ids = "|".join(own.id for own in left_out)
    gone = {own.file for own in left_out}
    kept = {file: text for file, text in files.items() if file not in gone}
    line = rf"(?m)^ +sets: \[(?:{ids})\]\n"
    return {file: re.sub(line, "", text) if ids else text for file, text in kept.items()}


def _asks_for_less(swim_set: SwimSet, catalogue: Catalogue, depth_m: float) -> bool:
    """Whether a drill of a set is for water that is shallower than this."""
    drills = (catalogue.drills[it.id] for it in swim_set.references() if it.kind == "drill")
    return any(drill.depth_m.most is not None and drill.depth_m.most < depth_m for drill in drills)


def _course_of_sets(course: str) -> str:
    """The course of the program's sets: the club's where its lengths are the same number."""
    return course if course.startswith("25") else _WRITTEN_IN


def _in_course(file: str, text: str, course: str) -> str:
    """A set of the program's in the course that it has in the club."""
    if not file.startswith("plans/sets/"):
        return text
    return re.sub(rf"(?m)^course: {_WRITTEN_IN}$", f"course: {_course_of_sets(course)}", text)


def _sets(level: str, place: NewPool, values: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """The warm-up and the first set of a level, by file."""
    where = "-on-land" if place.is_land else ""
    yield f"plans/sets/first-set-{level}.yml", _filled(f"set{where}-{level}.yml", values)
    if not place.is_land:
        yield f"plans/sets/warm-up-{level}.yml", _filled(f"warm-up-{level}.yml", values)


def _practice(squad: NewSquad, place: NewPool, values: Mapping[str, str]) -> str:
    of_squad = {"squad": name(squad.id), "level": squad.level, "pool": name(place.id)}
    of_squad["title"] = in_quotes(f"First practice: {squad.title}")
    summary, focus = (_WORDS_ON_LAND if place.is_land else _WORDS)[squad.level]
    of_squad |= {"summary": in_quotes(summary), "focus": in_quotes(focus)}
    template = "practice-on-land.yml" if place.is_land else "practice.yml"
    return _filled(template, {**values, **of_squad})


def _adults(squad: NewSquad, place: NewPool, policy: Policy) -> int:
    """The fewest adults that the program's limits let a squad train with."""
    each = policy.limit("land_heads_each_adult_most")
    standing = policy.limit("standing_depth_most")
    if not place.is_land and place.most_m > standing:
        can_stand = place.least_m <= standing
        deep = "deep_heads_each_adult_most" if can_stand else "all_deep_heads_each_adult_most"
        each = policy.of_level(squad.level).limit(deep)
    adults = max(int(policy.limit("adults_least")), math.ceil(squad.heads / each))
    if adults > _MOST_ADULTS:
        raise NotBrought(
            f"{squad.title}: {squad.heads} swimmers need {adults} adults there, and a practice has "
            f"{_MOST_ADULTS} at most: make two squads of it"
        )
    return adults


def _beside(club: NewClub) -> dict[str, str]:
    """What stands in the folder beside the catalogue."""
    installed = f"`pip install '{club.program}'`" if club.program else "the program, by pip"
    about = {"name": club.name, "program": club.program, "installed": installed}
    return {
        "README.md": _filled("readme.md", about),
        WORKFLOW: _filled("workflow.yml", about),
        ".gitignore": "/build/\n/site/\n",
    }


def _filled(template: str, values: Mapping[str, str]) -> str:
    text = (STARTERS / "club" / template).read_text("utf-8")
    return Template(text).safe_substitute(values)
