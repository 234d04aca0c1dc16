"""Every page and data file of the site, written as plain files for MkDocs to read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from almanac.model.entry import Entry
from almanac.progress import Told, unseen
from almanac.resources import SITE_SOURCE
from almanac.site.folder import Folder
from almanac.site.second_process import begun
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


def write_pages(
    pages: SitePages,
    folder: Path,
    scripts: Iterable[tuple[str, bytes]] = (),
    told: Told = unseen,
) -> None:
    """Everything that MkDocs reads, as plain files below ``folder``, and nothing else; ``scripts``
    are put beside it.
    """
    written = Folder(folder)
    for file, path in source_files():
        written.put(file, path.read_bytes())
    for file, content in scripts:
        written.put(file, content)
    told("working out the clocks of sets")
    pages.analysis.work_out_clocks()  # both processes ask for them
    sets = begun(lambda: _sets(pages))
    of = len(pages.analysis.catalogue.entries)
    for number, (file, text) in enumerate(pages.of_entries(_is_no_set)):
        told("working out the pages of entries", number, of)
        written.put(file, text.encode())
    for file, text in (*pages.others.items(), *pages.data()):
        told("working out lists and data")
        written.put(file, text.encode())
    told("working out the pages of sets")
    texts, codes = sets()
    for file, text in texts:
        written.put(file, text.encode())
    pages.codes.take(codes)
    written.drop_others()
    pages.codes.save()


def _sets(pages: SitePages) -> tuple[list[tuple[str, str]], dict[str, str]]:
    """The pages of sets, half of all the work, and the codes that stand on them."""
    return list(pages.of_entries(lambda entry: not _is_no_set(entry))), pages.codes.used


def _is_no_set(entry: Entry) -> bool:
    return entry.kind != "set"
