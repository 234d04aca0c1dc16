"""The sides of a review. What is found in one, and its figures, are kept for the next review: most
compare with the same base.
"""

from __future__ import annotations

import json
import tempfile
import zlib
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.analysis.comparison import Side
from almanac.analysis.figure_moves import Table
from almanac.cache import Cache, digest
from almanac.commands.shared import checked
from almanac.findings import Finding, Findings, worst_first
from almanac.model.load import load
from almanac.source.document_store import DocumentStore
from almanac.source.git.revision_files import export
from almanac.source.lent import digest_of_lent
from almanac.source.snapshot import snapshot

_QUICK = 1  # zlib's level: a review waits for it


class Sides:
    """The states of a root that are compared, on one day."""

    def __init__(self, root: Path, today: date) -> None:
        self._root, self._today = root, today
        self._store = DocumentStore(root)  # what a change leaves alone is read once
        self._cache = Cache("review-sides", (today.isoformat(),))

    def at(self, commit: str, before: Side | None = None) -> Side:
        """The state in a commit; what is as on a side ``before`` it is not worked out again. Raises
        RevisionError.
        """
        with tempfile.TemporaryDirectory(prefix="almanac-") as folder:
            odd = export(self._root, commit, Path(folder))
            return self._side(Path(folder), before, odd)

    def here(self, before: Side | None = None) -> Side:
        """The files as they stand. What was read of them is kept for the next command too."""
        side = self._side(self._root, before)
        self._store.save()
        return side

    def keep(self) -> None:
        """Let what was kept longest go where the store is full."""
        self._cache.trim()

    def _side(self, folder: Path, before: Side | None, odd: Sequence[Finding] = ()) -> Side:
        seen = snapshot(folder)
        loaded = load(folder, self._store, seen.contents)
        key = digest(seen.digest, digest_of_lent(folder))
        analysis = Analysis(loaded.catalogue, self._today) if loaded.catalogue else None
        stored = self._cache.get(key)
        if stored is not None:
            found, figures = _unpacked(stored)
        else:
            result = checked(loaded, self._today, before.analysis if before else None)
            found, analysis, figures = result.findings, result.analysis, None
        side = Side(loaded.documents, analysis, worst_first([*found, *odd]), figures)
        if stored is None:
            side = side.figured(before)
            # Nothing was saved meanwhile, and nothing but these bytes was looked at.
            if not loaded.looked_back and snapshot(folder).digest == seen.digest:
                self._cache.put(key, _packed(found, side.figures))
        return side


def _packed(found: Sequence[Finding], figures: Table | None) -> bytes:
    table = [
        [*key, [[*name, *number] for name, number in own.items()]]
        for key, own in (figures or {}).items()
    ]
    said = Findings(found, 0).packed().decode()
    return zlib.compress(json.dumps([said, table]).encode(), _QUICK)


def _unpacked(stored: bytes) -> tuple[list[Finding], Table]:
    said, table = json.loads(zlib.decompress(stored))
    figures = {
        (kind, id): {(group, name): (value, unit) for group, name, value, unit in own}
        for kind, id, own in table
    }
    return list(Findings.unpacked(said.encode()).found), figures
