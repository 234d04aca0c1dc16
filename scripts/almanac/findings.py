"""Findings: what a check has to say of a place in a file. Knows no entry."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from typing import Any


class Severity(IntEnum):
    """How bad: an error stops the build, a warning does not. Worst first when sorted."""

    ERROR = 0
    WARNING = 1

    @property
    def word(self) -> str:
        """The severity in lower case."""
        return self.name.lower()


@dataclass(frozen=True)
class Place:
    """A place in a file. ``line`` and ``column`` count from 1; 0 means the file as a whole."""

    file: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


@dataclass(frozen=True)
class Finding:
    """One thing to say about one place: what is wrong and what to write instead."""

    severity: Severity
    code: str
    place: Place
    message: str
    hint: str = ""

    @property
    def is_error(self) -> bool:
        """Whether it stops the build."""
        return self.severity is Severity.ERROR

    def under(self, prefix: str) -> Finding:
        """The same finding with its file named below ``prefix``."""
        return replace(self, place=replace(self.place, file=f"{prefix}{self.place.file}"))

    def as_json(self) -> dict[str, Any]:
        """The finding as the JSON contract shows it."""
        return {
            "severity": self.severity.word,
            "code": self.code,
            "file": self.place.file,
            "line": self.place.line,
            "column": self.place.column,
            "message": self.message,
            "mend": self.hint,
        }


def error(code: str, place: Place, message: str, hint: str = "") -> Finding:
    """A finding that stops the build."""
    return Finding(Severity.ERROR, code, place, message, hint)


def warning(code: str, place: Place, message: str, hint: str = "") -> Finding:
    """A finding that does not."""
    return Finding(Severity.WARNING, code, place, message, hint)


def worst_first(findings: Iterable[Finding]) -> list[Finding]:
    """Without repeats: errors before warnings, then by file, line, column, code and message."""

    def order(finding: Finding) -> tuple[Any, ...]:
        place = finding.place
        return (
            finding.severity,
            place.file,
            place.line,
            place.column,
            finding.code,
            finding.message,
        )

    return sorted(dict.fromkeys(findings), key=order)


def counted(count: int, one: str, many: str = "") -> str:
    """A number of things: ``1 entry``, ``2,000 entries``."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


@dataclass(frozen=True)
class Findings:
    """All that a run has found, worst first, in how many entries."""

    found: Sequence[Finding]
    entries: int

    @property
    def has_errors(self) -> bool:
        """Whether one of them stops a build."""
        return any(finding.is_error for finding in self.found)

    def packed(self) -> bytes:
        """All of it as bytes, for ``unpacked``."""
        rows = [
            [found.severity, found.code, found.place.file, found.place.line, found.place.column,
             found.message, found.hint]
            for found in self.found
        ]  # fmt: skip
        return json.dumps([self.entries, rows]).encode()

    @classmethod
    def unpacked(cls, stored: bytes) -> Findings:
        """What ``packed`` has made into bytes."""
        entries, rows = json.loads(stored)
        found = [
            Finding(Severity(severity), code, Place(file, line, column), message, hint)
            for severity, code, file, line, column, message, hint in rows
        ]
        return cls(found, entries)
