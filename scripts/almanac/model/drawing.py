"""What an entry says of its figure. The schema says what each field holds."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class DrawingChoice:
    """What the body figure shows beyond position, arms, kick and gear."""

    setting: str | None = None
    posture: str | None = None
    wall: str | None = None
    face: str | None = None
    together: bool = False
    one_leg: bool = False
    moment: int | None = None
