"""What commands share: exit codes, the root folder, loading and checking."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.findings import Finding, worst_first
from almanac.kinds import TOP_FOLDERS
from almanac.model.load import Loaded, load

FINE, ERRORS, WRONG_USAGE, FAULT = 0, 1, 2, 3


class UsageError(Exception):
    """The user asked for something that is not there; the message says what to do instead."""


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


def root_of(given: Path) -> Path:
    """The folder that holds drills/ and plans/. Raises UsageError where it does not."""
    if not given.is_dir():
        raise UsageError(f"there is no folder {given}")
    if not any((given / name).is_dir() for name in TOP_FOLDERS):
        named = " nor ".join(f"{name}/" for name in TOP_FOLDERS)
        raise UsageError(
            f"{given.resolve()} holds neither {named}; go to the repository, or name it with --root"
        )
    return given


def load_and_check(root: Path) -> CheckedCatalogue:
    """Load and check everything below ``root``, findings worst first."""
    loaded = load(root_of(root))
    return checked(loaded)


def checked(loaded: Loaded) -> CheckedCatalogue:
    """Check what has been loaded."""
    analysis = Analysis(loaded.catalogue, date.today()) if loaded.catalogue else None
    findings = [*loaded.findings, *(check(analysis) if analysis else ())]
    return CheckedCatalogue(loaded, analysis, worst_first(findings))
