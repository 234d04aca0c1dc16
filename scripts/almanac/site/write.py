"""Every page and data file of the site, written as plain files for MkDocs to read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from collections.abc import Set as AbstractSet
from pathlib import Path

from almanac.model.catalogue import Key
from almanac.progress import Progress, unseen
from almanac.resources import SITE_SOURCE
from almanac.second_process import begun, from_both_ends
from almanac.site.entry_parts import EntryParts
from almanac.site.folder import Folder
from almanac.site.hand_written import hand_written
from almanac.site.settings import DARK, LIGHT, SiteSettings
from almanac.site.site_pages import SitePages

_COPIED = {
    "styles": "styles/",
    "images": "images/",
    "schemas": "data/v1/schema/",
}
_TOKENS = "styles/tokens.css"


def source_files(settings: SiteSettings) -> Iterator[tuple[str, bytes]]:
    """Every file that stands on the site as the program has it, but for the club's own colours: its
    place below the pages' root, and what it holds.
    """
    for path, text in hand_written(settings.has_water):
        yield path.name, text.encode()
    for name, place in _COPIED.items():
        for path in sorted((SITE_SOURCE / name).rglob("*")):
            if path.is_file():
                file = place + path.relative_to(SITE_SOURCE / name).as_posix()
                content = path.read_bytes()
                yield file, coloured(content, settings) if file == _TOKENS else content


def coloured(tokens: bytes, settings: SiteSettings) -> bytes:
    """The sheet of colours with those of the club: the light one stands first, then the dark."""
    for usual, own in ((LIGHT, settings.colours.light), (DARK, settings.colours.dark)):
        tokens = tokens.replace(f"--action: {usual};".encode(), f"--action: {own};".encode())
    return tokens


def write_pages(
    pages: SitePages,
    folder: Path,
    scripts: Iterable[tuple[str, bytes]] = (),
    told: Progress = unseen,
) -> None:
    """Everything that MkDocs reads, as plain files below ``folder``, and nothing else; ``scripts``
    are put beside it.
    """
    written = Folder(folder)
    entries = pages.analysis.catalogue.entries
    squads = [(_SQUAD, id) for id in pages.analysis.catalogue.club.squads]
    wanted = [*sorted(entries, key=_drawn_first), *squads]
    here, there = from_both_ends(wanted)

    def share() -> tuple[Made, AbstractSet[str], dict[str, str]]:
        return _write_each(pages, there, written), written.files, pages.codes.used

    beside = begun(share)
    for file, content in (*source_files(pages.settings), *scripts):
        written.put(file, content)
    told("working out lists")
    for file, text in (*pages.lists.items(), *pages.data_of_club()):
        written.put(file, text.encode())
    mine = _write_each(pages, here, written, told)
    theirs, files, codes = beside()
    pages.parts.take({key: own for key, own in theirs.items() if own})
    written.take(files)
    pages.codes.take(codes)
    lost = [key for key in wanted if key not in mine and key not in theirs]
    _write_each(pages, enumerate(lost), written)
    told("working out data")
    beside_data = begun(lambda: (pages.spreadsheets(), pages.finder, pages.finder_texts))
    for file, text in pages.data_of_entries():
        written.put(file, text.encode())
    zipped, *found_by = beside_data()
    written.put(*zipped)
    for file, text in found_by:
        written.put(file, text.encode())
    written.drop_others()
    pages.codes.save()


_SQUAD = "squad"  # beside the kinds of entries
Made = dict[Key, EntryParts | None]


def _write_each(
    pages: SitePages, turns: Iterable[tuple[int, Key]], folder: Folder, told: Progress = unseen
) -> Made:
    """Write the pages of entries and the data of squads, each with its place among all. Returns
    what lists and data hold of the entries.
    """
    entries = pages.analysis.catalogue.entries
    made: Made = {}
    every = len(entries) + len(pages.analysis.catalogue.club.squads)
    for number, key in turns:
        told("working out the pages of entries", number, every)
        is_squad = key[0] == _SQUAD
        for file, text in pages.of_squad(key[1]) if is_squad else pages.of_entry(entries[key]):
            folder.put(file, text.encode())
        made[key] = None if is_squad else pages.parts.of(key)
    return made


# Lists and the pages of drills show pictures of all drills: one process draws these. The other
# begins with squads and blocks, of which each takes longest, so that both end at one time.
_LAST = ("practice", "set", "block")


def _drawn_first(key: Key) -> tuple[int, Key]:
    return (_LAST.index(key[0]) + 1 if key[0] in _LAST else 0), key
