"""The page of a block: metres a week, load of each lane group, the days, when things come."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import by_name, heads, table
from almanac.analysis.figures.blocks import weeks_of
from almanac.arithmetic.appearances import (
    Appearance,
    benchmark_plans,
    drill_appearances,
    goal_appearances,
)
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.brief import BriefHazard, brief_of_all
from almanac.drawing.charts.effort_marks import effort_marks
from almanac.drawing.charts.week_columns import week_columns
from almanac.findings import Finding
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue, Key
from almanac.model.entry import Entry
from almanac.model.season import Season
from almanac.report.block.text import BALANCE, balance_sentences, conventions
from almanac.report.block.ways import block_ways
from almanac.report.block.wishes import WishRow, missed_words, wish_rows
from almanac.report.block.words import change_words, missing_words
from almanac.report.brief_text import house_rules, shown_brief
from almanac.report.shown import date_words, others, shown
from almanac.site.block_charts import chief_charts, spread_charts, week_bars
from almanac.site.block_weeks import columns_of, week_data
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.kept_days import done_of_days
from almanac.site.kept_rows import kept_rows
from almanac.site.links import Link, Page, is_listed, link, links
from almanac.site.preferences import preferences
from almanac.site.shown_figures import PageFigure, effort_legend, page_figure


def block_page(
    analysis: Analysis, groups: Mapping[str, BlockSummary], findings: Sequence[Finding]
) -> Page:
    """The page of a block that can be worked out."""
    catalogue, summary = analysis.catalogue, next(iter(groups.values()))
    block = summary.block
    goals, named = catalogue.words("goals"), by_name("block", "block", summary)
    weeks = [
        week_data(catalogue, week, [own.weeks[number].days for own in groups.values()])
        for number, week in enumerate(weeks_of(summary))
    ]
    return entry_page(
        catalogue,
        block,
        squad=catalogue.club.squads[block.squad].title,
        around=_around(catalogue, block),
        goals=[(id, goals[id].title, is_listed(catalogue, id)) for id in block.goals],
        totals=[page_figure(figure) for figure in others(named.values(), BALANCE)],
        choosing=preferences(analysis, next(iter(groups)), together=tuple(groups)),
        ways=_ways(catalogue, groups),
        efforts=effort_legend(catalogue),
        missed=missed_words(catalogue, groups),
        columns=[figure.figure.title for figure in columns_of(weeks_of(summary)[0])],
        starts=date_words(block.starts),
        race_day=date_words(block.race_day) if block.race_day else "",
        weeks=weeks,
        done=done_of_days(groups),
        days=list(zip(*(week["days"] for week in weeks), strict=True)),
        kept_columns=heads("block", "kept", "kept"),
        groups=[_group(catalogue, id, own) for id, own in groups.items()],
        conventions=list(conventions()),
        tests=[
            _tests(catalogue, plan) for plan in benchmark_plans(block.weeks, catalogue.benchmarks)
        ],
        brief=shown_brief(catalogue, _brief(catalogue, groups), block.key),
        house=house_rules(catalogue),
        findings=findings_on(block, findings),
    )


def _around(catalogue: Catalogue, block: Block) -> list[tuple[str, list[Link]]]:
    """The seasons and the meet of a block, and the blocks of its squad before and after it."""
    own = (other for other in catalogue.blocks.values() if other.squad == block.squad)
    ordered = sorted(own, key=lambda other: (other.starts, other.id))
    at = ordered.index(block)
    found: list[tuple[str, Sequence[Entry]]] = [
        ("In the season", list(catalogue.users(block, Season))),
        ("Leads to", [catalogue.meets[block.meet]] if block.meet else []),
        ("Block before", ordered[at - 1 : at] if at else []),
        ("Block after", ordered[at + 1 : at + 2]),
    ]
    return [(name, links(entries)) for name, entries in found if entries]


def _brief(catalogue: Catalogue, groups: Mapping[str, BlockSummary]) -> tuple[BriefHazard, ...]:
    """The hazards of all sessions of a block."""
    briefs: dict[Key, tuple[BriefHazard, ...]] = {}
    for own in groups.values():
        for session in (one for week in own.weeks for day in week.days for one in day.sessions):
            if session.practice is not None:
                briefs[session.practice.practice.key] = session.practice.brief
            if session.circuit is not None:
                briefs[session.circuit.swim_set.key] = session.circuit.brief
    return brief_of_all(briefs.items(), catalogue.vocabularies)


def _ways(catalogue: Catalogue, groups: Mapping[str, BlockSummary]) -> list[dict[str, Any]]:
    """Metres and balance, and when things come, for lane groups that go the same way."""
    ways = block_ways(groups)
    drills = {id: link(drill) for id, drill in catalogue.drills.items()}
    goals = {id: word.title for id, word in catalogue.words("goals").items()}
    return [
        {
            "groups": ids,
            "who": " and ".join(catalogue.lane_groups[id].title for id in ids),
            "figure": _columns(catalogue, summary, ids[0] if len(ways) > 1 else ""),
            "weeks": [
                (of.week.number, of.week.week.kind_told, [shown(cell) for cell in columns_of(of)])
                for of in weeks_of(summary)
            ],
            "sentences": list(balance_sentences(catalogue, summary)),
            "wishes": _wishes(catalogue, summary),
            "drills": _appearances(drill_appearances(summary), drills),
            "served": _appearances(goal_appearances(summary), goals),
        }
        for ids, summary in ways
    ]


def _wishes(catalogue: Catalogue, summary: BlockSummary) -> list[dict[str, Any]]:
    """What was wished of a block beside what it has, each number with its working."""
    return [
        {
            "what": row.what,
            "wished": row.wished,
            "planned": _planned(row),
            "others": [page_figure(figure) for figure in row.figures[1:]],
            "met": "not known" if row.met is None else "met" if row.met else "not met",
        }
        for row in wish_rows(catalogue, summary)
    ]


def _planned(row: WishRow) -> PageFigure:
    if not row.figures:
        return PageFigure("", row.planned)
    return replace(page_figure(row.figures[0]), value=row.planned)


def _columns(catalogue: Catalogue, summary: BlockSummary, group: str) -> Markup:
    block = summary.block
    id = f"weeks-{block.id}" + (f"-{group}" if group else "")
    columns = [week.balance.by.get("effort", {}) for week in summary.weeks]
    title = f"Metres a week by effort: {block.title}"
    return Markup(week_columns(columns, effort_marks(catalogue.efforts), id, title))


def _group(catalogue: Catalogue, id: str, summary: BlockSummary) -> dict[str, Any]:
    """A lane group's load, and what was kept."""
    tables = ["load"]
    if any(
        figure.working for of in weeks_of(summary) for figure in table("block", "week", "kept", of)
    ):
        tables.append("kept")
    rows = [
        (
            of.week.number,
            [shown(figure) for name in tables for figure in table("block", "week", name, of)],
        )
        for of in weeks_of(summary)
    ]
    words = [*missing_words(summary), *change_words(catalogue.policy, summary)]
    return {
        "id": id,
        "title": catalogue.lane_groups[id].title,
        "charts": chief_charts(id, summary),
        "bars": week_bars(summary),
        "spread": spread_charts(id, summary),
        "columns": [head for name in tables for head in heads("block", "week", name)],
        "rows": rows,
        "words": words,
        "kept": kept_rows(catalogue, summary),
    }


def _appearances(
    found: Mapping[str, Appearance], shown: Mapping[str, Any]
) -> list[tuple[Any, Appearance]]:
    return [(shown[id], appearance) for id, appearance in found.items()]


def _tests(catalogue: Catalogue, plan: Any) -> tuple[Any, str, str]:
    due = ", ".join(map(str, plan.due))
    return link(catalogue.benchmarks[plan.benchmark]), ", ".join(map(str, plan.weeks)), due
