"""What the program lends a club that has none of its own: lists of words, and limits."""

from __future__ import annotations

import os
import re
from functools import cache
from pathlib import Path

from almanac.cache import digest
from almanac.kinds import KIND
from almanac.resources import HOME

POLICY = KIND["policy"].files
_FOLDER = KIND["vocabulary"].files
_HAZARDS = f"{_FOLDER}/hazards.yml"
_NAME_HAZARDS = ("starts", "partners", "teams", "other-words", "terms")
"""Lists of use only beside the program's own hazards, which they name, and its own words."""


def lent(root: Path) -> list[str]:
    """The files that a folder takes from the program, by path from the root: none where the program
    has none either, or where anything of that name stands there.
    """
    names = sorted(path.name for path in (HOME / _FOLDER).glob("*.yml"))
    files = [*(f"{_FOLDER}/{name}" for name in names), POLICY]
    missing = [file for file in files if not os.path.lexists(root / file)]
    beside = [f"{_FOLDER}/{name}.yml" for name in _NAME_HAZARDS]
    return [
        file
        for file in missing
        if (HOME / file).is_file() and (_HAZARDS in missing or file not in beside)
    ]


@cache
def lent_words(list_of: str) -> frozenset[str]:
    """The words of a list of the program, for each of which one of a club's own list may stand."""
    file = HOME / _FOLDER / f"{list_of}.yml"
    text = file.read_text("utf-8") if file.is_file() else ""
    return frozenset(re.findall(r"(?m)^  ([a-z0-9-]+):", text))


def digest_of_lent(root: Path) -> str:
    """A digest of all that a folder takes from the program, and of the lists that its own words are
    then held against.
    """
    files = lent(root)
    theirs = sorted((HOME / _FOLDER).glob("*.yml")) if files else []
    held = {*theirs, *(HOME / file for file in files)}
    return digest(*files, b"", *(own.read_bytes() for own in sorted(held))).hex()
