"""Failures of words of which the schema itself has the few, told as findings: courses, days of the
week, sorts of weeks.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from almanac.findings import Finding
from almanac.source.days_said import weekday_said
from almanac.source.failure import Failure, quote, type_name
from almanac.source.meant.words import choice_meant
from almanac.source.said.units import unit_said
from almanac.source.suggest import fold, listed
from almanac.units import COURSES, OTHER_LENGTHS

_COURSE_SAID = {
    "25m": ("short course", "short", "scm", "sc"),
    "50m": ("long course", "long", "lcm", "lc", "olympic"),
    "25yd": ("yards", "short course yards", "scy"),
}
_COURSE = re.compile(r"([0-9]{2}) ?-?(m|y)[a-z]*(?:[- ](?:pool|bahn))?")


def choice(failure: Failure) -> Iterator[Finding]:
    """A word that is none of the few that there are."""
    choices = [str(own) for own in failure.wanted]
    strange = _strange_beside(failure, choices)
    if len(strange) > 1:
        if strange[0] == failure.value:  # told at the first of them
            yield _of_several(failure, strange, choices)
        return
    said = str(failure.value).lower()
    near = choice_meant(failure.value, choices) if isinstance(failure.value, str) else None
    near = next((own for own in choices if said in _COURSE_SAID.get(own, ())), near)
    so_long = [own for own in COURSES if re.fullmatch(rf"{re.escape(said)}[a-z]+", own)]
    near = near or (so_long[0] if len(so_long) == 1 else None)
    hint = f"did you mean '{near}'?" if near else f"write {listed(so_long or choices)}"
    before, mark, _ = said.partition("//")
    if mark and before.strip() in choices:
        hint = f"write {before.strip()}; a comment begins with '#' and stands behind a blank"
    elif sure := _surely(said, choices):
        hint = f"write {sure}"
    elif {*COURSES} <= {*choices} and re.search(r"\d", said) and not near and not so_long:
        hint += f"; {OTHER_LENGTHS}"
    yield failure.say(
        "unknown-word",
        f"{failure.name} must be one of {listed(choices)}, and is {type_name(failure.value)}",
        hint,
    )


def _surely(said: str, choices: Sequence[str]) -> str:
    """The one of them that a word is in another way of writing, or another language; "" for
    none.
    """
    length = _COURSE.fullmatch(said)
    course = f"{length[1]}{'m' if length[2] == 'm' else 'yd'}" if length else ""
    plain = {fold(own): own for own in choices}.get(fold(said.rstrip(" ,;.")), "")
    return next(
        (
            own
            for own in (course, weekday_said(said), plain, unit_said(said, choices))
            if own in choices
        ),
        "",
    )


def _strange_beside(failure: Failure, choices: Sequence[str]) -> list[object]:
    """The items of the list that a value stands in which are none of the choices."""
    if not failure.path or not isinstance(failure.path[-1], int):
        return []
    data: object = failure.document.data
    for step in failure.path[:-1]:
        data = data[step]  # type: ignore[index]
    return [own for own in data if own not in choices] if isinstance(data, list) else []


def _of_several(failure: Failure, strange: Sequence[object], choices: Sequence[str]) -> Finding:
    names = [quote(own) for own in strange]
    told = ", ".join(names[:-1]) + f" and {names[-1]}"
    meant = [_surely(str(own).lower(), choices) for own in strange]
    hint = f"write {listed(choices)}"
    if all(meant):
        hint = f"write {', '.join(dict.fromkeys(meant))}"
    return failure.say("unknown-word", f"{told} are none of {listed(choices)}", hint)
