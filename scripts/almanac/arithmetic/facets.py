"""How a distance divides: by mode, kick, stroke, position, gear and effort; and the shares that
coaches ask for.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from almanac.arithmetic.effort import EffortScale, EffortSpan
from almanac.arithmetic.events import Piece, Rep
from almanac.arithmetic.working import Known, Quotient, Working, times, total
from almanac.model.changes import rounds_of
from almanac.model.gear import Gear
from almanac.model.reps import Distance, Reps, in_all
from almanac.model.swim_set import Item, Round

NO_GEAR = "none"
FACETS = ("mode", "kick", "stroke", "position", "gear", "effort")


def gear_key(gear: Iterable[str]) -> str:
    """One key for all gear worn together: ``none``, ``fins``, ``fins+kickboard``."""
    return "+".join(sorted(gear)) or NO_GEAR


def _facet_key(piece: Piece, facet: str) -> EffortSpan | str:
    if facet == "effort":
        return piece.effort
    return gear_key(piece.gear) if facet == "gear" else str(getattr(piece.drill, facet))


def by_facet(pieces: Iterable[Piece], facet: str, scale: EffortScale) -> dict[str, Fraction]:
    """Distance by the words of a facet, in the set's unit, in order of appearance; adds up to the
    whole.
    """
    alike: dict[EffortSpan | str, Distance] = {}  # first, for whole numbers are quick to add
    for piece in pieces:
        key = _facet_key(piece, facet)
        alike[key] = alike.get(key, 0) + piece.distance
    split: dict[str, Fraction] = {}
    for key, distance in alike.items():
        if isinstance(key, str):
            split[key] = Fraction(distance)
        else:
            for word, share in scale.split(key).items():
                split[word] = split.get(word, Fraction(0)) + distance * share
    return split


def all_facets(pieces: tuple[Piece, ...], scale: EffortScale) -> dict[str, dict[str, Fraction]]:
    """Every facet of ``FACETS``."""
    return {facet: by_facet(pieces, facet, scale) for facet in FACETS}


@dataclass(frozen=True)
class Shares:
    """Shares from 0 to 1, each None where the whole that it is a share of is zero.

    ``kick``: legs only, of all distance. ``supine_flutter``, ``prone_flutter``, ``board_flutter``:
    of all flutter done legs only. ``resisted``: with gear that resists, of all. ``fast``: at
    efforts that count as fast, of all. ``kick_into_stroke`` is a distance, not a share: full
    stroke swum straight after kick within one rep, in the set's unit.
    """

    kick: Fraction | None
    supine_flutter: Fraction | None
    prone_flutter: Fraction | None
    board_flutter: Fraction | None
    resisted: Fraction | None
    fast: Fraction | None
    kick_into_stroke: Distance


def shares(reps: tuple[Rep, ...], gear: Mapping[str, Gear], scale: EffortScale) -> Shares:
    """The shares of a set's reps."""
    pieces = tuple(piece for rep in reps for piece in rep.pieces)
    effort = by_facet(pieces, "effort", scale)

    flutter = [piece for piece in pieces if _is_flutter(piece)]
    whole, of_flutter = _together(pieces), _together(flutter)
    fast = sum((effort.get(word, Fraction(0)) for word in scale.fast), Fraction(0))
    return Shares(
        kick=_share((piece for piece in pieces if piece.drill.is_kick), whole),
        supine_flutter=_share((own for own in flutter if own.drill.is_on_back), of_flutter),
        prone_flutter=_share((own for own in flutter if own.drill.is_on_front), of_flutter),
        board_flutter=_share((own for own in flutter if own.drill.is_on_board), of_flutter),
        resisted=_share(
            (piece for piece in pieces if any(gear[id].resists for id in piece.gear)), whole
        ),
        fast=fast / whole if whole else None,
        kick_into_stroke=in_all(map(_kick_into_stroke, reps)),
    )


def flutter_distance(pieces: Iterable[Piece]) -> Fraction:
    """Flutter done legs only, in the set's unit."""
    return Fraction(_together(piece for piece in pieces if _is_flutter(piece)))


def _is_flutter(piece: Piece) -> bool:
    return piece.drill.is_flutter_kick


def _together(pieces: Iterable[Piece]) -> Distance:
    return sum(piece.distance for piece in pieces)


def _share(pieces: Iterable[Piece], whole: Distance) -> Fraction | None:
    return Fraction(_together(pieces), whole) if whole else None


def _kick_into_stroke(rep: Rep) -> Distance:
    """Full stroke that follows a kick piece of the same rep directly."""
    return in_all(
        after.distance
        for before, after in zip(rep.pieces, rep.pieces[1:], strict=False)
        if before.drill.is_kick and after.drill.is_full_stroke and not before.rest_s
    )


def facet_working(pieces: Iterable[Piece], facet: str, word: str, scale: EffortScale) -> Working:
    """The distance of one word of a facet, as the pieces that make it up."""
    alike = Counter((piece.distance, _facet_key(piece, facet)) for piece in pieces)
    counts: Counter[float] = Counter()
    for (distance, key), count in alike.items():
        if isinstance(key, str):
            counts[float(distance) if key == word else 0.0] += count
        else:
            counts[float(distance * scale.split(key).get(word, 0))] += count
    return total(times(count, Known(own)) for own, count in counts.items() if own)


def distance_working(items: tuple[Item, ...]) -> Working:
    """The set's distance as a coach would add it up: 2 × (6 × 50 + 2 × (25 + 50)) + 100. Rounds
    that differ are added one by one.
    """
    return total(_terms(items))


def _terms(items: tuple[Item, ...]) -> Iterator[Working]:
    for item in items:
        if isinstance(item, Round):
            for inner, alike in groupby(map(distance_working, rounds_of(item))):
                yield times(len(list(alike)), inner)
        elif isinstance(item, Reps) and item.reps:
            yield times(item.reps, _of_one(item))


def _of_one(item: Reps) -> Working:
    """One rep by its parts; as one number where a part ends at a mark and has no round figure. Of a
    team's rep the share of one swimmer.
    """
    distances = [part.distance for part in item.parts]
    if item.is_split or any(distance.denominator > 2 for distance in distances):
        whole: Working = Known(float(item.distance))
    else:
        whole = total(Known(float(distance)) for distance in distances)
    swimmers = item.manner.swimmers
    return whole if swimmers == 1 else Quotient(whole, Known(swimmers, "swimmers"))
