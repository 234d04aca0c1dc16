"""Show the working behind one computed figure, step by step: of a set, a practice, a block, a
benchmark or a piece of gear.

FIGURE is a figure's name, say distance, "mode kick", clock, load, "target 1.2" (the second item of
the first round), "week 3 monotony". Without FIGURE the names are listed. Figures that differ
between lane groups are those of --group, or of the first lane group that the entry is for.
"""

from __future__ import annotations

import argparse
import re

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import REGISTRY, all_figures
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.wholes import WHOLES
from almanac.arithmetic.group_clock import DoesNotFit
from almanac.arithmetic.pace_lines import NoNumber
from almanac.commands import asked_for
from almanac.commands.find_entry import FoundEntry, find_entry
from almanac.commands.outcome import ERRORS, FINE, UsageError, today
from almanac.commands.sum_ import check_group
from almanac.kinds import SUMMED
from almanac.report.findings_shown import as_text
from almanac.report.known_words import no_number_words
from almanac.report.set_text import CLOCK_CONVENTION
from almanac.report.working_text import steps
from almanac.source.suggest import nearest
from almanac.units import COURSES, Course

NAME = "explain"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", help="an id, or the path of a file")
    parser.add_argument(
        "figure",
        metavar="FIGURE",
        nargs="*",
        default=[],  # with none, argparse would ask for it where NAME is missing
        help="the figure's name; without it, the names are listed",
    )
    parser.add_argument(
        "--course", choices=sorted(COURSES), help="lay a set into this course (default: its own)"
    )
    parser.add_argument(
        "--group", metavar="G", help="the lane group (default: the first that the entry is for)"
    )
    asked_for.add_arguments(parser)


def run(arguments: argparse.Namespace) -> int:
    then = [kind for kind in REGISTRY if kind not in SUMMED]
    found = find_entry(arguments.root, arguments.name, arguments.today or today(), then=then)
    if found.analysis is None or not found.computable:
        print(as_text(*found.reasons))
        return ERRORS
    check_group(found.analysis, arguments.group)
    if asked_for.is_asked(arguments):
        found = asked_for.as_asked(found, found.analysis, arguments)
    assert found.analysis is not None  # it was there, and only its entries change
    figures, missing = _figures(found, found.analysis, arguments.course, arguments.group)
    wanted = " ".join(arguments.figure)
    if not wanted:
        print("\n".join(figures) or f"'{found.id}' has no figures for that lane group")
    elif wanted in figures:
        _print(figures[wanted])
    elif missing and _is_figure(found.kind, wanted):
        catalogue = found.analysis.catalogue
        why = "; ".join(no_number_words(catalogue, reason) for reason in missing)
        print(f"no number, because {why}")
    else:
        near = nearest(wanted, figures)
        raise UsageError(
            f"there is no figure '{wanted}'"
            + (f"; the nearest: {near}" if near else "; list them without FIGURE")
        )
    return FINE


def _is_figure(kind: str, wanted: str) -> bool:
    """Whether a kind has a figure of that name, be it one without a number here."""
    return any(
        re.match(rf"{re.escape(figure.name)}\b", wanted)
        for section in REGISTRY[kind]
        for table in section.tables.values()
        for figure in table
    )


def _print(figure: NamedFigure) -> None:
    assert figure.working is not None  # only figures with a number are listed
    for step in steps(figure.working, figure.name, figure.unit):
        print(
            f"{step.what}: {step.how} = {step.value}"
            if step.how != step.value
            else f"{step.what}: {step.value}"
        )
    if "clock" in figure.name:
        print(CLOCK_CONVENTION)


def _figures(
    found: FoundEntry, analysis: Analysis, course: str | None, group: str | None
) -> tuple[dict[str, NamedFigure], tuple[NoNumber | DoesNotFit, ...]]:
    """The figures of what was named, and why some of them have no number."""
    wholes = WHOLES[found.kind]
    chosen = _chosen(found, analysis, group, wholes.groups(analysis, found.id))
    whole = wholes.whole(analysis, found.id, chosen, Course.parse(course) if course else None)
    return all_figures(found.kind, whole), wholes.missing(whole)


def _chosen(
    found: FoundEntry, analysis: Analysis, group: str | None, groups: tuple[str, ...]
) -> str:
    """The lane group that was asked for, or the first of those that the entry is for."""
    if WHOLES[found.kind].any_group:
        groups = groups or tuple(analysis.catalogue.lane_groups)
        return group or groups[0]
    if not groups or (group is not None and group not in groups):
        raise UsageError(
            f"'{found.id}' is not for {group or 'any lane group'}; it is for "
            f"{', '.join(groups) or 'none'}"
        )
    return group or groups[0]
