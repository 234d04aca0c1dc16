"""Times that a number without a colon stands for: digits, a decimal point, a share of a day."""

from __future__ import annotations

import re

from almanac.units import DAY_S, show_time

_TYPED_AS_HOURS = 600  # s
_SPOKEN_OF = {"change", "pause", "pause_between"}  # in minutes, most often
_MOST_MINUTES = 10
_FEWEST_SECONDS = 2  # of a send-off or a rest


def with_or_without_colon(text: str) -> str:
    """Both times that three or four digits may be, ``130``: so many seconds, or minutes and seconds
    whose colon is left out; "" for none.
    """
    found = re.fullmatch(r"([1-9][0-9]?)([0-5][0-9])", text.strip())
    if not found:
        return ""
    minutes, seconds = divmod(int(found[0]), 60)
    return f"{minutes}:{seconds:02} for {found[0]} seconds, or {found[1]}:{found[2]}"


def few_seconds(name: str, said: str) -> str:
    """Both times that a small number may be, so many seconds or minutes; "" where seconds are
    likely enough under that field. A talk has a check of its own.
    """
    most = _MOST_MINUTES if name in _SPOKEN_OF else _FEWEST_SECONDS
    is_few = re.fullmatch("[1-9][0-9]?", said) and int(said) <= most and name not in {"gap", "talk"}
    return f"{said}:00 for minutes, or 0:{said:0>2} for seconds" if is_few else ""


def of_a_day(share: float) -> str:
    """A time that a spreadsheet has turned into a share of a day, 0.0729 for 1:45, as it was typed
    there; "" where it is none. What would be ten minutes or more was typed as hours and minutes.
    """
    seconds = share * DAY_S
    if not 0 < share < 1 or seconds < 1 or round(share, 2) == share:  # 0.45 is 0:45
        return ""
    typed = round(seconds, 1) if seconds < _TYPED_AS_HOURS else round(seconds / 60)
    return show_time(typed, tenths=typed != int(typed))


def halved_time(written: str) -> str:
    """Both times that a number with one decimal may be, 2.5: a part of a minute, or minutes and
    tens of seconds; "" for any other.
    """
    found = re.fullmatch(r"([1-9][0-9]?)\.([1-5])", written)
    minutes, tenths = (int(found[1]), int(found[2])) if found else (0, 0)
    both = f"{minutes}:{6 * tenths:02} for {written} minutes, or {minutes}:{tenths}0"
    return both if found else ""


def dotted_time(written: str) -> str:
    """A time that was written with a dot, as 1.30, with its colon; nothing where it is no such."""
    match = re.fullmatch(r"([0-9]{1,2})\.([0-5][0-9])", written)
    return f"{match[1]}:{match[2]}" if match and match[0] != "0.00" else ""
