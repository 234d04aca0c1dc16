"""Print the summary of a set, a practice or a block.

NAME is an id, or the path of a file outside the catalogue. A set shows the whiteboard, totals,
facets, the clock of each lane group, gear and brief; a practice its run sheet; a block its weeks.
"""

from __future__ import annotations

import argparse
import json
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.commands.find_entry import FoundEntry, find_entry
from almanac.commands.outcome import ERRORS, FINE, UsageError
from almanac.findings import FORMATS, as_text
from almanac.report.plan_json import block_json, practice_json
from almanac.report.plan_text import block_text, practice_text
from almanac.report.set_json import set_json
from almanac.report.set_text import set_text
from almanac.units import COURSES, Course

NAME = "sum"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", help="an id, or the path of a file")
    parser.add_argument(
        "--course", choices=sorted(COURSES), help="lay a set into this course (default: its own)"
    )
    parser.add_argument("--group", metavar="G", help="one lane group (default: all)")
    parser.add_argument("--json", action="store_true", help="print JSON, version 1")


def run(arguments: argparse.Namespace) -> int:
    found = find_entry(arguments.root, arguments.name, arguments.today)
    if found.analysis is None or not found.computable:
        print(FORMATS["json" if arguments.json else "text"](*found.reasons))
        return ERRORS
    if arguments.course and found.kind != "set":
        raise UsageError(
            f"--course lays a set into another pool, and '{found.id}' is a {found.kind}"
        )
    text, data = _shown(found, found.analysis, arguments.course, arguments.group)
    if arguments.json:
        print(json.dumps(data, ensure_ascii=False, indent=1))
    else:
        print(text)
        if found.findings:
            print("\n" + as_text(found.findings, 1))
    return ERRORS if found.has_errors else FINE


def _shown(
    found: FoundEntry, analysis: Analysis, course: str | None, group: str | None
) -> tuple[str, dict[str, Any]]:
    """What is printed: as text, and as data."""
    check_group(analysis, group)
    if found.kind == "set":
        summary = summarise_named(analysis, found.id, course, group)
        return set_text(analysis.catalogue, summary), set_json(summary, found.findings)
    if found.kind == "practice":
        practice = analysis.practices[found.id]
        return practice_text(analysis.catalogue, practice), practice_json(practice, found.findings)
    groups = analysis.blocks[found.id]
    chosen = {name: summary for name, summary in groups.items() if group in (None, name)}
    if not chosen:
        raise UsageError(
            f"'{found.id}' is not for {group}; it is for {', '.join(groups) or 'no lane group'}"
        )
    return block_text(analysis.catalogue, chosen), block_json(chosen, found.findings)


def check_group(analysis: Analysis, group: str | None) -> None:
    """Raise UsageError for a lane group that the club does not have."""
    groups = analysis.catalogue.lane_groups
    if group is not None and group not in groups:
        raise UsageError(f"there is no lane group '{group}'; there are {', '.join(groups)}")


def summarise_named(
    analysis: Analysis, id: str, course: str | None, group: str | None
) -> SetSummary:
    """The summary of a computable set in a course, for one lane group or all."""
    chosen = Course.parse(course) if course else None
    return summarise(analysis.timing, analysis.computable[id], chosen, [group] if group else None)
