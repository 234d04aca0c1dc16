"""The split of a distance by a facet, shown: distances that sum to it, and shares to 100 %."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from almanac.analysis.figures.facets import word_partly
from almanac.arithmetic.swum import Swum
from almanac.model.catalogue import Catalogue
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.rounding import TENTH, apportion, show_shares
from almanac.units import show_distance


@dataclass(frozen=True)
class FacetShare:
    """One word of a facet: its title, its distance and its share as they are shown."""

    word: str
    title: str
    distance: str
    share: str


def facet_shares(catalogue: Catalogue, swum: Swum, facet: str) -> Iterator[FacetShare]:
    """The words of a facet in the order of their vocabulary."""
    split, unit = swum.by[facet], swum.course.unit
    words = _in_order(catalogue, facet, split)
    parts = [split[word] for word in words]
    shown = zip(words, apportion(parts, TENTH), show_shares(parts), strict=True)
    for word, distance, share in shown:
        title = _title(catalogue, facet, word)
        marked = word_partly(swum, facet, word)
        far = show_distance(distance, unit) + (f" ({marked})" if marked else "")
        yield FacetShare(word, title, far, share)


def facet_line(catalogue: Catalogue, swum: Swum, facet: str) -> str:
    """A facet as a line of text."""
    shares = facet_shares(catalogue, swum, facet)
    said = [f"{share.title} {share.distance} ({share.share})" for share in shares]
    return f"{facet.capitalize():9} {', '.join(said)}"


def facet_numbers(
    split: Mapping[str, float | Fraction], step: Decimal = Decimal("0.001")
) -> dict[str, float | int]:
    """A facet's distances for JSON, in steps that sum to the whole."""
    parts = apportion([*split.values()], step)
    return {
        word: int(part) if part == int(part) else float(part)
        for word, part in zip(split, parts, strict=True)
    }


def _title(catalogue: Catalogue, facet: str, word: str) -> str:
    """How a facet's word is shown: the vocabulary's title, or gear by title."""
    if facet == "gear":
        return (
            " + ".join(catalogue.gear[id].title for id in word.split("+"))
            if word != "none"
            else "No gear"
        )
    return catalogue.words(VOCABULARY_OF[facet])[word].title


def _in_order(catalogue: Catalogue, facet: str, split: Mapping[str, object]) -> list[str]:
    """The words of a facet's split in the order of their vocabulary; gear as it appears."""
    if facet == "gear":
        return list(split)
    return [word for word in catalogue.words(VOCABULARY_OF[facet]) if word in split]
