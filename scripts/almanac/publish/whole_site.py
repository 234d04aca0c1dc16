"""A site rendered whole: each file goes from MkDocs through the last touches into its place."""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from pathlib import Path
from urllib.parse import urlsplit

from almanac.progress import Progress, unseen
from almanac.publish.links import LinkCheck
from almanac.publish.offline import Fingerprint, KeptFiles
from almanac.publish.postprocess import demand_links, is_asked_for, own_files
from almanac.publish.render import render
from almanac.site.folder import Folder
from almanac.site.settings import SiteSettings


def write_site(
    work: Path,
    pages: Path,
    site: Path,
    settings: SiteSettings,
    worker: str,
    told: Progress = unseen,
) -> None:
    """Render the Markdown below ``pages`` into ``site``, and nothing else there.

    ``worker`` is the text of the offline worker, bundled. Raises SiteError where MkDocs fails, or a
    page leads to what is not there.
    """
    folder, kept = Folder(site), KeptFiles()
    links = LinkCheck(urlsplit(settings.address).path or "/")

    def take(file: str, content: bytes) -> None:
        if file.endswith(".html"):
            links.add(file, content.decode())
            told("rendering pages", len(links))
        if is_asked_for(file):
            kept.add(file, content)
            folder.put(file, content)

    def taken() -> tuple[AbstractSet[str], LinkCheck, dict[str, Fingerprint]]:
        return folder.files, links, kept.pages

    def learn(theirs: tuple[AbstractSet[str], LinkCheck, dict[str, Fingerprint]]) -> None:
        files, their_links, their_pages = theirs
        folder.take(files)
        links.take(their_links)
        kept.take(their_pages)

    render(work, pages, take, settings, taken=taken, learn=learn)
    for file, text in own_files(settings):
        take(file, text.encode())
    demand_links(links, folder.files)
    for file, content in kept.told(worker, lambda file: (site / file).read_bytes()):
        folder.put(file, content)
    folder.drop_others()
