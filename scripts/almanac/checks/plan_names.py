"""The rule that no plan of the year names a person."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.checks.logs import known_words, names_in
from almanac.checks.rule import Problem, warns
from almanac.model.catalogue import Catalogue
from almanac.source.reader import DataPath

_OTHER = {"asked_as", "also_called", "accepts", "review"}


@warns("name-in-plan")
def name_in_plan(analysis: Analysis) -> Iterator[Problem]:
    """Meets, seasons and timetables name no person: they are told as what is kept of a day is, by a
    capital inside a sentence that stands in no title, word list or name of the club, and by two
    capitals in a row.
    """
    catalogue = analysis.catalogue
    plans = [*catalogue.meets.values(), *catalogue.seasons.values(), *catalogue.timetables.values()]
    known = known_words(catalogue) if plans else set()
    for plan in plans:
        for path, text in _texts(catalogue, plan.key):
            found = next(names_in(text, known), None)
            if found:
                said = f"'{found}' reads like a name, an address or a number of a person"
                mend = "say it without: a swimmer, the squad, the coach on deck"
                yield Problem(plan, path, said, mend)


def _texts(catalogue: Catalogue, key: tuple[str, str]) -> Iterator[tuple[DataPath, str]]:
    """Every text of an entry of more than one word, with its path."""

    def of(value: Any, path: DataPath) -> Iterator[tuple[DataPath, str]]:
        if isinstance(value, dict):
            for name, inner in value.items():
                yield from of(inner, (*path, name))
        elif isinstance(value, list):
            for number, inner in enumerate(value):
                yield from of(inner, (*path, number))
        elif isinstance(value, str) and " " in value:
            yield path, value

    data = catalogue.documents[key].data
    yield from of({name: own for name, own in data.items() if name not in _OTHER}, ())
