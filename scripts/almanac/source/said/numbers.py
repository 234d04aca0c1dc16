"""Numbers that somebody meant, out of what stands where one belongs."""

from __future__ import annotations

import re

from almanac.source.syntax.slips import CURLY
from almanac.wording.numbers_said import number_said

_MEASURED = re.compile(r"([0-9]+)[.,]([0-9]+) ?(?:m|met(?:re|er)s?|s|secs?|seconds?)", re.ASCII)
_DECIMAL_COMMA = re.compile(r"[0-9]+,([0-9]{1,2}|[0-9]{4,})", re.ASCII)
# A whole number as people write it: grouped, with leading noughts, with a unit behind it.
_NUMBER = re.compile(
    r"0*([0-9]{1,3}([,_' \u00a0\u2009\u202f’][0-9]{3})+|[0-9]+) ?[a-z]{0,8}", re.ASCII
)
LIKE_DIGITS = str.maketrans("OoQlI|", "000111")
_NEARLY_DIGITS = re.compile(r"[0-9OoQlI|]*[0-9][0-9OoQlI|]*")
_RANGE = re.compile(r"([0-9]{1,6}) ?(?:-|–|—|to|or|\.\.) ?([0-9]{1,6})")
_AMOUNT = r"([0-9]{1,6}(?:[.,][0-9]{1,6})?)"  # longer ones are nothing that anybody meant
_BETWEEN = re.compile(
    rf"{_AMOUNT} ?(?:m|ft|feet)? ?(?:-|–|—|to|\.\.) ?{_AMOUNT}(?: ?(m|met(?:re|er)s?|ft|feet|'))?",
    re.ASCII | re.IGNORECASE,
)
_MOST_OFFERED = 4
_FEET_AND_INCHES = re.compile(
    r"([0-9]{1,3}) ?(?:['’′]|ft|feet)(?: ?([0-9]|1[01]) ?(?:[\"”″]|''|in|inch(?:es)?)?)?", re.ASCII
)
_MOST_LANES = 30
_METRES_PER_FOOT = 0.3048  # exact: international yard and pound agreement, 1959
_PERCENT = re.compile(r"([+-]?)([0-9]{1,3}) ?%( (?:faster|quicker|slower))?", re.ASCII)
_MINUTES_SAID = {
    "a quarter of an hour": 15, "half an hour": 30, "half hour": 30,
    "three quarters of an hour": 45, "an hour": 60, "one hour": 60, "an hour and a half": 90,
    "one and a half hours": 90, "two hours": 120,
}  # fmt: skip
_HOURS_AND_MINUTES = re.compile(
    r"([0-9]):([0-5][0-9])|([0-9]) ?h(?:ours?)? ?([0-5]?[0-9])?(?: ?min)?"
)
_ABOUT = re.compile(
    r"(?:(?:about|around|approx(?:imately|\.)?|circa|roughly|nearly|almost|ca?\.?|max\.?|at most"
    r"|up to|min\.?|at least|over|under|~|≈|<=?|>=?|≤|≥|[x×*]) *)?"
    r"([0-9]{1,4})(?: ?(?:ish|or so|approx\.?|max\.?|min\.?|\+|[x×]))?",
    re.IGNORECASE,
)
_DEGREES = re.compile(
    r"([0-9]{1,3}(?:[.,][0-9])?) ?(?:°|º|deg(?:rees)?\.?)? ?(?:(c|f)\w*)?", re.IGNORECASE
)
_HOURS = re.compile(r"([0-9]{1,2}(?:[.,][0-9]{1,2})?) ?(?:h|hrs?|hours?)", re.ASCII)
_THOUSANDS = re.compile(
    r"([0-9]{1,2}(?:[.,][0-9]{1,3})?) ?(?:k|km|kilomet(?:re|er)s?)", re.IGNORECASE
)
_OF_TEN = re.compile(r"([0-9]{1,2}(?:[.,][0-9])?) ?(?:/|of|out of) ?10")
_HALF = re.compile(
    r"(?:a )?half(?! (?:a )?dozen)(?: an?)?(?: of)?(?: [a-z]+)?|1/2|½", re.IGNORECASE
)
_COUNTED = ("reps", "rounds", "swimmers", "lanes", "most_in_lane")
"""Fields that say how many there are of something, so that a list of them can be counted."""
_REPS_BY = re.compile(r"([1-9][0-9]?) ?[x×*] ?([0-9]{1,4})", re.ASCII)

