"""What several rules look for together, found once for an analysis."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from weakref import WeakKeyDictionary

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem

Coded = tuple[str, Problem]  # the code of the rule that is broken, and the breach


def once(find: Callable[[Analysis], Iterator[Coded]]) -> Callable[[Analysis, str], list[Problem]]:
    """A function that gives the breaches of one code among all that ``find`` finds; each is told
    once.
    """
    kept: WeakKeyDictionary[Analysis, dict[str, list[Problem]]] = WeakKeyDictionary()

    def of(analysis: Analysis, code: str) -> list[Problem]:
        if analysis not in kept:
            found: dict[str, list[Problem]] = {}
            told = set[tuple[str, str, object, str]]()
            for name, problem in find(analysis):
                key = (name, problem.entry.file, problem.path, problem.message)
                if key not in told:
                    told.add(key)
                    found.setdefault(name, []).append(problem)
            kept[analysis] = found
        return kept[analysis].get(code, [])

    return of
