"""What practices and sets are run by on the deck, below ``data/v1/run/``: a file for each, and one
that all share. What they hold is told by ``site_src/schemas/run.json``.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any
from weakref import ReferenceType, ref

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.brief import IN_FULL
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.summary import SetSummary
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.pool import Pool
from almanac.report.run.json import practice_run, set_run, versioned
from almanac.report.run.parts import own_hazards

FOLDER = "data/v1/run"
_SHORT = 8  # letters of a version that are typed or printed
_LOOKS, _CUES = 2, 3  # as many as one takes in while looking


def run_files(analysis: Analysis, entry: Entry) -> Iterator[tuple[str, str]]:
    """The file that an entry is run by, as its path below the site's root and its text; none where
    it is no practice or set that can be worked out.
    """
    if entry.kind == "practice" and entry.id in analysis.practices:
        text = run_text(analysis, analysis.practices[entry.id])
        yield f"{FOLDER}/practices/{entry.id}.json", text
    elif entry.kind == "set" and entry.id in analysis.computable:
        yield f"{FOLDER}/sets/{entry.id}.json", run_text(analysis, analysis.summary(entry.id))


_last: list[tuple[ReferenceType[SetSummary | PracticeSummary], str]] = []


def run_text(analysis: Analysis, summary: SetSummary | PracticeSummary) -> str:
    """What a set or a practice is run by. The last one is kept: its page asks for it as well."""
    if not _last or _last[0][0]() is not summary:
        if isinstance(summary, PracticeSummary):
            told = practice_run(analysis, summary)
        else:
            told = set_run(analysis, summary, analysis.meant(summary.swim_set))
        _last[:] = [(ref(summary), versioned(told))]
    return _last[0][1]


def run_version(analysis: Analysis, summary: SetSummary | PracticeSummary) -> str:
    """The first letters of the version of that: enough to tell two of them apart on deck."""
    version: str = json.loads(run_text(analysis, summary))["version"]
    return version[:_SHORT]


def shared_file(catalogue: Catalogue) -> tuple[str, str]:
    """The file that all runs share: the pools, what a helper looks for, and the gear."""
    told = {
        "pools": {id: _pool(pool) for id, pool in catalogue.club.pools.items()},
        "drills": {id: _drill(catalogue, drill) for id, drill in catalogue.drills.items()},
        "gear": {id: gear.title for id, gear in catalogue.gear.items()},
    }
    return f"{FOLDER}/shared.json", versioned(told)


def _pool(pool: Pool) -> dict[str, Any]:
    ends = {id: end.title for id, end in pool.ends.items() if end.title}
    said = {name: words for name, words in vars(pool.emergency).items() if words}
    return {
        "title": pool.title,
        "course": str(pool.course),
        "lanes": pool.lanes,
        "ends": ends,
        "emergency": said,
    }


def _drill(catalogue: Catalogue, drill: Drill) -> dict[str, Any]:
    """What a helper looks for, from where; what to say; and what can hurt."""
    viewpoints = catalogue.words("viewpoints")
    return {
        "title": drill.title,
        "look": [
            {"from": viewpoints[sight.viewpoint].title, "see": sight.what}
            for sight in drill.look_for[:_LOOKS]
        ],
        "say": list(drill.cues[:_CUES]),
        "danger": own_hazards(catalogue, drill.hazards[:IN_FULL]),
    }
