"""The words and ids of one catalogue, by which documents are checked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

Question = tuple[str, str, str]  # keyword, name of the list, word
Answer = bool | None


@dataclass(frozen=True)
class Names:
    """Every word and id of the present catalogue.

    ``words`` maps ("vocabulary", name) and ("reference", kind) to the words in order, each with the
    file that defines it; ``moved`` maps (kind, old id) to the present id at the end of the way, or
    to "" where the way leads nowhere.
    """

    words: Mapping[tuple[str, str], Mapping[str, str]]
    moved: Mapping[tuple[str, str], str] = field(default_factory=dict)

    def answer(self, keyword: str, name: str, word: str) -> Answer:
        """Whether a list holds a word; None where the list itself is missing: a file that is
        missing or broken makes no word wrong.
        """
        known = self.words.get((keyword, name))
        return None if known is None else word in known

    def of(self, keyword: str, name: str) -> Mapping[str, str]:
        """The words of one list; none where the list itself is missing."""
        return self.words.get((keyword, name), {})
