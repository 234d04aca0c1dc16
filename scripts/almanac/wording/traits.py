"""The traits of a text that are weighed: its words, the groups that they are of, which group
follows which in a clause, which stand in one text, and what shape the text has.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from itertools import chain
from typing import NamedTuple

from almanac.wording.tokens import Token
from almanac.wording.topics import Joined, Topics, joined, of_phrases

REACH = 4  # how many tokens on a group still follows another
_BREAKS = frozenset({"FULL", "HALF"})
_SAY_LITTLE = frozenset({"LIGHT", "PER", "ON", "AND", "UNIT_M", "UNIT_S", "UNIT_MIN", "COMMA"})
_FEW, _MANY = 5, 20
_SEVERAL = 3
_HEAD, _TAIL = 3, 4  # tokens
_CLAUSE_ENDS = frozenset({"FULL", "HALF", "COMMA"})
_QUOTED = re.compile(r"['‘][^'‘’]{8,}['’]|[\"“][^\"“”]{6,}[\"”]")
_ENDINGS = (("ies", "y"), ("sses", "ss"), ("ing", ""), ("ed", ""), ("es", "e"), ("s", ""))
_SHORTEST = 3
_LAST = "sgde"  # what endings end in
_MOST_TOKENS = 50_000  # that are remembered


class Groups(tuple[str, ...]):
    """The groups of a token, in order. The same groups are one and the same object, so that what
    is kept of pairs of them is quickly found.
    """

    __slots__ = ()
    __hash__ = object.__hash__


Pair = tuple[Groups, Groups]


def stem(word: str) -> str:
    """A word without its ending, so that "holds" and "holding" weigh the same."""
    if word[-1:] not in _LAST or len(word) <= _SHORTEST or "_" in word:
        return word
    for ending, instead in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) + len(instead) >= _SHORTEST:
            word = word.removesuffix(ending) + instead
            break
    return word.rstrip("e") if len(word) > _SHORTEST + 1 else word


@cache
def _of(names: tuple[str, ...]) -> Groups:
    return Groups(names)


_NONE = _of(())


@lru_cache(maxsize=16384)
def _groups(token: Token, topics: Topics) -> Groups:
    """The groups of a token: its meanings, its topics after a hash; of a number, how big."""
    own = [*(token.meanings - _SAY_LITTLE), *(f"#{topic}" for topic in topics)]
    if token.value is not None:
        own.append("few" if token.value < _FEW else "many" if token.value >= _MANY else "some")
    return _of(tuple(sorted(own)))


class _Read(NamedTuple):
    """What a token is by itself: of which groups, what ends with it, the stem that is weighed."""

    joined: Joined
    groups: Groups
    stem: str | None
    is_full: bool
    is_break: bool
    is_end: bool


class _Readings(dict[Token, _Read]):
    """What tokens that were met before are."""

    def __missing__(self, token: Token) -> _Read:
        if len(self) >= _MOST_TOKENS:
            self.clear()
        self[token] = found = _read(token)
        return found


_readings = _Readings()


def _read(token: Token) -> _Read:
    of_it, meanings = joined(token), token.meanings
    is_break, is_number = not meanings.isdisjoint(_BREAKS), token.value is not None
    is_nothing = is_break or not (meanings or of_it.topics or is_number)
    groups = _NONE if is_nothing else _groups(token, of_it.topics)
    stemmed = None if is_break or is_number else stem(token.text)
    is_end = not meanings.isdisjoint(_CLAUSE_ENDS)
    return _Read(of_it, groups, stemmed, "FULL" in meanings, is_break, is_end)


@dataclass(frozen=True)
class Traits:
    """What is weighed of a text, with the tokens that it stands on.

    Pairs are told by the groups of two tokens: each of the one with each of the other.
    """

    text: str
    tokens: Sequence[Token]

    @cached_property
    def _read(self) -> list[_Read]:
        return [*map(_readings.__getitem__, self.tokens)]

    @property
    def shape(self) -> list[str]:
        """How it begins, whether it asks and quotes, and of how many sentences it is."""
        sentences = sum([one.is_full for one in self._read])
        found = [f"sentences {min(sentences, _SEVERAL)}"]
        if self.tokens:
            found.append(f"first {self.tokens[0].text}")
        if "?" in self.text:
            found.append("ends asking" if self.text.rstrip().endswith("?") else "asks")
        if _QUOTED.search(self.text):
            found.append("quotes")
        return found

    @property
    def words(self) -> set[str]:
        """The stems of its words."""
        return {one.stem for one in self._read if one.stem is not None}

    @cached_property
    def groups(self) -> list[Groups]:
        """The groups of each token; none where a clause ends."""
        read = self._read
        found = [one.groups for one in read]
        for at, topics in of_phrases([one.joined for one in read]).items():
            found[at] = _groups(self.tokens[at], topics)
        return found

    @property
    def following(self) -> set[Pair]:
        """Of each token, those that follow it closely in a clause."""
        found: set[Pair] = set()
        near: list[tuple[int, Groups]] = []
        for at, (one, groups) in enumerate(zip(self._read, self.groups, strict=True)):
            if one.is_break:
                near.clear()
            elif groups:
                found.update([(before, groups) for place, before in near if at <= place + REACH])
                near.append((at, groups))
        return found

    @property
    def placed(self) -> set[tuple[str, Groups]]:
        """The tokens that stand first or last, and in the first or last clause: there a text says
        what it thinks of the rest.
        """
        clauses: list[list[Groups]] = [[]]
        for one, groups in zip(self._read, self.groups, strict=True):
            if not one.is_end:
                clauses[-1].append(groups)
            elif clauses[-1]:
                clauses.append([])
        if not clauses[-1]:
            clauses.pop()
        said = [*chain.from_iterable(clauses)]
        places = {"head": said[:_HEAD], "tail": said[-_TAIL:]}
        if len(clauses) > 1:
            places |= {"opening": clauses[0], "closing": clauses[-1]}
        return {(place, groups) for place, own in places.items() for groups in own if groups}

    @property
    def kinds(self) -> list[tuple[int, Groups]]:
        """The tokens that are of a group, by their numbers, with their groups."""
        return [(at, groups) for at, groups in enumerate(self.groups) if groups]

    @property
    def all_groups(self) -> frozenset[str]:
        """Every group that some token is of."""
        return frozenset(chain.from_iterable(self.groups))
