"""Times and days that somebody meant, out of what stands where one belongs."""

from __future__ import annotations

import re
from calendar import monthrange
from datetime import date, timedelta

from almanac.source.meant import LIKE_DIGITS, bare, has_letters
from almanac.wording.numbers_said import number_said

_OF_DAY = re.compile(
    r"([0-9]{1,2})(?:[:.h]?([0-5][0-9]))? ?(?:(am|pm)|h|o'clock|uhr)?", re.IGNORECASE
)
_WEEKS = {"weekly": 1, "every week": 1, "fortnightly": 2, "every fortnight": 2, "monthly": 4,
          "every month": 4, "a month": 4, "once a month": 4, "once a week": 1,
          "quarterly": 13, "yearly": 52}  # fmt: skip
_UNITS_OF_TIME = r"(?:s|secs?|seconds?|\"|″|”|'')"
_SECONDS = re.compile(rf"([0-9]{{1,3}}) ?{_UNITS_OF_TIME}", re.IGNORECASE)
_MINUTES = re.compile(
    r"([0-9]{1,3}) ?(?:m|mins?|minutes?|['′’;,-])"
    rf"(?: ?(?:and ?)?([0-5]?[0-9]) ?{_UNITS_OF_TIME}?)?",
    re.IGNORECASE,
)
_DAY = re.compile(
    r"([0-3]?[0-9])(?:st|nd|rd|th)?\.?([ ./-])([0-9]{1,2}|[A-Za-z]{3,9})[ ./-]((?:19|20)[0-9]{2})",
    re.ASCII,
)
_FROM_YEAR = re.compile(r"((?:19|20)[0-9]{2})[ ./-]([0-9]{1,2})[ ./-]([0-9]{1,2})\.?", re.ASCII)
_WEEK = re.compile(r"((?:19|20)[0-9]{2})-?W([0-9]{1,2})", re.ASCII)  # of ISO 8601: its Monday
_NOW = {"today", "now", "tomorrow", "yesterday", "tonight", "soon", "later", "?", "tbd"}
_IN_ORDER = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_MONTHS = {month: number for number, month in enumerate(_IN_ORDER, start=1)}
_LATER = re.compile(
    r"(?:in |after |every (?=.* ))?([0-9]{1,2}|[a-z -]+?) (day|week|month|year)s?(?: later)?"
)
_ONCE = {"a": 1, "an": 1, "next": 1, "every": 1, "each": 1}
_DAYS = {"day": 1, "week": 7}
_BY_NAME = {"yearly": "a year", "annually": "a year", "monthly": "a month", "weekly": "a week"}
_BETWEEN = re.compile(
    r"([0-9]{1,3}|[0-9]{0,2}:[0-5][0-9]) ?(?:-|–|to) ?([0-9]{1,3}|[0-9]{0,2}:[0-5][0-9])"
    r" ?(s|secs?|seconds?)?"
)
_LEAST_OF_RANGE = 3  # 1-45 is a send-off that was written with a dash
_CLOCK = re.compile(r"[0-9]{1,2}(:[0-9]{2}){1,2}|[0-9]{1,4}")


def day_meant(text: str) -> str:
    """A day that is written in another order, as YYYY-MM-DD; "" where day and month could change
    places, or there is no such day.
    """
    if week := _WEEK.fullmatch(text.strip()):
        try:
            return date.fromisocalendar(int(week[1]), int(week[2]), 1).isoformat()
        except ValueError:
            return ""
    if in_order := _FROM_YEAR.fullmatch(text.strip()):
        try:
            return date(*map(int, in_order.groups())).isoformat()
        except ValueError:
            return ""
    found = _DAY.fullmatch(text.strip())
    if not found:
        return ""
    day, mark, said = int(found[1]), found[2], found[3]
    month = int(said) if said.isdigit() else _MONTHS.get(said[:3].lower(), 0)
    if mark in "/-" and said.isdigit() and day <= len(_MONTHS) and month != day:
        return ""
    try:
        return date(int(found[4]), month, day).isoformat()
    except ValueError:
        return ""


