"""The words and ids of one catalogue, by which documents are checked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Names:
    """Every word and id of the present catalogue.

    ``words`` maps ("vocabulary", name) and ("reference", kind) to the words in order, each with the
    file that defines it; ``moved`` maps (kind, old id) to the present id at the end of the way, or
    to "" where the way leads nowhere.
    """

    words: Mapping[tuple[str, str], Mapping[str, str]]
    moved: Mapping[tuple[str, str], str] = field(default_factory=dict)

    def knows(self, keyword: str, name: str) -> bool:
        """Whether the list is here at all: a file that is missing or broken makes no word wrong."""
        return (keyword, name) in self.words

    def of(self, keyword: str, name: str) -> Mapping[str, str]:
        """The words of one list; none where the list itself is missing."""
        return self.words.get((keyword, name), {})
