"""What commands share: loading and checking."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.commands.outcome import ERRORS, FINE, root_of
from almanac.commands.rubbish import rubbish_left
from almanac.findings import Finding, worst_first
from almanac.model.load import Loaded, load
from almanac.progress import Progress, unseen
from almanac.source.document_store import DocumentStore
from almanac.source.harmless_texts import Told
from almanac.source.read_ahead import ReadAhead
from almanac.source.snapshot import Snapshot


@dataclass(frozen=True)
class CheckedCatalogue:
    """A catalogue loaded and checked. ``analysis`` is None where its foundations are broken."""

    loaded: Loaded
    analysis: Analysis | None
    findings: list[Finding]

    @property
    def exit_code(self) -> int:
        """1 where a finding is an error, else 0."""
        return ERRORS if any(finding.is_error for finding in self.findings) else FINE


@rubbish_left()
def load_and_check(
    root: Path,
    today: date,
    store: DocumentStore | None = None,
    snapshot: Snapshot | None = None,
    before: Analysis | None = None,
    told: Progress = unseen,
    ahead: Callable[[], ReadAhead] = ReadAhead,
) -> CheckedCatalogue:
    """Load and check everything below ``root``, findings worst first.

    ``store`` holds what was read before; ``snapshot`` gives the bytes, where they have been read;
    ``before`` is the analysis of an earlier state; ``told`` hears how far it is; ``ahead`` waits
    for what somebody has read of the snapshot meanwhile.
    """
    told("reading the entries")
    ahead = cache(ahead)
    loaded = load(root_of(root), store, snapshot.contents if snapshot else None, ahead)
    return checked(loaded, today, before, told, ahead().told)


def checked(
    loaded: Loaded,
    today: date,
    before: Analysis | None = None,
    told: Progress = unseen,
    read: Mapping[bytes, Told] | None = None,
) -> CheckedCatalogue:
    """Check what has been loaded; ``read`` is what the texts of files with these marks ask for."""
    catalogue, analysis = loaded.catalogue, None
    if catalogue is not None:
        analysis = before.continued(catalogue, today) if before else Analysis(catalogue, today)
        if read:
            analysis.readings.take_marked(read)
    findings = [*loaded.findings, *(check(analysis, told) if analysis else ())]
    return CheckedCatalogue(loaded, analysis, worst_first(findings))
