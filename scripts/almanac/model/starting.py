"""A new club's folder, as texts by file: its settings, a first progression with all that it needs,
a set for each level, and a practice.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from string import Template

from almanac.model.bringing import Origin, bring
from almanac.model.load import Loaded
from almanac.resources import STARTERS
from almanac.source.forms import FORM
from almanac.source.names import Names

_FIRST = ("progression", "float-to-streamline-kick")
_TEST = "back-kick-200"
_DRILL = {
    "foundation": ("back-kick-one-arm-up", "easy", 2),
    "building": ("back-kick-one-arm-up", "steady", 3),
    "performing": ("back-streamline-kick", "steady", 4),
}
LEVELS = tuple(_DRILL)
WORKFLOW = ".github/workflows/site.yml"


@dataclass(frozen=True)
class NewPool:
    """A pool: its course, lanes, and depth in metres from shallow to deep."""

    id: str
    course: str
    lanes: int
    least_m: float
    most_m: float


@dataclass(frozen=True)
class NewSquad:
    """A squad with one lane group: lanes, heads, its time over 200 kicked on the back, or ""."""

    id: str
    level: str
    sessions: int
    lanes: int
    heads: int
    time: str


@dataclass(frozen=True)
class NewClub:
    """What a new club says of itself. ``program`` is what pip installs in its workflow, or "" where
    nobody has said it yet.
    """

    name: str
    address: str
    repository: str
    program: str
    pools: tuple[NewPool, ...]
    squads: tuple[NewSquad, ...]
    gear: Mapping[str, int]


def folder_of(club: NewClub, shelf: Loaded, today: date, again: date) -> dict[str, str]:
    """Every file of the new folder. ``shelf`` is the catalogue that the program comes with,
    ``again`` the day by which its reviews are to be the club's own. Raises NotBrought.
    """
    gear = [("gear", id) for id in club.gear]
    origin = Origin("the catalogue that the program comes with", today)
    wanted = [_FIRST, ("benchmark", _TEST), ("drill", "easy-choice-swim"), *gear]
    brought = bring(shelf, _words_of(shelf), wanted, origin).files
    course = club.pools[0].course
    own = {file: _in_course(file, text, course) for file, text in brought.items()}
    values = {"today": today.isoformat(), "again": again.isoformat(), "course": course}
    for level in dict.fromkeys(squad.level for squad in club.squads):
        drill, effort, reps = _DRILL[level]
        of_level = {"level": level, "level_title": level, "title": f"First set: {level}"}
        own[f"plans/sets/first-{level}.yml"] = _filled(
            "set.yml", {**values, **of_level, "drill": drill, "effort": effort, "reps": str(reps)}
        )
    squad = club.squads[0]
    of_squad = {"squad": squad.id, "squad_title": _title(squad.id), "level": squad.level}
    own["plans/practices/first-practice.yml"] = _filled(
        "practice.yml", {**values, **of_squad, "pool": club.pools[0].id}
    )
    installed = f"`pip install '{club.program}'`" if club.program else "the program, by pip"
    about = {"name": club.name, "program": club.program, "installed": installed}
    return {
        "plans/club.yml": _club(club, today),
        **own,
        "README.md": _filled("readme.md", about),
        WORKFLOW: _filled("workflow.yml", about),
        ".gitignore": "/build/\n/site/\n",
    }


def _words_of(shelf: Loaded) -> Names:
    """The program's lists of words and no entry of it: what a new club begins with."""
    words = shelf.names.words.items()
    return Names({key: own if key[0] == "vocabulary" else {} for key, own in words})


def _in_course(file: str, text: str, course: str) -> str:
    """A set of the program's in the club's pool where its lengths are the same number."""
    if file.startswith("plans/sets/") and course.startswith("25"):
        return re.sub(r"(?m)^course: 25m$", f"course: {course}", text)
    return text


def _filled(name: str, values: Mapping[str, str]) -> str:
    text = (STARTERS / "club" / name).read_text("utf-8")
    return Template(text).safe_substitute(values)


def _title(id: str) -> str:
    return id.replace("-", " ").capitalize()


def _club(club: NewClub, today: date) -> str:
    site = {"address": club.address, "repository": club.repository}
    said = [f"  {name}: {json.dumps(value)}\n" for name, value in site.items() if value]
    lines = [f"form: {FORM}\ntitle: {json.dumps(club.name, ensure_ascii=False)}\n"]
    lines += ["site:\n", *said] if said else []
    lines.append("pools:\n")
    for pool in club.pools:
        depth = f"{{from: {pool.least_m}, to: {pool.most_m}}}"
        lines.append(
            f"  {pool.id}:\n    title: {_title(pool.id)}\n    course: {pool.course}\n"
            f"    lanes: {pool.lanes}\n    depth_m: {depth}\n    flags: true\n"
        )
    lines.append("squads:\n")
    for squad in club.squads:
        own = f"level: {squad.level}, sessions_a_week: {squad.sessions}"
        lines.append(f"  {squad.id}: {{title: {_title(squad.id)}, {own}}}\n")
    lines.append("lane_groups:\n")
    for squad in club.squads:
        lines.append(
            f"  {squad.id}-1:\n    title: {_title(squad.id)}, all lanes\n    squad: {squad.id}\n"
            f"    lanes: {squad.lanes}\n    heads: {squad.heads}\n    gap: 0:10\n"
        )
        if squad.time:
            course = club.pools[0].course
            test = f"benchmark: {_TEST}, time: {squad.time}, course: {course}, on: {today}"
            lines.append(f"    tests:\n      - {{{test}}}\n")
    owned = "".join(f"  {id}: {count}\n" for id, count in club.gear.items())
    lines.append(f"gear_owned:\n{owned}" if owned else "gear_owned: {}\n")
    return "".join(lines)
