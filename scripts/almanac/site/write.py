"""Every page and data file of the site, written as plain files for MkDocs to read."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

from almanac.resources import SITE_SOURCE
from almanac.site.site_pages import SitePages

_COPIED = {"pages": "", "styles": "styles/", "images": "images/"}


def source_files() -> Iterator[tuple[str, Path]]:
    """Every file that stands on the site as it stands in the repository: its place below the
    pages' root, and its path.
    """
    for name, place in _COPIED.items():
        for path in sorted((SITE_SOURCE / name).rglob("*")):
            if path.is_file():
                yield place + path.relative_to(SITE_SOURCE / name).as_posix(), path


def write_pages(pages: SitePages, folder: Path) -> None:
    """Everything that MkDocs reads, as plain files below ``folder``."""
    for file, path in source_files():
        (folder / file).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, folder / file)
    for file, text in (*pages.of_entries(), *pages.others.items(), *pages.data()):
        write_text(folder / file, text)
    pages.codes.save()


def write_text(path: Path, text: str) -> None:
    """Write a file, and the folders above it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
