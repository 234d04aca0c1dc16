"""The pages of practices and blocks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.appearances import (
    Appearance,
    benchmark_plans,
    drill_appearances,
    goal_appearances,
)
from almanac.arithmetic.block import BlockSummary, DayPlan, WeekPlan
from almanac.arithmetic.practice import PracticeSummary, SheetRow
from almanac.drawing.charts.effort_marks import effort_marks
from almanac.drawing.charts.week_columns import week_columns
from almanac.findings import Finding
from almanac.model.catalogue import Catalogue
from almanac.model.plans import Block
from almanac.report.plan_text import balance_sentences, part_title, slack_words
from almanac.report.whiteboard import board_lines
from almanac.report.working_text import formula
from almanac.site.entry_pages import review_words
from almanac.site.links import Page, link, links
from almanac.site.preferences import preferences
from almanac.site.shown_figures import (
    Figure,
    effort_legend,
    facet_table,
    share_sentences,
    source_titles,
)
from almanac.units import clock_time, show_change, show_distance, show_number, show_share, show_time


def plan_pages(analysis: Analysis, findings: Sequence[Finding]) -> Iterator[Page]:
    """A page for each practice and each block that can be worked out."""
    for summary in analysis.practices.values():
        yield _practice(analysis, summary, _own(findings, summary.practice.file))
    for groups in analysis.blocks.values():
        if groups:
            yield _block(analysis, groups, _own(findings, next(iter(groups.values())).block.file))


def _own(findings: Sequence[Finding], file: str) -> list[Finding]:
    return [finding for finding in findings if finding.place.file == file]


def _practice(analysis: Analysis, summary: PracticeSummary, findings: Sequence[Finding]) -> Page:
    catalogue, practice = analysis.catalogue, summary.practice
    unit = summary.pool.course.unit
    context: dict[str, Any] = {
        "entry": practice,
        "file": practice.file,
        "review": review_words(catalogue, practice),
        "squad": catalogue.club.squads[practice.squad].title,
        "choosing": preferences(analysis, next(iter(summary.groups), "")),
        "pool": f"{summary.pool.title} ({summary.pool.course})",
        "distance": Figure(
            "Distance", show_distance(summary.distance.value, unit), formula(summary.distance)
        ),
        "slack": slack_words(summary),
        "over": (summary.slack_s or 0) < 0,
        "rows": [_row(catalogue, summary, row) for row in summary.sheet],
        "groups": [(id, group.title, _load(summary, id)) for id, group in summary.groups.items()],
        "gear": [(link(catalogue.gear[need.gear]), need) for need in summary.gear],
        "brief": [(line, source_titles(catalogue, line.sources)) for line in summary.brief],
        "facets": [
            facet_table(catalogue, summary.by, facet, summary.pieces, unit, analysis.scale)
            for facet in summary.by
        ],
        "sentences": list(share_sentences(summary.shares, unit, analysis.scale)),
        "findings": findings,
        "blocks": links(catalogue.users(practice, Block)),
    }
    return Page(f"practices/{practice.id}.md", "practice", context)


def _load(summary: PracticeSummary, group: str) -> str:
    load = summary.load(group)
    return "–" if load is None else show_number(load.value)


def _row(catalogue: Catalogue, summary: PracticeSummary, row: SheetRow) -> dict[str, Any]:
    start, swim_set = summary.practice.slot.start, row.run.swim_set
    items = swim_set.items if swim_set else row.run.part.items
    cells = [
        {
            "group": cell.group,
            "until": "–" if cell.ends_s is None else clock_time(start, cell.ends_s),
            "waits": show_time(cell.waits_s) if cell.waits_s else "",
        }
        for cell in row.cells
    ]
    return {
        "starts": clock_time(start, row.starts_s),
        "title": part_title(catalogue, row),
        "link": link(swim_set) if swim_set else None,
        "talk": show_time(row.talk_s) if row.talk_s else "",
        "gear": show_time(row.gear_s) if row.gear_s else "",
        "distance": show_distance(row.run.distance.value, summary.pool.course.unit),
        "note": row.run.part.note,
        "board": board_lines(catalogue, items),
        "cells": cells,
    }


def _block(
    analysis: Analysis, groups: Mapping[str, BlockSummary], findings: Sequence[Finding]
) -> Page:
    catalogue, summary = analysis.catalogue, next(iter(groups.values()))
    block = summary.block
    marks = effort_marks(catalogue.efforts)
    columns = [week.balance.by.get("effort", {}) for week in summary.weeks]
    context: dict[str, Any] = {
        "entry": block,
        "file": block.file,
        "review": review_words(catalogue, block),
        "squad": catalogue.club.squads[block.squad].title,
        "goals": [(goal, catalogue.words("goals")[goal].title) for goal in block.goals],
        "figure": Markup(
            week_columns(
                columns, marks, f"weeks-{block.id}", f"Metres a week by effort: {block.title}"
            )
        ),
        "efforts": effort_legend(catalogue),
        "weeks": [_week(catalogue, week) for week in summary.weeks],
        "groups": [_group(catalogue, id, own) for id, own in groups.items()],
        "sentences": list(balance_sentences(catalogue, summary)),
        "drills": _appearances(
            drill_appearances(summary), {id: link(drill) for id, drill in catalogue.drills.items()}
        ),
        "served": _appearances(
            goal_appearances(summary),
            {id: word.title for id, word in catalogue.words("goals").items()},
        ),
        "tests": [
            _tests(catalogue, plan) for plan in benchmark_plans(block.weeks, catalogue.benchmarks)
        ],
        "findings": findings,
    }
    return Page(f"blocks/{block.id}.md", "block", context)


def _week(catalogue: Catalogue, week: WeekPlan) -> dict[str, Any]:
    balance, change = week.balance, week.change
    return {
        "number": week.number,
        "focus": week.week.focus,
        "taper": week.week.taper,
        "from": str(week.days[0].on),
        "days": [_day(catalogue, day) for day in week.days],
        "metres": show_number(balance.metres, 0),
        "kick": show_share(balance.kick_share),
        "supine": show_share(balance.supine_share),
        "resisted": show_number(balance.resisted_m, 0),
        "fast": show_number(balance.fast_m, 0),
        "into_stroke": show_number(balance.kick_into_stroke_m, 0),
        "change": show_change(change.metres) if change else "–",
        "resisted_change": show_change(change.resisted) if change else "–",
        "fast_change": show_change(change.fast) if change else "–",
    }


def _day(catalogue: Catalogue, day: DayPlan) -> dict[str, Any]:
    words = (
        "Rest"
        if day.is_off
        else day.day.other
        if day.day and day.day.other
        else ""
        if day.day
        else "not planned"
    )
    practice = link(catalogue.practices[day.practice.practice.id]) if day.practice else None
    return {"name": day.name.capitalize(), "on": str(day.on), "practice": practice, "words": words}


def _group(catalogue: Catalogue, id: str, summary: BlockSummary) -> dict[str, Any]:
    rows = [
        {
            "number": week.number,
            "load": "–" if week.load is None else show_number(week.load.total),
            "monotony": "–"
            if week.load is None or week.load.monotony is None
            else show_number(week.load.monotony, 2),
            "strain": "–"
            if week.load is None or week.load.strain is None
            else show_number(week.load.strain, 0),
            "change": show_change(week.change.load) if week.change else "–",
        }
        for week in summary.weeks
    ]
    return {"id": id, "title": catalogue.lane_groups[id].title, "rows": rows}


def _appearances(
    found: Mapping[str, Appearance], shown: Mapping[str, Any]
) -> list[tuple[Any, Appearance]]:
    return [(shown[id], appearance) for id, appearance in found.items()]


def _tests(catalogue: Catalogue, plan: Any) -> tuple[Any, str, str]:
    due = ", ".join(map(str, plan.due))
    return link(catalogue.benchmarks[plan.benchmark]), ", ".join(map(str, plan.weeks)), due
