"""SVG building blocks: numbers, capsules, elements, and the one table of paints."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from math import acos, atan2, cos, hypot, pi, sin
from typing import NamedTuple
from xml.sax.saxutils import escape, quoteattr

from almanac.drawing.paints import PAINTS

Spot = tuple[float, float]
"""A place in the figure's own units, y down."""


class Disc(NamedTuple):
    """A circle that a limb is as wide as at one joint."""

    x: float
    y: float
    r: float


def number(value: float) -> str:
    """A number with one decimal at most, as short as it gets."""
    return _TENTHS[round(value * 10)]


class _Tenths(dict[int, str]):
    """So many tenths as a number. A few thousand of them make up all pictures."""

    def __missing__(self, count: int) -> str:
        text = f"{count / 10:.1f}".removesuffix(".0")
        if len(self) < _TENTHS_KEPT:
            self[count] = text
        return text


_TENTHS, _TENTHS_KEPT = _Tenths(), 16384


def at(x: float, y: float) -> str:
    """A pair of coordinates for a path."""
    return f"{_TENTHS[round(x * 10)]} {_TENTHS[round(y * 10)]}"


def element(name: str, paint: str, **attributes: str | float) -> str:
    """An empty element of a class with its paint and the attributes (``_`` in a name stands for
    ``-``).
    """
    own = {key.replace("_", "-"): value for key, value in attributes.items()}
    pairs = "".join(
        f" {key}={quoteattr(value if isinstance(value, str) else number(value))}"
        for key, value in own.items()
    )
    return f"<{name}{_paint(paint, frozenset(own).intersection(PAINTS[paint]))}{pairs}/>"


@lru_cache(maxsize=512)
def _paint(paint: str, without: frozenset[str]) -> str:
    """The attributes of a paint, without those that an element sets itself."""
    pairs = {"class": f"figure-{paint}", **PAINTS[paint]}
    return "".join(
        f" {key}={quoteattr(value)}" for key, value in pairs.items() if key not in without
    )


def path(paint: str, d: str, **attributes: str | float) -> str:
    """A path of a class."""
    return element("path", paint, d=d, **attributes)


def polyline(spots: list[Spot]) -> str:
    """Path data of straight lines through the spots."""
    return "M" + "L".join(at(*spot) for spot in spots)


def capsule(one: Disc, other: Disc) -> str:
    """Path data of the outline around two discs, always the same way round, so that several join
    into one.
    """
    dx, dy = other.x - one.x, other.y - one.y
    apart = (dx * dx + dy * dy) ** 0.5
    if apart <= abs(one.r - other.r) + 1e-6:
        return circle(max(one, other, key=lambda disc: disc.r))
    heading, lean = atan2(dy, dx), acos((one.r - other.r) / apart)

    def rim(disc: Disc, angle: float) -> str:
        return at(disc.x + disc.r * cos(angle), disc.y + disc.r * sin(angle))

    def arc(disc: Disc, large: bool) -> str:
        return f"A{number(disc.r)} {number(disc.r)} 0 {int(large)} 1 "

    left, right = heading - lean, heading + lean
    return (
        f"M{rim(one, left)}L{rim(other, left)}{arc(other, lean > pi / 2)}{rim(other, right)}"
        f"L{rim(one, right)}{arc(one, lean < pi / 2)}{rim(one, left)}Z"
    )


def circle(disc: Disc) -> str:
    """Path data of a disc, drawn the same way round as a capsule."""
    r = number(disc.r)
    left, right = at(disc.x - disc.r, disc.y), at(disc.x + disc.r, disc.y)
    return f"M{left}A{r} {r} 0 1 1 {right}A{r} {r} 0 1 1 {left}Z"


def chain(discs: list[Disc]) -> str:
    """Path data of a limb through the discs, straight from one to the next."""
    return "".join(capsule(one, other) for one, other in pairwise(discs))


def tapered(discs: list[Disc], *, cut: bool = False) -> str:
    """Path data of one part of a limb, as wide as each disc says and smooth between, drawn as a
    capsule is.

    Its ends are as round as the first and the last disc, or straight where ``cut``.
    """
    first, last = discs[0], discs[-1]
    length = max(hypot(last.x - first.x, last.y - first.y), 1e-6)
    across = ((last.y - first.y) / length, (first.x - last.x) / length)
    one_side = [(disc.x + across[0] * disc.r, disc.y + across[1] * disc.r) for disc in discs]
    other_side = [
        (disc.x - across[0] * disc.r, disc.y - across[1] * disc.r) for disc in reversed(discs)
    ]
    far_end, near_end = (f"A{number(disc.r)} {number(disc.r)} 0 0 1 " for disc in (last, first))
    if cut:
        far_end = near_end = "L"
    there = f"M{at(*one_side[0])}{smooth(one_side)}{far_end}{at(*other_side[0])}"
    return f"{there}{smooth(other_side)}{near_end}{at(*one_side[0])}Z"


def smooth(spots: list[Spot]) -> str:
    """Path data of a smooth curve from the first spot, where the pen is, through all others
    (Catmull-Rom).
    """
    d = ""
    ends = zip([spots[0], *spots], spots, spots[1:], [*spots[2:], spots[-1]], strict=False)
    for before, one, two, after in ends:
        leave = at(one[0] + (two[0] - before[0]) / 6, one[1] + (two[1] - before[1]) / 6)
        arrive = at(two[0] - (after[0] - one[0]) / 6, two[1] - (after[1] - one[1]) / 6)
        d += f"C{leave} {arrive} {at(*two)}"
    return d


def words(name: str, text: str, identifier: str) -> str:
    """A title or a description with an id, its text escaped."""
    return f"<{name} id={quoteattr(identifier)}>{escape(text)}</{name}>"
