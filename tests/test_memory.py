"""A catalogue that has been used is let go: ``serve`` reads a new one at every save."""

from __future__ import annotations

import gc
import weakref
from pathlib import Path

from plans_world import TODAY, club

from almanac.analysis.analysis import Analysis
from almanac.analysis.comparison import Side, review
from almanac.checks import check
from almanac.model.catalogue import Catalogue
from almanac.model.load import load
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages


def used(root: Path, out: Path) -> weakref.ref[Catalogue]:
    """A reference to a catalogue that was checked, reviewed and made into pages."""
    loaded = load(root)
    assert loaded.catalogue is not None
    analysis = Analysis(loaded.catalogue, TODAY)
    side = Side(loaded.documents, analysis, list(check(analysis)))
    assert review(side, side).comparable
    write_pages(SitePages(analysis, loaded.names), out)
    assert (out / "sets").is_dir()
    return weakref.ref(loaded.catalogue)


def test_nothing_keeps_a_catalogue_that_was_used(tmp_path: Path) -> None:
    catalogue = used(club(tmp_path / "root"), tmp_path / "pages")
    gc.collect()
    assert catalogue() is None
