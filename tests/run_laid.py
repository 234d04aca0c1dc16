"""Runs laid out on the clock from their data alone, as the page that runs them lays them: blocks
end to end.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

Told = Mapping[str, Any]


@dataclass
class Laid:
    """What one crew does in a part: when each rep goes and when all is over, in seconds.
    ``is_known`` is False once something has no length.
    """

    starts_s: float = 0.0
    clock_over_s: float = 0.0
    home_s: float = 0.0
    is_known: bool = True
    goes: list[tuple[float, int, Any, Any]] = field(
        default_factory=list
    )  # when, item, target, rest

    @property
    def over_s(self) -> float:
        """When it is over: the clock or the last touch, whichever is later."""
        return max(self.clock_over_s, self.home_s)


def of_rep(value: Any, number: int) -> Any:
    """The value of one rep of a block."""
    return value[number] if isinstance(value, list) else value


def unrolled(blocks: list[Told]) -> Iterator[Told]:
    """The blocks without rounds, one after the other, pauses between rounds as waits."""
    for block in blocks:
        if "rounds" not in block:
            yield block
            continue
        rounds = [own["blocks"] for own in block["rounds"] for _ in range(own["times"])]
        for number, inner in enumerate(rounds, 1):
            yield from unrolled(inner)
            if number < len(rounds) and "between" in block:
                yield {"wait": block["between"], "why": "pause"}


def laid(blocks: list[Told], starts_s: float = 0.0) -> Laid:
    """Blocks laid end to end from a moment on."""
    own, now = Laid(starts_s), starts_s
    for block in unrolled(blocks):
        if "wait" in block:
            now += block["wait"]
            continue
        for number in range(block["reps"]):
            every, home = (of_rep(block.get(key), number) for key in ("every", "home"))
            each = of_rep(block["target"], number), of_rep(block["rest"], number)
            own.goes.append((now, block["item"], *each))
            waves = block.get("waves", 1)
            own.home_s = 0.0
            if home is not None and every is not None:
                own.home_s = now + home + (waves - 1) / waves * every
            own.is_known = own.is_known and every is not None
            now += every or 0.0
    own.clock_over_s = now
    return own


def whole(run: Told) -> Iterator[tuple[Told, str, Laid]]:
    """Every part of a run with each crew in it, from the start of the slot on."""
    free: dict[str, float] = {}
    for stage in sorted({part["stage"] for part in run["parts"]}):
        begins = max(free.values(), default=0.0)
        free = {crew["key"]: begins for crew in run["crews"]}
        for part in (part for part in run["parts"] if part["stage"] == stage):
            before = sum(part.get(key, 0) for key in ("talk_s", "change_s", "gear_s"))
            starts = max(free[key] for key in part["crews"]) + before
            for key, own in part["crews"].items():
                done = laid(own["blocks"], starts)
                yield part, key, done
                free[key] = done.over_s
            over = max(free[key] for key in part["crews"])
            free |= dict.fromkeys(part["crews"], over)  # a list of parts goes on together
