"""Every size of every piece that practices are composed of, with what it is run by."""

from __future__ import annotations

import json
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.report.compose.json import table_json
from almanac.report.compose.laid import Layer
from almanac.report.compose.runs import pool_runs, run_of
from almanac.report.compose.table import Made, can_compose, compose_table
from almanac.site.run_data import run_text


def source(analysis: Analysis, key: str) -> tuple[str, Any]:
    """What a piece is run by, by its name; nothing of a drill."""
    kind, id, *_ = key.split("/")
    if kind == "set":
        return f"sets/{id}", json.loads(run_text(analysis, analysis.summary(id)))
    own = analysis.practices.get(id)
    return f"practices/{id}", json.loads(run_text(analysis, own)) if own else None


def runs_by_pool(analysis: Analysis, made: Made) -> dict[str, Any]:
    """By pool what the page reads of it."""
    pools = made.table.squad.offers
    return {pool: {"pieces": pool_runs(analysis, made, pool)} for pool in pools}


def every_size(analysis: Analysis) -> dict[str, Any]:
    """What the page reads of each squad, and the runs that the program makes of each size."""
    squads = [id for id in analysis.catalogue.club.squads if can_compose(analysis, id)]
    tables = {squad: compose_table(analysis, squad) for squad in squads}
    sizes = [own for made in tables.values() for own in _sizes(analysis, made)]
    return {
        "data": {id: table_json(analysis, own) for id, own in tables.items()},
        "runs": {id: runs_by_pool(analysis, own) for id, own in tables.items()},
        "sources": dict(source(analysis, key) for key in sorted({own["piece"] for own in sizes})),
        "sizes": sizes,
    }


def _sizes(analysis: Analysis, made: Made) -> list[dict[str, Any]]:
    found, squad = [], made.table.squad.id
    for pool, offers in made.table.squad.offers.items():
        layer = Layer(analysis, squad, pool)
        for offer in offers:
            piece = made.table.pieces[offer.piece]
            for size in offer.sizes:
                laid = layer.lay(made.candidates[piece.key], size.number)
                assert laid
                told = {"squad": squad, "pool": pool, "piece": piece.key}
                told |= {"number": size.number, "distance": size.distance}
                found.append({**told, **run_of(layer, laid)})
    return found
