"""Starters: for each kind an entry of the right shape, with a comment where a coach needs one. What
is to be written by a coach, and signed by whoever has read it through, a check asks for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from datetime import date, timedelta
from functools import cache
from string import Template
from types import MappingProxyType
from typing import Any

import yaml

from almanac.kinds import IN_CLUB, KIND, KINDS
from almanac.resources import STARTERS
from almanac.source.names import Names
from almanac.source.reader import DataPath, read
from almanac.units import ON_LAND

WITH_STARTER = tuple(sorted(kind.key for kind in KINDS if kind.has_starter))
_NAMED = (*KIND, *IN_CLUB)  # what a starter can name by ``$kind``
# The words that starters use, each with its vocabulary: the word of that name where the club has
# it, or the one that stands for it, else the first, for some the one in the middle or the last.
_WORDS = {
    "goal": ("goals", "kick-technique"),
    "level": ("levels", "building"),
    "first_level": ("levels", "foundation"),
    "easy": ("efforts", "easy"),
    "strong": ("efforts", "strong"),
    "arms": ("arms", "at-sides"),
    "streamline": ("arms", "streamline"),
    "viewpoint": ("viewpoints", "side-deck"),
    "acts_on": ("acts-on", "feet"),
    "effect": ("effects", "supports"),
    "test_use": ("test-uses", "pace"),
    "first_part": ("practice-parts", "warm-up"),
    "main_part": ("practice-parts", "main"),
    "last_part": ("practice-parts", "cool-down"),
    "stroke": ("strokes", "backstroke"),
    "hazard": ("hazards", "head-into-wall"),
    "land_hazard": ("hazards", "slip-on-deck"),
    "land_viewpoint": ("viewpoints", "on-land"),
    "role": ("roles", "head-coach"),
}
_MAY_STAY = "# may stay"  # on the line above a text
_FEWEST_WORDS = 3
_USUAL_ADULTS = "2"  # a lifeguard and a coach, where a club says no other
_MIDDLE, _LAST = {"strong"}, {"effect", "main_part", "last_part"}


class NothingToName(Exception):
    """The starter must name an entry of a kind of which there is none yet; the message says
    which.
    """


def starter(
    kind: str,
    id: str,
    names: Names,
    today: date,
    answers: Mapping[str, str],
    named: Mapping[str, str] = MappingProxyType({}),
) -> str:
    """The text of a new entry.

    ``answers`` are values of top-level fields, as YAML, that take the place of the starter's own;
    ``named`` are ids by kind that it is to name ("" where there is none), ``course``, ``level`` and
    ``adults``.
    Other words and ids in it are taken from the present catalogue. Raises NothingToName.
    """
    text = _template(kind, answers.get("mode") or named.get("course", ""))
    monday = today - timedelta(days=today.weekday())
    known = {name: next(iter(names.of("reference", name)), None) for name in _NAMED}
    known |= {name: own or None for name, own in named.items() if name in known}
    needed = {name for name in _NAMED if re.search(rf"(?m)^[^#\n]*\${name}\b", text)}
    missing = sorted(name for name in needed if known[name] is None)
    if missing:
        of = ""
        if named.get(missing[0]) == "":
            of = " on land" if missing[0] == "drill" else f" of the squad '{named['squad']}'"
        raise NothingToName(
            f"a {kind} names a {missing[0]}{of}, and there is none yet: add one first"
        )
    levels = names.of("vocabulary", "levels")
    values = {
        **{name: value or f"a-{name}" for name, value in known.items()},
        **{name: _word(names, name) for name in _WORDS},
        **({"level": named["level"]} if named.get("level") in levels else {}),
        "id": id,
        "course": named.get("course", "25m"),
        "adults": named.get("adults", _USUAL_ADULTS),
        "title": re.sub(r"-(?!(?<=\d-)\d)", " ", id).capitalize(),  # 2026-27 is a year's name
        "today": today.isoformat(),
        "next_year": today.replace(year=today.year + 1, day=min(today.day, 28)).isoformat(),
        "monday": monday.isoformat(),
    }
    filled = Template(text).substitute(values)
    for field, value in answers.items():
        line = f"{field}: {value}".replace("\\", r"\\")
        old = rf"(?m)^{re.escape(field)}:[^#\n]*?(?P<comment>\s*#[^\n]*)?$(?:\n +[^\n]*)*"
        filled = re.sub(old, rf"{line}\g<comment>", filled, count=1)
    return filled


def _template(kind: str, where: str) -> str:
    """The starter of a kind; for land it is another, which says the same sentences."""
    other = STARTERS / "on-land" / f"{kind}.yml"
    on_land = where == ON_LAND and other.is_file()
    return (other if on_land else STARTERS / f"{kind}.yml").read_text("utf-8")


def read_plainly(text: str) -> dict[str, Any]:
    """What a starter holds, by top-level field."""
    document, findings = read(text.encode(), "starter.yml")
    assert document is not None, findings
    return dict(document.data)


@cache
def sentences(kind: str) -> Mapping[DataPath, tuple[str, ...]]:
    """What a starter says in words of its own that nobody is to publish: by the names on the way to
    it, every text of three words or more, but for one below a line that says that it may stay.
    """
    text = (STARTERS / f"{kind}.yml").read_text("utf-8")
    lines, found = text.split("\n"), dict[DataPath, tuple[str, ...]]()
    root = yaml.compose(text, Loader=yaml.CBaseLoader)
    for path, node in _texts(root, ()) if root else ():
        above = lines[max(0, node.start_mark.line - 1)].strip()
        own = len(node.value.split()) >= _FEWEST_WORDS and "$" not in node.value
        if own and not above.startswith(_MAY_STAY):
            found[path] = (*found.get(path, ()), node.value)
    return found


def _texts(node: yaml.Node, path: DataPath) -> Iterator[tuple[DataPath, yaml.ScalarNode]]:
    if isinstance(node, yaml.ScalarNode):
        yield path, node
    elif isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield from _texts(value, (*path, key.value))
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _texts(item, path)


def _word(names: Names, name: str) -> str:
    """The word that a starter uses under a name, of those that the club has."""
    vocabulary, usual = _WORDS[name]
    words = list(names.of("vocabulary", vocabulary)) or [usual]
    own = usual if usual in words else names.by_name("vocabulary", vocabulary, usual)
    return own or words[len(words) // 2 if name in _MIDDLE else -1 if name in _LAST else 0]
