"""Work one thing out: send-offs from a test, a lane's room, critical speed, drag, load and more.

NAME is one of the calculators; without it they are listed, and without values it says what it asks
for. Times are m:ss or seconds; a list has blanks between.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Mapping, Sequence

from almanac.analysis.calculators import CALCULATORS
from almanac.analysis.calculators.calculator import (
    Calculator,
    ClubNumbers,
    Field,
    Given,
)
from almanac.commands.outcome import ERRORS, FINE, UsageError, root_of
from almanac.findings import worst_first
from almanac.model.load import load
from almanac.report import calculated
from almanac.report.findings_shown import as_text
from almanac.source.suggest import nearest

NAME = "calc"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", nargs="?", help="a calculator (default: list them)")
    parser.add_argument(
        "given",
        metavar="FIELD=VALUE",
        nargs="*",
        default=[],
        help='what it asks for, say time=1:20 or "laps=26.5 28.4 28.6"',
    )
    parser.add_argument("--json", action="store_true", help="print the answer as JSON")


def run(arguments: argparse.Namespace) -> int:
    if arguments.name is None:
        for calculator in CALCULATORS.values():
            print(f"{calculator.name:16}{calculator.asks}")
        return FINE
    calculator = _named(arguments.name)
    loaded = load(root_of(arguments.root))
    if loaded.catalogue is None:
        errors = [finding for finding in worst_first(loaded.findings) if finding.is_error]
        print(as_text(errors, len(errors)))
        return ERRORS
    club = ClubNumbers(loaded.catalogue)
    fields = calculator.fields(club)
    if not arguments.given:
        _tell(calculator, fields)
        return FINE
    values = _values(fields, arguments.given)
    found, says = calculated.answer(calculator, values, club)
    if arguments.json:
        print(json.dumps(calculated.as_json(calculator, values, found, says), ensure_ascii=False))
    elif found is None:
        print(*says)
    else:
        print(calculated.as_text(calculator, found, says))
    return ERRORS if found is None else FINE


def _named(name: str) -> Calculator:
    if name in CALCULATORS:
        return CALCULATORS[name]
    near = nearest(name, CALCULATORS)
    raise UsageError(
        f"there is no calculator '{name}'"
        + (f"; the nearest: {near}" if near else "; list them without NAME")
    )


def _tell(calculator: Calculator, fields: Sequence[Field]) -> None:
    """What a calculator asks for, a field a line."""
    print(calculator.asks)
    for field in fields:
        choices = f", {', '.join(dict(field.choices))}" if field.choices else ""
        default = f" (default: {field.default})" if field.default is not None else ""
        maybe = " (may be left out)" if field.optional else ""
        unit = f" in {field.unit}" if field.unit else ""
        print(f"  {field.name}=  {field.title}{unit}{choices}{default}{maybe}")


def _values(fields: Sequence[Field], given: Sequence[str]) -> Mapping[str, Given]:
    """What was given by field, with the defaults of those that were not."""
    known = {field.name: field for field in fields}
    typed: dict[str, str] = {}
    for words in given:
        name, equals, text = words.partition("=")
        if not equals or name not in known:
            near = nearest(name, known)
            raise UsageError(
                f"'{words}' gives no field" + (f"; the nearest: {near}=" if near else "")
            )
        typed[name] = text
    values: dict[str, Given] = {}
    for field in fields:
        value: Given | None = field.default
        if field.name in typed or value is None:
            try:
                value = calculated.read(field, typed.get(field.name, ""))
            except calculated.NotTaken as problem:
                raise UsageError(str(problem)) from None
        if value is not None:
            values[field.name] = value
    return values
