"""What coaches write in one line as on a whiteboard, in the fields that it falls into: reps, a
pause, a review.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from almanac.source.failure import Failure
from almanac.source.meant.put_together import taken
from almanac.source.meant.words import as_written, plan_meant
from almanac.source.said.days import day_meant
from almanac.source.said.times import time_meant
from almanac.source.scalars import scalar

_REPS_FIRST = re.compile(
    r"(?:([1-9][0-9]{0,2}) ?[x×*] ?)?([0-9]{1,4})(?![0-9:.,%]) ?(?:m|yds?|yards?|met(?:re|er)s)?\b",
    re.ASCII,
)
_UNIT = r"(?:s|secs?|seconds?|mins?|minutes?|″|\")"
_TIME = rf"([0-9]{{0,2}}:[0-5][0-9]|[0-9]{{1,3}} ?{_UNIT}?(?![\w:]))"
_LEAVES = re.compile(rf"(?:\b(?:on|leaving|every|send-?off)\b:?|@)\s*{_TIME}", re.IGNORECASE)
_STOPS = r"(?:rest|break|pause|recovery|off|ri|r\.i\.)"
_RESTS = re.compile(
    rf"\b{_STOPS}(?: of)?:?\s*{_TIME}|{_TIME}\s*{_STOPS}\b|\+\s*{_TIME}", re.IGNORECASE
)
_PLANS = {"build": "build", "descend": "descend", "desc": "descend", "alternate": "rotate"}
_A_DAY = re.compile(
    r"[0-9]{4}-[0-9]{2}-[0-9]{2}|[0-9]{1,2}(?:st|nd|rd|th)?[ ./-]\w{1,9}[ ./-][0-9]{4}"
)
_FILLING = {"of", "at", "the", "a", "and", "with", "pace", "effort", "-", "–", "/", "all"}
_LEAST_CELLS = 3
_MOST_WORDS = 12  # of what is done, and how hard


def rep_meant(failure: Failure, text: str) -> str:
    """Reps as a whiteboard has them, ``6 x 50 back kick easy on 1:45``, in their fields; "" for
    what does not begin so. What is not said stays open.
    """
    text = _of_cells(text)
    said = _REPS_FIRST.match(text.strip())
    if not said or (not said[1] and int(said[2]) < 10):
        return ""
    told = {"reps": said[1] or "1", "distance": said[2], "do": "...", "effort": "..."}
    rest = text.strip()[said.end() :]
    stops, leaves = _RESTS.search(rest), _LEAVES.search(rest)
    if leaves:
        told["sendoff"] = _time(leaves)
    elif stops or said[1]:
        told["rest"] = _time(stops) if stops else "..."
    for found in filter(None, (stops, leaves)):
        rest = rest.replace(found[0], " ")
    plan = re.search(r"\b(?:build|desc)\w*( \w+ to \w+)?", rest, re.IGNORECASE)
    if plan and (meant := plan_meant(plan[0], _PLANS.values(), failure)):
        told["effort"] = meant
        rest = rest.replace(plan[0], " ")
    words = re.sub(r"[,;()]|[0-9]*:[0-9]+", " ", rest).split()[:_MOST_WORDS]
    told["do"], words = _longest(failure, {"reference": "drill"}, words)
    if told["effort"] == "...":
        told["effort"], words = _longest(failure, {"vocabulary": "efforts"}, words)
    if told["effort"] == "..." and (said_plan := next(filter(None, map(_plan, words)), "")):
        told["effort"] = f"{{{said_plan}: [..., ...]}}"
        return as_item(told)
    gear, words = _longest(failure, {"reference": "gear"}, words)
    if gear != "...":
        told["gear"] = f"[{gear}]"
    if (left := [own for own in words if own.lower() not in _FILLING]) and told["do"] != "...":
        told["note"] = scalar(" ".join(left))
    return as_item(told)


def _of_cells(text: str) -> str:
    """A row of a table, ``6,50,back kick,easy,1:45``, as a whiteboard has it; any other text as it
    is.
    """
    cells = [own.strip() for own in re.split(r"[,;|\t]", text.strip(" |")) if own.strip()]
    if len(cells) < _LEAST_CELLS or not all(own.isdigit() for own in cells[:2]):
        return text
    leaves = re.fullmatch(_TIME, cells[-1]) is not None and ":" in cells[-1]
    row = [*cells[2:-1], f"on {cells[-1]}"] if leaves else cells[2:]
    return f"{cells[0]} x {cells[1]} {' '.join(row)}"


def as_item(told: Mapping[str, str]) -> str:
    """Fields in braces, in their order."""
    return "{" + ", ".join(f"{name}: {own}" for name, own in told.items()) + "}"


def pause_meant(text: str) -> str:
    """A pause between items, ``1 min rest``, in its field; "" for what is none."""
    found = _RESTS.fullmatch(text.strip())
    return f"{{pause: {_time(found)}}}" if found else ""


def review_meant(failure: Failure, text: str) -> str:
    """Who looked and when, in one text; "" for what says neither."""
    if not {"by", "on", "again"} <= {*failure.fields}:
        return ""
    told: dict[str, str] = {}
    for name, day in zip(("on", "again"), _A_DAY.findall(text), strict=False):
        told[name] = day if re.match(r"[0-9]{4}-", day) else day_meant(day) or "..."
    words = re.sub(r"[,;/]|\bby\b|\bon\b", " ", _A_DAY.sub(" ", text)).split()[:_MOST_WORDS]
    if (role := _longest(failure, failure.fields["by"], words)[0]) != "...":
        told["by"] = role
    return as_written(failure, told) if told else ""


def _longest(failure: Failure, piece: Mapping[str, Any], words: list[str]) -> tuple[str, list[str]]:
    """The word or id of the longest row of words that is surely one, or dots, and the other
    words.
    """
    ends = [(start, end) for end in range(len(words), 0, -1) for start in range(end)]
    for start, end in sorted(ends, key=lambda span: span[0] - span[1]):
        if own := taken(failure, dict(piece), " ".join(words[start:end])):
            return own, [*words[:start], *words[end:]]
    return "...", words


def _plan(word: str) -> str:
    """The plan of efforts that a word names."""
    return next((plan for said, plan in _PLANS.items() if word.lower().startswith(said)), "")


def _time(found: re.Match[str]) -> str:
    """The time in a match, as it is written: a bare number is of seconds."""
    said = next(filter(None, found.groups()))
    if ":" in said:
        return f"0{said}" if said.startswith(":") else said
    minutes, seconds = divmod(int(said), 60) if said.isdigit() else (0, 0)
    return f"{minutes}:{seconds:02}" if said.isdigit() else time_meant(said)
