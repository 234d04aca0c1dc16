"""Entries damaged by chance: their bytes, the structure of their data, single values. The same seed
and number give the same case.
"""

from __future__ import annotations

import random
from pathlib import Path

from bytes_damaged import in_a_known_place, in_bytes
from case import Case, Sound
from data_damaged import in_structure, in_values

from almanac.source.files import entry_files
from almanac.source.reader import read

SORTS = ("bytes", "structure", "values")


def sound_entries(root: Path) -> list[Sound]:
    """Every entry below a root."""
    found = []
    for entry in entry_files(root)[0]:
        text = (root / entry.file).read_text("utf-8")
        document, _ = read(text.encode(), entry.file)
        assert document is not None
        found.append(Sound(entry.kind, entry.id, entry.file, text, document.data))
    return found


def damaged(sort: str, seed: int, number: int, entries: list[Sound]) -> Case:
    """One case of a sort."""
    chance = random.Random(f"{sort} {seed} {number}")
    sound = chance.choice(entries)
    if sort == "bytes":
        return chance.choice((in_bytes, in_bytes, in_bytes, in_a_known_place))(sound, chance)
    return (in_structure if sort == "structure" else in_values)(sound, chance)
