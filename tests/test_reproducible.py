"""The same catalogue gives the same pages, to the byte: a phone that keeps the site fetches only
what has changed.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest
from shared import CATALOGUE, built_once, copied, is_long

from almanac.cache import SWITCH
from almanac.resources import HOME

_BUILD = """
import sys
from datetime import date
from pathlib import Path
from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.publish.build import build_site
root = Path(sys.argv[1])
loaded = load(root)
build_site(Analysis(loaded.catalogue, date(2026, 11, 25)), loaded.names, root, root / "site")
"""


def digests(folder: Path) -> dict[str, str]:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in files
    }


def built(root: Path, **environment: str) -> dict[str, str]:
    """The site of the small catalogue as a process of its own builds it below ``root``."""
    inherited = {name: value for name, value in os.environ.items() if name != SWITCH}
    done = subprocess.run(
        [sys.executable, "-c", _BUILD, copied(CATALOGUE, root)],
        cwd=HOME, env={**inherited, "PYTHONHASHSEED": root.name, **environment},
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return digests(root / "site")


def test_a_site_hangs_neither_on_the_order_of_sets_nor_on_what_was_kept(
    tmp_path: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Built without a store, and by a worker of this run, whose store other tests have filled; by
    ``--long`` with an empty one and with what that build has left there, too.
    """
    store = {"XDG_CACHE_HOME": str(tmp_path / "store")}
    own = digests(built_once(tmp_path_factory, "small", CATALOGUE) / "site")
    assert len(own) > 150
    others = [built(tmp_path / "1", **{SWITCH: "1"})]
    assert "<lastmod>2026-11-25</lastmod>" in (tmp_path / "1/site/sitemap.xml").read_text("utf-8")
    if is_long():
        others += [built(tmp_path / folder, **store) for folder in ("2", "3")]
        assert [path.name for path in (tmp_path / "store/deck-almanac").iterdir()]
    for other in others:
        assert other.keys() == own.keys()
        assert [name for name in own if own[name] != other[name]] == []
