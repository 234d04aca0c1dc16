"""What every kind of entry shares: a title, a review, evidence, safety, references to others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import ClassVar, NewType

from almanac.frozen import quick

Seconds = NewType("Seconds", float)  # written as m:ss in an entry, read into seconds above zero
Ids = tuple[str, ...]
RESOLVED: Mapping[str, bool] = {"resolved": True}
"""Marks a field that no entry writes: it is worked out of other entries when all are read."""


@quick
@dataclass(frozen=True, slots=True)
class Reference:
    """One entry pointing at another: the kind and id that it names, and in which role."""

    kind: str
    id: str
    role: str


def references(kind: str, ids: Iterable[str], role: str) -> Iterator[Reference]:
    """A reference for each id, all in one role."""
    return (Reference(kind, id, role) for id in ids)


@dataclass(frozen=True)
class Review:
    """Who looked the entry over, by role; when; and by when to look again."""

    by: str
    on: date
    again: date


@dataclass(frozen=True)
class Acceptance:
    """A warning that the author accepts for now, or an error of safety that a level lets a role
    accept: with the reason and the day on which that ends. ``by`` is the role, "" for a warning.
    """

    check: str
    reason: str
    until: date
    by: str = ""


@dataclass(frozen=True)
class Hazard:
    """A hazard by its word of the hazards vocabulary, which has its gravity and standard control;
    how it comes about here, and what is done here beyond that, "" for nothing.
    """

    hazard: str
    own: str = ""
    control: str = ""


@dataclass(frozen=True)
class DepthNeeded:
    """The depth of water that something needs, in metres: at least, at most; None where any
    will do.
    """

    least: float | None = None
    most: float | None = None


ANY_DEPTH = DepthNeeded()


@dataclass(frozen=True)
class Helper:
    """People that something needs beside those who do it: one for ``each`` lane in use, piece of
    gear in use, lane group, or for the whole part. ``adult`` where a swimmer may not do it.
    """

    job: str
    each: str
    adult: bool = False

    @property
    def has_line(self) -> bool:
        """Whether a line runs from them to who swims: a cord they hold, or a line they pay out."""
        return self.job in {"cord-holder", "line-handler"}


@dataclass(frozen=True)
class Evidence:
    """A claim, its basis (a word of the bases vocabulary) and the sources that bear it. ``at`` says
    what in them does, ``gap`` in what they differ from the entry, ``against`` what the other side
    holds of a claim that is contested.
    """

    claim: str
    basis: str
    sources: Ids = ()
    at: str = ""
    gap: str = ""
    against: str = ""


def leans_on(evidence: Iterable[Evidence]) -> Iterator[Reference]:
    """The sources that claims name."""
    for claim in evidence:
        yield from references("source", claim.sources, "evidence")


@dataclass(frozen=True)
class Span:
    """From so many to so many, both included."""

    least: int
    most: int


@dataclass(frozen=True, kw_only=True)
class Entry:
    """One file of the catalogue. ``file`` is its path below the root; ``id`` is the file's name."""

    kind: ClassVar[str]
    id: str
    file: str
    title: str
    summary: str = ""
    also_called: tuple[str, ...] = ()
    asked_as: tuple[str, ...] = ()
    review: Review | None = None
    accepts: tuple[Acceptance, ...] = ()

    @property
    def key(self) -> tuple[str, str]:
        """Its kind and id: of two kinds an id may be the same."""
        return self.kind, self.id

    def references(self) -> Iterator[Reference]:
        """Every entry that this one names."""
        return iter(())
