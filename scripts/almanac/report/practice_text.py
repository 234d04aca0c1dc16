"""The summary of a practice for a terminal."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.figures import by_name, table
from almanac.analysis.figures.practices import PracticeForGroup
from almanac.arithmetic.facets import FACETS
from almanac.arithmetic.practice import PracticeSummary
from almanac.model.catalogue import Catalogue
from almanac.report.brief_text import brief_lines
from almanac.report.facet_shares import facet_line
from almanac.report.hands_words import adults_least, hands_words
from almanac.report.lane_words import lanes_tonight
from almanac.report.pool_text import start_lines
from almanac.report.sheet_text import LATECOMERS, halves_words, sheet_lines
from almanac.report.shown import SHARES_IN_WORDS, others, shown, with_working
from almanac.report.ways import ways_of

# Figures that are told in words.
TIMES = ("time", "slack")


def practice_text(catalogue: Catalogue, summary: PracticeSummary) -> str:
    """A practice: its run sheet, totals, gear and brief."""
    practice = summary.practice
    squad = catalogue.club.squads[practice.squad].title
    sections = [
        [
            (
                f"{practice.title} ({practice.id}), {squad}, {summary.pool.title} "
                f"({summary.pool.course.shown})"
            ),
            practice.focus,
            *(f"Lanes: {'; '.join(told)}." for told in [list(lanes_tonight(summary))] if told),
        ],
        list(sheet_lines(catalogue, summary)),
        list(
            filter(
                None,
                [
                    hands_words(summary, adults_least(catalogue, summary)),
                    LATECOMERS,
                    *halves_words(summary),
                ],
            )
        ),
        *(
            [
                *([f"{who}:"] if who else []),
                *map(with_working, table("practice", "practice", "totals", swum)),
                *(facet_line(catalogue, swum, facet) for facet in FACETS),
            ]
            for who, _, swum in ways_of(summary.groups, summary)
        ),
        list(_loads(summary)),
        list(_others(summary)),
        [
            f"Gear: {_gear(catalogue, summary) or 'none'}",
            *start_lines(catalogue, summary),
            *brief_lines(catalogue, summary.brief, summary.practice.key),
        ],
    ]
    return "\n\n".join("\n".join(lines) for lines in sections if lines)


def _loads(summary: PracticeSummary) -> Iterator[str]:
    for group in summary.groups:
        for figure in table("practice", "group", "load", PracticeForGroup(summary, group)):
            number = shown(figure) if figure.working else "no number"
            yield f"{figure.figure.title}, {summary.groups[group].title}: {number}"


def _others(summary: PracticeSummary) -> Iterator[str]:
    """Figures that no line above tells."""
    yield from map(with_working, others(by_name("practice", "time", summary).values(), TIMES))
    shares = by_name("practice", "shares", summary.first)
    yield from map(with_working, others(shares.values(), SHARES_IN_WORDS))


def _gear(catalogue: Catalogue, summary: PracticeSummary) -> str:
    return ", ".join(
        f"{need.needed} × {catalogue.gear[need.gear].title.lower()} (owned {need.owned or 0})"
        for need in summary.gear
    )