def days_meant(text: str) -> str:
    """Both days that a text may mean, in whose writing day and month can change places; "" for
    none.
    """
    found = re.fullmatch(r"([0-9]{1,2})[./-]([0-9]{1,2})[./-]((?:19|20)[0-9]{2})", text.strip())
    if not found:
        short = re.fullmatch(r"([0-3]?[0-9])[.]([01]?[0-9])[.]([2-9][0-9])", text.strip())
        if short and (meant := day_meant(f"{short[1]}.{short[2]}.20{short[3]}")):
            return f"write {meant} for {date.fromisoformat(meant):%-d %B %Y}"
        return _without_year(text) or _without_day(text)
    said = [f"{found[1]} {found[2]} {found[3]}", f"{found[2]} {found[1]} {found[3]}"]
    both = [day_meant(own) for own in said]
    told = " or ".join(f"{own} for {date.fromisoformat(own):%-d %B}" for own in both if own)
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
        months = start.month - 1 + many * (len(_MONTHS) if found[2] == "year" else 1)
        year, month = start.year + months // len(_MONTHS), months % len(_MONTHS) + 1
        last = monthrange(year, month)[1]
        return date(year, month, min(start.day, last)).isoformat() if many else ""
    except ValueError:
        return ""


def no_day(text: str) -> str:
    """Why a text is no day that there is, as a mend; "" where that is not plain."""
    if text.strip().lower() in _NOW:
        return "write the day itself, as YYYY-MM-DD"
    found = _FROM_YEAR.fullmatch(text.strip())
    if not found or not 1 <= int(found[2]) <= len(_MONTHS):
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
    named = re.fullmatch(r"([A-Za-z]{3,9})\.? ((?:19|20)[0-9]{2})", text.strip(), re.ASCII)
    number = _MONTHS.get(named[1][:3].lower()) if named else None
    return f"write it with its day, as {named[2]}-{number:02}-DD" if named and number else ""


def _without_year(text: str) -> str:
    """A day that is written without its year, as it stands beside one; "" where it is none."""
    found = re.fullmatch(
        r"([0-3]?[0-9])(?:st|nd|rd|th)?[. ]+([0-9]{1,2}|[A-Za-z]{3,9})\.?", text.strip()
    )
    month = found[2].lower() if found else ""
    number = int(month) if month.isdigit() else _MONTHS.get(month[:3], 0)
    if not found or not 1 <= number <= len(_MONTHS) or not 1 <= int(found[1]) <= 31:
        return ""
    return f"write it with its year, as YYYY-{number:02}-{int(found[1]):02}"


def of_day_meant(text: str) -> str:
    """A time of day that is written in another way, as HH:MM; "" where it is none."""
    found = _OF_DAY.fullmatch(bare(text))
    if not found or (found[2] is None and found[3] is None):
        return ""
    hour, half = int(found[1]), (found[3] or "").lower()
    hour = hour % 12 + 12 * (half == "pm") if half and hour <= 12 else hour
    return f"{hour:02}:{found[2] or '00'}" if hour < 24 else ""


def slot_meant(text: str) -> tuple[str, int] | None:
    """When a slot starts, as HH:MM, and its minutes, of one that is told from a time of day to
    another: ``6-7.30pm``; None where it is none.
    """
    ends = [own.strip() for own in re.split(r"-|–|\bto\b|\buntil\b", text.strip()) if own.strip()]
    if len(ends) != 2:
        return None
    half = re.search(r"[ap]m$", ends[1], re.IGNORECASE)
    if half and not re.search(r"[ap]m$", ends[0], re.IGNORECASE):
        ends[0] += half[0]
    begins, stops = (of_day_meant(own) for own in ends)
    if not begins or not stops:
        return None
    first, last = (60 * int(own[:2]) + int(own[3:]) for own in (begins, stops))
    return (begins, last - first) if last > first else None


