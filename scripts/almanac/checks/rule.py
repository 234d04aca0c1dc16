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
    level: str = ""
    """Whose level a refusal stands on; "" for the lowest, which accepts nothing."""


Check = Callable[[Analysis], Iterator[Problem]]


@dataclass(frozen=True)
class Rule:
    """A check with its code and how bad a breach of it is. A breach of one that ``is_refusal`` is
    an error that an entry may accept where the level of those who do it allows that.
    """

    code: str
    severity: Severity
    check: Check
    is_refusal: bool = False

    @property
    def explanation(self) -> str:
        """The rule in words: the docstring of its function."""
        return inspect.cleandoc(self.check.__doc__ or "")

    def breaches(self, analysis: Analysis) -> Iterator[Breach]:
        """Every breach of the rule in a catalogue."""
        for entry, path, message, hint, of_key, level in self.check(analysis):
            place = analysis.catalogue.place(entry, path, of_key)
            yield Breach(Finding(self.severity, self.code, place, message, hint), self, level)


class Breach(NamedTuple):
    """A finding with the rule that it breaks, and the level that it stands on."""

    finding: Finding
    rule: Rule
    level: str


def forbids(code: str) -> Callable[[Check], Rule]:
    """Make a function a rule whose breach is an error."""
    return lambda check: Rule(code, Severity.ERROR, check)


def refuses(code: str) -> Callable[[Check], Rule]:
    """Make a function a rule of safety: its breach is an error, which an entry may accept with a
    reason, a role and an end date where the ``level`` of the problem allows that.
    """
    return lambda check: Rule(code, Severity.ERROR, check, is_refusal=True)


def warns(code: str) -> Callable[[Check], Rule]:
    """Make a function a rule whose breach is a warning."""
    return lambda check: Rule(code, Severity.WARNING, check)
