"""Find what a command names: an entry of the catalogue by id, or a file outside it by path."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from almanac.checks.study import Study
from almanac.commands.shared import Checked, UsageError, checked, load_and_check
from almanac.findings import Finding
from almanac.model.load import with_file
from almanac.source.suggest import nearest

SUMMED = ("set",)


@dataclass(frozen=True)
class Named:
    """What a name led to: the kind and id, the study it stands in, and the findings on its file alone."""

    kind: str
    id: str
    study: Study | None
    findings: list[Finding]


def named(root: Path, name: str) -> Named:
    """Find ``name``. Raises UsageError, with the nearest id, where nothing is called so."""
    everything = load_and_check(root)
    path = Path(name)
    if path.suffix == ".yml" or "/" in name:
        return _outside(everything, path)
    for kind in SUMMED:
        moved = everything.loaded.names.moved.get((kind, name))
        known = everything.loaded.names.of("reference", kind)
        if moved or name in known:
            id = moved or name
            return Named(kind, id, everything.study, _on(everything.findings, known[id]))
    ids = [id for kind in SUMMED for id in everything.loaded.names.of("reference", kind)]
    near = nearest(name, ids)
    raise UsageError(f"there is no set '{name}'" + (f"; the nearest: {near}" if near else ""))


def _outside(everything: Checked, path: Path) -> Named:
    if not path.is_file():
        raise UsageError(f"there is no file {path}")
    loaded = with_file(everything.loaded, path, "set")
    result = checked(loaded)
    return Named("set", path.stem, result.study, _on(result.findings, str(path)))


def _on(findings: list[Finding], file: str) -> list[Finding]:
    return [finding for finding in findings if finding.place.file == file]


