"""The table that practices are composed from, made once from a catalogue."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.composing_pieces import PART, SET, TENTHS, Offer, Piece, Size, Sizes
from almanac.arithmetic.composing_table import (
    Done,
    GearHere,
    Group,
    Limits,
    Named,
    Planned,
    PoolHere,
    Squad,
    Table,
    Taught,
)
from almanac.model.catalogue import Catalogue
from almanac.model.club import LaneGroup
from almanac.report.compose_facts import Facts, Places
from almanac.report.compose_offers import Layer
from almanac.report.compose_pieces import Candidate, candidates
from almanac.report.compose_sizes import sizes_of

_SUM_MOST = 6
"""No practice is composed of more pieces that hold one drill."""


@dataclass
class _Gathered:
    """Pieces and offers, as they are found."""

    pieces: list[Piece] = field(default_factory=list)
    items: dict[str, Candidate] = field(default_factory=dict)
    offers: dict[str, list[Offer]] = field(default_factory=dict)


@dataclass(frozen=True)
class Made:
    """The table, and by the key of a piece what it is written from."""

    table: Table
    candidates: Mapping[str, Candidate]


def can_compose(analysis: Analysis, squad: str) -> bool:
    """Whether a squad has lane groups to compose for, and efforts are sound."""
    groups = analysis.catalogue.lane_groups.values()
    sound = analysis.has_sound_efforts and bool(analysis.scale.gentle and analysis.scale.fast)
    return sound and any(group.squad == squad for group in groups)


def compose_table(
    analysis: Analysis,
    squad: str,
    broken: frozenset[str] = frozenset(),
    pools: Iterable[str] | None = None,
) -> Made:
    """The table of a squad, in some pools or all of them. ``broken`` are files with an error."""
    catalogue = analysis.catalogue
    places = _places(catalogue)
    here = tuple(catalogue.club.pools if pools is None else pools)
    found = _gather(analysis, places, broken, squad, here)
    practices = tuple(_practices(catalogue, squad, found))
    table = Table(
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
        pools=tuple(
            PoolHere(id, own.title, str(own.course), own.lanes)
            for id, own in catalogue.club.pools.items()
        ),
        squad=_squad(analysis, places, squad, found),
        progressions=tuple(
            Taught(id, own.title, tuple(_drills(stage.drills, places) for stage in own.stages))
            for id, own in sorted(catalogue.progressions.items())
        ),
        practices=practices,
        blocks=tuple(_blocks(catalogue, squad, [own.id for own in practices])),
        pieces=tuple(found.pieces),
    )
    return Made(table, found.items)


def _places(catalogue: Catalogue) -> Places:
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
    found, facts = _Gathered(), Facts(analysis, places)
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


def _offer(layer: Layer, facts: Facts, own: Candidate) -> tuple[Piece, Offer] | None:
    """A candidate as a piece and what it comes to; None where nobody of the squad can do it."""
    written = own.scale.written if own.scale else 1
    nearest = sorted(own.numbers or (1,), key=lambda number: (abs(number - written), number))
    chief = next((laid for number in nearest if (laid := layer.lay(own, number))), None)
    if chief is None:
        return None
    drills = facts.places.drills
    runs = sizes_of(own.numbers or (1,), lambda n: layer.size(own, n, drills))
    if not runs:
        return None
    offer = Offer(0, layer.adults(chief), layer.room(chief), runs)
    return facts.piece(own, chief), offer


def _squad(analysis: Analysis, places: Places, id: str, found: _Gathered) -> Squad:
    catalogue = analysis.catalogue
    squad = catalogue.club.squads[id]
    limits = catalogue.policy.of_level(squad.level)
    return Squad(
        id=id,
        title=squad.title,
        level=squad.level,
        groups=tuple(
            Group(name, group.title, group.lanes, group.heads, _gap(catalogue, group))
            for name, group in catalogue.lane_groups.items()
            if group.squad == id
        ),
        limits=Limits(
            fast=int(limits.limit("fast_most")),
            resisted=int(limits.limit("resisted_most")),
            plates=int(limits.limit("plates_most")),
            under=int(limits.limit("under_water_practice_most")),
            under_after_fast=int(TENTHS * catalogue.policy.limit("under_water_after_fast")),
        ),
        taught=frozenset(places.drills[drill] for drill in _taught(analysis, id)),
        offers={pool: _counted(offers) for pool, offers in found.offers.items()},
    )


def _gap(catalogue: Catalogue, group: LaneGroup) -> int:
    """The longest time that one swimmer of a lane leaves after another, in tenths."""
    return int(TENTHS * max(group.gap, catalogue.policy.limit("gap_on_back")))


def _counted(offers: list[Offer]) -> tuple[Offer, ...]:
    """Offers without doses that no practice can exceed, however it is composed."""
    most: dict[int, list[int]] = {}
    for offer in offers:
        of_offer: dict[int, int] = {}
        for size in offer.sizes:
            for drill, plain, strict in size.doses:
                of_offer[drill] = max(of_offer.get(drill, 0), plain, strict)
        for drill, own in of_offer.items():
            most.setdefault(drill, []).append(own)
    full = {id for id, each in most.items() if sum(sorted(each)[-_SUM_MOST:]) > 1000}

    def kept(size: Size) -> Size:
        return replace(size, doses=tuple(own for own in size.doses if own[0] in full))

    def kept_run(run: Sizes) -> Sizes:
        each = kept(run.each) if run.each else None
        return Sizes(kept(run.first), run.more, each)

    return tuple(replace(own, runs=tuple(map(kept_run, own.runs))) for own in offers)


def _taught(analysis: Analysis, squad: str) -> set[str]:
    """The drills that the squad's blocks have had done or ask for, and what these need first."""
    catalogue, found = analysis.catalogue, set[str]()
    for block in catalogue.blocks.values():
        names = [id for day in block.days for id in day.practices] if block.squad == squad else []
        for id in names:
            summary = analysis.practices.get(id)
            for rep in summary.every_rep if summary else ():
                found |= {piece.drill.id for piece in rep.pieces}
    todo = list(found)
    while todo:
        needs = set(catalogue.drills[todo.pop()].needs_first) - found
        found |= needs
        todo += sorted(needs)
    return found


def _practices(catalogue: Catalogue, squad: str, found: _Gathered) -> Iterator[Done]:
    place_of = {piece.key: place for place, piece in enumerate(found.pieces)}
    for id, practice in sorted(catalogue.practices.items()):
        if practice.squad == squad:
            keys = [f"{SET}/{doing.set}" for _, doing in practice.doings if doing.set]
            keys += [f"{PART}/{id}/{number}" for number in range(len(practice.parts))]
            places = tuple(sorted({place_of[key] for key in keys if key in place_of}))
            yield Done(id, practice.title, places)


def _blocks(catalogue: Catalogue, squad: str, practices: Sequence[str]) -> Iterator[Planned]:
    for id, block in sorted(catalogue.blocks.items()):
        if block.squad == squad:
            days = [
                (7 * number + DAYS.index(name), practices.index(practice))
                for number, week in enumerate(block.weeks)
                for name, day in week.days.items()
                for practice in day.practices
                if practice in practices
            ]
            yield Planned(id, block.title, block.starts.isoformat(), tuple(sorted(days)))
