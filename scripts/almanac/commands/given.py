"""Values of arguments: lists, pairs of a name and a value, whole numbers, days."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import date

from almanac.commands.outcome import UsageError, in_reach

_SAY: Mapping[str, str] = {
    "gear": "fins=8",
    "lanes": "heron-1=2",
    "heads": "heron-1=9",
    "done": "set/kick-and-go=3",
    "taught": "kick-into-stroke=2",
    "keep": "set/kick-and-go=m",
    "change": "swap=m",
    "goals": "walls=2",
}


def in_club(example: str, squads: Iterable[str]) -> str:
    """An example of a command's arguments with a squad of the club's own, the first."""
    squad = next(iter(squads), "a-squad")
    return re.sub(r"(?<=--squad )\S+", lambda _: squad, example)


def listed(text: str | None) -> list[str]:
    """What stands between commas."""
    return [one.strip() for one in (text or "").split(",") if one.strip()]


def once(name: str, ids: Sequence[str]) -> None:
    """Raises UsageError for an id that stands twice in what an argument lists."""
    for place, id in enumerate(ids):
        if id in ids[:place]:
            raise UsageError(f"--{name}: '{id}' stands there twice")


def whole(text: str) -> int:
    """A whole number as an argument is given it."""
    try:
        return int(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"'{text}' is no whole number: write digits alone, as in 60"
        ) from None


def natural(text: str) -> int | None:
    """A whole number from 0 to 9999 in ASCII digits; None for any other text, however long."""
    return int(text) if re.fullmatch("[0-9]{1,4}", text) else None


def time_of_day(text: str) -> str:
    """A time of day as an argument is given it."""
    found = re.fullmatch(r"([01]\d|2[0-3]):[0-5]\d", text)
    if not found:
        raise argparse.ArgumentTypeError(f"'{text}' is no time of day: write HH:MM, say 17:30")
    return text


def pairs(texts: Iterable[str], name: str) -> dict[str, str]:
    """The values of an argument that is given as NAME=VALUE, several with commas. Raises
    UsageError, also for a name that is given twice.
    """
    each = [one.strip() for text in texts for one in text.split(",")]
    found = [(key, value) for key, _, value in (text.partition("=") for text in each)]
    if any(not key or not value for key, value in found):
        raise UsageError(f"--{name} is written NAME=VALUE, say --{name} {_SAY.get(name, 'x=1')}")
    once(name, [key for key, _ in found])
    return dict(found)


def numbers(texts: Iterable[str], name: str) -> dict[str, int]:
    """The same with whole numbers. Raises UsageError."""
    found = {}
    for key, value in pairs(texts, name).items():
        count = natural(value)
        if count is None:
            raise UsageError(f"--{name} {key}: '{value}' is no whole number from 0 to 9999")
        found[key] = count
    return found


def day_of(text: str) -> date:
    """A day as an argument is given it."""
    try:
        return in_reach(date.fromisoformat(text))
    except UsageError as problem:
        raise argparse.ArgumentTypeError(str(problem)) from None
    except ValueError:
        is_formed = re.fullmatch(r"\d{4}-\d\d-\d\d", text)
        mend = "the calendar has none such" if is_formed else "write YYYY-MM-DD, say 2027-04-12"
        raise argparse.ArgumentTypeError(f"'{text}' is no day: {mend}") from None