def weeks_meant(text: str) -> str:
    """A number of weeks that is said otherwise, as ``4 weeks``; "" where it is none."""
    said = text.strip().lower()
    found = re.fullmatch(r"(?:every )?([1-9][0-9]?) ?(?:w|wks?|weeks?)?", said)
    spoken = re.fullmatch(r"(?:every )?([a-z -]+) weeks?", said)
    many = (
        int(found[1]) if found else _WEEKS.get(said, 0) or number_said(spoken[1] if spoken else "")
    )
    return f"{many} week{'s' * (many != 1)}" if many else ""


def time_meant(text: str) -> str:
    """The time that someone meant by a text which is none, as it is written, or nothing."""
    written = text
    if said := re.fullmatch(rf"([0-9]{{1,3}}) ?{_UNITS_OF_TIME}", text.strip(), re.IGNORECASE):
        text = f"{said[1]} s"
    before = bare(text)
    text = re.sub(r"^(?:on |at |every |@ ?)", "", before, flags=re.IGNORECASE)
    text = re.sub(r" ?(?:off|rest)$", "", text, flags=re.IGNORECASE)
    if spoken := re.fullmatch(r"([a-z -]+?) (minutes?|seconds?)", text.lower()):
        many = number_said(spoken[1])
        text = f"{many} {spoken[2]}" if many else text
    if text != written.strip() and re.fullmatch(r"[0-9]{1,2}:[0-5][0-9]", text):
        return text
    if said := re.fullmatch(r"([0-9]{1,2})/([0-5][0-9])", text):
        return f"{said[1]}:{said[2]}"
    if said := re.fullmatch(r":([0-5][0-9])", text):
        return f"0:{said[1]}"
    if said := re.fullmatch(r"([0-9]{1,2})[.,]([0-9]) ?m(?:ins?|inutes?)", text):
        return f"{said[1]}:{6 * int(said[2]):02}"
    if has_letters(text):
        text = text.translate(LIKE_DIGITS)
        return text if _CLOCK.fullmatch(text) else ""
    if match := _SECONDS.fullmatch(text):
        minutes, seconds = divmod(int(match[1]), 60)
        return f"{minutes}:{seconds:02}"
    if match := _MINUTES.fullmatch(text):
        return f"{match[1]}:{int(match[2] or 0):02}"
    return ""


def metres_for_time(text: str) -> str:
    """What to say of metres where a time belongs, which may be minutes; "" elsewhere."""
    said = re.fullmatch(r"([0-9]{1,3})(?:[.,]([0-9]))? ?m", text.strip())
    if not said:
        return ""
    time = f"{said[1]}:{6 * int(said[2] or 0):02}"
    return f"m alone is metres here: for minutes write {time}"


def times_between(text: str) -> str:
    """Both ends of a range of times, ``5-10`` or ``0:20-0:30``, as they are written, and what else
    two small numbers may be; "" where it is none.
    """
    found = _BETWEEN.fullmatch(text.strip().lower())
    if not found:
        return ""
    first, last = found[1], found[2]
    if ":" in first or ":" in last:
        return f"{first} or {last}" if ":" in first and ":" in last else ""
    if int(first) >= int(last) or (int(first) < _LEAST_OF_RANGE and not found[3]):
        return ""
    each = [f"{int(own) // 60}:{int(own) % 60:02}" for own in (first, last)]
    spoken = "" if found[3] else f", or {first}:{last} for minutes and seconds"
    return f"{' or '.join(each)}{spoken if len(last) == len('10') else ''}"


def dotted_time(written: str) -> str:
    """A time that was written with a dot, as 1.30, with its colon; nothing where it is no such."""
    match = re.fullmatch(r"([0-9]{1,2})\.([0-5][0-9])", written)
    return f"{match[1]}:{match[2]}" if match and match[1] != "0" else ""
