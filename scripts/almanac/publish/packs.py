"""Pages together, for a phone that fetches all of them: what they have alike is fetched once.

A host compresses each page by itself, and two fifths of a page are the head, the navigation and the
foot that it shares with its neighbours. A pack holds the lines of its pages, each line once, and
for each page which lines it is made of. The worker checks each page by its hash, and fetches a page
by itself where a pack will not do.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from itertools import groupby

FOLDER = "packs/"
RUNS = "data/v1/run/"
_PAGES = 26  # in one: more share more, and few enough to be fetched again where the signal went


def is_packed(file: str) -> bool:
    """Whether a file comes in a pack: the pages do, and the data that practices and sets are run
    by.
    """
    return file.endswith(".html") or file.startswith(RUNS)


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
    """A pack as JSON: every line once, and by page the runs of lines that it is made of, each as
    the number of its first line and how many there are.
    """
    number: dict[str, int] = {}
    runs = {file: _runs(text.split("\n"), number) for file, text in pages.items()}
    pack = {"lines": list(number), "files": runs}
    return json.dumps(pack, ensure_ascii=False, separators=(",", ":")) + "\n"


def _runs(lines: Iterable[str], number: dict[str, int]) -> list[int]:
    """The runs of a page; each line that is new gets the next ``number``."""
    found: list[int] = []
    start = after = 0
    for line in lines:
        own = number.setdefault(line, len(number))
        if own != after or after == start:
            found += [start, after - start] if after > start else []
            start = own
        after = own + 1
    return [*found, start, after - start]


def _place(file: str) -> tuple[str, str]:
    folder, _, name = file.rpartition("/")
    return folder, name
