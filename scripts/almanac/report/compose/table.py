"""The table that practices are composed from, made once from a catalogue."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import TENTHS, Offer, PracticePiece, Size, Sizes
from almanac.arithmetic.composing.table import (
    ComposeTable,
    GearHere,
    Named,
    PoolHere,
    Taught,
)
from almanac.model.catalogue import Catalogue
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.facts import PieceFacts, Places
from almanac.report.compose.held_sizes import most_held
from almanac.report.compose.laid import Layer
from almanac.report.compose.offers import adults_for, room_for, size_of
from almanac.report.compose.pieces import candidates
from almanac.report.compose.sizes import sizes_of
from almanac.report.compose.squad import blocks_of, practices_of, squad_of

_SUM_MOST = 6
"""No practice is composed of more pieces that hold one drill."""
_WHOLE = 1000  # permille


@dataclass
class _Gathered:
    """Pieces and offers, as they are found."""

    pieces: list[PracticePiece] = field(default_factory=list)
    items: dict[str, Candidate] = field(default_factory=dict)
    offers: dict[str, list[Offer]] = field(default_factory=dict)


@dataclass(frozen=True)
class Made:
    """The table, and by the key of a piece what it is written from."""

    table: ComposeTable
    candidates: Mapping[str, Candidate]


def can_compose(analysis: Analysis, squad: str) -> bool:
    """Whether a squad has lane groups to compose for, efforts are sound, and there is a pool."""
    groups = analysis.catalogue.lane_groups.values()
    sound = analysis.has_sound_efforts and bool(analysis.scale.gentle and analysis.scale.fast)
    in_water = bool(analysis.catalogue.club.waters)
    return sound and in_water and any(group.squad == squad for group in groups)


def compose_table(
    analysis: Analysis,
    squad: str,
    broken: frozenset[str] = frozenset(),
    pools: Iterable[str] | None = None,
) -> Made:
    """The table of a squad, in some pools or all of them. ``broken`` are files with an error."""
    catalogue = analysis.catalogue
    places = places_of(catalogue)
    here = tuple(catalogue.club.waters if pools is None else pools)
    found = _gather(analysis, places, broken, squad, here)
    own_squad = squad_of(analysis, places, squad, {})
    held = most_held(analysis, own_squad, places, broken)
    offers = {pool: _counted(own, held.get(pool, {})) for pool, own in found.offers.items()}
    place_of = {piece.key: place for place, piece in enumerate(found.pieces)}
    practices = tuple(practices_of(catalogue, squad, place_of))
    table = ComposeTable(
        goals=_named(catalogue.words("goals")),
        efforts=_named(catalogue.efforts),
        gentle=max(places.efforts[word] for word in analysis.scale.gentle),
        fast=min(places.efforts[word] for word in analysis.scale.fast),
        strokes=_named(catalogue.words("strokes")),
        gear=tuple(
            GearHere(id, own.title, catalogue.club.gear_owned.get(id, 0), TENTHS * own.change_s)
            for id, own in catalogue.gear.items()
        ),
        drills=tuple(places.drills),
        strokes_swum=frozenset(
            place for id, place in places.drills.items() if catalogue.drills[id].is_full_stroke
        ),
        pools=tuple(
            PoolHere(id, own.title, str(own.course), own.lanes)
            for id, own in catalogue.club.waters.items()
        ),
        squad=replace(own_squad, offers=offers),
        progressions=tuple(
            Taught(id, own.title, tuple(_drills(stage.drills, places) for stage in own.stages))
            for id, own in sorted(catalogue.progressions.items())
        ),
        practices=practices,
        blocks=tuple(blocks_of(catalogue, squad, [own.id for own in practices])),
        pieces=tuple(found.pieces),
    )
    return Made(table, found.items)


def places_of(catalogue: Catalogue) -> Places:
    """Where words and entries stand in the table of any squad."""

    def numbered(words: Iterable[str]) -> dict[str, int]:
        return {word: place for place, word in enumerate(words)}

    return Places(
        numbered(catalogue.words("goals")),
        numbered(catalogue.efforts),
        numbered(catalogue.words("strokes")),
        numbered(catalogue.gear),
        numbered(sorted(catalogue.drills)),
    )


def _named(words: Mapping[str, object]) -> tuple[Named, ...]:
    return tuple(Named(id, str(getattr(word, "title", id))) for id, word in words.items())


def _drills(ids: Iterable[str], places: Places) -> tuple[int, ...]:
    return tuple(sorted(places.drills[id] for id in ids))


def _gather(
    analysis: Analysis, places: Places, broken: frozenset[str], squad: str, pools: Iterable[str]
) -> _Gathered:
    """Every piece that the squad may do in some pool."""
    level = analysis.catalogue.club.squads[squad].level
    talk = analysis.catalogue.policy.of_level(level).limit("talk_minutes_most")
    found, facts = _Gathered(), PieceFacts(analysis, places, int(60 * talk))
    layers = [Layer(analysis, squad, pool) for pool in pools]
    for own in candidates(analysis, squad, broken):
        place = None
        for layer in layers:
            offered = _offer(layer, facts, own)
            if offered is None:
                continue
            piece, offer = offered
            if place is None:
                place = len(found.pieces)
                found.pieces.append(piece)
                found.items[piece.key] = own
            found.offers.setdefault(layer.pool, []).append(replace(offer, piece=place))
    return found


def _offer(layer: Layer, facts: PieceFacts, own: Candidate) -> tuple[PracticePiece, Offer] | None:
    """A candidate as a piece and what it comes to; None where nobody of the squad can do it."""
    written = own.scale.written if own.scale else 1
    nearest = sorted(own.numbers or (1,), key=lambda number: (abs(number - written), number))
    chief = next((laid for number in nearest if (laid := layer.lay(own, number))), None)
    if chief is None:
        return None
    drills = facts.places.drills
    if own.swim_set and facts.is_elsewhere(own.swim_set, layer.course):
        return None
    numbers = own.numbers or (1,)
    runs = sizes_of(
        numbers,
        lambda n: size_of(layer, own, n, drills),
        lambda n: layer.lay(own, n) is not None,
        written,
    )
    if not runs:
        return None
    offer = Offer(0, adults_for(layer, chief), room_for(layer, chief), runs)
    return facts.piece(own, chief), offer


def _counted(offers: list[Offer], held: Mapping[int, int]) -> tuple[Offer, ...]:
    """Offers without doses that no practice can exceed, however it is composed, or changed where
    ``held`` is in it already: by drill, in permille.
    """
    most: dict[int, list[int]] = {}
    for offer in offers:
        of_offer: dict[int, int] = {}
        for size in offer.sizes:
            for drill, plain, strict in size.doses:
                of_offer[drill] = max(of_offer.get(drill, 0), plain, strict)
        for drill, own in of_offer.items():
            most.setdefault(drill, []).append(own)
    full = {
        drill
        for drill, each in most.items()
        if sum(sorted(each)[-_SUM_MOST:]) + held.get(drill, 0) > _WHOLE
    }

    def kept(size: Size) -> Size:
        return replace(size, doses=tuple(own for own in size.doses if own[0] in full))

    def kept_run(run: Sizes) -> Sizes:
        each = kept(run.each) if run.each else None
        return Sizes(kept(run.first), run.more, each)

    return tuple(replace(own, runs=tuple(map(kept_run, own.runs))) for own in offers)
