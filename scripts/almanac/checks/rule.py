"""A rule: one function with one stable code, whose docstring is its published explanation."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from almanac.analysis.analysis import Analysis
from almanac.findings import Finding, Severity
from almanac.model.entry import Entry
from almanac.source.reader import DataPath


class Problem(NamedTuple):
    """What a rule has to say of one entry, and where in it."""

    entry: Entry
    path: DataPath
    message: str
    hint: str
    of_key: bool = False


Check = Callable[[Analysis], Iterator[Problem]]


@dataclass(frozen=True)
class Rule:
    """A check with its code and how bad a breach of it is."""

    code: str
    severity: Severity
    check: Check

    @property
    def explanation(self) -> str:
        """The rule in words: the docstring of its function."""
        return inspect.cleandoc(self.check.__doc__ or "")

    def findings(self, analysis: Analysis) -> Iterator[Finding]:
        """Every breach of the rule in a catalogue."""
        for entry, path, message, hint, of_key in self.check(analysis):
            place = analysis.catalogue.place(entry, path, of_key)
            yield Finding(self.severity, self.code, place, message, hint)


def forbids(code: str) -> Callable[[Check], Rule]:
    """Make a function a rule whose breach is an error."""
    return lambda check: Rule(code, Severity.ERROR, check)


def warns(code: str) -> Callable[[Check], Rule]:
    """Make a function a rule whose breach is a warning."""
    return lambda check: Rule(code, Severity.WARNING, check)
