"""The settings of MkDocs for one build, and the day that it takes for today."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from pathlib import Path

from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from yaml import safe_dump

from almanac.resources import SETTINGS, SITE_SOURCE
from almanac.site.folder import naming
from almanac.site.settings import SiteSettings

HOOKS = (Path(__file__).with_name("keep_html.py"),)
_EPOCH = "SOURCE_DATE_EPOCH"  # MkDocs reads it too


def configuration(
    work: Path, pages: Path, site: Path, own: SiteSettings, hooks: tuple[Path, ...]
) -> MkDocsConfig:
    """The program's settings with those of the club's site and the folders of this build."""
    return loaded_settings(written_settings(work, pages, site, own, hooks))


def written_settings(
    work: Path, pages: Path, site: Path, own: SiteSettings, hooks: tuple[Path, ...]
) -> Path:
    """Write the settings of one build; where they stand."""
    file = work / "mkdocs.yml"
    values = {
        "INHERIT": str(SETTINGS),
        "site_name": own.name,
        "site_description": own.description,
        "site_url": own.address,
        "extra": {"colour": own.colours.light},
        "docs_dir": os.path.relpath(pages, work),
        "site_dir": os.path.relpath(site, work),
        "theme": {"custom_dir": str(SITE_SOURCE / "theme")},
        "hooks": [str(hook) for hook in hooks],
    }
    with naming(file):
        file.write_text(safe_dump(values, sort_keys=False, width=math.inf), "utf-8")
    return file


def loaded_settings(settings: Path) -> MkDocsConfig:
    """Settings as MkDocs reads them."""
    return load_config(str(settings), strict=True)


@contextmanager
def seen_on(day: date) -> Iterator[None]:
    """Have MkDocs take ``day`` for today: it stands in the map of the site."""
    before = os.environ.get(_EPOCH)
    os.environ[_EPOCH] = str(int(datetime.combine(day, time(), UTC).timestamp()))
    try:
        yield
    finally:
        if before is None:
            del os.environ[_EPOCH]
        else:
            os.environ[_EPOCH] = before
