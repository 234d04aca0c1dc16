"""Round numbers along an axis: three to five of them, from nothing to at least the most shown."""

from __future__ import annotations

import math

_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)
_MOST_STEPS = 4


def round_ticks(most: float) -> list[float]:
    """0 and the multiples of a round step up to the first that is not below ``most``: two to four
    steps, each 1, 2, 2.5 or 5 times a power of ten.
    """
    if most <= 0:
        return [0.0, 1.0]
    power = 10.0 ** math.floor(math.log10(most))
    sizes = (power * scale * step for scale in (0.1, 1.0) for step in _STEPS)
    step = next(step for step in sizes if most / step <= _MOST_STEPS * (1 + 1e-9))
    return [number * step for number in range(max(math.ceil(most / step - 1e-9), 2) + 1)]


def tick_words(value: float) -> str:
    """A tick as it is shown: a whole number where it is one."""
    return f"{value:,.0f}" if value == round(value) else f"{value:,.1f}"
