"""Answers to what a new club is asked, in words, made into values. Each raises ValueError with a
sentence that says what to write.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable

from almanac.arithmetic.contrast import far_enough, is_amber
from almanac.checks.site_look import GROUNDS
from almanac.model.new_club import LEVELS, NewGroup, NewSquad
from almanac.source import schemas
from almanac.source.paths import bad_name
from almanac.units import TimeError, parse_time, show_time

SQUAD = "Juniors building 3 3 12 -"
NONE = "-"
_PALETTE = {"blue": "#0b3d91", "green": "#0f5132", "red": "#8f1d1d", "violet": "#4c1d95"}
# Over 200 kicked on the back. Whoever takes longer is, at an easy effort, slower than anybody stays
# up at (``slowest_afloat`` in the policy), so that no set of lengths can be timed by it.
_QUICKEST_S, _SLOWEST_S = 100, 420
_OWNED = re.compile(r"([A-Za-z][\w-]*) ?[=:]? ?(\d{1,4})(?!\d)")


def name(words: str) -> str:
    """What a club is called."""
    if not 2 <= len(words) <= 60 or re.search(r"[\x00-\x1f<>&]", words):
        raise ValueError(f"'{words}' will not do: a name is 2 to 60 letters, without <, > and &")
    return words


def welcome(words: str) -> str:
    """Words of welcome; "" for none."""
    if words in (NONE, ""):
        return ""
    if not 2 <= len(words) <= 300 or re.search(r"[\x00-\x1f]", words):
        raise ValueError("a welcome is a sentence or two, of 300 letters at most, in one line")
    return words


def colours(words: str) -> tuple[str, ...]:
    """A colour as it is pressed on white and on dark, far enough from both; none for none."""
    if words in (NONE, ""):
        return ()
    colour = _PALETTE.get(words.lower(), words.lower())
    if not re.fullmatch(r"#[0-9a-f]{6}", colour):
        named = ", ".join(_PALETTE)
        raise ValueError(f"'{words}' is no colour: write {named}, or # and six digits as #0b3d91")
    if is_amber(colour):
        raise ValueError(f"'{words}' is amber, which stands for danger alone: take another colour")
    return far_enough(colour, GROUNDS["light"]), far_enough(colour, GROUNDS["dark"])


def address(words: str) -> str:
    """An address on the web, by the pattern that the club's file is held to; "" for none."""
    if words in (NONE, ""):
        return ""
    pattern = schemas.raw("club")["$defs"]["address"]["pattern"]
    if not re.search(pattern, words):
        port = re.search(r"//[^/]*:(\d+)", words)
        if port and int(port[1]) not in range(1, 65536):
            raise ValueError(f"'{words}' is no address: a port is a number from 1 to 65535")
        guess = f"https://{words.rpartition('://')[2].lstrip('/')}"
        mend = f"; do you mean {guess}?" if re.search(pattern, guess) and guess != words else ""
        raise ValueError(f"'{words}' is no address: write https://, the host, and the path{mend}")
    return words


def program(words: str) -> str:
    """What pip installs; "" for not yet."""
    if words in (NONE, ""):
        return ""
    if not re.fullmatch(r"\w[\w.+:/@=~%\[\]#&?-]*", words, re.ASCII):
        raise ValueError(f"'{words}' is nothing that pip installs: write one address, no spaces")
    return words


def named(words: str) -> tuple[str, str]:
    """A name and the id that it gives: what is an id already gets a title from it."""
    said = name(words)
    letters = unicodedata.normalize("NFKD", said.lower().replace("ß", "ss"))
    plain = letters.encode("ascii", "ignore").decode()
    id = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:50].strip("-")
    if not id or bad_name(id, id, "file"):
        raise ValueError(f"'{words}' gives no file's name: use a few plain letters or digits too")
    return id, (said.replace("-", " ").capitalize() if said == id else said)


def count(least: int, most: int, what: str) -> Callable[[str], int]:
    """How an answer is read that is a number."""

    def read(words: str) -> int:
        if not re.fullmatch(r"[0-9]{1,5}", words) or not least <= int(words) <= most:
            raise ValueError(f"'{words}' is no number of {what}: write one of {least} to {most}")
        return int(words)

    return read


def level(words: str) -> str:
    """A level, by its word or its first letters."""
    found = [own for own in LEVELS if words and own.startswith(words.lower())]
    if len(found) != 1:
        raise ValueError(f"'{words}' is no level: write {', '.join(LEVELS[:-1])} or {LEVELS[-1]}")
    return found[0]


def time(words: str) -> str:
    """A time over 200 kicked on the back; "" for not timed yet."""
    if words in (NONE, ""):
        return ""
    said = words.replace(",", ".")
    if found := re.fullmatch(r"(\d)\.([0-5]\d)", said):  # seconds of one digit are no time here
        raise ValueError(f"'{words}' is no time: do you mean {found[1]}:{found[2]}?")
    try:
        seconds = parse_time(float(said) if re.fullmatch(r"\d+(\.\d+)?", said) else said)
    except TimeError as problem:
        raise ValueError(f"{problem}; {problem.hint}; - for not timed yet") from None
    if not _QUICKEST_S <= seconds <= _SLOWEST_S:
        least, most = show_time(_QUICKEST_S), show_time(_SLOWEST_S)
        raise ValueError(
            f"'{words}' is no time over 200 kicked on the back: those are from {least} to {most}; "
            f"write - for not timed yet, or for a group that would take longer"
        )
    return said if ":" in said else show_time(seconds, tenths=True)


def squad(words: str) -> NewSquad:
    """A squad in one line: ``Juniors building 3 2 10 4:20 / 1 6 -``, lanes, heads and time of each
    lane group; no lanes where it trains on land: ``Juniors building 3 12``.
    """
    first, *others = (part.strip() for part in words.split("/"))
    found = re.fullmatch(rf"(.+?) ({'|'.join(LEVELS)}) (\S+) (.+)", first)
    if not found:
        raise ValueError(
            f"'{words}' is no squad: write it like '{SQUAD}'; its level is {', '.join(LEVELS)}"
        )
    id, title = named(found[1])
    sessions = count(1, 14, "sessions a week")(found[3])
    return NewSquad(id, title, found[2], sessions, tuple(map(_group, [found[4], *others])))


def _group(words: str) -> NewGroup:
    parts = words.split()
    if len(parts) == 1:
        parts = ["1", parts[0], NONE]
    if len(parts) not in (2, 3):
        raise ValueError(f"'{words}' is no lane group: write lanes, heads, and the time or -")
    lanes, heads = count(1, 10, "lanes")(parts[0]), count(1, 200, "swimmers")(parts[1])
    return NewGroup(lanes, heads, time(parts[2] if len(parts) == 3 else NONE))


def gear(words: str) -> dict[str, int]:
    """Gear and how many of each; none for -."""
    if words in (NONE, ""):
        return {}
    pairs = _OWNED.findall(words)
    left = _OWNED.sub("", words).strip(" ,;")
    if left or not pairs:
        raise ValueError(f"'{words}' is no list of gear: write it like 'kickboard=20 fins=12'")
    return {id.lower(): count(0, 1000, id)(number) for id, number in pairs}
