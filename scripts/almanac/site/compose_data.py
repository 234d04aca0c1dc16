"""What practices are composed of, for other programs: ``data/v1/compose/SQUAD.json``, of the form
that ``site_src/schemas/compose.json`` tells.
"""

from __future__ import annotations

import json
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.report.compose_json import table_json
from almanac.report.compose_table import can_compose, compose_table

FOLDER = "data/v1/compose"


def compose_files(analysis: Analysis, squad: str) -> Iterator[tuple[str, str]]:
    """The file of a squad that has lane groups, as its path below the site's root and its text;
    none of another.
    """
    if can_compose(analysis, squad):
        data = table_json(analysis, compose_table(analysis, squad))
        text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
        yield f"{FOLDER}/{squad}.json", f"{text}\n"
