"""What reps are, in one line of at most 34 characters, to be read from across the pool."""

from __future__ import annotations

from itertools import groupby

from almanac.model.catalogue import Catalogue
from almanac.model.effort_plans import Build, Descend, Effort, Hold, Rotate
from almanac.model.reps import Reps
from almanac.report.set_words import TO_MARK
from almanac.units import show_number, show_time

MOST = 34
"""Characters of a line: three lane groups to a phone are then readable at arm's length."""
_CUT = "…"
_SHORTER = ((" with ", " + "), (" and ", " + "), (" the ", " "), (" a ", " "))
_AND = " + "
_MOST_PARTS = 3  # that are told by name where they must be cut


def run_line(catalogue: Catalogue, item: Reps) -> str:
    """The line of reps: how far and what, with the effort and how many where there is room; what
    has no room even so is cut after whole words, and ends with ``…``.
    """
    hold_s, times = item.parts[0].hold_s, f"{item.reps} × " if item.reps > 1 else ""
    far = show_time(hold_s) if hold_s and not item.distance else show_number(item.distance)
    if item.is_parted or item.is_split:
        return _of_parts(catalogue, item, times, far)
    names = [catalogue.drills[id].title for id in item.parts[0].drills]
    what, hard = (
        f"{far} {' / '.join(names)}",
        f", {effort_in_short(catalogue, item.parts[0].effort)}",
    )
    lines = (times + what + hard, what + hard, times + what, what)
    told = next((line for line in lines if len(line) <= MOST), "")
    if told or len(names) <= 2:
        return told or f"{far} {' / '.join(_fitted(names, MOST - len(far) - 1))}"
    return f"{times}{far}, {len(names)} drills in turn"


def _of_parts(catalogue: Catalogue, item: Reps, times: str, far: str) -> str:
    parts, in_short = (
        _split(catalogue, item, until)
        if item.is_split
        else [_part(catalogue, item, number, until) for number in range(len(item.parts))]
        for until in ("\n", ",")
    )
    what, short = (f"{far}: {_AND.join(own)}" for own in (parts, in_short))
    told = next((line for line in (times + what, what, short) if len(line) <= MOST), "")
    if told or len(parts) <= _MOST_PARTS:
        return told or f"{far}: {_AND.join(_fitted(in_short, MOST - len(far) - 2))}"
    return f"{times}{far} in {len(parts)} parts"


def _fitted(names: list[str], room: int) -> list[str]:
    """Names that have so many characters together, with three between one and the next: the
    shortest stay as they are, the others share what they leave.
    """
    left, fitted = room - len(_AND) * (len(names) - 1), dict[int, str]()
    shortest_first = sorted(range(len(names)), key=lambda place: len(names[place]))
    for count, place in enumerate(shortest_first):
        fitted[place] = cut(names[place], left // (len(names) - count))
        left -= len(fitted[place])
    return [fitted[place] for place in range(len(names))]


def cut(text: str, room: int) -> str:
    """A text in so many characters: with ``+`` for with and and, without articles; and where that
    is still too long cut after a whole word, or within the only one.
    """
    for words, fewer in _SHORTER:
        if len(text) > room:
            text = text.replace(words, fewer)
    if len(text) <= room:
        return text
    head, blank, _ = text[:room].rpartition(" ")
    kept = head if blank and not head.isdigit() else text[: max(1, room - len(_CUT))]
    return kept.rstrip(" ,:+")[: max(1, room - len(_CUT))] + _CUT


def _split(catalogue: Catalogue, item: Reps, until: str) -> list[str]:
    """What reps in equal shares hold, those alike that follow each other told once; with how far
    where that differs.
    """
    alike = [(do, len(list(own))) for do, own in groupby(part.do for part in item.parts)]
    share = item.distance / len(item.parts)
    is_even = len({count for _, count in alike}) == 1
    return [
        ("" if is_even else f"{show_number(count * share)} ")
        + catalogue.drills[do].title.partition(until)[0]
        for do, count in alike
    ]


def _part(catalogue: Catalogue, item: Reps, number: int, until: str) -> str:
    """A part by how far or to where, and what, by its title until some mark; where its neighbour is
    the same, by how hard, and the drill at the first of them alone.
    """
    part, around = item.parts[number], item.parts[max(0, number - 1) : number + 2]
    is_like = sum(other.do == part.do for other in around) > 1
    is_again = number > 0 and item.parts[number - 1].do == part.do
    far = "" if part.to else show_number(part.distance)
    words = (
        show_time(part.hold_s) if part.hold_s else far,
        "" if is_again else catalogue.drills[part.do].title.partition(until)[0],
        TO_MARK[part.to] if part.to else "",
        effort_in_short(catalogue, part.effort) if is_like else "",
    )
    return " ".join(filter(None, words))


def effort_in_short(catalogue: Catalogue, effort: Effort) -> str:
    """The effort of reps in a word or three: ``steady``, ``steady to fast``."""

    def title(word: str) -> str:
        return catalogue.efforts[word].title.lower()

    match effort:
        case Hold(word):
            return title(word)
        case Descend(first, last) | Build(first, last):
            return f"{title(first)} to {title(last)}"
        case Rotate(words):
            return "/".join(map(title, words))
