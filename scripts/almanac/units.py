"""Lengths, courses and times: how they are written, read and shown. Knows no entry."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction

from almanac.rounding import clock_time, show_change, show_number, show_share, show_time

__all__ = [
    "COURSES",
    "DAY_S",
    "METRES_PER_YARD",
    "OTHER_LENGTHS",
    "Course",
    "TimeError",
    "Unit",
    "clock_time",
    "parse_time",
    "parse_whole_time",
    "parse_written_time",
    "show_change",
    "show_distance",
    "show_number",
    "show_share",
    "show_time",
]

METRES_PER_YARD = 0.9144  # exact: international yard and pound agreement, 1959
DAY_S = 86_400  # every length of time in an entry is shorter
_MOST_SHOWN = 40
_LEAST_BARE_S = 10

_CLOCK = re.compile(
    r"(?:(?:(?P<h>\d{1,2}):)?(?P<m>\d{1,3}):)(?P<s>\d{1,3})(?P<fraction>\.\d{1,2})?", re.ASCII
)


class Unit(Enum):
    """A pool's unit of length; the value is how it is written."""

    METRE = "m"
    YARD = "yd"

    @property
    def metres(self) -> float:
        """Length of one unit in metres."""
        return 1.0 if self is Unit.METRE else METRES_PER_YARD

    @property
    def plural(self) -> str:
        """The unit in words."""
        return "metres" if self is Unit.METRE else "yards"


@dataclass(frozen=True, order=True)
class Course:
    """A pool's course: the length between its walls, in its own unit."""

    length: int
    unit: Unit

    def __hash__(self) -> int:
        return self.length  # clocks and paces are looked up by it all the time

    @classmethod
    def parse(cls, text: str) -> Course:
        """Read ``25yd``, ``25m``, ``50m`` or ``land``. Raises KeyError for anything else."""
        return LAND if text == ON_LAND else COURSES[text]

    @property
    def metres(self) -> float:
        """Length between the walls in metres (25yd is 22.86 m)."""
        return self.length * self.unit.metres

    def __str__(self) -> str:
        return ON_LAND if self == LAND else f"{self.length}{self.unit.value}"

    @property
    def shown(self) -> str:
        """As a reader sees it, ``25 m``; ``str`` gives it as it is written in an entry, ``25m``."""
        return ON_LAND if self == LAND else f"{self.length} {self.unit.value}"


ON_LAND = "land"
# On land there are no walls, and nothing is travelled: no length of the course is ever asked for.
LAND = Course(1, Unit.METRE)
COURSES: dict[str, Course] = {
    str(course): course
    for course in (Course(25, Unit.YARD), Course(25, Unit.METRE), Course(50, Unit.METRE))
}


OTHER_LENGTHS = (
    "for a pool of another length no time, rest or distance is worked out: leave it out; drills, "
    "faults, progressions and work on land hold there, sets and practices do not"
)
"""What becomes of a pool whose course is none of these."""


class TimeError(ValueError):
    """A text that is no time; ``hint`` says what to write instead."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.hint = hint


def parse_time(value: str | float) -> float:
    """Seconds of a time written as on a pace clock.

    Takes ``m:ss``, ``m:ss.t``, ``h:mm:ss`` or a number of seconds; returns seconds above zero and
    below a day. Raises TimeError with the reason and a hint.
    """
    seconds = _parse_clock(value) if isinstance(value, str) else float(value)
    if seconds <= 0:
        raise TimeError(
            f"{value!r} is no time: it must be more than zero",
            "write a time above 0:00, or leave it out",
        )
    if seconds >= DAY_S:
        raise TimeError(
            f"{value!r} is no time: it is a day or longer",
            "write a shorter one; a bare number is seconds",
        )
    return seconds


def parse_written_time(value: str | float) -> float:
    """Seconds of a time as an entry says it: what ``parse_time`` takes, but for a bare number below
    ten with a dot in it. Nobody times so little, and 4.05 is 4:05 without its colon. Raises
    TimeError.
    """
    seconds = parse_time(value)
    _refuse_minutes_with_a_dot(value)
    if isinstance(value, float) and seconds < _LEAST_BARE_S:
        raise TimeError(
            f"{value!r} is read as {value!r} seconds",
            f"write minutes and seconds as m:ss, or 0:{seconds:05.2f} for seconds",
        )
    return seconds


def parse_whole_time(value: str | float) -> float:
    """Seconds of a send-off, a rest or a pause, which are whole: nobody leaves on a tenth.

    Takes what ``parse_time`` takes. Raises TimeError where the seconds are not whole; of a number
    like 1.30 the hint tells both of what it may mean.
    """
    seconds = parse_time(value)
    _refuse_minutes_with_a_dot(value)
    if seconds == int(seconds):
        return seconds
    near = show_time(max(1.0, seconds))
    message = f"{value!r} is not in whole seconds, as a send-off or a rest is"
    minutes, _, rest = f"{seconds:.2f}".partition(".")
    if isinstance(value, str) or int(rest) > 59 or minutes == "0":
        raise TimeError(message, f"write {near}")
    meant, said = f"{minutes}:{rest}", show_time(seconds, tenths=True)
    raise TimeError(message, f"write {meant}; {said}, which it says, is {near} in whole seconds")


def _refuse_minutes_with_a_dot(value: str | float) -> None:
    """Raises TimeError for 3.00, which reads as three seconds and is three minutes."""
    if isinstance(value, float) and value < _LEAST_BARE_S and value == int(value):
        raise TimeError(
            f"{value!r} is read as {value:.0f} s",
            f"write {value:.0f}:00 for minutes, or 0:{value:02.0f} for seconds",
        )


def _parse_clock(text: str) -> float:
    match = _CLOCK.fullmatch(text)
    if match is None:
        short = text if len(text) <= _MOST_SHOWN else text[:_MOST_SHOWN] + "…"
        raise TimeError(
            f"{short!r} is no time",
            "write minutes and seconds as m:ss, say 1:15, or a number of seconds",
        )
    hours, minutes, whole = (int(match[name] or 0) for name in ("h", "m", "s"))
    seconds = 3600 * hours + 60 * minutes + whole + float(match["fraction"] or 0)
    if whole > 59:
        hint = f"write {show_time(seconds)}" + ("" if hours else f", or {whole} for seconds")
        raise TimeError(f"{text!r} is no time: seconds run from 00 to 59", hint)
    if len(match["s"]) != 2:
        is_start = whole and whole < 6 and not hours and not match["fraction"]
        tens = f" or {minutes}:{whole}0" if is_start else ""
        raise TimeError(
            f"{text!r} is no time: seconds have two digits", f"write {show_time(seconds)}{tens}"
        )
    if minutes > 59:
        raise TimeError(
            f"{text!r} is no time: minutes run from 00 to 59", f"write {show_time(seconds)}"
        )
    if (match["h"] and len(match["m"]) != 2) or len(match["m"]) > 2:
        raise TimeError(
            f"{text!r} is no time: minutes have two digits", f"write {show_time(seconds)}"
        )
    return seconds


def show_distance(distance: float | Fraction | Decimal, unit: Unit) -> str:
    """A distance with its unit: ``1,000 m``."""
    return f"{show_number(distance)} {unit.value}"
