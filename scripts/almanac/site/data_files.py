"""Data for others below ``data/v1/``: the whole catalogue, one file an entry, the schemas, and
CSV.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import WHOLES, is_computable
from almanac.kinds import KIND
from almanac.model.catalogue import Key
from almanac.model.need import Need
from almanac.report.need_json import need_json
from almanac.report.reports import REPORTS, figures_json
from almanac.report.run.json import as_json
from almanac.report.set_json import set_totals
from almanac.site.calendar import block_calendar, block_table
from almanac.site.meet_calendar import meet_calendar
from almanac.site.season_calendar import season_calendar
from almanac.site.spreadsheets import csv_text
from almanac.source import published_schemas
from almanac.source.forms import FORM
from almanac.source.names import Names

VERSION = 1
FOLDER = "data/v1"
_DRILL_COLUMNS = (
    "id",
    "title",
    "summary",
    "family",
    "mode",
    "stroke",
    "kick",
    "position",
    "arms",
    "level",
)
_SET_COLUMNS = (
    "id", "title", "summary", "level", "course", "of_groups", "distance", "unit", "metres", "reps",
    "estimated_distance",
)  # fmt: skip

_LOG_COLUMNS = (
    "id",
    "title",
    "practice",
    "on",
    "start",
    "groups",
    "minutes",
    "metres",
    "heads",
    "rating",
    "changed",
    "note",
)


def data_files(analysis: Analysis, names: Names, address: str) -> Iterator[tuple[str, str]]:
    """Every data file, as its path below the site's root and its text. ``address`` is the site's
    own, "" where unknown.
    """
    yield from entry_files(analysis)
    yield from plan_files(analysis, names, address)


def entry_files(
    analysis: Analysis, entry: Callable[[Key], str] | None = None
) -> Iterator[tuple[str, str]]:
    """All entries in one file, and each in its own; ``entry`` gives what ``entry_data`` would,
    where that is known already.
    """
    data = entry or partial(entry_data, analysis)
    entries = {key: data(key) for key in analysis.catalogue.entries}
    listed = ",".join(text for _, text in sorted(entries.items()))
    yield (
        f"{FOLDER}/catalogue.json",
        f'{{"version":{VERSION},"form":{FORM},"entries":[{listed}]}}\n',
    )
    for (kind, id), text in entries.items():
        yield f"{FOLDER}/{kind}/{id}.json", f'{{"version":{VERSION},{text[1:]}\n'


def plan_files(analysis: Analysis, names: Names, address: str) -> Iterator[tuple[str, str]]:
    """The schemas, the calendars of plans, and tables of all drills, logs and sets; ``address`` as
    for ``data_files``.
    """
    for kind in KIND:
        yield (
            f"{FOLDER}/schema/{kind}.json",
            f"{as_json(published_schemas.published(kind, names.words))}\n",
        )
    for id, groups in analysis.blocks.items():
        if groups:
            calendar = block_calendar(analysis.catalogue, groups, address)
            yield f"{FOLDER}/block/{id}.ics", calendar
            yield f"{FOLDER}/block/{id}.csv", block_table(groups)
    for id, meet in analysis.catalogue.meets.items():
        yield f"{FOLDER}/meet/{id}.ics", meet_calendar(analysis.catalogue, meet, address)
    for id, season in analysis.catalogue.seasons.items():
        yield f"{FOLDER}/season/{id}.ics", season_calendar(analysis, season, address)
        for squad in season.squads:
            calendar = season_calendar(analysis, season, address, squad)
            yield f"{FOLDER}/season/{id}-{squad}.ics", calendar
    yield f"{FOLDER}/drills.csv", _csv(_DRILL_COLUMNS, _drill_rows(analysis))
    yield f"{FOLDER}/logs.csv", _csv(_LOG_COLUMNS, _log_rows(analysis))
    yield f"{FOLDER}/sets.csv", set_table(analysis)


def set_table(analysis: Analysis) -> str:
    """The totals of every set, as CSV."""
    return _csv(_SET_COLUMNS, _set_rows(analysis))


def _log_rows(analysis: Analysis) -> Iterator[dict[str, Any]]:
    for log in sorted(analysis.catalogue.logs.values(), key=lambda log: (log.on, log.id)):
        row = {column: getattr(log, column) for column in _LOG_COLUMNS}
        lists = {"groups": " ".join(log.groups), "changed": "; ".join(log.changed)}
        yield {**row, **lists, "rating": "" if log.rating is None else log.rating}


def entry_data(analysis: Analysis, key: Key) -> str:
    """An entry as its author wrote it, under ``entry``, with its computed figures under
    ``computed``, as JSON.
    """
    entry = analysis.catalogue.entries[key]
    value: dict[str, Any] = {
        "kind": key[0],
        "id": key[1],
        "file": entry.file,
        "entry": analysis.catalogue.documents[key].data,
    }
    report = REPORTS.get(entry.kind)
    if report is not None and is_computable(analysis, entry):
        summed = report.summed(analysis, entry.id, None, None)
        if summed:
            value["computed"] = report.json(summed, ())
    elif isinstance(entry, Need):
        value["computed"] = need_json(analysis, entry)
    elif key[0] in WHOLES:
        figures = figures_json(analysis, *key)
        if figures:
            value["computed"] = {"version": VERSION, **figures}
    return as_json(value)


def _csv(columns: tuple[str, ...], rows: Iterator[dict[str, Any]]) -> str:
    return csv_text(columns, ([row[column] for column in columns] for row in rows))


def _drill_rows(analysis: Analysis) -> Iterator[dict[str, Any]]:
    for drill in analysis.catalogue.drills.values():
        yield {column: getattr(drill, column) for column in _DRILL_COLUMNS}


def _set_rows(analysis: Analysis) -> Iterator[dict[str, Any]]:
    for id, swim_set in analysis.computable.items():
        summary = analysis.summary(id)
        own = {"title": swim_set.title, "summary": swim_set.summary, "level": swim_set.level}
        groups = next(of for swum, of in summary.ways if swum is summary.first)
        of_groups = " ".join(groups) if summary.differs else ""
        yield {**set_totals(summary), **own, "of_groups": of_groups}
