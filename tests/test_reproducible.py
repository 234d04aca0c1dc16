"""The same catalogue gives the same pages, to the byte: a phone that keeps the site fetches only
what has changed.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

from shared import CATALOGUE

from almanac.resources import HOME

_WRITE = """
import sys
from datetime import date
from pathlib import Path
from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.resources import SETTINGS
from almanac.site.settings import read_settings
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages
loaded = load(Path(sys.argv[2]))
analysis = Analysis(loaded.catalogue, date(2026, 11, 25))
write_pages(SitePages(analysis, loaded.names, read_settings(SETTINGS)), Path(sys.argv[1]))
"""


def digests(folder: Path) -> dict[str, str]:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in files
    }


def test_pages_do_not_hang_on_the_order_of_sets(tmp_path: Path) -> None:
    folders = [tmp_path / seed for seed in ("1", "2")]
    writers = [
        subprocess.Popen(
            [sys.executable, "-c", _WRITE, folder, CATALOGUE],
            cwd=HOME,
            env={**os.environ, "PYTHONHASHSEED": folder.name},
        )
        for folder in folders
    ]
    assert [writer.wait() for writer in writers] == [0, 0]
    first, second = map(digests, folders)
    assert len(first) > 150
    assert {
        name for name in first if first[name] != second.get(name)
    } == set() and first.keys() == second.keys()
