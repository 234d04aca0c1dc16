"""Failures of times and days, told as findings."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from almanac.findings import Finding
from almanac.source.failure import Failure, quote
from almanac.source.meant.cut_off import cut_from_year
from almanac.source.meant.put_together import taken
from almanac.source.said.bare_times import (
    dotted_time,
    halved_time,
    of_a_day,
    with_or_without_colon,
)
from almanac.source.said.days import day_meant, days_meant, later_meant, no_day
from almanac.source.said.times import (
    metres_for_time,
    tenths_meant,
    time_meant,
    times_between,
    without_unit,
)

_GROUP_AND_TIME = re.compile(r"\s*([\w-]+)\s*[ :=@]\s*([0-9]{0,2}:[0-5][0-9])\s*")
_TIMES = re.compile(
    r"[0-9]{1,2}:[0-5][0-9](?:\s*(?:[/,;&]|\band\b|\bor\b)\s*[0-9]{1,2}:[0-5][0-9])+"
)
_NONE = {"none", "no", "off", "-", "0:0", "nil"}
_MOST_TIMES = 12  # that are written out


def groups_in_list(failure: Failure) -> list[Finding] | None:
    """Lane groups with their times in a list, told at the first of them; None for anything else."""
    *path, last = failure.path or ("",)
    if not isinstance(last, int):
        return None
    data: object = failure.document.data
    for step in path:
        data = data[step]  # type: ignore[index]
    meant = of_groups(data, failure)
    if not meant:
        return None
    message = f"lane groups stand in braces with their times, and '{path[-1]}' is a list"
    return [] if last else [failure.say("wrong-type", message, f"write {meant}", tuple(path))]


def clock(failure: Failure) -> Iterator[Finding]:
    """A length of time that is none, or no whole one."""
    if (told := groups_in_list(failure)) is not None:
        yield from told
        return
    message, hint = str(failure.problem.cause), getattr(failure.problem.cause, "hint", "")
    written = failure.written
    said = failure.value if isinstance(failure.value, str) else ""
    in_list = isinstance((failure.path or ("",))[-1], int)  # a list holds no lane groups
    if said.lower() in _NONE and failure.path and not in_list:
        hint = f"for none, leave '{failure.path[-1]}' out"
    elif said and (meant := tenths_meant(without_unit(said), failure.wanted == "whole")):
        hint = meant
    elif said and (meant := times_between(said) or with_or_without_colon(said)):
        hint = f"write one time: {meant}"
    elif (
        said
        and not metres_for_time(said)
        and (meant := time_meant(said) or ("" if in_list else of_groups(said, failure)))
    ):
        hint = f"write {meant}"
    elif said and (meant := metres_for_time(said) or several_times(said, failure)):
        hint = meant
    elif said and (meant := dotted_time(said)):
        hint = f"write {meant} for minutes and seconds"
    elif isinstance(failure.value, float) and (meant := halved_time(written)):
        message, hint = f"{written} is read as {written} seconds", f"write {meant}"
    elif isinstance(failure.value, float) and (meant := of_a_day(failure.value)):
        message = f"{written} is no time: a spreadsheet has made a share of a day of it"
        hint = f"write {meant}"
    elif isinstance(failure.value, float) and (meant := dotted_time(written)):
        is_even = failure.value.is_integer()
        unit = "s" if is_even else "seconds"
        is_whole = failure.wanted == "whole" and not is_even
        message = f"{written} is read as {failure.value:g} {unit}"
        message += ", and this is in whole seconds" if is_whole else ""
        shown = f"{failure.value:02.0f}" if is_even else f"{failure.value:05.2f}"
        seconds = "" if is_whole or failure.value < 1 else f", or 0:{shown} for seconds"
        hint = f"write {meant} for minutes and seconds{seconds}"
    yield failure.say("bad-time", message, hint)


def day(failure: Failure) -> Iterator[Finding]:
    """A day that is none."""
    said = failure.value if isinstance(failure.value, str) else ""
    if cut_from_year(failure):
        return
    since = str(failure.siblings.get("on", ""))
    if meant := day_meant(said):
        meant = f"write {meant}"
    elif failure.path[-1:] == ("again",) and (meant := later_meant(said, since)):
        meant = f"write {meant}, counted from {since}"
    else:
        meant = days_meant(said) or no_day(said)
    usual = "write a day that exists, from 1900 to 2199, as YYYY-MM-DD"
    yield failure.say("bad-date", f"{quote(failure.value)} is no day", meant or usual)


def of_groups(value: Any, failure: Failure) -> str:
    """Times with the lane groups that they are for, in a text or a list, as fields; "" where they
    are none.
    """
    pieces = re.split(r"[,;/]", value) if isinstance(value, str) else value
    if not isinstance(pieces, list) or not pieces:
        return ""
    told: dict[str, str] = {}
    for piece in pieces:
        text = piece
        if isinstance(piece, Mapping) and len(piece) == 1:
            text = " ".join(map(str, next(iter(piece.items()))))
        found = _GROUP_AND_TIME.fullmatch(text) if isinstance(text, str) else None
        group: dict[str, Any] = {"reference": "lane_group"}
        name = taken(failure, group, found[1]) if found else ""
        if not found or not name:
            return ""
        told[name] = found[2] if told.get(name, found[2]) == found[2] else "..."  # which is meant?
    return "{" + ", ".join(f"{name}: {time}" for name, time in told.items()) + "}"


def several_times(text: str, failure: Failure) -> str:
    """For several times in one text: how those of reps and those of lane groups are written; ""
    elsewhere.
    """
    if not _TIMES.fullmatch(text.strip()) or "sendoff" not in failure.path:
        return ""
    times = re.findall(r"[0-9]{1,2}:[0-5][0-9]", text)
    if len(times) > _MOST_TIMES:
        return f"in a list, one for each rep in order: [{times[0]}, {times[1]}, ...]"
    groups = list(failure.names.of("reference", "lane_group"))
    names = [*groups, *["..."] * len(times)][: len(times)]
    own = ", ".join(f"{name}: {time}" for name, time in zip(names, times, strict=True))
    return f"for lane groups write {{{own}}}; for one rep after the other [{', '.join(times)}]"
