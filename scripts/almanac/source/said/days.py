"""Days that somebody meant, out of what stands where one belongs."""

from __future__ import annotations

import re
from calendar import monthrange
from datetime import date, timedelta

from almanac.source.days_said import month_said, weekday_said
from almanac.wording.numbers_said import number_said

_MONTH = r"[^\W\d_]{3,10}"
_DAY = re.compile(
    rf"([0-3]?[0-9])(?:st|nd|rd|th|er)?\.?([ ./-])([0-9]{{1,2}}|{_MONTH})\.?[ ./-]"
    r"((?:19|20)[0-9]{2})"
)
_FROM_YEAR = re.compile(r"((?:19|20)[0-9]{2})[ ./-]([0-9]{1,2})[ ./-]([0-9]{1,2})\.?", re.ASCII)
_MONTH_FIRST = re.compile(
    rf"({_MONTH})\.? ([0-3]?[0-9])(?:st|nd|rd|th|er)?,? ((?:19|20)[0-9]{{2}})"
)
_IN_ONE = re.compile(r"((?:19|20)[0-9]{2})([01][0-9])([0-3][0-9])", re.ASCII)
_DASHES = dict.fromkeys(map(ord, "‐‑‒–—−"), "-")
_AT_MIDNIGHT = re.compile(r"[T ]00:00(?::00(?:\.0+)?)?Z?$")  # as programs write a day
_WEEK = re.compile(r"((?:19|20)[0-9]{2})-?W([0-9]{1,2})", re.ASCII)  # of ISO 8601
_NOW = {"today", "now", "tomorrow", "yesterday", "tonight", "soon", "later", "?", "tbd"}
_MONTHS = 12
_LATER = re.compile(
    r"(?:in |after |every (?=.* ))?([0-9]{1,2}|[a-z -]+?) (day|week|month|year)s?(?: later)?"
)
_ONCE = {"a": 1, "an": 1, "next": 1, "every": 1, "each": 1}
_DAYS = {"day": 1, "week": 7}
_BY_NAME = {"yearly": "a year", "annually": "a year", "monthly": "a month", "weekly": "a week"}


def day_meant(text: str) -> str:
    """A day that is written in another order, as YYYY-MM-DD; "" where day and month could change
    places, there is no such day, or another day of the week stands before it.
    """
    first, _, rest = text.strip().partition(" ")
    if (weekday := weekday_said(first.rstrip(","))) and (day := _in_order(rest)):
        return day if f"{date.fromisoformat(day):%a}".lower() == weekday else ""
    return _in_order(text)  # Mar 3, 2026 begins with a month that is a Tuesday elsewhere


def _in_order(text: str) -> str:
    text = _AT_MIDNIGHT.sub("", text.translate(_DASHES))
    text = re.sub(r" (?:of|de) ", " ", text)  # 22 de mayo de 2027
    if found := _MONTH_FIRST.fullmatch(text.strip()):
        text = f"{found[2]} {found[1]} {found[3]}"
    if found := _IN_ONE.fullmatch(text.strip()):
        text = "-".join(found.groups())
    if in_order := _FROM_YEAR.fullmatch(text.strip()):
        try:
            return date(*map(int, in_order.groups())).isoformat()
        except ValueError:
            return ""
    found = _DAY.fullmatch(text.strip())
    if not found:
        return ""
    day, mark, said = int(found[1]), found[2], found[3]
    month = int(said) if said.isdigit() else month_said(said)
    if mark in "/-" and said.isdigit() and day <= _MONTHS and month != day:
        return ""
    try:
        return date(int(found[4]), month, day).isoformat()
    except ValueError:
        return ""


def days_meant(text: str) -> str:
    """Both days that a text may mean, in whose writing day and month can change places; "" for
    none.
    """
    found = re.fullmatch(
        rf"([0-9]{{1,2}})([ ./-])([0-9]{{1,2}}|{_MONTH})[ ./-]'?((?:19|20)?[0-9]{{2}})",
        text.strip(),
    )
    if not found:
        return _without_year(text) or _without_day(text) or _of_week(text)
    year = found[4][-4:] if len(found[4]) > 2 else f"20{found[4]}"
    said = [f"{found[1]} {found[3]} {year}", f"{found[3]} {found[1]} {year}"]
    is_in_order = found[2] == "." or not found[3].isdigit()
    said = said[:1] if is_in_order else said
    if len(found[4]) == len("26") and found[2] == "-":
        said.append(f"20{found[1]}-{found[3]}-{found[4]}")
    days = filter(None, map(day_meant, said))
    shown = "%-d %B" if len(found[4]) > 2 else "%-d %B %Y"
    told = " or ".join(
        f"{own} for {date.fromisoformat(own):{shown}}" for own in dict.fromkeys(days)
    )
    return f"write {told}" if told else ""


