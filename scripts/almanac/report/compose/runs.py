"""What pieces are run by on the deck, ``data/v1/compose/runs/SQUAD/POOL.json``: in each size that
they are offered in, for the lane groups of one squad in one pool, written as what sets and
practices are run by (``run.parts``). Of what ``data/v1/run/`` has too only what differs from it is
told, and of a size only what differs from the first (``differences``).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.brief import brief
from almanac.arithmetic.composing.pieces import DRILL, PART, SET, Offer, PracticePiece
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.run_blocks import run_blocks
from almanac.arithmetic.run_crews import run_crews
from almanac.arithmetic.swum import Swum
from almanac.checks.run_offers import CrewOffer, RepsOffer
from almanac.model.changes import is_for
from almanac.model.pool import START_END
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.laid import Laid, Layer
from almanac.report.compose.run_items import items_told, on_items
from almanac.report.compose.table import Made
from almanac.report.differences import difference
from almanac.report.reps_packed import packed
from almanac.report.run.blocks_json import BlocksOfCrew, ItemsOfPart
from almanac.report.run.json import hazards_json
from almanac.report.run.parts import ends_of_reps
from almanac.units import Course

Run = dict[str, Any]
"""``items``, and by lane group its blocks: ``crews``."""


def pool_runs(analysis: Analysis, made: Made, pool: str) -> dict[str, Any]:
    """By piece what it is run by in a pool: ``from``, how often it is done there at first, where
    that is not as it is written; ``as``, what then differs from its run in ``data/v1/run/``; and by
    number its other ``sizes``. A piece of which nothing differs is left out.
    """
    layer = Layer(analysis, made.table.squad.id, pool)
    told = {}
    for offer in made.table.squad.offers[pool]:
        piece = made.table.pieces[offer.piece]
        if own := _of_piece(layer, piece, made.candidates[piece.key], offer):
            told[piece.key] = own
    return told


def _of_piece(layer: Layer, piece: PracticePiece, own: Candidate, offer: Offer) -> dict[str, Any]:
    numbers = [size.number for size in offer.sizes]
    written = piece.written if piece.what else numbers[0]
    first, *others = sorted(numbers, key=lambda number: (abs(number - written), number))
    runs = {number: run_of(layer, laid) for number in numbers if (laid := layer.lay(own, number))}
    known = _known(layer.analysis, piece)
    base = on_items(runs[first], known["items"] if known else [])
    groups = set(layer.groups)
    told = {
        "from": first if first != written else 0,
        "as": _told(known, base, groups) if known else base,
        "sizes": {
            str(number): _told(base, on_items(runs[number], base["items"]), groups)
            for number in sorted(others)
        },
    }
    return {key: value for key, value in told.items() if value}


def _told(old: Run, new: Run, groups: Collection[str]) -> dict[str, Any]:
    """What differs: of the ``items``, and of the blocks of ``all`` lane groups of the squad, or of
    ``each`` that does something of it.
    """
    items = items_told(old["items"], new["items"])
    before, after = (
        {group: [*map(packed, own["blocks"])] for group, own in run["crews"].items()}
        for run in (old, new)
    )
    each = {group: difference(before.get(group), blocks) for group, blocks in after.items()}
    told = {"items": items} if items else {}
    differences = list(each.values())
    if set(each) != groups or any(own != differences[0] for own in differences):
        return {**told, "each": each}
    return {**told, "all": differences[0]} if differences[0] else told


def _known(analysis: Analysis, piece: PracticePiece) -> Run | None:
    """The run of a piece in ``data/v1/run/``, without what is offered to be changed; None of a
    drill, which has none.
    """
    catalogue = analysis.catalogue
    if piece.of == DRILL:
        return None
    if piece.of == SET:
        summary = analysis.summary(piece.id)
        items = summary.swim_set.items
        groups = dict.fromkeys((*analysis.meant(summary.swim_set), *catalogue.lane_groups))
        crews = (
            (group, summary.of(group), summary.clocks[group])
            for group in groups
            if is_for(items, group)
        )
        return _written(analysis, summary.course, crews)
    practice = analysis.practices[piece.id]
    row = next(
        place for place, row in enumerate(practice.sheet) if row.stage.number == piece.part + 1
    )
    run = practice.sheet[row].run
    groups_here = [
        cell.group for crew in run_crews(practice) for place, _, cell in crew.rows if place == row
    ]
    those = ((group, run.of(group), run.clocks[group]) for group in groups_here)
    return _written(analysis, run.course, those, run.doing.end)


def run_of(layer: Layer, laid: Laid) -> Run:
    """What a piece is run by, laid so often into a squad's pool."""
    clocks = laid.run.clocks
    crews = (
        (group, laid.run.of(group), clocks[group]) for group in layer.groups if clocks[group].reps
    )
    return _written(layer.analysis, layer.course, crews)


def _written(
    analysis: Analysis,
    course: Course,
    crews: Iterable[tuple[str, Swum, GroupClock]],
    end: str = START_END,
) -> Run:
    """The items and blocks of a piece. Nothing is offered to be changed, as no rule was asked."""
    catalogue = analysis.catalogue
    items, none = ItemsOfPart(catalogue, course), CrewOffer(reps=defaultdict(RepsOffer))
    told = {}
    for group, swum, clock in crews:
        begins = ends_of_reps(catalogue, swum, end)
        writer = BlocksOfCrew(items, begins, none, has_home=not clock.unfit)
        told[group] = {"blocks": writer.written(run_blocks(swum.events, clock))}
    return {"items": items.items, "crews": told}


def drill_hazards(analysis: Analysis, made: Made) -> dict[str, list[dict[str, str]]]:
    """By drill that is a piece its hazards, the gravest first."""
    catalogue, found = analysis.catalogue, dict[str, list[dict[str, str]]]()
    for piece, laid in _laid_once(analysis, made, DRILL):
        key, reps = catalogue.drills[piece.id].key, laid.run.every_rep
        lines = brief(key, (), reps, catalogue.gear, catalogue.vocabularies)
        found[piece.id] = hazards_json(catalogue, lines)
    return found


def part_hazards(analysis: Analysis, made: Made) -> dict[str, list[dict[str, str]]]:
    """By piece, a part of a practice: its own hazards, the gravest first, each with what is done
    about it; those of the practice's other parts are none of it.
    """
    catalogue, found = analysis.catalogue, dict[str, list[dict[str, str]]]()
    for piece, laid in _laid_once(analysis, made, PART):
        key, reps = catalogue.practices[piece.id].key, laid.run.every_rep
        lines = brief(key, (), reps, catalogue.gear, catalogue.vocabularies)
        found[piece.key] = hazards_json(catalogue, lines, in_full=len(lines))
    return found


def _laid_once(analysis: Analysis, made: Made, of: str) -> Iterator[tuple[PracticePiece, Laid]]:
    """Each piece of a sort as it is laid into the first pool that it is offered in."""
    known = set()
    for pool, offers in made.table.squad.offers.items():
        layer = Layer(analysis, made.table.squad.id, pool)
        for offer in offers:
            piece = made.table.pieces[offer.piece]
            if piece.of != of or piece.key in known:
                continue
            laid = layer.lay(made.candidates[piece.key], offer.sizes[0].number)
            if laid is not None:
                known.add(piece.key)
                yield piece, laid
