"""What several rules look for together, found once for an analysis."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem

Coded = tuple[str, Problem]  # the code of the rule that is broken, and the breach
Find = Callable[[Analysis], Iterator[Coded]]


def once(find: Find) -> Callable[[Analysis, str], list[Problem]]:
    """A function that gives the breaches of one code among all that ``find`` finds; each is told
    once.
    """

    def of(analysis: Analysis, code: str) -> list[Problem]:
        return analysis.once(find, partial(_by_code, find, analysis)).get(code, [])

    return of


def _by_code(find: Find, analysis: Analysis) -> dict[str, list[Problem]]:
    found: dict[str, dict[object, Problem]] = {}
    for code, problem in find(analysis):
        key = problem.entry.file, problem.path, problem.message
        found.setdefault(code, {}).setdefault(key, problem)
    return {code: [*own.values()] for code, own in found.items()}
