"""What practices are composed of, for other programs: ``data/v1/compose/SQUAD.json``, of the form
that ``site_src/schemas/compose.json`` tells, beside it what they are run by in each pool
(``runs/SQUAD/POOL.json``, ``compose_runs.json``), and each of the squad's practices that can be
opened to be changed (``compose_practice.json``).
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.report.compose.json import FORM, table_json
from almanac.report.compose.opened import can_open, opened_json
from almanac.report.compose.runs import pool_runs
from almanac.report.compose.table import can_compose, compose_table

FOLDER = "data/v1/compose"


def compose_files(analysis: Analysis, squad: str) -> Iterator[tuple[str, str]]:
    """The files of a squad that has lane groups, as their paths below the site's root and their
    texts; none of another.
    """
    if can_compose(analysis, squad):
        made = compose_table(analysis, squad)
        yield f"{FOLDER}/{squad}.json", _text(table_json(analysis, made))
        for pool in made.table.squad.offers:
            runs = {"form": FORM, "pieces": pool_runs(analysis, made, pool)}
            yield f"{FOLDER}/runs/{squad}/{pool}.json", _text(runs)
        for id, practice in sorted(analysis.catalogue.practices.items()):
            is_here = practice.squad == squad and practice.pool in analysis.catalogue.club.waters
            if is_here and not can_open(analysis, practice):
                opened = opened_json(analysis, made.table, practice)
                yield f"{FOLDER}/practices/{id}.json", _text(opened)


def _text(data: Any) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"
