"""What is wrong with how a damaged entry was taken: an exception, a place that is none or
another's, silence.
"""

from __future__ import annotations

import json
import traceback
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from case import Case

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.findings import Finding, Place
from almanac.model.load import load
from almanac.report.findings_shown import FORMATS
from almanac.report.set_json import set_json
from almanac.report.set_text import set_text
from almanac.site.site_pages import SitePages
from almanac.source.document_store import DocumentStore
from almanac.source.edits.style import style_findings
from almanac.source.reader import Document, read
from almanac.source.tree import CONTROL
from almanac.source.validate import Shapes

DAY = date(2026, 11, 25)


class Judge:
    """Judges cases that damage entries of one root."""

    def __init__(self, root: Path) -> None:
        self._root, self._store = root, DocumentStore(root)
        self._shapes = Shapes(load(root, self._store).names)

    def faults(self, case: Case, is_checked: bool = False, is_shown: bool = False) -> list[str]:
        """What is wrong, each in a line, when it is read; where asked for, also when the whole
        catalogue is checked with it, and when its pages are written.
        """
        try:
            found = list(self._read(case))
            return [*found, *self._all(case, is_shown)] if is_checked else found
        except Exception:  # noqa: BLE001 (that is what is looked for)
            return [traceback.format_exc()]

    def _read(self, case: Case) -> Iterator[str]:
        document, findings = read(case.raw, case.sound.file)
        if document is None and not findings:
            yield "nothing is told of a file that is not read"
        if document is not None:
            said = self._shapes.check(document, case.sound.kind)
            findings = [*findings, *said.findings]
            if said.sound:
                findings += style_findings(document, case.sound.kind)
        yield from _places(findings, case.raw)
        yield from _told(case, document, findings)

    def _all(self, case: Case, is_shown: bool) -> Iterator[str]:
        loaded = load(self._root, self._store, {case.sound.file: case.raw})
        analysis = Analysis(loaded.catalogue, DAY) if loaded.catalogue else None
        findings = [*loaded.findings, *(check(analysis) if analysis else ())]
        if analysis is None and not any(finding.is_error for finding in findings):
            yield "nothing was checked, and no error says why"
        for form in FORMATS.values():
            form(findings, loaded.count)
        own = [finding for finding in findings if finding.place.file == case.sound.file]
        yield from _places(own, case.raw)
        id = case.sound.id
        if analysis and case.sound.kind == "set" and id in analysis.computable:
            json.dumps(set_json(analysis.summary(id)), allow_nan=False)
            set_text(analysis.catalogue, analysis.summary(id))
        if analysis and is_shown and not any(finding.is_error for finding in findings):
            pages = SitePages(analysis, loaded.names)
            every = [*pages.of_entries(lambda _: True), *pages.others.items(), *pages.data()]
            if any("Traceback" in text or not text for _, text in every):
                yield "a page says nothing, or a fault"


def _places(findings: Sequence[Finding], raw: bytes) -> Iterator[str]:
    """Findings whose place does not stand in the file, or whose words are no line of text."""
    lines = raw.decode("utf-8", "replace").removeprefix("\ufeff").split("\n")
    for finding in findings:
        if not _stands(finding.place, lines):
            yield f"{finding.place} does not stand in the file: {finding.code}"
        if not finding.message or CONTROL.search(f"{finding.message} {finding.hint}"):
            yield f"{finding.code} does not say what a terminal can show: {finding.message!r}"


def _stands(place: Place, lines: Sequence[str]) -> bool:
    if place.line == 0:
        return True
    behind = place.line == len(lines) + 1 and place.column == 1
    return behind or (
        place.line <= len(lines) and 1 <= place.column <= len(lines[place.line - 1]) + 1
    )


def _told(case: Case, document: Document | None, findings: Sequence[Finding]) -> Iterator[str]:
    """Whether what was done is told where it was done."""
    at = {(finding.code, finding.place.line, finding.place.column) for finding in findings}
    if case.told and case.told not in at:
        yield f"{case.told} is not told; told is {sorted(at)[:5]}"
    if case.path is not None and document is not None:
        # on the way to the value, at it, at its key, or below it
        ways = [case.path[:length] for length in range(len(case.path) + 1)]
        near = {document.place(way, of_key) for way in ways for of_key in (False, True)}
        node = document.node(case.path)
        start, end = ((mark.line + 1, mark.column + 1) for mark in (node.start_mark, node.end_mark))
        places = [finding.place for finding in findings]
        if not any(it in near or start <= (it.line, it.column) <= end for it in places):
            yield f"{case.path} is damaged and nothing there is told; told is {sorted(at)[:5]}"
