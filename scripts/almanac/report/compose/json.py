"""The table that a squad's practices are composed from as JSON, ``data/v1/compose/SQUAD.json``; its
form is told by ``site_src/schemas/compose.json``. What is empty, nought or unknown is left out.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import UNKNOWN, Offer, PracticePiece, Size, Sizes
from almanac.arithmetic.composing.sentences import SENTENCES
from almanac.arithmetic.composing.table import Limits, TableSquad
from almanac.report.board_line import BoardLine
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.entry import PART_WORDS
from almanac.report.compose.lines import line_words, lines_of
from almanac.report.compose.runs import drill_hazards, part_hazards
from almanac.report.compose.table import Made
from almanac.source.reader import DataPath

FORM = 1
_OFTEN = "{n}"
"""Stands in a line for how often it is done."""


def table_json(analysis: Analysis, made: Made) -> dict[str, Any]:
    """The table, with what of each piece is written and shown."""
    table, of_parts = made.table, part_hazards(analysis, made)
    hazards = list({own["title"]: own for each in of_parts.values() for own in each}.values())
    place_of = {own["title"]: place for place, own in enumerate(hazards)}
    texts = dict.fromkeys(show for own in table.pieces for show in own.shows if show)
    shows = {"": 0} | {show: place for place, show in enumerate(texts, start=1)}
    return {
        "form": FORM,
        "goals": [[own.id, own.title] for own in table.goals],
        "efforts": [[own.id, own.title] for own in table.efforts],
        "gentle": table.gentle,
        "fast": table.fast,
        "strokes": [[own.id, own.title] for own in table.strokes],
        "gear": [[own.id, own.title, own.owned, own.change] for own in table.gear],
        "drills": list(table.drills),
        "strokes_swum": sorted(table.strokes_swum),
        "pools": [[own.id, own.title, own.course, own.lanes] for own in table.pools],
        "squad": _squad(table.squad),
        "progressions": [
            [own.id, own.title, [list(stage) for stage in own.stages]] for own in table.progressions
        ],
        "practices": [[own.id, own.title, list(own.pieces)] for own in table.practices],
        "blocks": [
            [own.id, own.title, own.starts, [list(day) for day in own.days]] for own in table.blocks
        ],
        "pieces": [
            piece_json(own)
            | _shows(own, shows)
            | _written(analysis, made.candidates[own.key], [one.id for one in table.squad.groups])
            | _hazards(of_parts.get(own.key), place_of)
            for own in table.pieces
        ],
        "hazards": hazards,
        "shows": list(texts),
        "words": dict(SENTENCES),
        "part_words": dict(PART_WORDS),
        "drill_hazards": drill_hazards(analysis, made),
    }


def piece_json(own: PracticePiece) -> dict[str, Any]:
    """What is told of a piece whoever does it."""
    data = {
        "of": own.of,
        "id": own.id,
        "part": own.part,
        "title": own.title,
        "roles": own.roles,
        "goals": list(own.goals),
        "shares": list(own.shares),
        "drills": list(own.drills),
        "asks": list(own.asks),
        "strokes": list(own.strokes),
        "kick": own.kick,
        "hardest": own.hardest,
        "effort": own.effort,
        "gear": list(own.gear),
        "begins": list(own.begins),
        "ends": list(own.ends),
        "most_in_lane": own.most_in_lane,
        "talk": own.talk,
        "cue": own.cue,
        "called": "" if own.called == own.title else own.called,
        "what": own.what,
        "written": own.written if own.what else 0,
    }
    return {key: value for key, value in data.items() if value}


def _shows(own: PracticePiece, place_of: Mapping[str, int]) -> dict[str, list[int]]:
    """What in a piece serves its goals, by their places from 1; 0 where no line shows it."""
    return {"shows": [place_of[show] for show in own.shows]} if any(own.shows) else {}


def _hazards(own: list[dict[str, str]] | None, place_of: Mapping[str, int]) -> dict[str, list[int]]:
    """The hazards of a part of a practice by their places; nothing of any other piece."""
    return {} if own is None else {"hazards": [place_of[one["title"]] for one in own]}


def _written(analysis: Analysis, own: Candidate, groups: Sequence[str]) -> dict[str, Any]:
    """What is shown and written of a piece that is no set: its lines, its items, and the path of
    the reps that are scaled.
    """
    if own.swim_set:
        return {}
    path = own.scale.path if own.scale else ()
    items = {"items": list(own.written), "scaled": list(path[1:])}
    if own.drill:
        return items
    return items | {
        "lines": [_line(line, path) for line in lines_of(analysis.catalogue, own.items, groups)],
    }


def _line(line: BoardLine, path: DataPath) -> str:
    """A line in words, with a place for how often where that may differ."""
    if path and line.path == path:
        line = replace(line, what=f"{_OFTEN} {line.what.partition(' ')[2]}")
    return line_words(line)


def limits_json(limits: Limits) -> list[int]:
    """The limits of a practice: metres; until somebody goes under water after fast work, tenths."""
    return [limits.fast, limits.resisted, limits.plates, limits.under, limits.under_after_fast]


def _squad(own: TableSquad) -> dict[str, Any]:
    return {
        "id": own.id,
        "title": own.title,
        "level": own.level,
        "groups": [[one.id, one.title, one.lanes, one.heads, one.gap] for one in own.groups],
        "limits": limits_json(own.limits),
        "taught": sorted(own.taught),
        "minutes": own.minutes,
        "watch": {pool: list(both) for pool, both in own.watch.items()},
        "offers": {pool: [*map(offer_json, offers)] for pool, offers in own.offers.items()},
    }  # fmt: skip


def offer_json(own: Offer) -> list[Any]:
    """A piece by its place, its adults, the room in a lane by lane group, and its runs."""
    runs = [_run(run) for run in own.runs]
    return [own.piece, own.adults, list(own.room), runs]


def _run(own: Sizes) -> list[Any]:
    """A run: the first size, and where there are more how many and what each adds."""
    return [_size(own.first), own.more, _size(own.each)] if own.each else [_size(own.first)]


def _size(own: Size) -> list[Any]:
    times = [time or 0 for time in own.times]
    doses = [
        [drill, plain] if plain == strict else [drill, plain, strict]
        for drill, plain, strict in own.doses
    ]
    counted = [own.fast, own.resisted, own.plates, own.under]
    breath = [own.goes_under, own.calm]
    data: list[Any] = [own.number, own.distance, times, doses]
    if breath != [UNKNOWN, UNKNOWN]:
        return [*data, counted, breath]
    return [*data, counted] if any(counted) else data if doses else data[:3]
