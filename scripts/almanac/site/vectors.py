"""What the calculators come to, case by case, as a data file: the page's script is held to it, and
whoever writes the formulas anew may be.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from almanac.analysis.calculators import CALCULATORS
from almanac.analysis.calculators.calculator import (
    Calculator,
    ClubNumbers,
    Field,
    Given,
    Takes,
)
from almanac.model.catalogue import Catalogue
from almanac.report.calculated import answer, as_json
from almanac.site.calculators_page import club_numbers, words_of

FILE = "data/v1/vectors.json"
FORM = 1
EASIEST = "the first of the choices"  # a club's own words are not known here
# Where an example's neighbours do not lead: what is changed in it, None where it is left out.
_OF_TESTS: tuple[Mapping[str, Given | None], ...] = (
    {"distance-2": None, "time-2": None},
    {"distance-2": 100.0},
    {"rep": 2000, "time-2": 205.0, "effort": EASIEST, "from": EASIEST},
    {"distance": 25, "time": 60.0, "distance-2": 50, "time-2": 125.0, "effort": EASIEST},
)
_EDGES: Mapping[str, tuple[Mapping[str, Given | None], ...]] = {
    "send-offs": (*_OF_TESTS, {"rep": 75}),
    "kick-count": ({"beats": 250}, {"distance": 200, "time": 25.0}),
    "descend": _OF_TESTS,
    "lane": ({"swimmers": 1}, {"lengths": 2, "target": 30.0, "side": "front", "swimmers": 9}),
    "critical-speed": ({"time-2": 246.8}, {"time-2": 240.0}, {"distance-2": 200}),
    "fade": ({"laps": [30.0, 33.0, 32.0, 31.5, 31.0, 30.5]},),
    "added-drag": ({"resisted": 19.0}, {"resisted": 20.0}),
    "cord": ({"stretch-2": 2}, {"stretch-3": 6, "force-3": 90}, {"stretch-3": 6}),
    "week-load": (
        {f"{what}-{day}": None for what in ("minutes", "rating") for day in range(1, 8)},
        {f"{what}-{day}": 5 for what in ("minutes", "rating") for day in range(1, 8)},
        {f"minutes-{day}": 0 for day in range(2, 8)},
    ),
}
_FACTORS = (0.37, 0.61, 0.83, 0.97, 1.13, 1.31, 1.79, 2.57)


def vectors_file(catalogue: Catalogue) -> tuple[str, str]:
    """The file's path below the site's root and its text: the numbers that the club goes by, the
    words of each calculator, and cases of each with what comes out.
    """
    club = ClubNumbers(catalogue)
    value = {
        "form": FORM,
        "club": club_numbers(club),
        "words": {name: words_of(own, club) for name, own in CALCULATORS.items()},
        "cases": list(cases(club)),
    }
    return FILE, json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n"


def cases(club: ClubNumbers) -> Iterator[Mapping[str, Any]]:
    """Cases of every calculator: its example, and others made of that."""
    for calculator in CALCULATORS.values():
        for given in _givens(calculator, calculator.fields(club)):
            found, says = answer(calculator, given, club)
            yield as_json(calculator, given, found, says)


def _givens(calculator: Calculator, fields: tuple[Field, ...]) -> Iterator[dict[str, Given]]:
    """The example with its defaults; then with each of its fields made larger and smaller, each of
    its choices taken, and each that may be left out left out.
    """
    defaults = {field.name: field.default for field in fields if field.default is not None}
    example: dict[str, Given] = {**defaults, **calculator.example}
    yield example
    easiest = {field.name: field.choices[0][0] for field in fields if field.choices}
    for edge in _EDGES.get(calculator.name, ()):
        own = {name: easiest[name] if value is EASIEST else value for name, value in edge.items()
               if value is not EASIEST or name in easiest}  # fmt: skip
        yield {name: value for name, value in {**example, **own}.items() if value is not None}
    for field in fields:
        for value in _others(field, example.get(field.name)):
            yield {**example, field.name: value}
        if field.optional and field.name in example:
            yield {name: value for name, value in example.items() if name != field.name}


def _others(field: Field, value: Given | None) -> Iterator[Given]:
    if field.takes is Takes.CHOICE:
        yield from (word for word, _ in field.choices if word != value)
    elif isinstance(value, (int, float)):
        for factor in _FACTORS:
            yield _within(field, value * factor)
    elif value is not None and not isinstance(value, str):
        yield [_within(field, each * (0.9 + 0.07 * at)) for at, each in enumerate(value)]
        yield list(value[:-1])
        yield list(value[:-2])


def _within(field: Field, value: float) -> float:
    """A number as somebody might type it, as near as the field takes it."""
    near = round(value) if field.takes is Takes.WHOLE else round(value, 2)
    return min(max(near, field.least), field.most)
