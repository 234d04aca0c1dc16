"""A block begun as a copy of an earlier one: its weeks under new dates."""

from __future__ import annotations

from datetime import date, timedelta

from almanac.commands.outcome import UsageError
from almanac.model.block import Block
from almanac.model.load import Loaded
from almanac.source.edits.copied import copied
from almanac.source.edits.rewrite import Rewrites
from almanac.source.reader import DataPath
from almanac.source.suggest import absent

_OF_ITS_TIME = ("meet", "review", "accepts", "moved_to", "also_called", "asked_as")
"""What is said of the old block alone: a meet has its own days, and nobody has read the new one."""


def block_from(loaded: Loaded, id: str, starts: date | None) -> str:
    """The text of a block with the weeks of another, from a Monday on. Raises UsageError."""
    blocks = loaded.catalogue.blocks if loaded.catalogue else {}
    if id not in blocks:
        raise UsageError(absent("block", id, blocks))
    if starts is None:
        raise UsageError(f"say when it begins: --starts DATE; '{id}' began on {blocks[id].starts}")
    if starts.weekday():
        monday = starts - timedelta(days=starts.weekday())
        raise UsageError(f"{starts} is no Monday, and a block begins on one: say {monday}")
    document = loaded.documents["block", id]
    text = copied(document, _dates(blocks[id], starts), _OF_ITS_TIME)
    if text is None:
        raise UsageError(f"{document.file} is written so that its dates cannot be changed alone")
    return text


def _dates(block: Block, starts: date) -> Rewrites:
    """By its place each date of a block, as many days later as the block is."""
    there: dict[DataPath, date | None] = {
        ("starts",): block.starts,
        ("race_day",): block.race_day,
        ("taper", "from"): block.taper.first if block.taper else None,
        ("taper", "to"): block.taper.last if block.taper else None,
    }
    later = starts - block.starts
    return {(path, False): (on + later).isoformat() for path, on in there.items() if on}
