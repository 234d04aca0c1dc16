"""Three clubs begun with ``start`` by options: yards with a summer pool of 50 m, long course only,
and on land alone.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest
from shared import made_once

from almanac.commands.main import main

DAY = date(2027, 6, 1)  # the reviews of what comes along are older


@dataclass(frozen=True)
class OwnClub:
    """A club's folder with its site, its name, and the path of its address."""

    root: Path
    name: str
    path: str


YARDS = (
    "--name", "Yard Club", "--address", "https://host.example/almanac/", "--pool",
    "home 25yd 6 4-7ft", "--pool", "summer 50m 8 2",
    "--squad", "reds foundation 2 2 10 5:40 / 1 4 -", "--squad", "blues performing 5 4 16 3:30",
    "--gear", "kickboard=20 fins=12",
    "--welcome", "What we teach: here.", "--colour", "green",
)  # fmt: skip
LONG = (
    "--name", "SV Beispiel", "--address", "https://host.example/sv", "--pool",
    "Große Halle 50-m-Bahn 8 1,8-2,0",
    "--squad", "eins building 4 4 16 4:10,5", "--gear", "-",
)  # fmt: skip
LAND = (
    "--name", "Dry Club", "--address", "https://host.example/dry/", "--pool", "Hall land",
    "--squad", "juniors foundation 2 14", "--squad", "seniors performing 3 10", "--gear", "-",
)  # fmt: skip
CLUBS = {"yards": YARDS, "long-course": LONG, "land": LAND}


def own_club(factory: pytest.TempPathFactory, which: str) -> OwnClub:
    """A club with its site, made once a run."""
    options = CLUBS[which]

    def make(folder: Path) -> None:
        assert main(["start", str(folder / "own"), *options, "--today", DAY.isoformat()]) == 0
        assert main(["build", "--root", str(folder / "own"), "--today", DAY.isoformat()]) == 0

    root = made_once(factory, f"club-{which}", make) / "own"
    return OwnClub(
        root, options[1], options[3].removeprefix("https://host.example").rstrip("/") + "/"
    )
