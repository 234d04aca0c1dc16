"""When and where a squad usually practises: what a wish leaves out."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from almanac.model.catalogue import Catalogue
from almanac.model.practice import Practice

_START, _MINUTES = "18:00", 60  # of a squad without a practice
T = TypeVar("T", str, int)


def usual_pool(catalogue: Catalogue, squad: str) -> str:
    """The pool that most of a squad's practices are in, else the club's first.
    There is one, as practices are composed for the water alone.
    """
    pools = [own.pool for own in _practices(catalogue, squad)]
    return max(catalogue.club.waters, key=pools.count)


def usual_start(catalogue: Catalogue, squad: str) -> str:
    """When most of a squad's practices begin, HH:MM."""
    return _most((own.slot.start for own in _practices(catalogue, squad)), _START)


def usual_minutes(catalogue: Catalogue, squad: str) -> int:
    """How long most of a squad's practices are."""
    return _most((own.slot.minutes for own in _practices(catalogue, squad)), _MINUTES)


def _practices(catalogue: Catalogue, squad: str) -> Iterable[Practice]:
    return (own for own in catalogue.practices.values() if own.squad == squad)


def _most(values: Iterable[T], otherwise: T) -> T:
    """The value that comes most often; of several the least."""
    every = list(values)
    return max(sorted(set(every)), key=every.count, default=otherwise)
