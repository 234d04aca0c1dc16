"""What pages of sets and practices show alike: figures with their working, facets, shares, sources,
the legend.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from markupsafe import Markup

from almanac.analysis.figures import by_name, table
from almanac.analysis.figures.facets import FacetWord, facet_words
from almanac.analysis.figures.figure import NamedFigure
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.swum_by_group import ByGroup
from almanac.drawing.charts.bars import bar
from almanac.drawing.charts.effort_marks import effort_marks
from almanac.drawing.charts.strip import swatches
from almanac.frozen import quick
from almanac.model.catalogue import Catalogue
from almanac.report.facet_shares import FacetShare, facet_shares
from almanac.report.shown import SHARES_IN_WORDS, others, shown, with_working
from almanac.report.ways import ways_of
from almanac.report.working_text import formula
from almanac.units import LAND, Unit

FACET_TITLES = {
    "mode": "Sort of work",
    "kick": "Leg action",
    "stroke": "Stroke",
    "position": "Position",
    "gear": "Gear",
    "effort": "Effort",
}

# The name of the patterns in the legend of efforts.
LEGEND = "legend"


@quick
@dataclass(frozen=True, slots=True)
class PageFigure:
    """A figure on the page with the working that opens in place; ``units`` where it is for who
    reckons in that unit.
    """

    what: str
    value: str
    working: str = ""
    units: str = ""


def page_figure(figure: NamedFigure) -> PageFigure:
    """A figure as a page shows it. One that is counted, and not worked out, opens nothing."""
    value = shown(figure)
    told = "" if figure.working is None else formula(figure.working)
    units = figure.unit if figure.figure.converts else ""
    return PageFigure(figure.figure.title, value, "" if told == value else told, units)


def page_figures(figures: Iterable[NamedFigure], unit: Unit) -> list[PageFigure]:
    """A table's figures; one in another unit is left out where that is the pool's own."""
    return [
        page_figure(figure)
        for figure in figures
        if not figure.figure.converts or figure.unit != unit.value
    ]


def facet_tables(kind: str, catalogue: Catalogue, swum: Swum) -> list[dict[str, Any]]:
    """A table for each facet of a set or a practice: each word with its distance, share and
    bar.
    """
    words = facet_words(swum, swum.course.unit.value)
    by = {(subject.facet, subject.word): subject for _, subject in words}
    return [
        {
            "title": title,
            "rows": [
                _facet_row(kind, by[facet, share.word], share, whole)
                for share in facet_shares(catalogue, swum, facet)
            ],
        }
        for facet, title in FACET_TITLES.items()
        for whole in (float(sum(swum.by[facet].values())) or 1.0,)
    ]


def swum_ways(kind: str, catalogue: Catalogue, of: ByGroup) -> list[dict[str, Any]]:
    """What a set or a practice holds, for each way of swimming it: who, sentences and facets."""
    return [
        {
            "who": who,
            "groups": groups,
            "sentences": list(share_sentences(kind, swum)),
            "facets": facet_tables(kind, catalogue, swum) if swum.course != LAND else [],
        }
        for who, groups, swum in ways_of(catalogue.lane_groups, of)
    ]


def _facet_row(kind: str, of: FacetWord, share: FacetShare, whole: float) -> dict[str, Any]:
    distance, *others = table(kind, "facet", "words", of)
    return {
        "title": share.title,
        "distance": replace(page_figure(distance), value=share.distance),
        "share": share.share,
        "bar": Markup(bar(float(of.swum.by[of.facet][of.word]) / whole)),
        "others": [page_figure(figure) for figure in others],
    }


def share_sentences(kind: str, swum: Swum) -> Iterator[str]:
    """The shares that coaches ask for, in sentences."""
    found = by_name(kind, "shares", swum)
    share = {name: shown(figure) for name, figure in found.items()}
    yield f"Kick is {share['kick share']} of the distance."
    if found["supine share"].value is not None:
        yield (
            f"Of the flutter kick, {share['supine share']} is on the back, {share['prone share']} "
            f"on the front and {share['board share']} with a board."
        )
    if found["resisted share"].value:
        yield f"{share['resisted share']} of the distance is resisted."
    yield f"{share['fast share']} is {swum.timing.scale.fast_words('or')}."
    if found["kick into stroke"].value:
        yield (
            f"{share['kick into stroke']} of stroke comes straight out of the kick, without a stop."
        )
    yield from map(with_working, others(found.values(), SHARES_IN_WORDS))


def effort_legend(catalogue: Catalogue) -> list[tuple[Markup, str]]:
    """A patch and its word for each effort; the page's strips use its patterns."""
    patches = swatches(effort_marks(catalogue.efforts), LEGEND)
    titles = (effort.title for effort in catalogue.efforts.values())
    return [(Markup(patch), title) for patch, title in zip(patches, titles, strict=True)]
