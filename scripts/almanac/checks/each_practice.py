"""Practices as rules go through them: each with what it comes to."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.practice import PracticeSummary
from almanac.model.practice import Practice


def practices_of(analysis: Analysis) -> Iterator[tuple[Practice, PracticeSummary]]:
    """Every practice that can be worked out."""
    for id, summary in analysis.practices.items():
        yield analysis.catalogue.practices[id], summary


def practices_at_levels(analysis: Analysis) -> Iterator[tuple[Practice, PracticeSummary, str]]:
    """The same, with the level of the squad, which says what limits hold."""
    for practice, summary in practices_of(analysis):
        yield practice, summary, analysis.catalogue.club.squads[practice.squad].level