_NUMBERS = re.compile(r"[0-9]{1,2}(?:[.;/]? +[0-9]{1,2})+\.?")


def number_meant(value: object, wanted: str) -> str:
    """The number that someone meant, as it is written, or nothing. ``wanted`` is "integer" or
    "number".
    """
    if isinstance(value, float):
        return str(int(value)) if value.is_integer() else ""
    if not isinstance(value, str):
        return ""
    text = bare(value)
    if wanted == "number" and _DECIMAL_COMMA.fullmatch(text):
        return text.replace(",", ".")
    if wanted == "number" and (measured := _MEASURED.fullmatch(text)):
        return f"{measured[1]}.{measured[2]}"
    match = _NUMBER.fullmatch(text)
    if match and not _NEARLY_DIGITS.fullmatch(text):
        return re.sub(r"[^0-9]", "", match[1])
    if _NEARLY_DIGITS.fullmatch(text):
        return text.translate(LIKE_DIGITS).lstrip("0") or "0"
    if wanted == "number" and (times := re.fullmatch(r"[x×*] ?([0-9]+\.[0-9]+)", text)):
        return times[1]
    about = _ABOUT.fullmatch(text)
    return about[1] if about else str(number_said(text) or "")


def _one_of(values: list[object], field: str) -> str:
    """How to write one number where a list of them stands."""
    if field in _COUNTED:
        return f"write how many there are, in digits alone: {len(values)}"
    numbers = [str(own) for own in values if isinstance(own, int | float)]
    if not numbers or len(numbers) != len(values) or len(numbers) > _MOST_OFFERED:
        return "write one number, in digits alone, without brackets"
    return f"write one number: {' or '.join(numbers)}"


def _in_metres(text: str) -> str:
    """A length in centimetres, feet or inches, in metres; "" where it is none."""
    if both := _FEET_AND_INCHES.fullmatch(text):
        text = f"{12 * int(both[1]) + int(both[2] or 0)} in"
    if cut := re.fullmatch(r"([0-9]) ?m ?([0-9]{2})", text):
        return f"{cut[1]}.{cut[2]}"
    found = re.fullmatch(rf"{_AMOUNT} ?(cm|ft|feet|foot|in|inch(?:es)?)", text)
    if not found:
        return ""
    each = {"cm": 0.01, "in": _METRES_PER_FOOT / 12}.get(found[2][:2], _METRES_PER_FOOT)
    return f"{float(found[1].replace(',', '.')) * each:.3f}".rstrip("0").rstrip(".")


def number_hint(value: object, wanted: str, field: str = "") -> str:
    """How to write a number that someone meant for a field."""
    said = value.strip() if isinstance(value, str) else ""
    if meant := _in_other_figures(said, wanted, field) or _in_its_unit(said, wanted, field):
        return meant
    if reps := _REPS_BY.fullmatch(said):
        return f"write {int(reps[1]) * int(reps[2])}, which is all of it"
    if isinstance(value, list):
        return _one_of(value, field)
    if _NUMBERS.fullmatch(said):
        return f"commas stand between numbers: write {', '.join(re.findall('[0-9]+', said))}"
    between = _RANGE.fullmatch(bare(value)) if isinstance(value, str) else None
    if between and field.isdigit():  # an item of a list
        first, last = int(between[1]), int(between[2])
        if first < last < first + _MOST_LANES:
            return f"write {', '.join(map(str, range(first, last + 1)))}"
    if between:
        return f"write one number: {between[1]} or {between[2]}"
    meant = number_meant(value, wanted)
    if isinstance(value, float) and not meant:
        meant = "a whole number"
    why = "; it has the letter O for a nought, or an l for a 1" if has_letters(value) else ""
    return f"write {meant or 'a number'} in digits alone, without quotes or unit{why}"


