"""What earlier runs found on a folder, by its bytes: a check is not made twice where nothing has
changed since.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

from almanac.cache import Cache
from almanac.findings import Findings
from almanac.source.lent import digest_of_lent
from almanac.source.snapshot import Snapshot, snapshot

_STORE = "findings"


class FoundBefore:
    """The findings on the folder ``root``, as they are on one day."""

    def __init__(self, root: Path, today: date) -> None:
        self._root = root
        self._cache = Cache(_STORE, (today.isoformat(), digest_of_lent(root)))

    def on(self, seen: Snapshot) -> Findings | None:
        """What was found on just these bytes; None where nobody has looked."""
        stored = self._cache.get(seen.digest)
        return None if stored is None else Findings.unpacked(stored)

    def keep(self, seen: Snapshot, findings: Findings) -> None:
        """Keep what was found on these bytes, unless something was saved meanwhile."""
        if snapshot(self._root).digest == seen.digest:
            self._cache.put(seen.digest, findings.packed())
            self._cache.trim()
