"""Pages together, for a phone that fetches all of them: what they have alike is fetched once.

A host compresses each page by itself, and two fifths of a page are the head, the navigation and the
foot that it shares with its neighbours. A pack holds the pieces of its pages, each piece once and
those that begin alike side by side, since a host's compression looks back no further than 32 kB;
and for each page which pieces it is made of. Lines make few pieces, and tags small ones that more
pages share: a pack is cut in whichever way comes out lighter. The worker checks each page by its
hash, and fetches a page by itself where a pack will not do.
"""

from __future__ import annotations

import json
import re
import zlib
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from itertools import count, groupby
from operator import sub

FOLDER = "packs/"
RUNS, OPENED = "data/v1/run/", "data/v1/compose/practices/"
_PICTURES = (("drills/", "faults/"), ".svg")
_PAGES = 200  # in one: more share more, and few enough to be fetched again where the signal went
_OPENS = re.compile(r"<(?<=[^\n]<)(?=[a-z])")  # a tag within a line
# Whether tags are cut at, and how many first letters pieces are set side by side by: measured.
_WAYS = ((True, 16), (False, 32))


def is_packed(file: str) -> bool:
    """Whether a file comes in a pack: the pages do, the pictures beside them, which show what the
    pages show, and the data that practices and sets are run by and practices are opened from.
    """
    folders, ending = _PICTURES
    is_picture = file.startswith(folders) and file.endswith(ending)
    return is_picture or file.endswith(".html") or file.startswith((RUNS, OPENED))


def packs_of(files: Iterable[str]) -> dict[str, list[str]]:
    """The packs of a site's pages, by address from the root: the pages of each folder in their
    order.
    """
    pages = sorted(filter(is_packed, files), key=_place)
    found = {}
    for folder, own in groupby(pages, key=lambda file: file.rpartition("/")[0]):
        inside = list(own)
        for start in range(0, len(inside), _PAGES):
            name = f"{folder.replace('/', '-') or 'top'}-{start // _PAGES}"
            found[f"{FOLDER}{name}.json"] = inside[start : start + _PAGES]
    return found


def packed(pages: Mapping[str, str]) -> str:
    """A pack as JSON: every piece once, and by page how far on it is from each of its pieces to the
    next: from before the first to begin with. Of the two ways to cut it the lighter one.
    """
    return min(
        (_cut(pages, *way) for way in _WAYS), key=lambda pack: len(zlib.compress(pack.encode()))
    )


def _cut(pages: Mapping[str, str], tags: bool, alike: int) -> str:
    """A pack cut into lines, or at tags too; what has as many first letters ``alike`` side by side,
    as it was first met.
    """
    known = defaultdict[str, int](count().__next__)  # each piece by when it was first met
    cut = {file: list(map(known.__getitem__, _pieces(own, tags))) for file, own in pages.items()}
    pieces = sorted(known, key=lambda piece: piece[:alike])
    place = [0] * len(pieces)
    for at, piece in enumerate(pieces):
        place[known[piece]] = at
    steps = {file: _steps(list(map(place.__getitem__, own))) for file, own in cut.items()}
    pack = {"pieces": pieces, "files": steps}
    return json.dumps(pack, ensure_ascii=False, separators=(",", ":")) + "\n"


def _pieces(text: str, tags: bool) -> list[str]:
    """A text, in which no zero stands, cut after each line, and before each tag that opens where it
    is cut at ``tags``. The last is always empty: packs that phones hold have it.
    """
    marked = (_OPENS.sub("\0<", text) if tags else text).replace("\n", "\n\0")
    return [*marked.removesuffix("\0").split("\0"), ""]


def _steps(numbers: Sequence[int]) -> list[int]:
    return list(map(sub, numbers, [-1, *numbers]))


def _place(file: str) -> tuple[str, str]:
    folder, _, name = file.rpartition("/")
    return folder, name
