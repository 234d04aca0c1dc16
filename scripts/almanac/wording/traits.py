"""The traits of a text that are weighed: its words, the groups that they are of, which group
follows which in a clause, which stand in one text, and what shape the text has.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from almanac.wording.tokens import Token
from almanac.wording.topics import Topics, topics_of

REACH = 4  # how many tokens on a group still follows another
_BREAKS = {"FULL", "HALF"}
_SAY_LITTLE = frozenset({"LIGHT", "PER", "ON", "AND", "UNIT_M", "UNIT_S", "UNIT_MIN", "COMMA"})
_FEW, _MANY = 5, 20
_SEVERAL = 3
_HEAD, _TAIL = 3, 4  # tokens
_CLAUSE_ENDS = {"FULL", "HALF", "COMMA"}
_QUOTED = re.compile(r"['‘][^'‘’]{8,}['’]|[\"“][^\"“”]{6,}[\"”]")
_ENDINGS = (("ies", "y"), ("sses", "ss"), ("ing", ""), ("ed", ""), ("es", "e"), ("s", ""))
_SHORTEST = 3

Groups = tuple[str, ...]


@lru_cache(maxsize=16384)
def stem(word: str) -> str:
    """A word without its ending, so that "holds" and "holding" weigh the same."""
    if len(word) <= _SHORTEST or "_" in word:
        return word
    for ending, instead in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) + len(instead) >= _SHORTEST:
            word = word.removesuffix(ending) + instead
            break
    return word.rstrip("e") if len(word) > _SHORTEST + 1 else word


@lru_cache(maxsize=16384)
def _groups(token: Token, topics: Topics) -> Groups:
    """The groups of a token: its meanings, its topics after a hash; of a number, how big."""
    own = [*(token.meanings - _SAY_LITTLE), *(f"#{topic}" for topic in topics)]
    if token.value is not None:
        own.append("few" if token.value < _FEW else "many" if token.value >= _MANY else "some")
    return tuple(sorted(own))


@dataclass(frozen=True)
class Traits:
    """What is weighed of a text, with the tokens that it stands on."""

    text: str
    tokens: Sequence[Token]

    @property
    def shape(self) -> list[str]:
        """How it begins, whether it asks and quotes, and of how many sentences it is."""
        sentences = sum("FULL" in token.meanings for token in self.tokens)
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
        return {
            stem(token.text)
            for token in self.tokens
            if token.value is None and not token.meanings & _BREAKS
        }

    @cached_property
    def groups(self) -> list[Groups | None]:
        """The groups of each token; None where a clause ends."""
        return [
            None if token.meanings & _BREAKS else _groups(token, topics)
            for token, topics in zip(self.tokens, topics_of(self.tokens), strict=True)
        ]

    @cached_property
    def after(self) -> dict[str, set[str]]:
        """Of each group, those that follow it closely in a clause."""
        found: dict[str, set[str]] = {}
        groups = self.groups
        for at, before in enumerate(groups):
            if not before:
                continue
            close: list[str] = []
            for after in groups[at + 1 : at + 1 + REACH]:
                if after is None:
                    break
                close += after
            for group in before:
                found.setdefault(group, set()).update(close)
        return found

    @property
    def placed(self) -> dict[str, set[str]]:
        """The groups of tokens that stand first or last, and in the first or last clause: there a
        text says what it thinks of the rest.
        """
        clauses: list[list[Groups]] = [[]]
        for token, groups in zip(self.tokens, self.groups, strict=True):
            if not token.meanings & _CLAUSE_ENDS:
                clauses[-1].append(groups or ())
            elif clauses[-1]:
                clauses.append([])
        if not clauses[-1]:
            clauses.pop()
        said = [groups for clause in clauses for groups in clause]
        places = {"head": said[:_HEAD], "tail": said[-_TAIL:]}
        if len(clauses) > 1:
            places |= {"opening": clauses[0], "closing": clauses[-1]}
        return {place: set().union(*stretch) for place, stretch in places.items()}

    @cached_property
    def kinds(self) -> list[tuple[int, Groups]]:
        """The tokens that are of a group, by their numbers, with their groups."""
        return [(at, groups) for at, groups in enumerate(self.groups) if groups]

    @cached_property
    def all_groups(self) -> frozenset[str]:
        """Every group that some token is of."""
        return frozenset(group for _, groups in self.kinds for group in groups)
