"""Answers about where a new club trains, made into values: course, depth, pools, what is done in an
emergency. Each raises ValueError with a sentence that says what to write.
"""

from __future__ import annotations

import re

from almanac.commands.start_answers import NONE, count, named
from almanac.model.new_club import EMERGENCY, NewPool
from almanac.source import schemas
from almanac.source.at_once_values import exact
from almanac.units import COURSES, ON_LAND, OTHER_LENGTHS

POOL = "Home 25m 6 1.0-1.9"
_METRES_PER_FOOT = 0.3048
_DEEPEST_M = 10.0
_LONGEST_LINE = 240
_DEPTH = r"(\d+(?:[.,]\d+)?)(?: ?- ?(\d+(?:[.,]\d+)?))? ?(m|ft)?"


def course(words: str) -> str:
    """A course, or ``land``."""
    found = re.fullmatch(r"(\d+) ?-? ?(m|yd|yards?|met(?:re|er)s?)?(-bahn)?\.?", words.lower())
    unit = "yd" if found and (found[2] or "").startswith("y") else "m"
    said = ON_LAND if words.lower() == ON_LAND else f"{found[1]}{unit}" if found else ""
    if said != ON_LAND and said not in COURSES:
        other = f"; {OTHER_LENGTHS}" if re.search(r"\d", words) else ""
        raise ValueError(
            f"'{words}' is none: write {', '.join(COURSES)} for a pool, or {ON_LAND}{other}"
        )
    return said


def depth(words: str) -> tuple[float, float]:
    """The depth of a pool in metres, from shallow to deep."""
    found = re.fullmatch(_DEPTH, words.strip())
    if not found:
        raise ValueError(f"'{words}' is no depth: write it like 1.0-1.9, or in feet like 4-7ft")
    unit = _METRES_PER_FOOT if found[3] == "ft" else 1
    ends = [float((found[at] or found[1]).replace(",", ".")) * unit for at in (1, 2)]
    least, most = sorted(round(end, 2) for end in ends)
    if not 0 < least <= most <= _DEEPEST_M:
        raise ValueError(f"'{words}' is no depth: above 0 and at most {_DEEPEST_M:g} m")
    return least, most


def pool(words: str) -> NewPool:
    """A pool in one line: ``Home 25m 6 1.0-1.9``; or ``Hall land``."""
    found = re.fullmatch(
        r"(.+?) (?:(land)|(\d+ ?-?(?:m|yd)\S*) (\d+) (\d\S*(?: ?- ?\d\S*)?(?: ?(?:m|ft))?))",
        words.strip(),
        re.ASCII,
    )
    if not found:
        is_known = any(known in words for known in COURSES)
        other = "" if is_known or not re.search(r"\d ?(m|yd)\b", words) else f"; {OTHER_LENGTHS}"
        raise ValueError(f"'{words}' is no pool: write it like '{POOL}', or 'Hall land'{other}")
    id, title = named(found[1])
    if found[2]:
        return NewPool(id, title, ON_LAND)
    try:
        own, (least, most) = course(found[3]), depth(found[5])
    except ValueError as problem:
        raise ValueError(f"'{words}' is no pool: {problem}") from None
    return NewPool(id, title, own, count(1, 20, "lanes")(found[4]), least, most)


def pools(words: str) -> list[NewPool]:
    """One or several pools in one line, parted by a / with a blank beside it:
    ``Home 25m 6 1.0-1.9 / Hall land``.
    """
    return [pool(own) for own in re.split(r"\s+/\s*|\s*/\s+", words.strip())]


def emergency(words: str) -> tuple[str, ...]:
    """What is done in an emergency, in the order of ``EMERGENCY``; none for not yet said."""
    if words in (NONE, ""):
        return ()
    said = tuple(part.strip() for part in re.split(r"\s+/\s+", words.strip()))
    if len(said) != len(EMERGENCY):
        raise ValueError(
            f"{len(said)} of six are said: write number / address / where the telephone is / the "
            "defibrillator / the first-aid box / the way in for help"
        )
    call = schemas.raw("club")["properties"]["pools"]["additionalProperties"]["properties"][
        "emergency"
    ]["properties"]["call"]
    if not exact(call["pattern"]).search(said[0]) or not 2 <= len(said[0]) <= call["maxLength"]:
        raise ValueError(f"'{said[0]}' is no number to call: write its digits, like 112")
    if unsaid := [own for own in said[1:] if not 2 <= len(own) <= _LONGEST_LINE]:
        raise ValueError(f"'{unsaid[0]}' says too little or too much: write it in a line")
    return said
