"""A catalogue that is asked for, and whose findings a check has told already, or will now."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.commands.found_before import FoundBefore
from almanac.commands.outcome import root_of
from almanac.commands.rubbish import rubbish_left
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.model.load import load
from almanac.source.document_store import DocumentStore
from almanac.source.snapshot import snapshot


@rubbish_left()
def load_as_checked(root: Path, today: date) -> CheckedCatalogue:
    """The same as ``load_and_check`` gives, sooner: files that have not changed are as they were
    read, and where none has, findings are as they were found.
    """
    root = root_of(root)
    seen, store, before = snapshot(root), DocumentStore(root), FoundBefore(root, today)
    found = before.on(seen)
    if found is None:
        everything = load_and_check(root, today, store, seen)
        before.keep(seen, everything)
    else:
        loaded = load(root, store, seen.contents)
        analysis = Analysis(loaded.catalogue, today) if loaded.catalogue else None
        everything = CheckedCatalogue(loaded, analysis, [*found.found])
    store.save()
    return everything
