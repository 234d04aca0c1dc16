"""What ``compose block`` reads where it composes, judges or fills; all else is refused."""

from __future__ import annotations

import argparse

from almanac.commands.outcome import UsageError

_OF_BLOCK = ("squad", "starts", "weeks", "taper")
"""What a block that is there says itself."""
_UNREAD = {
    "judge": (*_OF_BLOCK, "meet", "race_day", "days", "slot", "like", "steps", "no_solver"),
    "fill": _OF_BLOCK,
}
_WHY = {
    "judge": "--judge sets a block beside wishes as it stands, with its own weeks, days and race",
    "fill": "--fill keeps to the weeks and the taper that the block has",
}


def refuse_together(arguments: argparse.Namespace) -> None:
    """Raises UsageError for an argument that would go unread beside another."""
    if arguments.slot and arguments.like:
        raise UsageError("--slot and --like both say when: leave out one")
    if arguments.judge and arguments.fill:
        raise UsageError("--judge changes nothing and --fill does: leave out one")
    if arguments.judge and arguments.save:
        raise UsageError("--judge sets a block beside wishes and writes nothing: leave out --save")
    if arguments.fill and arguments.save:
        raise UsageError("--fill writes into the block that is there: leave out --save")
    if arguments.dry_run and not arguments.fill:
        raise UsageError("--dry-run is of --fill; without --save nothing is written anyway")
    for mode, names in _UNREAD.items():
        unread = [name for name in names if _is_given(arguments, name)]
        if getattr(arguments, mode) and unread:
            options = ", ".join(f"--{name.replace('_', '-')}" for name in unread)
            raise UsageError(f"{_WHY[mode]}: leave out {options}")
    if arguments.taper and not (arguments.meet or arguments.race_day):
        raise UsageError("--taper is before a race: name --meet or --race-day")


def _is_given(arguments: argparse.Namespace, name: str) -> bool:
    """Whether an option stands there, be it as 0."""
    value = getattr(arguments, name)
    return value is not None and value is not False and value not in ("", [])
