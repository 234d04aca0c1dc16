"""What goes, and in which order, where a run is to end at a given time: house preference."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from typing import Any

Parts = Sequence[dict[str, Any]]


def cuts(parts: Parts) -> Iterator[dict[str, Any]]:
    """Steps to be taken until a run ends in time, in order: first a round of each part that has
    rounds to spare, the last part first, and again as long as there are some; then whole parts that
    may be skipped, the last first. The first and the last part stay, and of the others the longest,
    which the practice is for. Of what goes on side by side each has its step: together they save
    time.
    """
    spare = [
        [{"part": number, "do": "round"}] * _rounds_to_spare(part)
        for number, part in reversed([*enumerate(parts)])
    ]
    for steps in zip_longest(*spare):
        yield from (step for step in steps if step)
    inside = range(1, len(parts) - 1)
    longest = max(inside, key=lambda number: _lasts_s(parts[number]), default=0)
    for number in reversed(inside):
        if parts[number].get("skip") and number != longest:
            yield {"part": number, "do": "skip"}


def _rounds_to_spare(part: dict[str, Any]) -> int:
    """How many rounds every crew of a part may leave out."""
    each = (_rounds_of(crew["blocks"]) for crew in part["crews"].values())
    return int(min(each, default=0))


def _rounds_of(blocks: Sequence[dict[str, Any]]) -> int:
    for block in blocks:
        if "least" in block:
            return sum(int(own["times"]) for own in block["rounds"]) - int(block["least"])
    return 0


def _lasts_s(part: dict[str, Any]) -> float:
    """How long a part lasts for those who take longest, as far as it is planned."""
    ends = (crew.get("ends_s", 0.0) for crew in part["crews"].values())
    return float(max(ends, default=0.0)) - float(part["starts_s"])