def later_meant(text: str, since: str) -> str:
    """The day so many days, weeks, months or years after another, as ``in a year``, as YYYY-MM-DD;
    "" where either is none.
    """
    said = text.strip().lower()
    found = _LATER.fullmatch(_BY_NAME.get(said, said))
    if not found:
        return ""
    many = int(found[1]) if found[1].isdigit() else _ONCE.get(found[1]) or number_said(found[1])
    try:
        start = date.fromisoformat(since)
        if found[2] in _DAYS:
            return (start + timedelta(days=many * _DAYS[found[2]])).isoformat() if many else ""
        months = start.month - 1 + many * (_MONTHS if found[2] == "year" else 1)
        year, month = start.year + months // _MONTHS, months % _MONTHS + 1
        last = monthrange(year, month)[1]
        return date(year, month, min(start.day, last)).isoformat() if many else ""
    except (ValueError, OverflowError):
        return ""


def no_day(text: str) -> str:
    """Why a text is no day that there is, as a mend; "" where that is not plain."""
    if text.strip().lower() in _NOW:
        return "write the day itself, as YYYY-MM-DD"
    found = _FROM_YEAR.fullmatch(text.strip())
    if found and int(found[2]) > _MONTHS and (day := _in_order("-".join(found.group(1, 3, 2)))):
        return f"the month stands last: write {day}"
    if not found or not 1 <= int(found[2]) <= _MONTHS:
        return ""
    year, month = int(found[1]), int(found[2])
    last = monthrange(year, month)[1]
    return f"write a day that there is: {date(year, month, 1):%B} has {last}"


def year_on(since: object) -> str:
    """What may be offered for the day of the next review, and never written by itself: a year after
    the last; "" where that is no day.
    """
    day = later_meant("a year", str(since))
    return f"a year on is {day}" if day else ""


def _without_day(text: str) -> str:
    """A month of a year, as a day of it is written; "" where it is none."""
    found = re.fullmatch(r"((?:19|20)[0-9]{2})-(0[1-9]|1[0-2])", text.strip(), re.ASCII)
    if found:
        return f"write it with its day, as {found[0]}-DD"
    named = re.fullmatch(rf"({_MONTH})\.? ((?:19|20)[0-9]{{2}})", text.strip())
    number = month_said(named[1]) if named else 0
    return f"write it with its day, as {named[2]}-{number:02}-DD" if named and number else ""


def _of_week(text: str) -> str:
    """A week of a year, of which a day is to be chosen; "" where it is none."""
    found = _WEEK.fullmatch(text.strip())
    try:
        monday = date.fromisocalendar(int(found[1]), int(found[2]), 1) if found else None
    except ValueError:
        return ""
    return f"write its day: that week's Monday is {monday}" if monday else ""


def _without_year(text: str) -> str:
    """A day that is written without its year, as it stands beside one; "" where it is none."""
    first, _, rest = text.strip().partition(" ")
    said = rest if weekday_said(first.rstrip(",")) and re.search("[0-9]", rest) else text.strip()
    if turned := re.fullmatch(rf"({_MONTH})\.? ([0-3]?[0-9])(?:st|nd|rd|th|er)?", said):
        said = f"{turned[2]} {turned[1]}"
    found = re.fullmatch(
        rf"([0-3]?[0-9])(?:st|nd|rd|th|er)?[. ]+(?:of )?([0-9]{{1,2}}|{_MONTH})\.?", said
    )
    month = found[2] if found else ""
    number = int(month) if month.isdigit() else month_said(month)
    if not found or not 1 <= number <= _MONTHS or not 1 <= int(found[1]) <= 31:
        return ""
    return f"write it with its year, as YYYY-{number:02}-{int(found[1]):02}"
