"""The page of a practice: the run sheet, what it holds, what is carried to the deck."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import table
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.practices import PracticeForGroup
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.findings import Finding
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.variants import given_items
from almanac.report.board_line import lines_for
from almanac.report.brief_text import house_rules, shown_brief
from almanac.report.hands_words import hands_words
from almanac.report.known_words import unfit_lines
from almanac.report.lane_words import lanes_tonight
from almanac.report.plan_text import TIMES
from almanac.report.pool_text import start_lines
from almanac.report.sheet_text import (
    LATECOMERS,
    before_words,
    cell_words,
    halves_words,
    missing_words,
    moment_words,
    other_figures,
    part_title,
    slack_words,
    where_words,
)
from almanac.report.shown import others, with_working
from almanac.report.ways import distances, ways_of
from almanac.report.whiteboard import board_lines
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.kept_rows import logs_of
from almanac.site.links import Page, link, links
from almanac.site.preferences import preferences
from almanac.site.shown_figures import page_figures, swum_ways


def practice_page(
    analysis: Analysis, summary: PracticeSummary, findings: Sequence[Finding]
) -> Page:
    """The page of a practice that can be worked out."""
    catalogue, practice = analysis.catalogue, summary.practice
    unit = summary.pool.course.unit
    return entry_page(
        catalogue,
        practice,
        squad=catalogue.club.squads[practice.squad].title,
        choosing=preferences(
            analysis, next(iter(summary.groups), ""), together=tuple(summary.groups)
        ),
        pool=f"{summary.pool.title} ({summary.pool.course})",
        lanes=[words[:1].upper() + words[1:] for words in lanes_tonight(summary)],
        distances=[
            (who, page_figures(table("practice", "practice", "totals", swum), unit))
            for who, _, swum in ways_of(summary.groups, summary)
        ],
        totals=page_figures(_totals(summary), unit),
        slack=slack_words(summary),
        over=(summary.slack_s or 0) < 0,
        unknown=list(missing_words(catalogue, summary)),
        hands=hands_words(summary),
        latecomers=LATECOMERS,
        halves=list(halves_words(summary)),
        rows=[_row(catalogue, summary, row) for row in summary.sheet],
        groups=[
            (group.title, page_figures(_of_group(summary, id), unit))
            for id, group in summary.groups.items()
        ],
        gear=[(link(catalogue.gear[need.gear]), need) for need in summary.gear],
        starts=start_lines(catalogue, summary),
        water=summary.pool.water_c,
        brief=shown_brief(catalogue, summary.brief, practice.id),
        house=house_rules(catalogue),
        ways=swum_ways("practice", catalogue, summary),
        findings=findings_on(practice, findings),
        kept=logs_of(analysis, practice),
        blocks=links(catalogue.users(practice, Block)),
    )


def _totals(summary: PracticeSummary) -> list[NamedFigure]:
    """The times of the practice as a whole that no sentence tells."""
    return others(table("practice", "time", "time", summary), TIMES)


def _of_group(summary: PracticeSummary, group: str) -> list[NamedFigure]:
    return table("practice", "group", "load", PracticeForGroup(summary, group))


def _row(catalogue: Catalogue, summary: PracticeSummary, row: SheetRow) -> dict[str, Any]:
    start, run = summary.practice.slot.start, row.run
    own = given_items(run.doing.items, run.doing.variants)
    items = run.swim_set.items if run.swim_set else own
    groups = tuple(dict.fromkeys(cell.group for cell in row.cells))
    cells = [
        {
            "group": cell.crew.title,
            "until": cell_words(start, cell),
            "others": [with_working(figure) for figure in other_figures(summary, row, cell.group)],
        }
        for cell in row.cells
    ]
    return {
        "starts": moment_words(start, row.starts),
        "title": part_title(catalogue, row),
        "link": link(run.swim_set) if run.swim_set else None,
        "before": list(before_words(row)),
        "where": list(where_words(catalogue, row)),
        "distance": distances(summary.groups, run),
        "note": run.doing.note,
        "board": lines_for(board_lines(catalogue, items), groups),
        "unfit": list(unfit_lines(catalogue, run.clocks, groups)),
        "groups": groups if len(groups) < len(summary.groups) else (),
        "cells": cells,
        "joins": row.joins,
    }
