"""The page of a source: who was measured, what it shows, what it does not, and what leans on it."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.kinds import KIND, KINDS
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry, Evidence
from almanac.model.policy import Limit
from almanac.model.published import Source
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.site.entry_page import entry_page
from almanac.site.links import Link, Page, link

SORTS = {
    "study": ("Study", "Somebody was measured."),
    "review": ("Review", "Studies were read together."),
    "conference": ("Conference paper", "Measured, and printed without the care of a journal."),
    "rule": ("Rule", "Binding where it holds, and no evidence that anything helps."),
    "guidance": ("Guidance", "What a body asks of those who teach and coach."),
    "expert-rating": ("Rating by experts", "What people who know think; nobody was measured."),
    "handbook": ("Handbook", "A value to work with; no swimmer was measured."),
    "news": ("News", "What was reported once."),
}
_READ = {
    "full": "in full",
    "part": "in part",
    "abstract": "as an abstract: what stands in the rest is not known to us",
    "secondary": "not itself: what stands here is what another page tells of it",
}
_PLACES = {
    "surface": "at the surface",
    "under-water": "under water",
    "flume": "in a flume",
    "tethered": "tied to a wall",
    "towed": "towed",
    "land": "on land",
}


def source_page(catalogue: Catalogue, source: Source) -> Page:
    """The page of a source."""
    return entry_page(
        catalogue,
        source,
        sort=SORTS[source.sort][0],
        sort_means=SORTS[source.sort][1],
        by=", ".join(source.by),
        done=list(_done(catalogue, source)),
        read=_READ[source.read],
        leaning=list(_leaning(catalogue, source)),
        limits=list(_limits(catalogue, source)),
    )


def _done(catalogue: Catalogue, source: Source) -> Iterator[str]:
    """What was done, as far as it is known, in the words of the vocabularies."""
    for field in ("stroke", "kick", "position"):
        word = getattr(source, field)
        if word:
            yield catalogue.words(VOCABULARY_OF[field])[word].title.lower()
    if source.place:
        yield _PLACES[source.place]


def _leaning(catalogue: Catalogue, source: Source) -> Iterator[tuple[str, Link, list[Evidence]]]:
    """The entries that lean on it, by kind and title, each with its claims that do."""
    order = [kind.key for kind in KINDS]
    users = sorted(
        catalogue.users(source, Entry, "evidence"),
        key=lambda entry: (order.index(entry.kind), entry.title.casefold()),
    )
    for entry in users:
        claims = [own for own in getattr(entry, "evidence", ()) if source.id in own.sources]
        yield KIND[entry.kind].title, link(entry), claims


def _limits(catalogue: Catalogue, source: Source) -> Iterator[str]:
    """The policy's limits that lean on it, once each."""
    policy = catalogue.policy
    of_levels = (own for level in policy.levels.values() for own in vars(level).items())
    named = dict.fromkeys(
        name.replace("_", " ")
        for name, limit in (*policy.limits.items(), *of_levels)
        if isinstance(limit, Limit) and source.id in limit.sources
    )
    yield from named
