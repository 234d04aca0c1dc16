"""What pages of sets and practices show alike: figures with their working, facets, shares, sources,
the legend.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from markupsafe import Markup

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.expand import Piece
from almanac.arithmetic.facets import Shares, facet_working
from almanac.drawing.charts.bars import bar
from almanac.drawing.charts.effort_marks import effort_marks
from almanac.drawing.charts.strip import swatch
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.report.whiteboard import facet_title, in_order
from almanac.report.working_text import formula
from almanac.units import Unit, show_distance, show_share

FACET_TITLES = {
    "mode": "Sort of work",
    "kick": "Leg action",
    "stroke": "Stroke",
    "position": "Position",
    "gear": "Gear",
    "effort": "Effort",
}


@dataclass(frozen=True)
class Figure:
    """A figure on the page with the working that opens in place; ``units`` where it is for who
    reckons in that unit.
    """

    what: str
    value: str
    working: str = ""
    units: str = ""


def facet_table(
    catalogue: Catalogue,
    by: Mapping[str, Mapping[str, Fraction]],
    facet: str,
    pieces: tuple[Piece, ...],
    unit: Unit,
    scale: EffortScale,
) -> dict[str, Any]:
    """A facet's rows: each word with its distance, share and bar."""
    split = by[facet]
    whole = float(sum(split.values())) or 1.0
    rows = [
        {
            "title": facet_title(catalogue, facet, word),
            "distance": Figure(
                "",
                show_distance(float(split[word]), unit),
                formula(facet_working(pieces, facet, word, scale)),
            ),
            "share": show_share(float(split[word]) / whole),
            "bar": Markup(bar(float(split[word]) / whole)),
        }
        for word in in_order(catalogue, facet, split)
    ]
    return {"title": FACET_TITLES[facet], "rows": rows}


def share_sentences(shares: Shares, unit: Unit, scale: EffortScale) -> Iterator[str]:
    """The shares that coaches ask for, in sentences."""
    yield f"Kick is {show_share(_float(shares.kick))} of the distance."
    if shares.supine_flutter is not None:
        yield (
            f"Of the flutter kick, {show_share(_float(shares.supine_flutter))} is on the back,"
            f" {show_share(_float(shares.prone_flutter))} on the front and "
            f"{show_share(_float(shares.board_flutter))} with a board."
        )
    if shares.resisted:
        yield f"{show_share(_float(shares.resisted))} of the distance is resisted."
    yield f"{show_share(_float(shares.fast))} is {scale.fast_words('or')}."
    if shares.kick_into_stroke:
        yield (
            f"{show_distance(shares.kick_into_stroke, unit)} of stroke comes straight out of "
            "the kick, without a stop."
        )


def _float(value: Any) -> float | None:
    return None if value is None else float(value)


def source_titles(catalogue: Catalogue, ids: tuple[str, ...]) -> list[str]:
    """The titles of the entries that a danger comes from."""
    known: dict[str, Entry] = {
        **catalogue.practices,
        **catalogue.sets,
        **catalogue.gear,
        **catalogue.drills,
    }
    return [known[id].title if id in known else id for id in ids]


def effort_legend(catalogue: Catalogue) -> list[tuple[Markup, str]]:
    """A patch and its word for each effort."""
    marks = effort_marks(catalogue.efforts)
    return [
        (Markup(swatch(id, marks, f"legend-{id}")), word.title)
        for id, word in catalogue.efforts.items()
    ]
