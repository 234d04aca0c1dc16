"""Arguments that every command takes."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from almanac.commands.given import day_of
from almanac.commands.outcome import EPOCH


def shared_arguments(again: bool = False) -> argparse.ArgumentParser:
    """The arguments, as a parent of a command's own; ``again`` for what stands below a command,
    where they may follow too and have no default of their own.
    """
    shared = argparse.ArgumentParser(add_help=False)

    def default(value: object) -> dict[str, Any]:
        return {"default": argparse.SUPPRESS if again else value}

    shared.add_argument(
        "--root",
        type=Path,
        metavar="DIR",
        help="the folder that holds drills/ and plans/",
        **default(Path()),
    )
    shared.add_argument(
        "--today",
        type=day_of,
        metavar="DATE",
        help=f"the day that everything is seen from (default: that of {EPOCH}, or the clock's)",
        **default(None),
    )
    shared.add_argument(
        "--no-cache",
        action="store_true",
        help="neither read nor write what earlier runs have worked out",
        **default(False),
    )
    return shared
