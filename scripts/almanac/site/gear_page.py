"""The page of a piece of gear."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import table
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.gear import GearForGroup
from almanac.arithmetic.gear_drag import drag_rows, pull_of
from almanac.drawing.charts.drag import drag_chart
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.swim_set import SwimSet
from almanac.site.adapt_lines import adapted_entry
from almanac.site.entry_page import dangers, entry_page, evidence_rows
from almanac.site.links import Page, links
from almanac.site.shown_figures import page_figure
from almanac.site.test_tables import added_drag_table, drag_heads, drag_table
from almanac.units import show_time


def gear_page(analysis: Analysis, gear: Gear) -> Page:
    """The page of a piece of gear, with what the tests known by the day tell of it."""
    catalogue = analysis.catalogue
    return entry_page(
        catalogue,
        gear,
        dangers=dangers(catalogue, gear),
        effect=catalogue.words("effects")[gear.effect].title,
        acts_on=[catalogue.words("acts-on")[word].title.lower() for word in gear.acts_on],
        not_for=list(not_for_lines(catalogue, gear)),
        change=show_time(gear.change_s),
        needed_by=links(catalogue.users(gear, Drill, "needs")),
        suits=links(catalogue.users(gear, Drill, "may_add")),
        sets=links(catalogue.users(gear, SwimSet)),
        owned=catalogue.club.gear_owned.get(gear.id),
        totals=[page_figure(figure) for figure in _totals(catalogue, gear)],
        **_drag(catalogue, gear, analysis.today),
        adapted=adapted_entry(analysis, gear),
        evidence=evidence_rows(catalogue, gear.evidence),
    )


def not_for_lines(catalogue: Catalogue, gear: Gear) -> Iterator[str]:
    """Whom and what it is not for, a sentence each; and what it does not go with."""
    own = gear.not_for
    lists = {
        "levels": own.levels,
        "modes": own.modes,
        "kicks": own.kicks,
        "strokes": own.strokes,
        "positions": own.positions,
        "efforts": own.efforts,
    }
    for name, words in lists.items():
        if words:
            titles = [catalogue.words(name)[word].title for word in words]
            yield f"{catalogue.vocabularies[name].title}: {', '.join(titles).lower()}."
    if own.turns:
        yield "Reps with a turn in them."
    yield from own.people
    if gear.excludes:
        others = " or ".join(catalogue.gear[id].title.lower() for id in gear.excludes)
        yield f"Together with {others}."


def _totals(catalogue: Catalogue, gear: Gear) -> list[NamedFigure]:
    return table("gear", "gear", "totals", GearForGroup(catalogue, gear, None))


def _drag(catalogue: Catalogue, gear: Gear, day: date) -> dict[str, object]:
    """What a resisting piece of gear costs: figure, table, timed comparisons and the club's
    calibration.
    """
    if not gear.resists:
        lists: dict[str, object] = {"drag_rows": [], "drag_heads": [], "cord": []}
        return {**lists, "drag_figure": "", "compared": None, "outside": ""}
    pull = pull_of(gear)
    return {
        "drag_figure": Markup(drag_chart(drag_rows(pull), f"drag-{gear.id}", gear.title)),
        "drag_rows": list(drag_table(gear)),
        "drag_heads": drag_heads(),
        "compared": added_drag_table(catalogue, gear.id, day),
        "cord": catalogue.club.calibrations.get(gear.id, ()),
        "outside": pull.outside,
    }
