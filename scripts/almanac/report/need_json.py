"""How drills, gear and sets fit a need, as data: by ids."""

from __future__ import annotations

from typing import Any

from almanac.analysis.adapted import answers_of, set_answers_of
from almanac.analysis.analysis import Analysis
from almanac.model.need import FITS, Need

VERSION = 1


def need_json(analysis: Analysis, need: Need) -> dict[str, Any]:
    """By how they fit the ids of drills, gear and sets; under ``instead`` by each drill that is
    left out what is done in its place, None for nothing.
    """
    known, catalogue = answers_of(analysis), analysis.catalogue
    drills = {id: known.of[need.id, id] for id in sorted(catalogue.drills)}
    gear = {id: known.of_gear[need.id, id].fits for id in sorted(catalogue.gear)}
    sets = {
        id: own.fits
        for id, swim_set in sorted(catalogue.sets.items())
        for own in set_answers_of(analysis, swim_set)
        if own.need == need.id
    }
    instead = {
        id: known.instead(need.id, catalogue.drills[id])
        for id, own in drills.items()
        if own.is_left_out
    }
    return {
        "version": VERSION,
        "drills": _by_fits({id: own.fits for id, own in drills.items()}),
        "gear": _by_fits(gear),
        "sets": _by_fits(sets),
        "instead": {id: other.id if other else None for id, other in instead.items()},
    }


def _by_fits(found: dict[str, str]) -> dict[str, list[str]]:
    return {fits: [id for id, own in found.items() if own == fits] for fits in FITS}
