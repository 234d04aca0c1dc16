"""Findings: what a check has to say, and how it is printed. Knows no entry."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from typing import Any

MOST_OF_A_FILE = 20  # findings that are printed of one file


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


def count_line(findings: Sequence[Finding], entries: int) -> str:
    """``2 errors, 0 warnings in 212 entries``."""
    errors = sum(finding.is_error for finding in findings)
    warnings = len(findings) - errors
    return (
        f"{counted(errors, 'error')}, {counted(warnings, 'warning')} in "
        f"{counted(entries, 'entry', 'entries')}"
    )


def counted(count: int, one: str, many: str = "") -> str:
    """A number of things: ``1 entry``, ``2,000 entries``."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def as_text(findings: Sequence[Finding], entries: int, shows_all: bool = False) -> str:
    """Findings for a terminal: place, severity, code and message, the mend indented below; of one
    file at most ``MOST_OF_A_FILE``, unless all are asked for, and how many more it has.
    """
    shown, rest = (findings, {}) if shows_all else _first_of_each_file(findings)
    lines: list[str] = []
    for finding in shown:
        lines.append(f"{finding.place}: {finding.severity.word} {finding.code}: {finding.message}")
        lines.extend(f"    {line}" for line in finding.hint.splitlines())
    lines += [f"{file}: {_more(count)}" for file, count in rest.items()]
    return "\n".join([*lines, count_line(findings, entries)])


def _first_of_each_file(findings: Sequence[Finding]) -> tuple[list[Finding], dict[str, int]]:
    """The first findings of each file, in their order, and by file how many follow them."""
    shown: list[Finding] = []
    counts: Counter[str] = Counter()
    for finding in findings:
        counts[finding.place.file] += 1
        if counts[finding.place.file] <= MOST_OF_A_FILE:
            shown.append(finding)
    rest = {file: count - MOST_OF_A_FILE for file, count in counts.items()}
    return shown, {file: count for file, count in rest.items() if count > 0}


def _more(count: int) -> str:
    return f"{counted(count, 'more finding')}; almanac check --all shows every one"


def as_json(findings: Sequence[Finding], entries: int, shows_all: bool = True) -> str:
    """Findings as one JSON document, version 1: always every one."""
    errors = sum(finding.is_error for finding in findings)
    document = {
        "version": 1,
        "entries": entries,
        "errors": errors,
        "warnings": len(findings) - errors,
        "findings": [finding.as_json() for finding in findings],
    }
    return json.dumps(document, ensure_ascii=False, indent=1)


def as_annotations(findings: Sequence[Finding], entries: int, shows_all: bool = False) -> str:
    """Findings as workflow commands that GitHub shows on the changed lines, as many as ``as_text``
    has, then the count.
    """
    shown, rest = (findings, {}) if shows_all else _first_of_each_file(findings)
    lines = [_annotation(finding) for finding in shown]
    lines += [
        f"::notice file={_escaped(file, ',:')}::{_more(count)}" for file, count in rest.items()
    ]
    return "\n".join([*lines, count_line(findings, entries)])


def _annotation(finding: Finding) -> str:
    place = finding.place
    fields = [f"file={_escaped(place.file, ',:')}"]
    if place.line:
        fields += [f"line={place.line}", f"col={place.column}"]
    fields.append(f"title={finding.code}")
    body = finding.message + (f"\n{finding.hint}" if finding.hint else "")
    return f"::{finding.severity.word} {','.join(fields)}::{_escaped(body)}"


def _escaped(text: str, also: str = "") -> str:
    for char in "%\r\n" + also:
        text = text.replace(char, f"%{ord(char):02X}")
    return text


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


FORMATS = {"text": as_text, "json": as_json, "github": as_annotations}
