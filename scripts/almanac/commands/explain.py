"""Show the working behind one computed figure of a set, a practice or a block, step by step.

FIGURE is a figure's name, say distance, "mode kick", clock, load, "target 1.2" (the second item of
the first round), "week 3 monotony". Without FIGURE the names are listed. Figures that differ
between lane groups are those of --group, or of the first lane group that the entry is for.
"""

from __future__ import annotations

import argparse

from almanac.analysis.analysis import Analysis
from almanac.analysis.plan_figures import block_figures, practice_figures
from almanac.analysis.set_figures import NamedFigure, set_figures
from almanac.arithmetic.pace_lines import NoNumber
from almanac.commands.find_entry import FoundEntry, find_entry
from almanac.commands.outcome import ERRORS, FINE, UsageError
from almanac.commands.sum_ import check_group, summarise_named
from almanac.findings import as_text
from almanac.report.set_text import CLOCK_CONVENTION, no_number_words
from almanac.report.working_text import steps
from almanac.source.suggest import nearest
from almanac.units import COURSES

NAME = "explain"
_ON_THE_CLOCK = ("clock", "work", "rest", "density", "load", "target", "sendoff")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", help="an id, or the path of a file")
    parser.add_argument(
        "figure",
        metavar="FIGURE",
        nargs="*",
        help="the figure's name; without it, the names are listed",
    )
    parser.add_argument(
        "--course", choices=sorted(COURSES), help="lay a set into this course (default: its own)"
    )
    parser.add_argument(
        "--group", metavar="G", help="the lane group (default: the first that the entry is for)"
    )


def run(arguments: argparse.Namespace) -> int:
    found = find_entry(arguments.root, arguments.name, arguments.today)
    if found.analysis is None or not found.computable:
        print(as_text(*found.reasons))
        return ERRORS
    check_group(found.analysis, arguments.group)
    figures, missing = _figures(found, found.analysis, arguments.course, arguments.group)
    wanted = " ".join(arguments.figure)
    if not wanted:
        print("\n".join(figures))
    elif wanted in figures:
        _print(figures[wanted])
    elif wanted.split()[0] in _ON_THE_CLOCK and missing:
        print(f"no number, because {'; '.join(map(no_number_words, missing))}")
    else:
        near = nearest(wanted, figures)
        raise UsageError(
            f"there is no figure '{wanted}'"
            + (f"; the nearest: {near}" if near else "; list them without FIGURE")
        )
    return FINE


def _print(figure: NamedFigure) -> None:
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
) -> tuple[dict[str, NamedFigure], tuple[NoNumber, ...]]:
    """The figures of what was named, and why some of them have no number."""
    if found.kind == "practice":
        practice = analysis.practices[found.id]
        return practice_figures(
            practice, analysis.scale, _own(found, group, list(practice.groups))
        ), ()
    if found.kind == "block":
        groups = analysis.blocks[found.id]
        return block_figures(groups[_own(found, group, list(groups))], analysis.scale), ()
    meant = analysis.meant(analysis.computable[found.id])
    chosen = group or next(iter(meant or analysis.catalogue.lane_groups))
    summary = summarise_named(analysis, found.id, course, chosen)
    return set_figures(summary, analysis.scale, chosen), summary.clocks[chosen].missing


def _own(found: FoundEntry, group: str | None, groups: list[str]) -> str:
    """The lane group that was asked for, or the first of the entry's squad."""
    if not groups or (group is not None and group not in groups):
        raise UsageError(
            f"'{found.id}' is not for {group or 'any lane group'}; it is for "
            f"{', '.join(groups) or 'none'}"
        )
    return group or groups[0]
