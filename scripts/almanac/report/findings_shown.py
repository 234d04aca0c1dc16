"""Findings as they are printed: for a terminal, as JSON, as annotations of a host."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Sequence

from almanac.findings import Finding, Severity, counted

MOST_OF_A_FILE = 20  # findings that are printed of one file
_MOST, _MOST_FILES = 40, 10  # findings, and files, before what one check finds is told together
_OF_A_CHECK = {True: 2, False: 1}  # errors and warnings of one check that are then printed


def count_line(findings: Sequence[Finding], entries: int) -> str:
    """``2 errors, 0 warnings in 212 entries``."""
    errors = sum(finding.is_error for finding in findings)
    warnings = len(findings) - errors
    return (
        f"{counted(errors, 'error')}, {counted(warnings, 'warning')} in "
        f"{counted(entries, 'entry', 'entries')}"
    )


def as_text(findings: Sequence[Finding], entries: int, shows_all: bool = False) -> str:
    """Findings for a terminal: place, severity, code and message, the mend indented below; of one
    file at most ``MOST_OF_A_FILE``, unless all are asked for, and how many more it has. Where many
    files have many, what one check finds stands together, the first of it and how much more.
    """
    if not shows_all and _are_many(findings):
        return "\n".join([*_by_check(findings), count_line(findings, entries)])
    shown, rest = (findings, {}) if shows_all else _first_of_each_file(findings)
    lines = [line for finding in shown for line in _told(finding)]
    lines += [f"{file}: {_more(count)}" for file, count in rest.items()]
    return "\n".join([*lines, count_line(findings, entries)])


def _told(finding: Finding) -> list[str]:
    told = f"{finding.place}: {finding.severity.word} {finding.code}: {finding.message}"
    return [told, *(f"    {line}" for line in finding.hint.splitlines())]


def _are_many(findings: Sequence[Finding]) -> bool:
    return len(findings) > _MOST and len({own.place.file for own in findings}) > _MOST_FILES


def _by_check(findings: Sequence[Finding]) -> Iterator[str]:
    """What each check finds, errors before warnings, the check that finds most first."""
    same: dict[tuple[Severity, str], list[Finding]] = {}
    for finding in findings:
        same.setdefault((finding.severity, finding.code), []).append(finding)
    for own in sorted(same.values(), key=lambda own: (own[0].severity, -len(own))):
        most = _OF_A_CHECK[own[0].is_error]
        for finding in own[:most]:
            yield from _told(finding)
        if rest := own[most:]:
            files = counted(len({finding.place.file for finding in rest}), "file")
            yield f"    {counted(len(rest), 'more', 'more')} {own[0].code} like this in {files}"
    errors = sum(finding.is_error for finding in findings)
    first = "the errors first, a check at a time; " if errors else ""
    yield f"{first}almanac check --all shows every one"


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


FORMATS = {"text": as_text, "json": as_json, "github": as_annotations}
