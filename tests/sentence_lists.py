"""Sentences that ask for a danger and sentences that do not, for the tests of the wording rule."""

from __future__ import annotations

import re
from pathlib import Path

BATCHES = tuple(range(1, 12))
_FOLDER = Path(__file__).parent / "sentences"
_ESCAPED = re.compile(r"\\u([0-9a-f]{4})")


def sentences(kind: str, batch: int) -> list[str]:
    """The sentences of a batch, ``unsafe`` or ``harmless``; in a file ``\\u200b`` stands for a
    character that would hide there.
    """
    lines = (_FOLDER / f"{kind}-{batch}.txt").read_text("utf-8").splitlines()
    written = (line for line in lines if line and not line.startswith("#"))
    return [_ESCAPED.sub(lambda code: chr(int(code[1], 16)), line) for line in written]
