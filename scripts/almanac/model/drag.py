"""What a resisting piece of gear costs, as its file says it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class DragReading:
    """One row of a measured table: area in cm² and drag over speed squared in N s²/m²."""

    area_cm2: float
    k: float


@dataclass(frozen=True)
class Drag:
    """What a resisting piece costs: a table and the club's area, one k, a hanging mass, or a
    calibration.
    """

    table: tuple[DragReading, ...] = ()
    area_cm2: float | None = None
    k: float | None = None
    hanging_kg: float | None = None
    ratio: float | None = None
    calibrate: bool = False
    how: str = ""
    source: str = ""
