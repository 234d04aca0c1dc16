"""The same catalogue gives the same pages, to the byte: a phone that keeps the site fetches only
what has changed.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

from shared import CATALOGUE, copied

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
        cwd=HOME, env={**inherited, "PYTHONHASHSEED": root.name, **environment}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return digests(root / "site")


def test_a_site_hangs_neither_on_the_order_of_sets_nor_on_what_was_kept(tmp_path: Path) -> None:
    """Built without a store, with an empty one, and with what the build before has left there."""
    store = {"XDG_CACHE_HOME": str(tmp_path / "store")}
    plain = built(tmp_path / "1", **{SWITCH: "1"})
    first, second = built(tmp_path / "2", **store), built(tmp_path / "3", **store)
    assert len(plain) > 150
    assert "<lastmod>2026-11-25</lastmod>" in (tmp_path / "1/site/sitemap.xml").read_text("utf-8")
    assert [path.name for path in (tmp_path / "store" / "deck-almanac").iterdir()]
    for other in (first, second):
        assert other.keys() == plain.keys()
        assert [name for name in plain if plain[name] != other[name]] == []
