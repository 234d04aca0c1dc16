"""What pieces are run by on the deck that nothing in ``data/v1/run/`` gives times for: drills, and
sets and parts in a pool of another length than their own. Written as what sets and practices are
run by (``run_parts``), but by pool and piece, for the lane groups of one squad.
"""

from __future__ import annotations

from collections import defaultdict
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.brief import brief
from almanac.arithmetic.composing_pieces import DRILL, PART, SET, PracticePiece
from almanac.arithmetic.run_blocks import run_blocks
from almanac.checks.run_offers import CrewOffer, RepsOffer
from almanac.model.pool import START_END
from almanac.report.compose_laid import Laid, Layer
from almanac.report.compose_table import Made
from almanac.report.run_blocks_json import BlocksOfCrew, ItemsOfPart
from almanac.report.run_json import hazards_json
from almanac.report.run_parts import ends_of_reps
from almanac.units import Course


def drill_runs(analysis: Analysis, made: Made) -> dict[str, Any]:
    """``pools``: by pool and drill its items, and of each lane group its blocks, as often as the
    piece is written; ``hazards``: by drill, the gravest first.
    """
    pools: dict[str, dict[str, Any]] = {}
    hazards: dict[str, list[dict[str, str]]] = {}
    for pool, offers in made.table.squad.offers.items():
        layer = Layer(analysis, made.table.squad.id, pool)
        for offer in offers:
            piece = made.table.pieces[offer.piece]
            laid = (
                layer.lay(made.candidates[piece.key], piece.written) if piece.of == DRILL else None
            )
            if laid is not None:
                pools.setdefault(pool, {})[piece.id] = _run(layer, laid)
                hazards.setdefault(piece.id, _hazards(analysis, piece.id, laid))
    return {"pools": pools, "hazards": hazards}


def pool_runs(analysis: Analysis, made: Made) -> dict[str, Any]:
    """By pool and piece, a set or a part that is at home in a pool of another length: its items,
    and of each lane group its blocks, as often as it is written.
    """
    pools: dict[str, dict[str, Any]] = {}
    for pool, offers in made.table.squad.offers.items():
        layer = Layer(analysis, made.table.squad.id, pool)
        for offer in offers:
            piece = made.table.pieces[offer.piece]
            if piece.of == DRILL or _course(analysis, piece) == layer.course:
                continue
            laid = layer.lay(made.candidates[piece.key], piece.written)
            if laid is not None:
                pools.setdefault(pool, {})[piece.key] = _run(layer, laid)
    return pools


def part_hazards(analysis: Analysis, made: Made) -> dict[str, list[dict[str, str]]]:
    """By piece, a part of a practice: its own hazards, the gravest first, each with what is done
    about it; those of the practice's other parts are none of it.
    """
    catalogue, found = analysis.catalogue, dict[str, list[dict[str, str]]]()
    for pool, offers in made.table.squad.offers.items():
        layer = Layer(analysis, made.table.squad.id, pool)
        for offer in offers:
            piece = made.table.pieces[offer.piece]
            if piece.of != PART or piece.key in found:
                continue
            laid = layer.lay(made.candidates[piece.key], piece.written)
            if laid is not None:
                key = catalogue.practices[piece.id].key
                reps = laid.run.every_rep
                lines = brief(key, (), reps, catalogue.gear, catalogue.vocabularies)
                found[piece.key] = hazards_json(catalogue, lines, in_full=len(lines))
    return found


def _course(analysis: Analysis, piece: PracticePiece) -> Course:
    """The course that ``data/v1/run/`` has a piece in."""
    if piece.of == SET:
        return analysis.summary(piece.id).course
    return analysis.practices[piece.id].course


def _run(layer: Layer, laid: Laid) -> dict[str, Any]:
    """The items and blocks of a piece. Nothing is offered to be changed, as no rule was asked."""
    catalogue = layer.analysis.catalogue
    items, none = ItemsOfPart(catalogue, layer.course), CrewOffer(reps=defaultdict(RepsOffer))
    crews = {}
    for group in layer.groups:
        swum, clock = laid.run.of(group), laid.run.clocks[group]
        if clock.reps:
            begins = ends_of_reps(catalogue, swum, START_END)
            writer = BlocksOfCrew(items, begins, none, has_home=not clock.unfit)
            crews[group] = {"blocks": writer.written(run_blocks(swum.events, clock))}
    return {"items": items.items, "crews": crews}


def _hazards(analysis: Analysis, id: str, laid: Laid) -> list[dict[str, str]]:
    catalogue = analysis.catalogue
    lines = brief(
        catalogue.drills[id].key, (), laid.run.every_rep, catalogue.gear, catalogue.vocabularies
    )
    return hazards_json(catalogue, lines)
