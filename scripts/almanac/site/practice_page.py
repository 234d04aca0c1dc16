"""The page of a practice: the run sheet, what it holds, what is carried to the deck."""

from __future__ import annotations

from collections.abc import Sequence

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import table
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.practices import PracticeForGroup
from almanac.arithmetic.practice import PracticeSummary
from almanac.findings import Finding
from almanac.model.block import Block
from almanac.report.brief_text import house_rules, shown_brief
from almanac.report.gear_text import fetch_words
from almanac.report.hands_words import adults_least, hands_words
from almanac.report.lane_words import lanes_tonight
from almanac.report.pool_text import start_lines
from almanac.report.practice_text import TIMES
from almanac.report.sheet_text import (
    LATECOMERS,
    assumed_words,
    end_words,
    halves_words,
    missing_words,
    slack_words,
    slot_words,
)
from almanac.report.ways import ways_of
from almanac.rounding import seconds_of_day
from almanac.site.adapt_lines import adapted_practice
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.kept_rows import logs_of
from almanac.site.links import Page, link, links
from almanac.site.make_link import change_link
from almanac.site.practice_clock import clock_lines
from almanac.site.practice_paper import paper_sheets
from almanac.site.practice_sheet import sheet_rows, timed_boards
from almanac.site.preferences import preferences
from almanac.site.run_data import run_version
from almanac.site.shown_figures import page_figures, swum_ways


def practice_page(
    analysis: Analysis, summary: PracticeSummary, findings: Sequence[Finding]
) -> Page:
    """The page of a practice that can be worked out."""
    catalogue, practice = analysis.catalogue, summary.practice
    unit, boards = summary.pool.course.unit, timed_boards(analysis, practice.id)
    return entry_page(
        catalogue,
        practice,
        squad=catalogue.club.squads[practice.squad].title,
        choosing=preferences(
            analysis, next(iter(summary.groups), ""), together=tuple(summary.groups)
        ),
        pool=f"{summary.pool.title} ({summary.pool.course.shown})",
        lanes=[words[:1].upper() + words[1:] for words in lanes_tonight(summary)],
        distances=[
            (who, page_figures(table("practice", "practice", "totals", swum), unit))
            for who, _, swum in ways_of(summary.groups, summary)
        ],
        totals=page_figures(_totals(summary), unit),
        slack=slack_words(summary),
        slot=slot_words(summary),
        ends=end_words(summary),
        slot_start_s=seconds_of_day(practice.slot.start),
        slot_s=60 * practice.slot.minutes,
        columns=[group.title for group in summary.groups.values()],
        over=(summary.slack_s or 0) < 0,
        unknown=list(missing_words(catalogue, summary)),
        assumed=list(assumed_words(catalogue, summary)),
        hands=hands_words(summary, adults_least(catalogue, summary)),
        latecomers=LATECOMERS,
        halves=list(halves_words(summary)),
        lines=clock_lines(analysis, summary),
        rows=sheet_rows(catalogue, summary, boards),
        groups=[
            (group.title, page_figures(_of_group(summary, id), unit))
            for id, group in summary.groups.items()
        ],
        gear=[
            (link(catalogue.gear[need.gear]), need, fetch_words(catalogue, summary, need.gear))
            for need in summary.gear
        ],
        starts=start_lines(catalogue, summary),
        water=summary.pool.water_c,
        brief=shown_brief(catalogue, summary.brief, practice.key),
        house=house_rules(catalogue),
        ways=swum_ways("practice", catalogue, summary),
        findings=findings_on(practice, findings),
        kept=logs_of(analysis, practice),
        blocks=links(catalogue.users(practice, Block)),
        adapted=adapted_practice(analysis, practice),
        papers=paper_sheets(analysis, summary, boards),
        version=run_version(analysis, summary),
        change=change_link(analysis, practice),
    )


def _totals(summary: PracticeSummary) -> list[NamedFigure]:
    """The times of the practice as a whole that no sentence tells."""
    return table("practice", "time", "time", summary, TIMES)


def _of_group(summary: PracticeSummary, group: str) -> list[NamedFigure]:
    return table("practice", "group", "load", PracticeForGroup(summary, group))
