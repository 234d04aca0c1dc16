"""Sentences that ask for a danger and sentences that do not, for the tests of the wording rule."""

from __future__ import annotations

import re
from pathlib import Path

BATCHES = tuple(range(1, 31))
MENDED_BY = frozenset(range(1, 12))
"""The batches that the patterns were mended by: of these they know more than of any others."""
WRITERS = {
    **dict.fromkeys(range(1, 7), "first"),
    **dict.fromkeys(range(7, 10), "second"),
    **{batch: f"of batch {batch}" for batch in BATCHES if batch > 9},
    16: "of batch 14",
}
"""Whose the sentences of a batch are."""
THREEFOLD = 15  # the batch of what every version must know
_FOLDER = Path(__file__).parent / "sentences"
_ESCAPED = re.compile(r"\\u([0-9a-f]{4})")


def sentences(kind: str, batch: int) -> list[str]:
    """The sentences of a batch, ``unsafe`` or ``harmless``; in a file ``\\u200b`` stands for a
    character that would hide there.
    """
    lines = (_FOLDER / f"{kind}-{batch}.txt").read_text("utf-8").splitlines()
    written = (line for line in lines if line and not line.startswith("#"))
    return [_ESCAPED.sub(lambda code: chr(int(code[1], 16)), line) for line in written]
