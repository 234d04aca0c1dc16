"""The findings of a review: each in a line, and in brief what one check finds as one."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence

from almanac.findings import Finding, counted
from almanac.report.fenced import fenced, linked

_MOST = 5  # lines before what one check finds in several files is one


def in_full(findings: Sequence[Finding], address: str) -> Iterator[str]:
    """A line for each; what one check finds at one place for the same reason is one."""
    for first, *others in _alike(findings, lambda own: (own.code, own.place, own.hint)):
        yield _line(first, address, others, "there")


def in_brief(findings: Sequence[Finding], address: str) -> Iterator[str]:
    """A line for what one check finds in one file, or where these are many, in all of them."""
    by_file = _alike(findings, lambda own: (own.severity, own.code, own.place.file))
    if len(by_file) <= _MOST:
        for first, *others in by_file:
            yield _line(first, address, others, "in this file")
        return
    for first, *others in _alike(findings, lambda own: (own.severity, own.code)):
        files = len({own.place.file for own in (first, *others)})
        yield _line(first, address, others, f"in {counted(files, 'file')}")


def _alike(findings: Sequence[Finding], by: Callable[[Finding], Hashable]) -> list[list[Finding]]:
    same: dict[Hashable, list[Finding]] = {}
    for finding in findings:
        same.setdefault(by(finding), []).append(finding)
    return list(same.values())


def _line(first: Finding, address: str, others: Sequence[Finding], where: str) -> str:
    hint = f" ({fenced(first.hint, 400)})" if first.hint else ""
    more = f", and {counted(len(others), 'other')} {where} like it" if others else ""
    return (
        f"- **{first.severity.word}** {linked(str(first.place), first.place, address)}"
        f" {fenced(first.code)}: {fenced(first.message, 600)}{hint}{more}"
    )
