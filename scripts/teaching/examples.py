"""What the wording rule is taught by: sentences of the tests, and texts of catalogues with their
sentences and clauses, which ask for nothing.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations, product
from pathlib import Path

from almanac.model.load import load
from almanac.source.texts import texts_of
from almanac.wording.amounts import tokens
from almanac.wording.parts import parts_of
from almanac.wording.patterns import TokenRow
from almanac.wording.reading import Hit, hits_of
from almanac.wording.traits import Traits

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "tests"))

from sentence_lists import BATCHES, MENDED_BY, THREEFOLD, WRITERS, sentences  # noqa: E402

CATALOGUE = "catalogue"
_OF_CATALOGUE = 0.1  # how much a text of a catalogue counts, beside a sentence
_KINDS = {"unsafe": True, "harmless": False}
_CATALOGUES = (ROOT, ROOT / "tests" / "catalogue", ROOT / "tests" / "examples" / "base")


@dataclass(frozen=True, eq=False)
class Example:
    """A text, whether it asks for a danger, and who wrote it."""

    text: str
    is_unsafe: bool
    writer: str
    is_known: bool  # whether the patterns were mended by it
    counts: float = 1.0

    @cached_property
    def _row(self) -> TokenRow:
        return TokenRow(tokens(self.text))

    @cached_property
    def traits(self) -> frozenset[str]:
        """Its traits, as the file of weights names them."""
        traits = Traits(self.text, self._row.tokens)
        found = {f"word\t{word}" for word in traits.words}
        found.update(f"shape\t{shape}" for shape in traits.shape)
        found.update(f"group\t{group}" for group in traits.all_groups)
        for place, groups in traits.placed:
            found.update(f"placed\t{place}\t{group}" for group in groups)
        for one, other in traits.following:
            found.update(f"following\t{first}\t{second}" for first, second in product(one, other))
        beside = combinations(sorted(traits.all_groups), 2)
        found.update(f"beside\t{one}\t{other}" for one, other in beside)
        return frozenset(found)

    @cached_property
    def is_asked(self) -> bool:
        """Whether a pattern is found that nothing denies."""
        return any(not hit.is_excused(self._row, False) for hit in self._hits)

    @cached_property
    def hits(self) -> frozenset[str]:
        """The dangers that patterns name, and whether one is asked for."""
        named = {f"hit\t{hit.danger.name}" for hit in self._hits}
        return frozenset(named | {"hit\tasked"} if self.is_asked else named)

    @cached_property
    def _hits(self) -> Sequence[Hit]:
        return tuple(hits_of(self._row))


def examples() -> list[Example]:
    """Every sentence of the tests, then every text of the catalogues."""
    return [*_sentences(), *_texts()]


def _sentences() -> Iterator[Example]:
    for batch in BATCHES:
        for kind, is_unsafe in _KINDS.items():
            for text in sentences(kind, batch):
                counts = 3.0 if batch == THREEFOLD else 1.0
                yield Example(text, is_unsafe, WRITERS[batch], batch in MENDED_BY, counts)


def _texts() -> Iterator[Example]:
    found = {
        text: None
        for root in _CATALOGUES
        for (kind, id), document in load(root).catalogue.documents.items()
        for own in texts_of(kind, id, document.data)
        for text in (own.text, *(part.text for part in parts_of(own.text)))
    }
    yield from (Example(text, False, CATALOGUE, False, _OF_CATALOGUE) for text in found)
