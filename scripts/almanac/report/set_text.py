"""The summary of a set for a terminal: what a coach would want on the whiteboard, then the sums."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from almanac.analysis.figures import by_name, section, table
from almanac.analysis.figures.figure import Figure
from almanac.arithmetic.course import Misfit
from almanac.arithmetic.facets import FACETS
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.summary import SetSummary, groups_meant
from almanac.arithmetic.swum import Swum
from almanac.model.catalogue import Catalogue
from almanac.report.brief_text import brief_lines
from almanac.report.facet_shares import facet_line
from almanac.report.known_words import basis_words, no_number_words, unfit_lines, unfit_words
from almanac.report.shown import SHARES_IN_WORDS, others, shown, with_working
from almanac.report.ways import ways_of
from almanac.report.whiteboard import board, board_text
from almanac.units import Unit, show_distance, show_time

CLOCK_CONVENTION = "The last rep's full send-off counts: 8 × 50 on 1:00 is 8:00."


def set_text(catalogue: Catalogue, summary: SetSummary) -> str:
    """The whole summary as lines of text."""
    swim_set = summary.swim_set
    head = (
        f"{swim_set.title} ({swim_set.id}), "
        f"{catalogue.words('levels')[swim_set.level].title.lower()}, {_where(summary)}"
    )
    meant = [id for id in groups_meant(catalogue, swim_set) if id in summary.clocks]
    unfit = unfit_lines(catalogue, summary.clocks, meant)
    sections = [
        [head, swim_set.purpose],
        [board_text([*board(catalogue, swim_set), *unfit])],
        *_ways(catalogue, summary),
        list(_clocks(catalogue, summary)),
        list(_gear_and_brief(catalogue, summary)),
        list(_misfits(summary)),
    ]
    return "\n\n".join("\n".join(lines) for lines in sections if lines)


_TOTALS = ("distance", "reps", "lengths", "metres", "yards")


def _ways(catalogue: Catalogue, summary: SetSummary) -> Iterator[list[str]]:
    """Totals and facets; where lane groups differ, of each way of swimming it, with who does."""
    for who, _, swum in ways_of(catalogue.lane_groups, summary):
        if who and not swum.reps:
            yield [f"{who}: none of it"]
            continue
        told = _reps(swum) if summary.swim_set.is_on_land else _totals(swum)
        yield [*([f"{who}:"] if who else []), *told]
        if not summary.swim_set.is_on_land:
            yield list(_facets(catalogue, swum))


def _reps(swum: Swum) -> Iterator[str]:
    """What there is to count of a circuit on land."""
    yield f"{shown(by_name('set', 'set', swum)['reps'])} reps"


def _totals(swum: Swum) -> Iterator[str]:
    figures = by_name("set", "set", swum)
    yield with_working(figures["distance"])
    metres = "" if swum.course.unit is Unit.METRE else f", {shown(figures['metres'])}"
    yield (
        f"{shown(figures['reps'])} reps, {shown(figures['lengths'])} lengths of "
        f"{swum.course.shown}{metres}"
    )
    yield from map(with_working, others(figures.values(), _TOTALS))


def _facets(catalogue: Catalogue, swum: Swum) -> Iterator[str]:
    yield from (facet_line(catalogue, swum, facet) for facet in FACETS)
    shares = by_name("set", "shares", swum)
    if shares["supine share"].value is not None:
        yield (
            f"Of the flutter kick, {shown(shares['supine share'])} is on the back "
            f"and {shown(shares['board share'])} on a board."
        )
    if shares["kick into stroke"].value:
        yield f"{shown(shares['kick into stroke'])} of stroke comes straight out of the kick."
    yield from map(with_working, others(shares.values(), SHARES_IN_WORDS))


def _clocks(catalogue: Catalogue, summary: SetSummary) -> Iterator[str]:
    if not summary.clocks:
        return
    columns = section("set", "group").tables["clock"]
    heads = "".join(f"{column.name:>{_width(column)}}" for column in columns)
    titles = ["On the clock", *(catalogue.lane_groups[group].title for group in summary.clocks)]
    widest = max(map(len, titles)) + 2
    yield f"{titles[0]:{widest}}{heads}"
    for group, run in summary.clocks.items():
        title = catalogue.lane_groups[group].title
        yield f"{title:{widest}}{_clock_columns(run)}"
        yield from (f"    {line}" for line in basis_words(catalogue, run))
        yield from (
            f"    no number: {no_number_words(catalogue, missing)}" for missing in run.missing
        )
        yield from (f"    {unfit_words(unfit)}" for unfit in run.unfit)
        yield from _changes(run)
    yield CLOCK_CONVENTION


def _width(column: Figure[GroupClock]) -> int:
    return max(9, len(column.name) + 2)


def _clock_columns(run: GroupClock) -> str:
    figures = table("set", "group", "clock", run)
    return "".join(f"{shown(figure):>{_width(figure.figure)}}" for figure in figures)


def _changes(run: GroupClock) -> Iterator[str]:
    uncovered = sum(change.uncovered_s for change in run.changes)
    if run.changes:
        changes = f"{len(run.changes)} gear change{'s' * (len(run.changes) != 1)}"
        took = f"{show_time(uncovered)} of the clock" if uncovered else "none of it"
        yield f"    {changes}, {took} beyond the pauses"
    if any(change.at_far_end for change in run.changes):
        yield "    some changes come after an odd number of lengths: lay the gear at the far end"


def _where(summary: SetSummary) -> str:
    return "on land" if summary.swim_set.is_on_land else f"{summary.course.shown} pool"


def _gear_and_brief(catalogue: Catalogue, summary: SetSummary) -> Iterator[str]:
    gear = ", ".join(catalogue.gear[id].title.lower() for id in summary.gear)
    yield f"Gear: {gear or 'none'}"
    yield from brief_lines(catalogue, summary.brief, summary.swim_set.key)


def _misfits(summary: SetSummary) -> Iterator[str]:
    return (
        f"In a {summary.course.shown} pool {line}"
        for line in map(misfit_words(summary.course.unit), summary.misfits)
    )


def misfit_words(unit: Unit) -> Callable[[Misfit], str]:
    """How a rep does not fit a pool, and what would, in words."""

    def words(misfit: Misfit) -> str:
        distance, nearest = (
            show_distance(float(far), unit) for far in (misfit.distance, misfit.nearest)
        )
        if misfit.part is None:
            what = f"a rep of {distance} {misfit.why.value}"
        else:
            what = f"a rep {misfit.why.value} after part {misfit.part + 1}, {distance}"
        return f"{what}; the nearest in whole lengths is {nearest}"

    return words
