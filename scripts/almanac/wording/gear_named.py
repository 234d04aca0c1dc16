"""Gear that a text has somebody use, by its names."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from almanac.wording.clauses import clauses, denies

_USES = (
    r"(?:in|with|wearing|wears?|on|against|behind|tow(?:ing|s)?|pull(?:ing|s)? on|put(?:s|ting)? on"
    r"|strap(?:ped|s)?(?: on| into)?|(?:buckle|belt)d? (?:on|into)|belted into"
    r"|clip(?:ped)? (?:on|to|into)"
    r"|tied to|add|use|using|take|hold(?:ing)?|through)"
)
_BETWEEN = (
    r"(?: (?:a|an|the|your|both|his|her|their|small|large|big|short|long|light|one|two|own))*"
)
_LETS_GO = denies(
    "before", "until", "(?<!push )(?<!pushing )off", "out of", "away from", "as if", "like",
    "unless", "nor", "free of", "take off", "leave", "left", "than", "later", "once", "if",
)  # fmt: skip
_LEAST_LETTERS = 3
_LONG = 6  # letters of a first word: enough to tell it by, whatever follows


class GearNames:
    """The names of some gear, by id, ready to be looked for in many texts."""

    def __init__(self, names: Mapping[str, Iterable[str]]) -> None:
        self._ids = {
            name.lower(): id
            for id, every in names.items()
            for name in every
            if len(name) >= _LEAST_LETTERS
        }
        by_length = sorted(self._ids, key=len, reverse=True)
        every = "|".join(map(re.escape, by_length)) or r"(?!)"
        self._pattern = re.compile(rf"\b{_USES}{_BETWEEN} ({every})s?\b")
        firsts = {name.split(" ")[0] for name in self._ids}
        self._begin = [
            (size, {first[:size] for first in firsts if (len(first) < _LONG) == (size < _LONG)})
            for size in (_LEAST_LETTERS, _LONG)
        ]
        self._cores = [
            name for name in by_length if not any(own in name for own in by_length if own != name)
        ]

    def used_in(self, text: str) -> Iterator[str]:
        """The ids of gear that a text has somebody use. A clause that denies it, or takes it off,
        is excused.
        """
        written = text.lower()
        words = written.split(" ")
        if all(begin.isdisjoint([one[:size] for one in words]) for size, begin in self._begin):
            return
        for core in self._cores:  # a loop: this is done for every text
            if core in written:
                break
        else:
            return
        for clause in clauses(written):
            for found in self._pattern.finditer(clause):
                if not _LETS_GO.search(clause):
                    yield self._ids[found.group(1)]
