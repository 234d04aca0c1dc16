"""What the pages of all kinds share: the frame of an entry, its review, its evidence, its tags."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from almanac.arithmetic.brief import gathered
from almanac.findings import Finding
from almanac.kinds import KIND
from almanac.model.benchmark import Benchmark
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.entry import Entry, Evidence
from almanac.model.gear import Gear
from almanac.model.meet import Meet
from almanac.model.moving import Moving
from almanac.model.published import Source
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.report.brief_text import ShownHazard, shown_brief
from almanac.report.shown import date_words
from almanac.site.links import Link, Page, page_of


def entry_page(catalogue: Catalogue, entry: Entry, **context: object) -> Page:
    """The page of an entry, by the template of its kind, with what all kinds show."""
    shared = {"entry": entry, "review": review_words(catalogue, entry), "file": entry.file}
    return Page(f"{KIND[entry.kind].pages}/{entry.id}.md", entry.kind, {**shared, **context})


def dangers(
    catalogue: Catalogue, entry: Drill | Gear | Benchmark | Meet
) -> tuple[ShownHazard, ...]:
    """What can hurt someone in an entry, gravest first, each with what the entry adds."""
    named = [(hazard, entry.key) for hazard in entry.hazards]
    lines = gathered(entry.key, named, catalogue.vocabularies)
    return shown_brief(catalogue, lines, entry.key, is_whole=True)


def review_words(catalogue: Catalogue, entry: Entry) -> str:
    """Who reviewed the entry, by role, and when it is due again; "" where nobody has."""
    if entry.review is None:
        return ""
    role = catalogue.words("roles")[entry.review.by].title
    on, again = date_words(entry.review.on), date_words(entry.review.again)
    return f"Reviewed by the {role.lower()} on {on}; due again on {again}."


def findings_on(entry: Entry, findings: Sequence[Finding]) -> list[Finding]:
    """What the checks say of an entry's own file."""
    return [finding for finding in findings if finding.place.file == entry.file]


@dataclass(frozen=True)
class ShownClaim:
    """A claim with its basis in words, and the sources that bear it."""

    basis: str
    item: Evidence
    sources: tuple[Link, ...]


def evidence_rows(catalogue: Catalogue, evidence: Iterable[Evidence]) -> list[ShownClaim]:
    """Each claim as a page shows it."""
    bases = catalogue.words("bases")
    return [
        ShownClaim(
            bases[item.basis].title,
            item,
            tuple(source_link(source) for source in catalogue.sources_of(item.sources)),
        )
        for item in evidence
    ]


def source_link(source: Source) -> Link:
    """A link to the page of a source, named as a line cites it, with who was measured."""
    return Link(page_of(source), source.cited, source.who)


def tags(catalogue: Catalogue, moving: Moving) -> list[str]:
    """What is done, in the words of the vocabularies: position, arms, kick, stroke, mode."""
    fields = ("position", "arms", "kick", "stroke")
    words = (catalogue.words(VOCABULARY_OF[field])[getattr(moving, field)] for field in fields)
    return [word.title for word in words if not word.quiet]
