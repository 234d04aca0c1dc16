"""The data of a run, form 1: what a practice or a set is run by on the deck. Seconds to the tenth.

The build works the timeline out; a browser lays the blocks end to end and computes no pace.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.brief import IN_FULL, BriefHazard
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.summary import SetSummary
from almanac.cache import digest
from almanac.model.catalogue import Catalogue
from almanac.report.run.cuts import cuts
from almanac.report.run.items import number
from almanac.report.run.parts import PartsOfRun
from almanac.report.run.set import crews_of_set, part_of_set

FORM = 1
_VERSION_LETTERS = 16


def versioned(told: Mapping[str, Any]) -> str:
    """A file of run data: its form, the version of its data, and the rest. The version is of all
    that it holds, so that two phones with the same version run the same.
    """
    text = as_json(told)
    head = as_json({"form": FORM, "version": digest(text).hex()[:_VERSION_LETTERS]})
    return f"{head[:-1]},{text[1:]}\n"


def as_json(value: Any) -> str:
    """JSON without idle blanks."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def practice_run(analysis: Analysis, summary: PracticeSummary) -> dict[str, Any]:
    """A practice as it is run."""
    practice, own = summary.practice, PartsOfRun(analysis, summary)
    parts = own.parts()
    return {
        "kind": "practice",
        "id": practice.id,
        "title": practice.title,
        "page": f"practices/{practice.id}.html",
        "squad": practice.squad,
        "start": practice.slot.start,
        "minutes": practice.slot.minutes,
        "pool": practice.pool,
        "course": str(summary.pool.course),
        "ends_s": None if summary.ends_s is None else number(summary.ends_s),
        "crews": list(own.crews()),
        "hazards": hazards_json(analysis.catalogue, summary.brief),
        "parts": parts,
        "cuts": list(cuts(parts)),
    }


def set_run(analysis: Analysis, summary: SetSummary, meant: Collection[str]) -> dict[str, Any]:
    """A set as it is run, in its own pool, for every lane group: those that it is ``meant`` for
    first. Which of the club's pools it is in is not said.
    """
    catalogue, swim_set = analysis.catalogue, summary.swim_set
    groups = tuple(dict.fromkeys((*meant, *catalogue.lane_groups)))
    parts = [part_of_set(analysis, summary, groups)]
    return {
        "kind": "set",
        "id": swim_set.id,
        "title": swim_set.title,
        "page": f"sets/{swim_set.id}.html",
        "pool": None,
        "course": str(swim_set.course),
        "crews": list(crews_of_set(catalogue, groups, meant)),
        "hazards": hazards_json(catalogue, summary.brief),
        "parts": parts,
        "cuts": list(cuts(parts)),
    }


def hazards_json(
    catalogue: Catalogue, brief: Iterable[BriefHazard], in_full: int = IN_FULL
) -> list[dict[str, str]]:
    """The hazards, gravest first; what is done about them of the gravest alone, so many."""
    gravities = catalogue.words("gravities")
    found = []
    for place, line in enumerate(brief):
        gravity = gravities[line.gravity].title if line.gravity in gravities else line.gravity
        control = {"control": line.control} if place < in_full else {}
        found.append({"title": line.title, "gravity": gravity, **control})
    return found
