"""Show the working behind one computed figure of a set, step by step.

FIGURE is a figure's name, say distance, "mode kick", clock, load, "target 1.2" (the second item of the
first round). Figures on the clock are those of --group, or of the first lane group that the set is for.
"""

from __future__ import annotations

import argparse

from almanac.arithmetic.set_figures import set_figures
from almanac.arithmetic.summary import effort_scale
from almanac.commands.named import named
from almanac.commands.shared import ERRORS, FINE, UsageError
from almanac.commands.sum_ import summarise_named
from almanac.findings import as_text
from almanac.pages.sum_text import CLOCK_CONVENTION, no_number_words
from almanac.pages.working_text import steps
from almanac.source.suggest import nearest
from almanac.units import COURSES

NAME = "explain"
_ON_THE_CLOCK = ("clock", "work", "rest", "density", "load", "target", "sendoff")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", help="a set's id, or the path of its file")
    parser.add_argument("figure", metavar="FIGURE", nargs="*", help="the figure's name; without it, the names are listed")
    parser.add_argument("--course", choices=sorted(COURSES), help="lay it into this course (default: its own)")
    parser.add_argument("--group", metavar="G", help="the lane group (default: the first that the set is for)")


def run(arguments: argparse.Namespace) -> int:
    found = named(arguments.root, arguments.name)
    if found.study is None or found.id not in found.study.computable:
        print(as_text(found.findings, 1))
        return ERRORS
    meant = found.study.meant(found.study.computable[found.id])
    group = arguments.group or (meant[0] if meant else next(iter(found.study.catalogue.lane_groups)))
    summary = summarise_named(found.study, found.id, arguments.course, group)
    figures = set_figures(summary, effort_scale(found.study.catalogue), group)
    wanted = " ".join(arguments.figure)
    if not wanted:
        print("\n".join(figures))
        return FINE
    if wanted not in figures:
        reasons = [no_number_words(missing) for missing in summary.clocks[group].missing]
        if wanted.split()[0] in _ON_THE_CLOCK and reasons:
            print(f"{group}: no number, because {'; '.join(reasons)}")
            return FINE
        near = nearest(wanted, figures)
        raise UsageError(f"there is no figure '{wanted}'" + (f"; the nearest: {near}" if near else "; list them without FIGURE"))
    figure = figures[wanted]
    for step in steps(figure.working, wanted, figure.unit):
        print(f"{step.what}: {step.how} = {step.value}" if step.how != step.value else f"{step.what}: {step.value}")
    if wanted == "clock":
        print(CLOCK_CONVENTION)
    return FINE
