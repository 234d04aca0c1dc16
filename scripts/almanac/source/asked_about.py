"""What an entry may hold and hardly ever means: a text that ends in the comma of a list or in a
lone quotation mark, a wait of an hour where minutes and seconds were meant, digits whose colon may
be left out. It is asked about, and is no error.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import yaml

from almanac.findings import Finding, Place, warning
from almanac.source.edits.style import marked
from almanac.source.reader import DataPath, Document
from almanac.source.said.bare_times import few_seconds, with_or_without_colon
from almanac.source.scalars import scalar
from almanac.source.syntax.slips import excerpt

_FREE_TEXT = "minLength"  # of every text that is not taken from a list, and of those alone
_TIME = "clock"
_WAITS = {"sendoff", "rest", "pause", "pause_between", "talk", "gap"}
_SWUM = {"tests", "aim"}
_TIMED = _WAITS | {"change", "time", "aim", "assume", "clock"}
_HOURS = re.compile(r"([01]?[0-9]|2[0-3]):([0-5][0-9]):([0-5][0-9])")
_FEW_MINUTES = 15  # a send-off of fewer seconds is none
_HOUR, _DAY = 3600, 86400  # s; what lasts a day is no time at all
_BEFORE_A_TEST = "benchmark"  # of which a rest may well be an hour
_NEW_TEXT = re.compile(r"[.!?] [A-Z]")
_ENDS = (",", ";", "،", "，")  # a comma of other scripts too


def asked_about(document: Document, kind: str) -> Iterator[tuple[Finding, DataPath, str]]:
    """A warning for each such value, its path, and the YAML that ``check --fix`` writes in its
    place; "" where a coach has to choose.
    """
    commas, waits = list[DataPath](), list[DataPath]()
    bare, joined = list[DataPath](), list[DataPath]()
    for path, value in _scalars(document.data, ()):
        if isinstance(value, str) and (value.endswith(_ENDS) or _has_one_quote(value)):
            commas.append(path)
        elif kind != _BEFORE_A_TEST and (_WAITS | _SWUM) & {*path} and _is_long(value):
            waits.append(path)
        elif value.__class__ is int and _TIMED & {*path} and _may_be(path, str(value)):
            bare.append(path)
        elif isinstance(value, str) and _NEW_TEXT.search(value) and isinstance(path[-1], int):
            joined.append(path)
    texts = {*marked(document, kind, _FREE_TEXT)} if commas or joined else set[DataPath]()
    for path in commas:
        if path in texts:
            yield _comma(document, path)
    lines = document.text.split("\n") if joined else []
    for path in joined:
        if path in texts and (found := _joined(document, path, lines)):
            yield found, path, ""
    # not each number below such a field is a time: a rest may be a share of the work
    times = {*marked(document, kind, _TIME)} if waits or bare else set[DataPath]()
    for path in filter(times.__contains__, waits):
        yield _wait(document, path), path, _without_hours(document.node(path).value)
    for path in filter(times.__contains__, bare):
        yield _bare(document, path), path, ""


def _scalars(data: object, path: DataPath) -> Iterator[tuple[DataPath, object]]:
    if isinstance(data, dict):
        for key, value in data.items():
            yield from _scalars(value, (*path, key))
    elif isinstance(data, list):
        for number, value in enumerate(data):
            yield from _scalars(value, (*path, number))
    else:
        yield path, data


def _has_one_quote(text: str) -> bool:
    """Whether a quotation mark ends a text, and none opens in it."""
    return text.endswith('"') and text.count('"') == 1 and not text[-2:-1].isdigit()  # 5" is inches


def _is_long(value: object) -> bool:
    if isinstance(value, str):
        return _HOURS.fullmatch(value) is not None
    return isinstance(value, int | float) and _HOUR <= value < _DAY


def _comma(document: Document, path: DataPath) -> tuple[Finding, DataPath, str]:
    text = document.node(path).value
    sign = text[-1]
    message = f"this text ends in '{sign}': what follows is missing, or the '{sign}' is too many"
    bare = text.rstrip("".join(_ENDS) + " ")
    told = scalar(bare[:-1].rstrip() if _has_one_quote(bare) else bare)
    is_one_line = _is_on_one_line(document, path) and excerpt(told) == told
    hint = f"write {told}" if is_one_line else f"take the '{sign}' away"
    finding = warning("stray-mark", document.place(path), message, hint)
    return finding, path, told if is_one_line else ""


def _joined(document: Document, path: DataPath, lines: Sequence[str]) -> Finding | None:
    """Two texts of a list that a dash left out made one: the second begins anew on a line of its
    own, though it would have fitted on the line above.
    """
    node, whole = document.node(path), document.node(path[:-1])
    is_block = isinstance(whole, yaml.SequenceNode) and not whole.flow_style
    if not isinstance(node, yaml.ScalarNode) or node.style or not is_block:
        return None
    widest = max(map(len, lines[whole.start_mark.line : whole.end_mark.line]))
    for number in range(node.start_mark.line + 1, node.end_mark.line + 1):
        above, own = lines[number - 1].rstrip(), lines[number].strip()
        is_new = above.endswith((".", "!", "?")) and own[:1].isupper()
        if is_new and len(above) + 1 + len(own.split()[0]) <= widest:
            place = Place(document.file, number + 1, lines[number].index(own) + 1)
            message = (
                "this line goes on with the text above it, though it begins like one of its own"
            )
            hint = f"where a dash was left out, write - {excerpt(own)}"
            return warning("stray-mark", place, message, hint)
    return None


def _is_on_one_line(document: Document, path: DataPath) -> bool:
    node = document.node(path)
    is_plain = isinstance(node, yaml.ScalarNode) and node.style not in {"|", ">"}
    return bool(is_plain and node.start_mark.line == node.end_mark.line)


def _wait(document: Document, path: DataPath) -> Finding:
    name = next(str(own) for own in reversed(path) if own in _TIMED)
    said = document.node(path).value
    message = f"'{name}' is {said}, which is read as hours, minutes and seconds"
    hint = "write m:ss, say 1:15 for a minute and a quarter"
    found = _HOURS.fullmatch(said)
    if short := _without_hours(said):
        message, hint = f"'{name}' is {said}, with hours before it", f"write {short}"
    elif found and _SWUM & {*path}:
        hint = f"write {found[1]}:{found[2]}.{found[3]} for minutes, seconds and hundredths"
    elif found and found[3] == "00":
        hours, minutes = int(found[1]), int(found[2])
        ways = [f"{hours}:{found[2]} for minutes and seconds"]
        if not hours:
            ways.insert(0 if minutes < _FEW_MINUTES else 1, f"{minutes}:00 for so many minutes")
        hint = f"write {', or '.join(ways)}"
    elif not found:
        message = f"'{name}' is {said} seconds, which is an hour and more"
    return warning("long-wait", document.place(path), message, hint)


def _without_hours(said: str) -> str:
    """A wait whose hours are none and whose seconds are some, ``0:01:45``, in minutes and seconds;
    "" for any other: of ``0:45:00`` the minutes may be seconds.
    """
    found = _HOURS.fullmatch(said)
    is_plain = found and not int(found[1]) and found[3] != "00"
    return f"{int(found[2])}:{found[3]}" if found and is_plain else ""


def _bare(document: Document, path: DataPath) -> Finding:
    name = next(str(own) for own in reversed(path) if own in _TIMED)
    said = document.node(path).value
    message = f"'{name}' is {said}, which is read as seconds"
    return warning("bare-seconds", document.place(path), message, f"write {_may_be(path, said)}")


def _may_be(path: DataPath, said: str) -> str:
    """Both times that a number without a colon may be; "" where it is surely seconds."""
    return with_or_without_colon(said) or few_seconds(str(path[-1]), said)
