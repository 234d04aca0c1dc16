"""Times and weeks that somebody meant, out of what stands where one belongs."""

from __future__ import annotations

import re
from collections.abc import Mapping

from almanac.source.said.numbers import LIKE_DIGITS, bare, has_letters
from almanac.wording.numbers_said import number_said

_OF_DAY = re.compile(
    r"([0-9]{1,2})(?:[:.h]?([0-5][0-9]))? ?(?:(am|pm)|h|o'clock|uhr)?", re.IGNORECASE
)
_WEEKS = {"weekly": 1, "every week": 1, "fortnightly": 2, "every fortnight": 2, "monthly": 4,
          "every month": 4, "a month": 4, "once a month": 4, "once a week": 1,
          "quarterly": 13, "yearly": 52}  # fmt: skip
# Seconds and minutes begin so in most languages of Europe: Sekunden, segundos, Minuten, minuti.
_UNITS_OF_TIME = r"(?:s(?:e[ckg][^\W\d_]{0,7})?\.?|\"|″|”|'')"
_SECONDS = re.compile(rf"([0-9]{{1,3}}) ?{_UNITS_OF_TIME}", re.IGNORECASE)
_MINUTES = re.compile(
    r"([0-9]{1,3}) ?(?:m(?:in[^\W\d_]{0,5})?\.?|['′’;,-])"
    rf"(?: ?(?:and ?)?([0-5]?[0-9]) ?{_UNITS_OF_TIME}?)?",
    re.IGNORECASE,
)
_BETWEEN = re.compile(
    r"([0-9]{1,3}|[0-9]{0,2}:[0-5][0-9]) ?(?:-|–|to) ?([0-9]{1,3}|[0-9]{0,2}:[0-5][0-9])"
    r" ?(s|secs?|seconds?)?"
)
_LEAST_OF_RANGE = 3  # 1-45 is a send-off that was written with a dash
_CLOCK = re.compile(r"[0-9]{1,2}(:[0-9]{2}){1,2}|[0-9]{1,4}")


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


def minutes_until(fields: Mapping[str, object], key: str) -> int:
    """The minutes from the start of a slot until the time of day under a key; 0 for none."""
    slot = slot_meant(f"{fields.get('start')}-{fields[key]}") if "minutes" not in fields else None
    return slot[1] if slot else 0


def weeks_meant(text: str) -> str:
    """A number of weeks that is said otherwise, as ``4 weeks``; "" where it is none."""
    said = text.strip().lower()
    found = re.fullmatch(r"(?:every )?([1-9][0-9]?) ?(?:w|wks?|weeks?)?", said)
    spoken = re.fullmatch(r"(?:every )?([a-z -]+) weeks?", said)
    many = (
        int(found[1]) if found else _WEEKS.get(said, 0) or number_said(spoken[1] if spoken else "")
    )
    return f"{many} week{'s' * (many != 1)}" if many else ""


def _said_plainly(text: str) -> str:
    """A time of seconds alone in quotes, of minutes with their prime, with a half, or with a
    minus; "" where it is none of these.
    """
    if re.fullmatch(r"[1-9][0-9]{1,2}", text):
        return f"{int(text) // 60}:{int(text) % 60:02}"
    if minutes := re.fullmatch(r"([1-9][0-9]?) ?['′’]", text):
        return f"{minutes[1]}:00"
    if half := re.fullmatch(r"([1-9]?) ?(?:and )?(?:1/2|½|a half) ?(?:m|mins?|minutes?)", text):
        return f"{half[1] or 0}:30"
    if below := re.fullmatch(r"[-–−] ?([0-9]{1,2}:[0-5][0-9])", text):
        return below[1]
    if twice := re.fullmatch(r"([0-9]{1,2})(?:::|;;|\.\.|: ?\.| )([0-5][0-9])", text):
        return f"{twice[1]}:{twice[2]}"
    return "0:30" if text.lower() in {"half a minute", "half minute"} else ""


def without_unit(text: str) -> str:
    """A time with a colon without the unit behind it: ``1:05`` of ``1:05 min``."""
    found = re.fullmatch(
        r"(.*:.*[0-9]) ?(?:s|secs?|seconds?|m|mins?|minutes?|\(.*\))", text.strip()
    )
    return found[1] if found else text.strip()


def tenths_meant(text: str, is_whole: bool) -> str:
    """How to write a time with tenths or hundredths that has a comma, or no colon, ``3.20,4``; ""
    where it is none.
    """
    found = re.fullmatch(r"([0-9]{1,2})[:.]([0-5][0-9])[.,]([0-9]{1,2})", text.strip())
    if not found:
        return ""
    if is_whole:
        seconds = 60 * int(found[1]) + int(found[2]) + (found[3][0] >= "5")
        return f"write {seconds // 60}:{seconds % 60:02}, in whole seconds"
    return f"write {found[1]}:{found[2]}.{found[3]}"


def time_meant(text: str) -> str:
    """The time that someone meant by a text which is none, as it is written, or nothing."""
    written = text
    if plain := _said_plainly(text.strip()):
        return plain
    if said := re.fullmatch(rf"([0-9]{{1,3}}) ?{_UNITS_OF_TIME}", text.strip(), re.IGNORECASE):
        text = f"{said[1]} s"
    before = bare(text)
    text = re.sub(r"^(?:on |at |every |@ ?)", "", before, flags=re.IGNORECASE)
    text = without_unit(re.sub(r" ?(?:off|rest)$", "", text, flags=re.IGNORECASE))
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