def _in_other_figures(said: str, wanted: str, field: str) -> str:
    """How to write thousands, so many of ten, a half, how many a row is; "" for any other."""
    if thousands := _THOUSANDS.fullmatch(said):
        return f"write {1000 * float(thousands[1].replace(',', '.')):g} in digits alone"
    if of_ten := _OF_TEN.fullmatch(said):
        return f"write {of_ten[1].replace(',', '.')}, without what it is out of"
    if wanted == "number" and _HALF.fullmatch(said):
        return "write 0.5"
    row = _RANGE.fullmatch(said) if field == "lanes" else None
    many = int(row[2]) - int(row[1]) + 1 if row else 0
    return f"write how many there are, in digits alone: {many}" if many > 1 else ""


def _in_its_unit(said: str, wanted: str, field: str) -> str:
    """How to write an amount that is said in another unit than its field has; "" for any other."""
    if field == "minutes" and (hours := _HOURS_AND_MINUTES.fullmatch(said)):
        whole, rest = hours[1] or hours[3], hours[2] or hours[4] or 0
        return f"write {60 * int(whole) + int(rest)}: all of it in minutes, in digits alone"
    if wanted == "number" and (share := _PERCENT.fullmatch(said)):
        return _as_share(share, said)
    if field == "minutes" and (many := _MINUTES_SAID.get(said.lower())):
        return f"write {many}: all of it in minutes, in digits alone"
    if field.endswith("_s") and (clock := re.fullmatch(r"([0-9]{1,2}):([0-5][0-9])", said)):
        return f"write {60 * int(clock[1]) + int(clock[2])}: in seconds, in digits alone"
    if hours := _HOURS.fullmatch(said):
        return f"write it in minutes, in digits alone: {60 * float(hours[1].replace(',', '.')):g}"
    if field.endswith("_m") and (metres := _in_metres(said)):
        return f"write {metres}, in metres and digits alone: so much is {said}"
    if field.endswith("_c") and (degrees := _DEGREES.fullmatch(said)):
        shown = float(degrees[1].replace(",", "."))
        if (degrees[2] or "").lower() == "f":
            return f"write {(shown - 32) / 1.8:.1f}, in Celsius and digits alone: so much is {said}"
        return f"write {shown:g}, in Celsius and digits alone"
    return ""


def _as_share(share: re.Match[str], said: str) -> str:
    part = int(share[2]) / 100
    if share[1] or share[3]:
        is_more = share[1] == "+" or (share[3] or "").endswith("slower")
        part = 1 + part if is_more else 1 - part
        return f"write {part:g}: so many times of it {said} is"
    return f"write {part:g}: a hundredth of what stands before the %"


def range_meant(text: str, field: str = "") -> tuple[str, ...]:
    """Both ends of a range that somebody put in one text, ``4-12``; () where it is none. Feet are
    metres where the field is of metres.
    """
    between = _BETWEEN.fullmatch(bare(text))
    if not between:
        return ()
    ends = [end.replace(",", ".") for end in between.groups()[:2]]
    if (between[3] or "").lower() in ("ft", "feet", "'") and field.endswith("_m"):
        ends = [f"{float(end) * _METRES_PER_FOOT:.2f}" for end in ends]
    return tuple(ends)


def bare(text: str) -> str:
    """A text without the marks around it."""
    return text.strip().rstrip(",;.").strip(CURLY + "\"' ")


def has_letters(value: object) -> bool:
    """Whether letters stand in a number for digits that look like them."""
    text = bare(value).replace(":", "") if isinstance(value, str) else ""
    return bool(_NEARLY_DIGITS.fullmatch(text)) and not text.isdigit()
