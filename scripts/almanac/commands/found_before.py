"""What earlier runs found on a folder, by its bytes: a check is not made twice where nothing has
changed since.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from almanac.cache import Cache
from almanac.findings import Findings
from almanac.source.lent import digest_of_lent
from almanac.source.snapshot import Snapshot, snapshot

if TYPE_CHECKING:  # which takes longer to import than what was found to read
    from almanac.commands.shared import CheckedCatalogue

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

    def keep(self, seen: Snapshot, everything: CheckedCatalogue) -> Findings:
        """What was found on these bytes, kept unless something was saved meanwhile or it hangs on
        more than these bytes.
        """
        found = Findings(everything.findings, everything.loaded.count)
        if not everything.loaded.looked_back and snapshot(self._root).digest == seen.digest:
            self._cache.put(seen.digest, found.packed())
            self._cache.trim()
        return found
