"""How far two colours are apart, as WCAG 2.2 measures it; and the nearest that is far enough."""

from __future__ import annotations

from collections.abc import Sequence

_STEPS = 100
_WEIGHTS = (0.2126, 0.7152, 0.0722)
Rgb = tuple[float, float, float]


def channels(colour: str) -> Rgb:
    """Red, green and blue of ``#rrggbb``, each from 0 to 1."""
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return red, green, blue


def luminance(colour: str) -> float:
    """Relative luminance, 0 for black and 1 for white. Source: WCAG 2.2, "relative luminance"."""
    linear = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in channels(colour)
    )
    return sum(weight * part for weight, part in zip(_WEIGHTS, linear, strict=True))


def contrast(one: str, other: str) -> float:
    """The contrast ratio, from 1 to 21. Source: WCAG 2.2, "contrast ratio"."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def hardest_ground(colour: str, grounds: Sequence[tuple[str, float]]) -> tuple[str, float]:
    """Of grounds with the contrast that each wants, the one that a colour does worst on."""
    return min(grounds, key=lambda ground: contrast(colour, ground[0]) / ground[1])


def is_far_enough(colour: str, grounds: Sequence[tuple[str, float]]) -> bool:
    """Whether a colour has the contrast that each ground wants."""
    ground, wanted = hardest_ground(colour, grounds)
    return contrast(colour, ground) >= wanted


def far_enough(colour: str, grounds: Sequence[tuple[str, float]]) -> str:
    """The same colour, as much nearer to black or white as it takes on grounds that are all light,
    or all dark.
    """
    end = 0.0 if luminance(grounds[0][0]) > 0.5 else 1.0
    for step in range(_STEPS + 1):
        share = step / _STEPS
        parts = (part + (end - part) * share for part in channels(colour))
        moved = "#" + "".join(f"{round(part * 255):02x}" for part in parts)
        if is_far_enough(moved, grounds):
            return moved
    raise AssertionError("black and white are far enough from every ground")


def is_amber(colour: str) -> bool:
    """Whether a colour lies in the sixth of the circle that danger has for its own."""
    red, green, blue = channels(colour)
    span = red - blue
    return span > 0.1 and 0.3 < (green - blue) / span < 1  # so that green lies between the two
