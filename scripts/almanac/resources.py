"""Where the program finds what it brings along: templates, styles, scripts and the settings of the
site.
"""

from __future__ import annotations

from pathlib import Path

HOME = Path(__file__).resolve().parents[2]  # the repository, which holds mkdocs.yml and site_src/
SITE_SOURCE = HOME / "site_src"
SETTINGS = HOME / "mkdocs.yml"
