"""Find what a command names: an entry of the catalogue by id, or a file outside it by path."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import WHOLES
from almanac.commands.outcome import UsageError
from almanac.commands.shared import CheckedCatalogue, checked, load_and_check
from almanac.findings import Finding
from almanac.kinds import SUMMED
from almanac.model.load import kind_of_file, with_file
from almanac.source.suggest import nearest


@dataclass(frozen=True)
class FoundEntry:
    """What a name led to: the kind and id, the analysis it stands in, and the findings on its file
    alone.

    ``others`` are all findings and how many entries there are: what else may keep it from being
    worked out.
    """

    kind: str
    id: str
    analysis: Analysis | None
    findings: list[Finding]
    others: tuple[list[Finding], int]

    @property
    def computable(self) -> bool:
        """Whether its figures can be worked out."""
        if self.analysis is None:
            return False
        return self.id in WHOLES[self.kind].computable(self.analysis)

    @property
    def reasons(self) -> tuple[list[Finding], int]:
        """Why its figures cannot be worked out, and in how many entries: its own findings, or the
        errors elsewhere.
        """
        found, entries = self.others
        return (
            (self.findings, 1)
            if self.has_errors
            else ([finding for finding in found if finding.is_error], entries)
        )

    @property
    def has_errors(self) -> bool:
        """Whether one of its findings is an error."""
        return any(finding.is_error for finding in self.findings)


def find_entry(
    root: Path, name: str, today: date, kinds: Sequence[str] = SUMMED, then: Sequence[str] = ()
) -> FoundEntry:
    """Find ``name`` among entries of some kinds: an id, KIND/ID where two kinds share the id, or a
    path. Those of the kinds in ``then`` are looked at where the first hold none of that name.

    Raises UsageError, with the nearest id, where nothing is called so.
    """
    everything = load_and_check(root, today)
    names = everything.loaded.names
    path = Path(name)
    if path.suffix == ".yml":
        return _outside(everything, path, today)
    asked, _, id = name.rpartition("/")
    every = [kind for kind in (*kinds, *then) if asked in ("", kind)]
    present = {kind: names.moved.get((kind, id), id) for kind in every}
    known = [kind for kind in every if present[kind] in names.of("reference", kind)]
    first = [kind for kind in known if kind in kinds]
    found = {kind: present[kind] for kind in first or known}
    if len(found) > 1:
        raise UsageError(
            f"'{id}' is the name of a {' and a '.join(found)}: say "
            f"{' or '.join(f'{kind}/{id}' for kind in found)}"
        )
    for kind, own_id in found.items():
        own = _on(everything.findings, names.of("reference", kind)[own_id])
        return FoundEntry(
            kind, own_id, everything.analysis, own, (everything.findings, everything.loaded.count)
        )
    near = nearest(id, [known for kind in every for known in names.of("reference", kind)])
    *others, last = (*kinds, *then)
    raise UsageError(
        f"there is no {', '.join(others)} or {last} '{name}'"
        + (f"; the nearest: {near}" if near else "")
    )


def _outside(everything: CheckedCatalogue, path: Path, today: date) -> FoundEntry:
    if not path.is_file():
        raise UsageError(f"there is no file {path}")
    kind = kind_of_file(path)
    result = checked(with_file(everything.loaded, path, kind), today)
    return FoundEntry(
        kind,
        path.stem,
        result.analysis,
        _on(result.findings, str(path)),
        (result.findings, result.loaded.count),
    )


def _on(findings: list[Finding], file: str) -> list[Finding]:
    return [finding for finding in findings if finding.place.file == file]
