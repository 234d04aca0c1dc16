"""Where the program finds what it brings along, in a checkout and installed: the one module that
knows.

A wheel holds in ``almanac/brought/``, in the same order, what a checkout has beside ``scripts/``.
"""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent
_BROUGHT = PACKAGE / "brought"
HOME = _BROUGHT if _BROUGHT.is_dir() else PACKAGE.parents[1]
"""Holds mkdocs.yml, site_src/ and the entries that the program comes with."""
SITE_SOURCE = HOME / "site_src"
SETTINGS = HOME / "mkdocs.yml"
SCHEMAS = PACKAGE / "schemas"
STARTERS = PACKAGE / "starters"
BUNDLES = PACKAGE / "bundles"
"""The scripts of the pages as they are published; a wheel brings them, a checkout makes them."""
