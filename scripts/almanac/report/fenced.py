"""Text of a proposal inside a comment on it: always a code span, in which a host makes no mention,
no link, no image and no markup of anything.
"""

from __future__ import annotations

import json
from itertools import groupby
from typing import Any
from urllib.parse import quote

from almanac.findings import Place

MOST = 160  # characters of a value that is told beside others
_LEAD = 40  # characters that stand before the first that differs


def fenced(value: Any, most: int = MOST) -> str:
    """A value as a code span on one line, cut where it is long.

    Escaping is not enough: hosts look for mentions, numbers of issues and addresses in the finished
    HTML, where an escaped character is itself again, and leave out code alone.
    """
    text = _one_line(value)
    if len(text) > most:
        text = f"{text[:most]}… ({len(text) - most:,} more characters)"
    if not text:
        return "*nothing*"
    longest = max((len(list(run)) for tick, run in groupby(text, "`".__eq__) if tick), default=0)
    fence = "`" * (longest + 1)
    # one space at each end is dropped again by the host, so that a text may begin with a tick
    return (
        f"{fence} {text} {fence}" if longest or text[0] == " " == text[-1] else fence + text + fence
    )


def difference(before: Any, after: Any, most: int = MOST) -> str:
    """Two values, each fenced, from a little before the first character that differs."""
    old, new = _one_line(before), _one_line(after)
    if old == new:  # 12 and "12", or other blanks
        old, new = (json.dumps(value, ensure_ascii=True) for value in (before, after))
    same = next(
        (at for at, (one, other) in enumerate(zip(old, new, strict=False)) if one != other),
        min(len(old), len(new)),
    )
    start = same - _LEAD if max(len(old), len(new)) > most and same > _LEAD else 0
    lead = "…" if start else ""
    return f"{fenced(lead + old[start:], most)} → {fenced(lead + new[start:], most)}"


def linked(words: str, place: Place, address: str) -> str:
    """Words, fenced, that lead to a place in a file below ``address``; only fenced where there is
    no address, or where the path could lead out of it.
    """
    span = fenced(words)
    if not address or {"", ".", ".."} & set(place.file.split("/")):
        return span
    line = f"#L{place.line}" if place.line else ""
    return f"[{span}]({address.rstrip('/')}/{quote(place.file, safe='/', errors='replace')}{line})"


def _one_line(value: Any) -> str:
    """A value as text on one line, with every character that no eye sees as its escape."""
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False, default=str)
    text = " ".join(text.split())
    return "".join(char if char.isprintable() else ascii(char)[1:-1] for char in text)
