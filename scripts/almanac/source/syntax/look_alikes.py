"""Characters that only look like the plain ones that YAML is made of, as programs for letters and
chats put them: a no-break blank, a long dash before an item, a colon of another script.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

import yaml

from almanac.source.plain_loader import PlainLoader
from almanac.source.syntax.slips import Position, Recognised, excerpt

_DASH = re.compile(r"(\s*)[‐-―−﹘－](?=\s+\S)")
_HEAD = re.compile(r"\s*(?:- +)?[\w\s-]*[:：]?\s*")  # what stands before a value


def look_alike(at: Position, since: Position, lines: Sequence[str]) -> Recognised | None:
    """The first such character near where the parser gave up, by which the file reads further once
    it is a plain one.
    """
    last = min(max(at[0], since[0]) + 1, len(lines))
    for number in range(max(0, min(at[0], since[0]) - 1), last):
        plain = _plain(lines[number])
        if plain == lines[number] or not _reads_further(number, plain, at[0], lines):
            continue
        odd = next(own for own, new in zip(lines[number], f"{plain}\n", strict=False) if own != new)
        column = lines[number].index(odd)
        return (number, column), _message(odd), f"{_mend(odd)}: {excerpt(plain)}"
    return None


def _plain(line: str) -> str:
    head = _HEAD.match(_DASH.sub(r"\1-", line))
    assert head is not None  # it may be empty
    own = "".join(map(_plain_sign, head[0]))
    return own + line[len(head[0]) :]


def _plain_sign(sign: str) -> str:
    if sign == "：":
        return ":"
    if unicodedata.category(sign) == "Zs":
        return " "
    return "" if unicodedata.category(sign) == "Cf" else sign


def _message(odd: str) -> str:
    if odd == "\u00a0":
        return "the blank here is a no-break one, which only looks like a blank"
    kind = unicodedata.category(odd)
    what = {"Zs": "blank", "Pd": "hyphen", "Sm": "hyphen", "Po": "colon"}.get(kind, "")
    if not what:
        return "a character that cannot be seen stands here"
    return (
        f"'{odd}' only looks like a {what}" if what != "blank" else "this only looks like a blank"
    )


def _mend(odd: str) -> str:
    return "write it with the space bar" if unicodedata.category(odd) == "Zs" else "write"


def _reads_further(number: int, plain: str, gave_up: int, lines: Sequence[str]) -> bool:
    try:
        yaml.compose("\n".join([*lines[:number], plain, *lines[number + 1 :]]), PlainLoader)
    except yaml.MarkedYAMLError as problem:
        return problem.problem_mark is None or problem.problem_mark.line > gave_up
    except yaml.YAMLError:
        return False
    return True
