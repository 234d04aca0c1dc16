"""The course of teaching: which traits are kept, what they weigh, and what a text must weigh to be
found, so that few harmless sentences of a writer whom the model has not met are stopped.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.sparse import csr_matrix, hstack

from almanac.wording.glance import plain_stem
from almanac.wording.phrases import FEW, phrases, pieces
from teaching.examples import Example
from teaching.model import Model, Numbers, Table, fitted, table

KEPT = 9000  # traits
KEPT_PHRASES = 10000
_LEAST_TEXTS = 4
_LEAST_PHRASES = 2
_TRUST = 30.0
_TRUST_IN_PHRASES = 100.0
_TRUST_AT_A_GLANCE = 10.0
_HARMLESS_AT_A_GLANCE = 0.3  # how much a harmless sentence counts there: its words are as telling
OF_HITS = 0.15  # how much a pattern counts beside traits while the weights are looked for


@dataclass(frozen=True)
class Taught:
    """A model with the traits that it kept, one with its phrases, and the model of plain words for
    a first look.
    """

    columns: np.ndarray
    traits: Model
    said: np.ndarray
    phrases: Model
    glance: Model


@dataclass(frozen=True)
class Scores:
    """What texts weigh: without patterns, with them, and at a first look."""

    bare: Numbers
    whole: Numbers
    glance: Numbers


@dataclass(frozen=True)
class Course:
    """Examples as tables, to be split by writer."""

    examples: Sequence[Example]

    @cached_property
    def unsafe(self) -> Numbers:
        return np.array([example.is_unsafe for example in self.examples], float)

    @cached_property
    def traits(self) -> Table:
        return table((example.traits for example in self.examples), _LEAST_TEXTS)

    @cached_property
    def hits(self) -> Table:
        """The patterns found; where they were mended by the sentence, none."""
        return table((() if one.is_known else one.hits for one in self.examples), 1)

    @cached_property
    def own_hits(self) -> csr_matrix:
        """The patterns found in every example."""
        numbers = {name: at for at, name in enumerate(self.hits.names)}
        rows = [[numbers[name] for name in one.hits if name in numbers] for one in self.examples]
        cells = np.zeros((len(rows), len(numbers)))
        for at, columns in enumerate(rows):
            cells[at, columns] = 1
        return csr_matrix(cells)

    @cached_property
    def phrases(self) -> Table:
        return table((phrases(one.text) for one in self.examples), _LEAST_PHRASES)

    @cached_property
    def words(self) -> Table:
        return table((map(plain_stem, pieces(one.text)) for one in self.examples), 2)

    def taught(self, rows: np.ndarray, in_full: frozenset[int] = frozenset()) -> Taught:
        """What is learnt of some of the examples; texts of the catalogue ``in_full`` count as much
        as sentences.
        """
        counts = np.array([1.0 if at in in_full else self.examples[at].counts for at in rows])
        unsafe, hits = self.unsafe[rows], self.hits.cells[rows] * OF_HITS
        every = self.traits.evened()[rows]
        first = fitted(hstack([every, hits]).tocsr(), unsafe, counts, _TRUST)
        columns = _worth_most(every, first.weights[: every.shape[1]], KEPT)
        kept = self.traits.only(columns).evened()[rows]
        model = fitted(hstack([kept, hits]).tocsr(), unsafe, counts, _TRUST)
        plain = np.where(unsafe + (counts < 1) > 0, 1.0, _HARMLESS_AT_A_GLANCE)
        glance = fitted(self.words.evened()[rows], unsafe, plain, _TRUST_AT_A_GLANCE)
        every = self.phrases.evened(FEW)[rows]
        first = fitted(every, unsafe, counts, _TRUST_IN_PHRASES)
        said = _worth_most(every, first.weights, KEPT_PHRASES)
        kept = self.phrases.only(said).evened(FEW)[rows]
        by_phrases = fitted(kept, unsafe, counts, _TRUST_IN_PHRASES)
        return Taught(columns, model, said, by_phrases, glance)

    def scores(self, taught: Taught, rows: np.ndarray) -> Scores:
        """What some of the examples weigh by what was learnt."""
        kept = len(taught.columns)
        bare = Model(taught.traits.weights[:kept], taught.traits.bias)
        traits = bare.of(self.traits.only(taught.columns).evened()[rows])
        traits += taught.phrases.of(self.phrases.only(taught.said).evened(FEW)[rows])
        hits = self.own_hits[rows] @ (taught.traits.weights[kept:] * OF_HITS)
        return Scores(traits, traits + hits, taught.glance.of(self.words.evened()[rows]))


def _worth_most(cells: csr_matrix, weights: Numbers, most: int) -> np.ndarray:
    """The columns that tell most, by what they weigh and how much they differ between texts."""
    spread = np.sqrt(np.asarray(cells.multiply(cells).mean(axis=0)).ravel())
    return np.sort(np.argsort(-np.abs(weights) * spread)[:most])
