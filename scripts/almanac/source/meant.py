"""Numbers and times that somebody meant, out of what stands where one belongs."""

from __future__ import annotations

import re
from datetime import date

from almanac.source.syntax_slips import CURLY
from almanac.wording.numbers_said import WORDS

_DECIMAL_COMMA = re.compile(r"[0-9]+,([0-9]{1,2}|[0-9]{4,})", re.ASCII)
# A whole number as people write it: grouped, with leading noughts, with a unit behind it.
_NUMBER = re.compile(r"0*([0-9]{1,3}([,_' ][0-9]{3})+|[0-9]+) ?[a-z]{0,7}", re.ASCII)
_LIKE_DIGITS = str.maketrans("OoQlI|", "000111")
_NEARLY_DIGITS = re.compile(r"[0-9OoQlI|]*[0-9][0-9OoQlI|]*")
_RANGE = re.compile(r"([0-9]+) ?(?:-|–|—|to|or|\.\.) ?([0-9]+)")
_PERCENT = re.compile(r"([0-9]{1,3}) ?%", re.ASCII)
_HOURS = re.compile(r"[0-9]{1,2}(?:[.,][0-9]{1,2})? ?(?:h|hrs?|hours?)", re.ASCII)
_SAID = {**WORDS, "one": 1, "eleven": 11, "hundred": 100, "a hundred": 100}
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
_IN_ORDER = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_MONTHS = {month: number for number, month in enumerate(_IN_ORDER, start=1)}
_CLOCK = re.compile(r"[0-9]{1,2}(:[0-9]{2}){1,2}|[0-9]{1,4}")


def number_meant(value: object, wanted: str) -> str:
    """The number that someone meant, as it is written, or nothing. ``wanted`` is "integer" or
    "number".
    """
    if isinstance(value, float):
        return str(int(value)) if value.is_integer() else ""
    if not isinstance(value, str):
        return ""
    text = _bare(value)
    if wanted == "number" and _DECIMAL_COMMA.fullmatch(text):
        return text.replace(",", ".")
    match = _NUMBER.fullmatch(text)
    if match and not _NEARLY_DIGITS.fullmatch(text):
        return re.sub(r"[^0-9]", "", match[1])
    if _NEARLY_DIGITS.fullmatch(text):
        return text.translate(_LIKE_DIGITS).lstrip("0") or "0"
    said = _SAID.get(text.lower())
    return str(said) if said else ""


def number_hint(value: object, wanted: str) -> str:
    """How to write a number that someone meant."""
    if isinstance(value, str) and (share := _PERCENT.fullmatch(value.strip())):
        return f"write {int(share[1]) / 100:g}: a hundredth of what stands before the %"
    if isinstance(value, str) and _HOURS.fullmatch(value.strip()):
        return "write it in minutes, in digits alone: 60 for an hour"
    between = _RANGE.fullmatch(_bare(value)) if isinstance(value, str) else None
    if between:
        return f"write one number: {between[1]} or {between[2]}"
    meant = number_meant(value, wanted)
    if isinstance(value, float) and not meant:
        meant = "a whole number"
    why = "; it has the letter O for a nought, or an l for a 1" if _has_letters(value) else ""
    return f"write {meant or 'it'} in digits alone, without quotes or unit{why}"


def range_hint(value: object) -> str:
    """How to write a range that somebody put in one text, ``4-12``; "" where it is none."""
    between = _RANGE.fullmatch(_bare(value)) if isinstance(value, str) else None
    return f"write {{from: {between[1]}, to: {between[2]}}}" if between else ""


def day_meant(text: str) -> str:
    """A day that is written in another order, as YYYY-MM-DD; "" where day and month could change
    places, or there is no such day.
    """
    found = _DAY.fullmatch(text.strip())
    if not found:
        return ""
    day, mark, said = int(found[1]), found[2], found[3]
    month = int(said) if said.isdigit() else _MONTHS.get(said[:3].lower(), 0)
    if mark == "/" and said.isdigit() and day <= len(_MONTHS) and month != day:
        return ""
    try:
        return date(int(found[4]), month, day).isoformat()
    except ValueError:
        return ""


def time_meant(text: str) -> str:
    """The time that someone meant by a text which is none, as it is written, or nothing."""
    text = _bare(text)
    if _has_letters(text):
        text = text.translate(_LIKE_DIGITS)
        return text if _CLOCK.fullmatch(text) else ""
    if match := _SECONDS.fullmatch(text):
        minutes, seconds = divmod(int(match[1]), 60)
        return f"{minutes}:{seconds:02}"
    if match := _MINUTES.fullmatch(text):
        return f"{match[1]}:{int(match[2] or 0):02}"
    return ""


def dotted_time(written: str) -> str:
    """A time that was written with a dot, as 1.30, with its colon; nothing where it is no such."""
    match = re.fullmatch(r"([0-9]{1,2})\.([0-5][0-9])", written)
    return f"{match[1]}:{match[2]}" if match and match[1] != "0" else ""


def _bare(text: str) -> str:
    return text.strip().rstrip(",;.").strip(CURLY + "\"' ")


def _has_letters(value: object) -> bool:
    """Whether letters stand in a number for digits that look like them."""
    bare = _bare(value).replace(":", "") if isinstance(value, str) else ""
    return bool(_NEARLY_DIGITS.fullmatch(bare)) and not bare.isdigit()
