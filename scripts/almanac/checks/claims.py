"""Rules on claims and their sources: what may stand as published, and what has to be said beside
it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry, Evidence
from almanac.model.fault import Fault
from almanac.model.moving import Moving
from almanac.model.published import UNDER_WATER, Source
from almanac.model.vocabularies import CONTESTED, PUBLISHED, VOCABULARY_OF
from almanac.source.reader import DataPath

_RULE = "rule"
_FIGURE = re.compile(r"\d+(?:[.,:]\d+)*")
_ADVICE = re.compile(
    r"\b(hence|therefore|a reason (?:to|for|never)|which is (?:why|one more reason)|it is why"
    r"|that speaks for|it supports)\b",
    re.IGNORECASE,
)


class _Claim(NamedTuple):
    """A claim of an entry, where it stands, and the sources that it names."""

    entry: Entry
    path: DataPath
    own: Evidence
    sources: list[Source]

    @property
    def is_published(self) -> bool:
        return self.own.basis == PUBLISHED


def _claims(catalogue: Catalogue) -> Iterator[_Claim]:
    for entry in catalogue.entries.values():
        evidence: tuple[Evidence, ...] = getattr(entry, "evidence", ())
        for number, own in enumerate(evidence):
            named = catalogue.sources_of(own.sources)
            if len(named) == len(own.sources):  # one that is broken is told already
                yield _Claim(entry, ("evidence", number), own, named)


@forbids("source-bears-nothing")
def source_bears_nothing(analysis: Analysis) -> Iterator[Problem]:
    """A published claim stands on something that was measured, or on the rule or guidance itself:
    what experts rate, what the news tell and what a handbook lists is not enough by itself.
    """
    for entry, path, own, sources in _claims(analysis.catalogue):
        if own.basis == PUBLISHED and not any(source.bears_a_claim for source in sources):
            names = " and ".join(f"'{source.id}' ({source.sort})" for source in sources)
            yield Problem(
                entry,
                (*path, "sources"),
                f"{names} cannot bear a published claim",
                "name a study, a review, a rule or guidance, or call it contested or common "
                "practice",
            )


@warns("advice-as-published")
def advice_as_published(analysis: Analysis) -> Iterator[Problem]:
    """A published claim says what was found. What the club makes of it stands in a claim of its
    own, as common practice: nobody published that.
    """
    for claim in _claims(analysis.catalogue):
        found = _ADVICE.search(claim.own.claim) if claim.is_published else None
        if found:
            message = f"'{found[0]}' makes advice of what was found"
            hint = "say here what was found, and the advice in a claim of common practice"
            yield Problem(claim.entry, (*claim.path, "claim"), message, hint)


@warns("figure-not-in-source")
def figure_not_in_source(analysis: Analysis) -> Iterator[Problem]:
    """Every figure of a published claim stands in a source that it names, written alike. Our own
    arithmetic with it goes into a claim of common practice.
    """
    for claim in _claims(analysis.catalogue):
        known = {figure for source in claim.sources for figure in _figures_of(source)}
        for figure in _figures(claim.own.claim) if claim.is_published else ():
            if figure not in known:
                names = ", ".join(source.id for source in claim.sources)
                yield Problem(
                    claim.entry,
                    (*claim.path, "claim"),
                    f"{figure} stands in no source that the claim names ({names})",
                    "write it as the source does, or put what is our arithmetic into a claim of "
                    "common practice",
                )
                break


def _figures(text: str) -> list[str]:
    return _FIGURE.findall(text)


def _figures_of(source: Source) -> Iterator[str]:
    texts = (source.finding, source.conditions, source.who, source.summary, source.edition)
    yield from _figures(" ".join(texts))
    yield from (str(number) for number in (source.n, source.year) if number is not None)


@warns("gap-unsaid")
def gap_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Where a source measured another stroke, kick or position than the entry is about, or under
    water what is done at the surface, the claim says so under ``gap``.
    """
    catalogue = analysis.catalogue
    for entry, path, own, sources in _claims(catalogue):
        differing = [found for source in sources for found in _differing(catalogue, source, entry)]
        if differing and not own.gap:
            message = f"the source measured {', '.join(dict.fromkeys(differing))}"
            yield Problem(entry, path, message, "say under 'gap' in what that differs from this")


def _differing(catalogue: Catalogue, source: Source, entry: Entry) -> Iterator[str]:
    """What a source measured and the entry is not about, in the words of the vocabularies."""
    if not source.is_measured or not isinstance(entry, Moving | Fault):
        return
    fields = ("stroke", "kick", "position") if isinstance(entry, Moving) else ("stroke",)
    for field in fields:
        words = catalogue.words(VOCABULARY_OF[field])
        theirs, ours = getattr(source, field), getattr(entry, field)
        if theirs and theirs != ours and not words[theirs].quiet and not words[ours].quiet:
            yield words[theirs].title.lower()
    above = isinstance(entry, Moving) and not entry.is_under_water
    if source.place == UNDER_WATER and above and not getattr(entry, "under_water", None):
        yield "under water"


@warns("article-unsaid")
def article_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """A claim that a rule bears says under ``at`` which article does, so that it can be looked
    up.
    """
    for entry, path, own, sources in _claims(analysis.catalogue):
        if not own.at and any(source.sort == _RULE for source in sources):
            message = "a rule is named, and not its article"
            yield Problem(entry, path, message, "add 'at': rule 6.3")


@warns("one-sided")
def one_sided(analysis: Analysis) -> Iterator[Problem]:
    """A contested claim names both sides: the one as the claim, what the other holds under
    ``against``. Where nobody holds the other, it is common practice.
    """
    for entry, path, own, _ in _claims(analysis.catalogue):
        if own.basis == CONTESTED and not own.against:
            message = "the other side of a contested claim is not told"
            hint = "add 'against': what the other side holds; or call it common practice"
            yield Problem(entry, path, message, hint)
