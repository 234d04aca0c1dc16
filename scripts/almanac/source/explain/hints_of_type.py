"""What to write instead of a value of another type: a text for a number, a list, or fields."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from almanac.source.explain.entry_slips import text_hint
from almanac.source.explain.hints import REPS_BY_DISTANCE
from almanac.source.failure import Failure
from almanac.source.meant.ids import counts_meant, lists_meant
from almanac.source.meant.put_together import (
    by_id,
    dashes_meant,
    in_one_line,
    is_free_text,
    names_meant,
    number_meant_for,
    text_of_field,
    without_dashes,
)
from almanac.source.meant.stands_for import turns_meant
from almanac.source.meant.whiteboard import pause_meant, rep_meant, review_meant
from almanac.source.meant.words import (
    dose_meant,
    fields_meant,
    list_meant,
)
from almanac.source.said.days import day_meant, year_on
from almanac.source.said.numbers import number_hint
from almanac.source.said.times import of_day_meant
from almanac.source.said.units import UNITS, apart
from almanac.source.scalars import scalar
from almanac.source.suggest import listed
from almanac.source.syntax.slips import excerpt
from almanac.units import COURSES
from almanac.wording.numbers_said import number_said

_LENGTHS = re.compile(
    r"([0-9]{1,2}(?= ?[a-z])|[a-z -]+(?= )) ?(?:lengths?|laps?|widths?)", re.ASCII
)
_ALL_OPEN = re.compile(r"write \{(?:\w+: \.\.\.(?:, )?){1,3}\}")
YES = {"yes", "on", "y", "ja", "oui", "si", "sí", "yep"}
_NO = {"no", "off", "n", "none", "nein", "non", "nope"}
_DAYS_OFF = {"off", "free", "day off", "rest day", "none", "no session"}


def type_hint(failure: Failure) -> str:
    """For a value of another type: how to write what was meant."""
    wanted = failure.wanted if isinstance(failure.wanted, str) else ""
    if failure.says("format") == "date":
        if isinstance(failure.value, int) and re.fullmatch(r"(19|20|21)[0-9]{2}", failure.written):
            return f"write it with month and day, as {failure.value}-MM-DD"
        if meant := day_meant(failure.written):
            return f"write {meant}"
        last = failure.siblings.get("on") if failure.path[-1:] == ("again",) else None
        offered = year_on(last) if last else ""
        return "write a day that exists, as YYYY-MM-DD" + (f"; {offered}" if offered else "")
    if isinstance(failure.value, list) and (turns := turns_meant(failure)):
        return turns
    if wanted in _BY_TYPE and (hint := _BY_TYPE[wanted](failure)):
        return hint
    if failure.path and failure.path[-1] == "effort" and not isinstance(failure.value, list | dict):
        words = listed(failure.names.of("vocabulary", "efforts"), 24)
        return f"an effort is a word here: write {words}"
    if failure.says("vocabulary"):
        list_of = failure.says("vocabulary")
        words = listed(failure.names.of("vocabulary", list_of), 24)
        return f"the words are {words} (drills/vocabulary/{list_of}.yml)"
    told = failure.says("says") or failure.says("description")
    is_told = failure.says("says") or isinstance(failure.value, list)
    if told and wanted == "object" and failure.fields and not is_told:
        return f"its fields are {listed(failure.fields, 12)}: {told}"
    return str(told or f"write {failure.noun} here")


def _boolean(failure: Failure) -> str:
    said = failure.value
    if said in (0, 1) and isinstance(said, int):
        return f"write {'true' if said else 'false'}"
    if not isinstance(said, str):
        return ""
    if said in {"true", "false"}:
        return f"write {said}, without quotes"
    if said.lower() in {"true", "false"}:
        return f"write {said.lower()}: {said} is text here"
    if said.lower() in YES | _NO:
        return f"write {str(said.lower() in YES).lower()}: {said} is text here"
    return "write true or false; yes, no, on and off are text here"


def _number(failure: Failure) -> str:
    names = [str(own) for own in failure.path if own not in ("from", "to")]  # of a range's ends
    field = names[-1] if names else ""
    if failure.path[-1:] == ("reps",) and (both := REPS_BY_DISTANCE.fullmatch(str(failure.value))):
        return f"write reps: {both[1]}, distance: {both[2]}"
    if grouped := re.fullmatch(r"([1-9][0-9]?)\.([0-9]{3})", failure.written):
        return f"write {grouped[1]}{grouped[2]}: a point begins a decimal part here"
    if "unit" not in failure.siblings and field == "value" and (two := apart(failure.value, UNITS)):
        return f"write value: {two[0]} and unit: {two[1]}, each as a field of its own"
    return _lengths_hint(failure) or number_hint(failure.value, str(failure.wanted), field)


def _text(failure: Failure) -> str:
    value = failure.value
    if isinstance(value, int | float) and (meant := _of_day(failure)):
        return f'write "{meant}"'
    as_text = str(value).lower() if isinstance(value, bool) else failure.written or str(value)
    if isinstance(value, bool | int | float) and _fits(as_text, failure):
        return f'put it in quotes: "{as_text}"'
    return text_hint(failure)


def _list(failure: Failure) -> str:
    if failure.value is None and failure.path:
        return "write its items below it, each behind a dash and two spaces further in, or [...]"
    if isinstance(failure.value, str) and (meant := _item_meant(failure, failure.value)):
        return f"write it as a list: [{meant}]"
    if isinstance(failure.value, str | int | float):
        return list_meant(failure)
    return dashes_meant(failure) if isinstance(failure.value, dict) and failure.value else ""


def _item_meant(failure: Failure, text: str) -> str:
    """The one item of a list of fields that a text is; "" where it is none."""
    item = failure.resolved(failure.says("items", {}))
    if failure.path[-1:] == ("items",) and (reps := rep_meant(failure, text)):
        return reps
    names = item.get("required", [])
    own = next((name for name in names if is_free_text(failure, item["properties"][name])), "")
    if not own or " " not in text.strip():
        return ""
    told = {name: scalar(excerpt(text)) if name == own else "..." for name in names}
    return "{" + ", ".join(f"{name}: {value}" for name, value in told.items()) + "}"


def _object(failure: Failure) -> str:
    hint = _rep_hint(failure) or _fields_hint(failure)
    names = re.findall(r"(\w+): ", hint) if _ALL_OPEN.fullmatch(hint) else []
    told = {name: failure.about(name) for name in names if name in failure.fields}
    return hint + "".join(f"; {name}: {about}" for name, about in told.items())


def _of_day(failure: Failure) -> str:
    """A time of day that reads as a number, 17.30 or 1730; "" where none belongs here."""
    meant = of_day_meant(failure.written)
    is_any_text = _fits(failure.written, failure)
    return meant if meant and _fits(meant, failure) and not is_any_text else ""


def _rep_hint(failure: Failure) -> str:
    """For reps in one text, ``2 x 50 easy``: the fields that it falls into; "" elsewhere."""
    turns = re.fullmatch(r"([1-9][0-9]?) ?(?:x|×|times|rounds):?", str(failure.value).strip())
    if turns and failure.path[-2:-1] == ("items",):
        return f"write rounds: {turns[1]} here, and below it, under items, what is done each time"
    if not isinstance(failure.value, str) or failure.path[-2:-1] != ("items",):
        return ""
    meant = pause_meant(failure.value) or rep_meant(failure, failure.value)
    return f"write - {meant}" if meant else ""


def _lengths_hint(failure: Failure) -> str:
    """For a distance that is told in lengths: how far that is; "" elsewhere."""
    said = _LENGTHS.fullmatch(str(failure.value).strip())
    if not said or failure.path[-1:] != ("distance",):
        return ""
    many = int(said[1]) if said[1].isdigit() else number_said(said[1])
    data = failure.document.data
    around = data if "course" in data else data.get("protocol")
    course = COURSES.get(str(around.get("course"))) if isinstance(around, dict) else None
    if not many or not course or "length" not in failure.value:
        return "write how far that is, in digits alone"
    return f"write {many * course.length}: so far are {said[0]} of a pool of {course.shown}"


def _fields_hint(failure: Failure) -> str:
    """For a text, a number or a list where fields belong: the fields that it falls into."""
    value = failure.value
    if isinstance(value, list):
        if "people" in failure.fields and all(isinstance(own, str) for own in value):
            return f"write {{people: [{', '.join(map(scalar, value))}]}}"
        if value and all(isinstance(own, str) for own in value):
            counted = re.match("[0-9]", value[0]) and counts_meant(failure, ", ".join(value))
            if counted:
                return counted
        return lists_meant(failure) or names_meant(failure) or by_id(failure) or _of_lists(failure)
    if not isinstance(value, str):
        return fields_meant(failure) or number_meant_for(failure, failure.written)
    if "rest" in failure.fields and value.lower() in _DAYS_OFF:
        return "write {rest: true}"
    if "people" in failure.fields and " " in value:
        return f"write {{people: [{scalar(excerpt(value))}]}}"
    if ids := lists_meant(failure) or counts_meant(failure, value):
        return ids
    if meant := dose_meant(failure) or review_meant(failure, value):
        return f"write {meant}"
    hint = fields_meant(failure)
    if not hint or _ALL_OPEN.fullmatch(hint):
        hint = number_meant_for(failure, value) or hint
    is_whole = all(f"{name}: " in hint for name in failure.says("required", []))
    if hint and is_whole and "..." not in hint:
        return hint
    meant = in_one_line(failure, value) or text_of_field(failure, value)
    return f"write {meant}" if meant else hint


def _of_lists(failure: Failure) -> str:
    """For a list where fields belong: each of its fields without a dash, or the field that its one
    word is of.
    """
    only = failure.value[0] if len(failure.value) == 1 else None
    is_word = isinstance(only, str) and " " not in only
    return without_dashes(failure) or (fields_meant(failure) if is_word else "")


def _fits(text: str, failure: Failure) -> bool:
    """Whether a text could stand here at all: no word of a list, no id, and of the form that is
    asked for.
    """
    if failure.says("vocabulary") or failure.says("reference"):
        return False
    return re.search(failure.says("pattern"), text) is not None


_BY_TYPE: Mapping[str, Callable[[Failure], str]] = {
    "boolean": _boolean,
    "integer": _number,
    "number": _number,
    "string": _text,
    "array": _list,
    "object": _object,
}
