"""What somebody meant by one text or number where a list or fields belong."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from math import inf
from typing import Any

from almanac.source.days_said import weekday_said
from almanac.source.failure import Failure, quote
from almanac.source.said.days import day_meant
from almanac.source.said.numbers import range_meant
from almanac.source.said.times import slot_meant
from almanac.source.scalars import scalar
from almanac.source.suggest import fold, nearest
from almanac.source.syntax.slips import excerpt

BETWEEN = re.compile(r"\s*(?:,|;|/|\\|&|\+|->|→)\s*|\s+(?:and|to)\s+")
_UNTIL = re.compile(r"\s+(?:to|until|till)\s+|\s*[–—→]\s*|\s+-\s+")  # of days, with hyphens in them
_ALL = {"all", "every", "each", "whole-pool", "all-lanes"}
_DAYS_SAID = {"weekdays": (0, 5), "weekend": (5, 7), "weekends": (5, 7)}
_DAYS_SAID |= dict.fromkeys(("all", "daily", "every-day", "all-days", "all-week"), (0, 7))
_MOST_LANES = 30
_LEAST_BEGUN = 3  # letters of a word that stands for a longer one: tue for Tuesday
_NUMBERS = ("integer", "number")
_FEW = 2  # fields, of which a word may be meant for either


def list_meant(failure: Failure) -> str:
    """How to write a list that somebody put in one text: its words, ids, days or numbers; else
    the text in brackets.
    """
    if failure.value == "none":
        return "leave it out, for none" if failure.says("minItems") else "write [] for none"
    text, item = str(failure.value), failure.resolved(failure.says("items", {}))
    text = text[1:-1] if text.startswith("(") and text.endswith(")") else text
    if item.get("type") in _NUMBERS and (ends := range_meant(text)):
        first, last = (round(float(end)) for end in ends)
        if 0 <= last - first < _MOST_LANES:
            return f"write it as a list: [{', '.join(map(str, range(first, last + 1)))}]"
    days = [str(choice) for choice in item.get("enum", ())]
    edges = re.split(r" ?(?:-|–|\bto\b) ?", text.strip())
    if together := _said_together(fold(text), item, days):
        return together
    two = [choice_meant(own, days, failure.names.is_guessing) for own in edges]
    if len(two) == 2 and all(two) and days.index(two[0]) < days.index(two[1]):
        between = days[days.index(two[0]) : days.index(two[1]) + 1]
        return f"write it as a list: [{', '.join(between)}]"
    pieces = [piece for piece in BETWEEN.split(text.strip()) if piece]
    if item.get("type") in _NUMBERS and len(pieces) > 1 and all(own.isdigit() for own in pieces):
        return f"write it as a list: [{', '.join(pieces)}]"
    words = [
        word_meant(failure, item, piece) or _field_of(failure, item, piece) for piece in pieces
    ]
    if words and all(words):
        return f"write it as a list: [{', '.join(words)}]"
    if any(words) and not {"vocabulary", "reference"}.isdisjoint(item):
        each = zip(words, pieces, strict=True)
        told = [word or (piece if " " not in piece else "...") for word, piece in each]
        return f"write it as a list: [{', '.join(told)}]"
    if "object" in item.get("type", "") and (needed := item.get("required", [])):
        if " " in text.strip() and "own" in item.get("properties", {}):
            text = scalar(excerpt(text))
            return f"write it as a list: [{{{needed[0]}: ..., own: {text}}}]"
        shape = ", ".join(f"{name}: ..." for name in needed)
        return f"write a line for each, with a dash before it: - {{{shape}}}"
    if ";" in text:
        row = ", ".join(scalar(excerpt(own.strip())) for own in text.split(";") if own.strip())
        return f"write it as a list: [{row}]"
    return f"write it as a list: [{quote(text)[1:-1]}]"


def _said_together(said: str, item: Mapping[str, Any], days: list[str]) -> str:
    """How to write all lanes or some days that one word says; "" for any other."""
    if said in _ALL and item.get("type") in _NUMBERS:
        return "write each of them, as a list: [1, 2, 3, ...]"
    if "mon" in days and said in _DAYS_SAID:
        return f"write it as a list: [{', '.join(days[slice(*_DAYS_SAID[said])])}]"
    return ""


def _field_of(failure: Failure, item: Mapping[str, Any], text: str) -> str:
    """The one field of an item that a word is of, in braces; "" for none."""
    for name, piece in item.get("properties", {}).items():
        if word := word_meant(failure, failure.resolved(piece), text, is_sure=True):
            return f"{{{name}: {word}}}"
    return ""


def as_written(failure: Failure, told: Mapping[str, str]) -> str:
    """Fields in braces, in the order of the schema, those that are needed and not known as dots."""
    needed = failure.says("required", [])
    names = [name for name in failure.fields if name in told or name in needed]
    return "{" + ", ".join(f"{name}: {told.get(name, '...')}" for name in names) + "}"


def dose_meant(failure: Failure) -> str:
    """A dose as coaches say it, ``4-6 x 50``, in its fields; "" elsewhere."""
    if not {"distance", "reps"} <= {*failure.fields}:
        return ""
    said = re.match(
        r"([0-9]{1,2})(?: ?[-–] ?([0-9]{1,2}))? ?[x×*] ?([0-9]{1,4})(?![0-9]|[.,][0-9])",
        str(failure.value),
    )
    if not said:
        return ""
    few, many = sorted((int(said[1]), int(said[2] or said[1])))
    told = {"distance": said[3], "reps": f"{{from: {few}, to: {many}}}"}
    if rest := re.search(r"[0-9]{0,2}:[0-5][0-9]", str(failure.value)):
        told["rest"] = rest[0] if rest[0][0] != ":" else f"0{rest[0]}"
    return as_written(failure, told)


def fields_meant(failure: Failure) -> str:
    """How to write fields that somebody put in one text or number: a range, a word or an amount
    that one of the fields takes; else their names, or "" where a description says more.
    """
    value, fields = failure.value, failure.fields
    if isinstance(value, int | float) and {"from", "to"} <= {*fields} and value is not True:
        return f"write {{from: {value}, to: {value}}}"
    if isinstance(value, int) and not isinstance(value, bool):
        taking = [name for name in fields if _takes(_piece(failure, name), value)]
        name = "distance" if "distance" in taking else taking[0] if taking else ""
        if name and (failure.names.is_guessing or len(taking) == 1):
            return f"write {as_written(failure, {name: str(value)})}"
    said = value[0] if isinstance(value, list) and len(value) == 1 else value
    if isinstance(said, str) and (meant := _of_text(failure, said)):
        return meant
    is_short = len(fields) <= _FEW and isinstance(value, str) and " " not in value
    if failure.says("required") or not failure.says("description") or (fields and is_short):
        names = failure.says("required") or list(fields)[:3]
        return f"write {{{', '.join(f'{name}: ...' for name in names)}}}" if names else ""
    return ""


def _of_text(failure: Failure, value: str) -> str:
    """The fields that a text falls into."""
    fields = failure.fields
    if {"from", "to"} <= {*fields} and _piece(failure, "from").get("format") == "date":
        days = [day_meant(own) for own in _UNTIL.split(value)]
        return f"write {{from: {days[0]}, to: {days[1]}}}" if len(days) == 2 and all(days) else ""
    if {"from", "to"} <= {*fields}:
        ends = range_meant(value, str(failure.path[-1])) or _words_between(failure, value)
        if ends:
            return f"write {{from: {ends[0]}, to: {ends[1]}}}"
    flag = _piece(failure, value) if value in fields else {}
    if flag.get("type") == "boolean" or flag.get("const") is True:
        return f"write {{{value}: true}}"
    if {"start", "minutes"} <= {*fields} and (slot := slot_meant(value)):
        return f'write {{start: "{slot[0]}", minutes: {slot[1]}}}'
    if "distance" in fields and (
        metres := re.fullmatch(r"([0-9]{1,5}) ?m(?:et(?:re|er)s)?", value)
    ):
        return f"write {as_written(failure, {'distance': metres[1]})}"
    for name in fields:
        if value == "none" and not failure.names.is_guessing:  # all of it, or that one field
            break
        if word := word_meant(failure, _piece(failure, name), value, is_sure=True):
            both = f", to: {word}" if name == "from" and "to" in fields else ""
            return f"write {{{name}: {word}{both}}}"
    return ""


def plan_meant(text: str, plans: Iterable[str], failure: Failure) -> str:
    """An effort that was said in words, ``descend easy to fast``, as it is written; "" for none."""
    said = re.fullmatch(r"([a-z]+)(?:ing|s)? +(.+)", text.strip().lower())
    plan = next((own for own in plans if said and said[1].startswith(own)), "")
    if not said or not plan:
        return ""
    pieces = re.sub(r"^from ", "", said[2])
    words = [word_meant(failure, {"vocabulary": "efforts"}, it) for it in BETWEEN.split(pieces)]
    return f"{{{plan}: [{', '.join(words)}]}}" if len(words) > 1 and all(words) else ""


def word_meant(failure: Failure, piece: Mapping[str, Any], text: str, is_sure: bool = False) -> str:
    """The word, id or choice of a piece of a schema that a text is, or, where nobody has to be
    sure of it, nearly is; "" for none.
    """
    for keyword in ("vocabulary", "reference"):
        if keyword in piece:
            known = failure.names.of(keyword, piece[keyword])
            sure = failure.names.certain(keyword, piece[keyword], text)
            is_guess = failure.names.is_guessing and not is_sure
            return sure or (nearest(text, known) if is_guess else None) or ""
    choices = [str(choice) for choice in piece.get("enum", ())]
    is_guess = failure.names.is_guessing
    return choice_meant(text, choices, is_guess) if not is_sure or text in choices else ""


def choice_meant(text: str, choices: Iterable[str], is_guess: bool = True) -> str:
    """The choice that a text is, is the long form of, ``Tuesday`` for ``tue``, or, for a guess, is
    nearly.
    """
    known = list(choices)
    is_word = fold(text).isalpha()
    long = [own for own in known if len(own) >= _LEAST_BEGUN and is_word]
    begun = [own for own in long if fold(text).startswith(fold(own))]
    if (day := weekday_said(text)) in known:
        return day
    near = nearest(text, known) if is_guess else {fold(own): own for own in known}.get(fold(text))
    return begun[0] if len(begun) == 1 else near or ""


def _words_between(failure: Failure, text: str) -> tuple[str, ...]:
    """The two words that a text leads from and to."""
    piece = _piece(failure, "from")
    known = failure.names.of("vocabulary", piece.get("vocabulary", ""))
    ends = [own.strip() for own in re.split(r"\s+(?:to|-|–)\s+|(?<=[a-z])[-–](?=[a-z])", text)]
    for at in range(1, len(ends)):
        two = ["-".join(ends[:at]), "-".join(ends[at:])]
        words = tuple(word_meant(failure, piece, own) for own in two)
        if known and all(word in known for word in words):
            return words
    return ()


def _takes(piece: Mapping[str, Any], number: int) -> bool:
    """Whether a number may stand in a piece of a schema."""
    least, most = piece.get("minimum", -inf), piece.get("maximum", inf)
    return piece.get("type") in _NUMBERS and least <= number <= most


def _piece(failure: Failure, name: str) -> Mapping[str, Any]:
    return failure.resolved(failure.fields[name])


def list_cut_by_comma(failure: Failure, key: str) -> str:
    """For a word behind a comma which in brackets reads as a field, where the field before it takes
    a list: ``{descend: steady, fast}``; "" elsewhere.
    """
    before = list(failure.value)[: list(failure.value).index(key)]
    name = before[-1] if before else ""
    piece = failure.resolved(failure.fields.get(name, {}))
    value = failure.value.get(name)
    if failure.value[key] is not None or piece.get("type") != "array" or not isinstance(value, str):
        return ""
    return f"a list stands in square brackets: write {name}: [{value}, {key}]"
